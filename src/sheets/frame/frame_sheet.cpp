// The frame as a weldment: plan, running dimensions, diagonals to tape, welds.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "bed/names.h"
#include "sheets/flow.h"
#include "sheets/frame/frame_plan.h"
#include "sheets/frame/weld_marks.h"
#include "sheets/marks.h"
#include "sheets/part_words.h"
#include "sheets/plan.h"
#include "sheets/sheets.h"

namespace bedwright {
namespace {

constexpr Mm symbol_row = 7.5, knee_apart = 4;
constexpr Mm across_labels = 105;  // room for the figures across, on paper
// Room for the figures along and between plan and symbols, and the least for the plan.
constexpr Mm along_labels = 76, to_symbols = 11, least_plan = 20;
constexpr int most_reduction = 500;

// Welds of one kind: the same two parts, size, length and line.
using WeldKey = std::tuple<int, int, long, long, WeldLine>;
struct WeldKind {
  const Weld* shown = nullptr;
  int count = 0;
  Vec2 tip;  // of its arrow, in the bed
};

// Where two parts lie over each other in plan, the middle of it; where they only
// touch, the middle of where they are nearest.
Vec2 joint_of(const Bed& bed, const Weld& w) {
  const std::vector<Vec2> lap = common(footprint(bed, w.a), footprint(bed, w.b));
  if (lap.size() >= 3) {
    Vec2 sum;
    for (const Vec2 p : lap) sum = sum + p;
    return (1.0 / static_cast<double>(lap.size())) * sum;
  }
  const Box3 a = bounds(bed, w.a), b = bounds(bed, w.b);
  return {(std::max(a.low.x, b.low.x) + std::min(a.high.x, b.high.x)) / 2,
          (std::max(a.low.y, b.low.y) + std::min(a.high.y, b.high.y)) / 2};
}

// One of each kind, shown at the joint nearest the road side's rear, front to rear.
std::vector<WeldKind> weld_kinds(const Bed& bed, const std::vector<int>& items) {
  std::map<WeldKey, WeldKind> kinds;
  for (const Weld& w : bed.welds) {
    // The coupler is bought, but the shop welds it on.
    const bool ours =
        w.leg > 0 && std::binary_search(items.begin(), items.end(), w.b) &&
        (std::binary_search(items.begin(), items.end(), w.a) || bed.items[w.a].id.kind == Kind::coupler);
    if (!ours) continue;
    WeldKind& kind = kinds[{bed.items[w.a].part, bed.items[w.b].part, std::lround(1000 * w.leg),
                            std::lround(100 * w.length), w.line}];
    const Vec2 tip = joint_of(bed, w);
    if (!kind.shown || tip.y < kind.tip.y - same_place) {
      kind.shown = &w;
      kind.tip = tip;
    }
    ++kind.count;
  }
  std::vector<WeldKind> out;
  for (const auto& [key, kind] : kinds) out.push_back(kind);
  std::sort(out.begin(), out.end(), [](const WeldKind& a, const WeldKind& b) {
    return std::pair(a.tip.x, a.shown) < std::pair(b.tip.x, b.shown);
  });
  return out;
}

// The left channel as drawn: where its square-cut ends are, and how far its web's
// outer face is from the centre line there.
struct TongueEnds {
  Mm front = 0, rear = 0, web_front = 0, web_rear = 0;
};

TongueEnds tongue_of(const Bed& bed) {
  const std::vector<Vec2> corners = footprint(bed, bed.item({Kind::tongue, Side::left}));
  TongueEnds ends;
  ends.front = std::min_element(corners.begin(), corners.end(), [](Vec2 a, Vec2 b) { return a.x < b.x; })->x;
  ends.rear = std::max_element(corners.begin(), corners.end(), [](Vec2 a, Vec2 b) { return a.x < b.x; })->x;
  for (const Vec2 c : corners) {
    Mm& web = c.x < (ends.front + ends.rear) / 2 ? ends.web_front : ends.web_rear;
    web = std::max(web, std::abs(c.y));
  }
  return ends;
}

std::vector<Mm> axle_places(const Bed& bed) {
  std::vector<Mm> all;
  for (const int axle : bed.items_of(Kind::axle))
    if (bed.items[axle].shown) all.push_back(bed.items[axle].placement.origin.x);
  return all;
}

class FramePlan {
 public:
  FramePlan(const SheetInput& in, const Box2& space, int least)
      : bed_(in.bed), figures_(in.figures()), pens_(list_), items_(frame_items(bed_)) {
    std::sort(items_.begin(), items_.end());
    Box3 all;
    for (const int i : items_) {
      all.add(bounds(bed_, i).low);
      all.add(bounds(bed_, i).high);
    }
    standing_ = stands(in.job.frame);
    if (!standing_) kinds_ = weld_kinds(bed_, items_);  // what stands is welded already
    const Mm tall =
        space.height() - along_labels - to_symbols - symbol_row * static_cast<double>(kinds_.size());
    scale_ = std::max(reduction(all.high.x - all.low.x, space.width() - across_labels),
                      reduction(all.high.y - all.low.y, std::max(least_plan, tall)));
    scale_ = std::max(scale_, reduction(least, 1));
    const Box3 main = bounds(bed_, bed_.item({Kind::main, Side::right}));
    front_ = main.low.x;
    rear_ = main.high.x;
    half_ = in.job.frame.main.spacing / 2;
  }

