// Plate parts: each distinct plate the shop cuts, with its sizes and words.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "bed/names.h"
#include "sheets/flow.h"
#include "sheets/marks.h"
#include "sheets/plan.h"
#include "sheets/sheets.h"

namespace bedwright {
namespace {

constexpr Mm view_width = 62, view_height = 70, words_width = 96;

std::string hole_words(const Hole& hole, const Figures& figures) {
  const char* how = hole.process == Process::cut        ? "cut"
                    : hole.process == Process::in_place ? "drill in place, centre mark to set it by"
                                                        : "drill, centre mark only";
  if (!hole.slotted()) return fmt::format("hole {}, {}", figures.size_label(hole.diameter), how);
  return fmt::format("slot {} wide, {} overall, {}", figures.size_label(hole.diameter),
                     figures.size_label(hole.length), how);
}

class PlateView {
 public:
  PlateView(const SheetInput& in, int part)
      : in_(in),
        part_(in.bed.parts[static_cast<std::size_t>(part)]),
        plate_(std::get<Plate>(part_.form)),
        index_(part),
        pens_(list_) {}

  List2d drawn() {
    const Box2 size = bounds(Entity(Closed{0, plate_.outline}));
    low_ = size.low;
    scale_ = std::max(reduction(size.width(), view_width), reduction(size.height(), view_height));
    shape(plate_.outline, pens_.outline);
    for (const Hole& hole : plate_.holes)
      shape(hole_outline(hole.at, hole.diameter, hole.length, hole.angle), pens_.thin);
    dimensions();
    words();
    return std::move(list_);
  }

 private:
  Vec2 at(Vec2 p) const { return (1.0 / scale_) * (p - low_); }

  void shape(Outline outline, int layer) {
    for (Vertex& v : outline) v.at = at(v.at);
    list_.add(Closed{layer, outline});
  }

  // Corners and holes, from the lower left.
  void dimensions() {
    const Figures figures = in_.figures();
    std::vector<Running> along, up;
    const auto put = [&](std::vector<Running>& places, Mm value) {
      const bool known = std::any_of(places.begin(), places.end(), [&](const Running& r) {
        return std::abs(r.at * scale_ - value) < 0.01;
      });
      if (!known) places.push_back({value / scale_, figures.size_label(value)});
    };
    const auto point = [&](Vec2 p) {
      put(along, p.x - low_.x);
      put(up, p.y - low_.y);
    };
    for (const Vertex& v : plate_.outline) point(v.at);
    for (const Hole& hole : plate_.holes) point(hole.at);
    const Box2 box = bounds(list_);
    running_along(list_, along, box.high.y, true, small_text);
    running_across(list_, up, box.high.x, true, small_text);
  }

  // What is welded along which edge, as the frame's welds say.
  std::string edges() const {
    std::set<WeldLine> lines;
    for (const Weld& w : in_.bed.welds)
      if (in_.bed.items[w.a].part == index_ && w.leg > 0) lines.insert(w.line);
    if (lines.empty()) return "Edges as cut; the holes' places matter";
    std::string all;
    for (const WeldLine line : lines) all += (all.empty() ? "" : "; ") + words_of(line);
    return "Edges that matter (welded): " + all;
  }

  void words() {
    const Figures figures = in_.figures();
    std::vector<std::string> lines{fmt::format("{} off, thickness {}, {}, view 1:{}", in_.bed.count(index_),
                                               figures.size_label(plate_.thickness), part_.material, scale_)};
    std::vector<std::string> holes;
    for (const Hole& hole : plate_.holes) holes.push_back(hole_words(hole, figures));
    std::sort(holes.begin(), holes.end());
    for (auto it = holes.begin(); it != holes.end();) {
      const auto end = std::upper_bound(it, holes.end(), *it);
      lines.push_back(fmt::format("{} x {}", end - it, *it));
      it = end;
    }
    lines.push_back(edges());
    lines.push_back(fmt::format("Scribe: {} {} {}. File: cut/{}.dxf", name(part_), in_.job.order.order.number,
                                in_.job.order.order.revision, file_word(name(part_))));
    Mm y = bounds(list_).low.y - 8;
    list_.add(Text{pens_.text, {0, y}, bench_text, name(part_), Across::left, Up::baseline, 0});
    for (const std::string& line : lines)
      for (const std::string& l : wrapped(line, small_text, words_width)) {
        y -= 4.5;
        list_.add(Text{pens_.text, {0, y}, small_text, l, Across::left, Up::baseline, 0});
      }
  }

  const SheetInput& in_;
  const Part& part_;
  const Plate& plate_;
  int index_;
  List2d list_;
  Pens pens_;
  Vec2 low_;
  int scale_ = 1;
};

}  // namespace

std::vector<Sheet> plate_sheets(const SheetInput& in) {
  Sheet form;
  form.title = "PLATE PARTS";
  form.file = "plate_parts";
  form.scale = "AS NOTED";
  form.material = in.job.frame.grade;
  Flow flow(form, drawing_space(paper_of(in.job.order.order), in.draft));
  bool any = false;
  for (std::size_t i = 0; i < in.bed.parts.size(); ++i) {
    const Part& part = in.bed.parts[i];
    if (part.origin != Origin::made || !std::holds_alternative<Plate>(part.form) ||
        in.bed.count(static_cast<int>(i)) == 0)
      continue;
    flow.picture(PlateView(in, static_cast<int>(i)).drawn(), name(part));
    any = true;
  }
  if (!any) return {};
  return std::move(flow).sheets();
}

}  // namespace bedwright
