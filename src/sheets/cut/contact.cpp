// Contact sheet: every part the table cuts, at one scale, with what is scribed on it,
// to sort what comes off the table.
#include <fmt/format.h>

#include <array>

#include "bed/names.h"
#include "sheets/cut/cut.h"
#include "sheets/flow.h"
#include "sheets/sheets.h"

namespace bedwright {
namespace {

// Reductions of ISO 5455.
constexpr std::array reductions{1, 2, 5, 10, 20, 50, 100};
constexpr Mm words_width = 62;
// A direction within 10 degrees of an axis of the bed counts as along it.
constexpr double along_axis = 0.985;

struct CutPart {
  int index = 0;
  const Part* part = nullptr;
};

std::vector<CutPart> cut_parts(const Bed& bed) {
  std::vector<CutPart> all;
  for (std::size_t i = 0; i < bed.parts.size(); ++i) {
    const Part& part = bed.parts[i];
    if (part.origin == Origin::made && std::holds_alternative<Plate>(part.form) &&
        bed.count(static_cast<int>(i)) > 0)
      all.push_back({static_cast<int>(i), &part});
  }
  return all;
}

// Where the scribed arrow points when the part stands in the bed, if it points the
// same way in all of them.
std::string arrow_way(const Bed& bed, int part) {
  std::string same;
  for (const Item& item : bed.items) {
    if (item.part != part || !item.shown) continue;
    const Vec3 way = item.placement.y_axis;
    const double out = item.placement.origin.y > 0 ? way.y : -way.y;
    const std::string word = way.z > along_axis                               ? "up"
                             : way.z < -along_axis                            ? "down"
                             : way.x > along_axis                             ? "rearward"
                             : way.x < -along_axis                            ? "forward"
                             : std::abs(item.placement.origin.y) < same_place ? ""
                             : out > along_axis                               ? "outward"
                             : out < -along_axis                              ? "inward"
                                                                              : "";
    if (word.empty() || (!same.empty() && same != word)) return "";
    same = word;
  }
  return same;
}

// The cut file's marks and cuts, smaller, on a sheet's pens.
class Shrunk {
 public:
  Shrunk(List2d& to, const Pens& pens, double scale, const List2d& from) : to_(to), scale_(scale) {
    for (const Layer& layer : from.layers)
      layers_.push_back(layer.name == outer_cut_layer ? pens.outline
                        : layer.name == inner_cut_layer
                            ? pens.thin
                            : to.layer({layer.name, layer.colour, LineKind::continuous, 0.25}));
  }
  void operator()(const Line& l) { to_.add(Line{layer(l.layer), scale_ * l.from, scale_ * l.to}); }
  void operator()(const Arc& a) {
    to_.add(Arc{layer(a.layer), scale_ * a.centre, scale_ * a.radius, a.start, a.end});
  }
  void operator()(const Circle& c) { to_.add(Circle{layer(c.layer), scale_ * c.centre, scale_ * c.radius}); }
  void operator()(Filled f) {
    f.layer = layer(f.layer);
    for (Box2& b : f.boxes) b = {scale_ * b.low, scale_ * b.high};
    to_.add(std::move(f));
  }
  void operator()(const Closed& c) {
    Outline outline = c.outline;
    for (Vertex& v : outline) v.at = scale_ * v.at;
    to_.add(Closed{layer(c.layer), outline});
  }
  void operator()(const Path& p) {
    Path path{layer(p.layer), p.points};
    for (Vec2& v : path.points) v = scale_ * v;
    to_.add(path);
  }
  void operator()(const Text& t) {
    Text text = t;
    text.layer = layer(t.layer);
    text.at = scale_ * t.at;
    text.height *= scale_;
    to_.add(text);
  }