  // 1 : scale, a step no finer than `least` asked for.
  int scale() const { return scale_; }
  Mm diagonal() const { return std::hypot(rear_ - front_, 2 * half_); }

  List2d drawn() {
    draw_plan(list_, bed_, items_, scale_, standing_ ? pens_.thin : pens_.outline, pens_.hidden);
    box_ = bounds(list_);
    diagonals();
    along();
    across();
    welds();
    return std::move(list_);
  }

 private:
  Vec2 at(Mm x, Mm y) const { return {x / scale_, y / scale_}; }

  // Corner letters stand outside the web backs' corners.
  void diagonals() {
    for (const Mm x : {front_, rear_})
      for (const Mm y : {half_, -half_}) list_.add(Circle{pens_.outline, at(x, y), 0.8});
    list_.add(Line{pens_.centre, at(front_, half_), at(rear_, -half_)});
    list_.add(Line{pens_.centre, at(front_, -half_), at(rear_, half_)});
    // Clear of the front member, whose welds' arrows come from below.
    const Mm ahead_of_frame = bounds(bed_, bed_.item({Kind::front_member})).low.x / scale_;
    const auto letter = [&](Mm x, Mm y, const char* s) {
      const Vec2 p = at(x, y);
      const bool ahead = x == front_, top = y > 0;
      const Mm off = ahead ? ahead_of_frame - p.x - 1.5 : 3 + box_.high.x - p.x;
      list_.add(Text{pens_.text,
                     {p.x + off, p.y + (top ? 1.5 : -1.5)},
                     bench_text,
                     s,
                     ahead ? Across::right : Across::left,
                     top ? Up::baseline : Up::top,
                     0});
    };
    letter(front_, half_, "A");
    letter(front_, -half_, "B");
    letter(rear_, half_, "C");
    letter(rear_, -half_, "D");
  }

  void along() {
    std::vector<Running> places;
    const auto put = [&](Mm x, const std::string& what = "") {
      const auto known = std::find_if(places.begin(), places.end(),
                                      [&](const Running& r) { return std::abs(r.at * scale_ - x) < 0.01; });
      if (known == places.end()) {
        places.push_back({x / scale_, figures_.running(x) + what});
      } else {
        known->label += what;
      }
    };
    put(0);
    put(front_);
    put(rear_);
    for (const int i : items_) {
      const Kind kind = bed_.items[i].id.kind;
      if (kind == Kind::cross_member || kind == Kind::tongue_plate) put(bed_.items[i].placement.origin.x);
      if (kind == Kind::tongue) put(tongue_of(bed_).front);
    }
    for (const double x : axle_places(bed_)) {
      put(x, "  axle");
      list_.add(Line{pens_.centre, {x / scale_, box_.low.y - 2}, {x / scale_, box_.high.y + 2}});
    }
    running_along(list_, places, std::max(box_.high.y, half_ / scale_) + 6, true, small_text);
  }

  void across() {
    std::vector<Running> places{{0, "0  centre line"}};
    for (const double side : {1.0, -1.0})
      places.push_back({side * half_ / scale_, figures_.running(half_) + "  " +
                                                   back_word(bed_, bed_.item({Kind::main, Side::left}))});
    running_across(list_, places, box_.high.x + 8, true, small_text);
    list_.add(Line{pens_.centre, {box_.low.x - 3, 0}, {box_.high.x + 6, 0}});
  }

  // Ascending along the bed, each symbol a row higher than the one before, so
  // that no leader runs through another's letters.
  void welds() {
    Mm knee = box_.low.x - knee_apart;
    const Mm lowest = box_.low.y - to_symbols - symbol_row * static_cast<double>(kinds_.size() - 1);
    for (std::size_t i = 0; i < kinds_.size(); ++i) {
      const Vec2 tip = at(kinds_[i].tip.x, kinds_[i].tip.y);
      knee = std::max(knee + knee_apart, tip.x + 2);
      WeldMark mark = weld_mark(*kinds_[i].shown, kinds_[i].count, figures_);
      if (bed_.items[kinds_[i].shown->a].id.kind == Kind::coupler)
        mark.tail = "coupler on the tongue's top: " + mark.tail;
      weld_symbol(list_, mark, tip, {knee, lowest + symbol_row * static_cast<double>(i)}, small_text);
    }
  }