 private:
  int layer(int of) const { return layers_[static_cast<std::size_t>(of)]; }
  List2d& to_;
  double scale_;
  std::vector<int> layers_;
};

List2d picture_of(const SheetInput& in, const CutPart& p, int scale) {
  const Heading& h = in.job.order.order;
  const Figures figures = h.figures();
  const Cut flat = cut(*p.part, h, h.printing);
  List2d list;
  const Pens pens(list);
  Shrunk shrunk(list, pens, 1.0 / scale, flat.list);
  for (const Entity& e : flat.list.entities) std::visit(shrunk, e);
  const Plate& plate = std::get<Plate>(p.part->form);
  std::vector<std::string> words{
      fmt::format("{} off, {} {}", in.bed.count(p.index), figures.size_length(plate.thickness),
                  p.part->material),
      fmt::format("{} x {}", figures.size_figure(flat.size.x), figures.size_length(flat.size.y))};
  const auto drilled = std::count_if(plate.holes.begin(), plate.holes.end(),
                                     [](const Hole& hole) { return hole.process == Process::drilled; });
  if (drilled > 0) words.push_back(fmt::format("{} to drill at centre marks", drilled));
  const auto in_place = std::count_if(plate.holes.begin(), plate.holes.end(),
                                      [](const Hole& hole) { return hole.process == Process::in_place; });
  if (in_place > 0) words.push_back(fmt::format("{} to drill in place, marks to set it by", in_place));
  if (flat.letter_height == 0) {
    words.push_back("nothing scribed: mark by hand");
  } else if (const std::string way = arrow_way(in.bed, p.index); !way.empty()) {
    words.push_back("arrow points " + way + " in the bed");
  }
  Mm y = -2 - bench_text - 2;
  const auto put = [&](const std::string& s, Mm height) {
    for (const std::string& l : wrapped(s, height, words_width)) {
      list.add(Text{pens.text, {0, y}, height, l, Across::left, Up::baseline, 0});
      y -= 1.7 * height;
    }
  };
  put(name(*p.part), bench_text);
  for (const std::string& w : words) put(w, small_text);
  return list;
}

// Four steps of a round length, so that a print can be held to a rule.
List2d scale_bar(const Figures& figures, int scale) {
  Mm step = 0;
  for (const double size : {0.25, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0}) {
    step = size * figures.scale_bar_unit();
    if (step / scale >= 15) break;
  }
  List2d list;
  const Pens pens(list);
  const Mm wide = step / scale;
  for (int i = 0; i < 4; ++i)
    list.add(Closed{pens.thin, rectangle({i * wide, i % 2 ? 0 : 1.5}, {(i + 1) * wide, i % 2 ? 1.5 : 3})});
  list.add(Closed{pens.thin, rectangle({0, 0}, {4 * wide, 3})});
  for (int i = 0; i <= 4; ++i)
    list.add(Text{pens.text,
                  {i * wide, -4},
                  small_text,
                  figures.size_figure(i * step),
                  Across::centre,
                  Up::baseline,
                  0});
  list.add(Text{pens.text,
                {0, 6},
                bench_text,
                fmt::format("SCALE 1:{}, {} of the part", scale, figures.unit_word()),
                Across::left,
                Up::baseline,
                0});
  list.add(Text{pens.text,
                {0, -9.5},
                small_text,
                fmt::format("Printed right, the bar is {} mm long on paper", mm_figure(4 * wide)),
                Across::left,
                Up::baseline,
                0});
  return list;
}

std::vector<std::string> notes_of(const SheetInput& in) {
  const Mm kerf = in.job.order.cut.kerf;
  return {
      "Parts are shown finished, as their cut files lie, the scribed face toward you. Thick: cut last. Thin: "
      "cut first. Crosses: centre marks for the drill.",
      kerf > 0 ? fmt::format("The cut files allow for a kerf of {}: set the table's kerf to 0.",
                             in.figures().kerf(kerf))
               : "The cut files are cut on the line: the table allows for its kerf.",
      "The arrow points to the top of the part's view on the plate sheet, whichever way the words run."};
}

std::vector<Sheet> at_scale(const SheetInput& in, const std::vector<CutPart>& parts, int scale) {
  Sheet form;
  form.title = "CONTACT SHEET, CUT PARTS";
  form.file = "contact_sheet";
  form.scale = fmt::format("1:{}", scale);
  form.material = in.job.frame.grade;
  const Box2 space = drawing_space(paper_of(in.job.order.order), in.draft);
  std::vector<List2d> pictures;
  for (const CutPart& p : parts) pictures.push_back(picture_of(in, p, scale));
  for (const List2d& p : pictures)
    if (const Box2 box = bounds(p); box.width() > space.width() || box.height() > space.height()) return {};
  std::stable_sort(pictures.begin(), pictures.end(),
                   [](const List2d& a, const List2d& b) { return bounds(a).height() > bounds(b).height(); });
  Flow flow(form, space);
  for (const List2d& p : pictures) flow.picture(p);
  flow.below();
  flow.picture(scale_bar(in.figures(), scale));
  flow.notes("NOTES", notes_of(in), small_text, 150);
  return std::move(flow).sheets();
}

}  // namespace

// The largest scale at which all lie on one sheet; when 1 : 20 still takes more than
// one, the largest that a sheet holds.
std::vector<Sheet> contact_sheets(const SheetInput& in) {
  const std::vector<CutPart> parts = cut_parts(in.bed);
  if (parts.empty()) return {};
  std::vector<Sheet> first;
  for (const int scale : reductions) {
    if (in.draft && scale == 1) continue;  // nothing of a draft's can be cut from
    std::vector<Sheet> sheets = at_scale(in, parts, scale);
    if (sheets.size() == 1 || (scale > 20 && !sheets.empty() && first.empty())) return sheets;
    if (first.empty()) first = std::move(sheets);
    if (scale >= 20 && !first.empty()) return first;
  }
  throw std::invalid_argument("a cut part fits the contact sheet at no scale");
}

}  // namespace bedwright