  const Bed& bed_;
  Figures figures_;
  List2d list_;
  Pens pens_;
  std::vector<int> items_;
  std::vector<WeldKind> kinds_;
  Box2 box_;
  int scale_ = 1;
  bool standing_ = false;
  Mm front_ = 0, rear_ = 0, half_ = 0;
};

// Of a frame that stands: what to measure before anything is bolted to it.
std::vector<std::string> survey_notes(const SheetInput& in, Mm diagonal) {
  const Figures figures = in.figures();
  const Mm ahead = in.job.frame.main.front_overhang;
  return {
      fmt::format("This frame stands ({}). {} Thin lines show what is there.", in.job.frame.name,
                  is_to_be_changed(in.job.frame)
                      ? "Only what sheet CHANGES TO THE FRAME lists is done to it, nothing else."
                      : "NOTHING of it is cut, drilled, sawn or welded for this order."),
      fmt::format(
          "First check that it is as drawn: tape every place in the table from {}. Where one is off by "
          "more than a mark of the tape, STOP: correct the frame's file and make this packet again.",
          std::abs(ahead) < same_place
              ? std::string("the mains' front ends")
              : fmt::format("the front datum, 0, which is {} {} the mains' front ends",
                            figures.tape_length(std::abs(ahead)), ahead > 0 ? "behind" : "ahead of")),
      fmt::format("Square: tape A to D and B to C, between the {}s at the mains' ends. Both are {} when "
                  "the frame is square.",
                  back_word(in.bed, in.bed.item({Kind::main, Side::left})), figures.running_words(diagonal)),
      "Twist: lay a straight bar across both mains' tops at the front, the middle and the rear, and sight "
      "from "
      "one over the others. They must lie in one plane.",
      "Welds: look along every weld of tabs, cross members, tongue and coupler. A crack, an undercut or a "
      "tab "
      "knocked out of square is for a qualified welder before anything is bolted on.",
      "L is the left, facing forward, R the right. Figures run from the front datum, 0, to a cross member's "
      "web back (toes forward), the tongue's front cut, the middle of the tongue plate, the axle.",
  };
}

std::vector<std::string> notes_of(const SheetInput& in, Mm diagonal) {
  if (stands(in.job.frame)) return survey_notes(in, diagonal);
  const double angle = in.job.frame.tongue.angle / degree;
  const int main = in.bed.item({Kind::main, Side::left});
  const bool tubes = is_closed(std::get<Member>(in.bed.part_of(main).form).section);
  return {
      fmt::format("Square: tape A to D and B to C, between the marked points: the {}s at the mains' "
                  "ends. Both are {}. They must agree before the second tack and again before welding out.",
                  back_word(in.bed, main), in.figures().running_words(diagonal)),
      "L is the left, facing forward, R the right. Figures run from the front datum, 0, to a cross member's "
      "web back (toes forward), the tongue's front cut, the middle of the tongue plate, the axle. Ahead of "
      "the datum they are minus.",
      fmt::format(
          "Tongue: webs out, toes to the centre line, L and R mirror images. Both ends are sawn {:g} degrees "
          "off square, through the flanges, parallel, so that they lie square across the bed.",
          angle),
      std::string(tubes ? "Mains: drain holes down, tops level and in one plane. "
                        : "Mains: webs out, toes in, tops level and in one plane. ") +
          "No camber: weld from the middle outward, side to side in turn, and let each run cool." +
          (tubes ? " A tube is never welded shut: leave its drain holes open." : ""),
      "HOLD for the makers' sheets: coupler on the tongue's nose, axle hangers under the mains, safety "
      "chains, lamps. Have them at the bench before welding; the axle is square when both its ends tape the "
      "same from the coupler's middle.",
      "Weld symbols: size at the left, length of one run at the right; below the line the arrow's side, "
      "above it the other side. Each stands for all joints its tail counts. Dashed: under what is above it.",
  };
}

// What of the item the tape is read at; nothing for what has no place of its own. Jack
// plates are read in pairs.
std::string place_of(const Bed& bed, const Identity& id) {
  switch (id.kind) {
    case Kind::cross_member:
    case Kind::front_member:
    case Kind::rear_member:
      return name(id) + (is_closed(std::get<Member>(bed.part_of(bed.item(id)).form).section) ? ", rear side"
                                                                                             : ", web back");
    case Kind::tongue_plate:
    case Kind::axle:
      return name(id) + ", middle";
    case Kind::jack_plate:
      if (id.side == Side::right) return "";
      return fmt::format("jacks {} and {}, middle of the plate", mark(id),
                         mark({id.kind, Side::right, id.number}));
    default:
      return "";
  }
}

// Every place along the mains once more, by name: what the tape is read at.
Table2d place_table(const SheetInput& in) {
  const Figures figures = in.figures();
  Table2d table{table_row({{"PLACE"}, figures.heads("FROM THE DATUM")}), {}};
  std::vector<std::pair<Mm, std::string>> places;
  for (const Item& item : in.bed.items) {
    if (!item.shown) continue;
    const std::string place = place_of(in.bed, item.id);
    if (!place.empty()) places.emplace_back(item.placement.origin.x, place);
  }
  std::stable_sort(places.begin(), places.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  for (const auto& [x, place] : places) table.rows.push_back(table_row({{place}, figures.cells(x)}));
  return table;
}

// Top and underside of each kind of part, from the tops of the mains.
Table2d height_table(const SheetInput& in) {
  const Figures figures = in.figures();
  Table2d table{{fmt::format("PART, {}", figures.unit_head()), "TOP", "UNDERSIDE"}, {}};
  const auto figure = [&](Mm z) {
    return std::abs(z) < same_place ? std::string("0") : figures.tape_figure(z);
  };
  std::vector<int> seen;
  for (const int i : frame_items(in.bed)) {
    const int part = in.bed.items[i].part;
    if (std::find(seen.begin(), seen.end(), part) != seen.end()) continue;
    seen.push_back(part);
    const Box3 box = bounds(in.bed, i);
    table.rows.push_back(
        {name(in.bed.parts[static_cast<std::size_t>(part)]), figure(box.high.z), figure(box.low.z)});
  }
  return table;
}

// What sets the tongue: its web's outer face from the centre line.
Table2d tongue_table(const SheetInput& in) {
  const Figures figures = in.figures();
  const TongueEnds t = tongue_of(in.bed);
  Table2d table{
      table_row({{"TONGUE, web's outer face"}, figures.narrow_heads("ALONG"), figures.heads("ACROSS")}), {}};
  const auto row = [&](const char* what, Mm x) {
    const Mm y = t.web_front + (x - t.front) / (t.rear - t.front) * (t.web_rear - t.web_front);
    table.rows.push_back(table_row({{what}, figures.narrow_cells(x), figures.cells(y)}));
  };
  const Mm front = bounds(in.bed, in.bed.item({Kind::main, Side::left})).low.x;
  row("front cut", t.front);
  row("at the mains' front ends", front);
  row("rear end", t.rear);
  return table;
}

// The frame's own steel: what to have on the floor before the first tack.
Table2d steel_table(const SheetInput& in) {
  Table2d table{{"PART", "COUNT", "STEEL", "SIZE"}, {}};
  std::vector<int> parts;
  for (const int i : frame_items(in.bed)) parts.push_back(in.bed.items[i].part);
  std::sort(parts.begin(), parts.end());
  parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
  for (const int p : parts) {
    const Part& part = in.bed.parts[static_cast<std::size_t>(p)];
    const auto [form, size] = part_form(part, in.figures());
    table.rows.push_back({name(part), fmt::format("{}", in.bed.count(p)), form, size});
  }
  return table;
}

bool fits(const List2d& drawn, const Box2& space) {
  const Box2 box = bounds(drawn);
  return box.width() <= space.width() && box.height() <= space.height();
}

}  // namespace

std::vector<Sheet> frame_sheets(const SheetInput& in) {
  const Box2 space = drawing_space(paper_of(in.job.order.order), in.draft);
  // Figures and symbols reach past the plan; smaller until all of it fits.
  int scale = 1;
  Mm diagonal = 0;
  List2d drawn;
  do {
    FramePlan plan(in, space, scale);
    drawn = plan.drawn();
    diagonal = plan.diagonal();
    scale = plan.scale();
  } while (!fits(drawn, space) && ++scale < most_reduction);
  Sheet form;
  const bool standing = stands(in.job.frame);
  form.title = standing ? "FRAME THAT STANDS" : "FRAME WELDMENT";
  form.file = "frame_weldment";
  form.scale = fmt::format("1:{}", scale);
  form.material = in.job.frame.grade;
  Flow flow(form, space);
  flow.picture(drawn);
  flow.below();
  flow.notes("NOTES", notes_of(in, diagonal), bench_text, 150);
  flow.table("PLACES ALONG THE MAINS", place_table(in), bench_text);
  flow.table("HEIGHTS from the tops of the mains", height_table(in), bench_text);
  flow.below();
  flow.table("TONGUE", tongue_table(in), bench_text);
  if (!standing) flow.table("STEEL OF THE FRAME", steel_table(in), bench_text);
  return std::move(flow).sheets();
}

}  // namespace bedwright
