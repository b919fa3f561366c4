// Draws spans, sections across the bed and leaders.
#include "sheets/span.h"

#include <algorithm>

namespace bedwright {
namespace {

constexpr Mm arrow_length = 2.5, arrow_half = 0.5, beyond = 1.5, off = 0.8;

void arrowhead(List2d& list, int pen, Vec2 tip, double way) {
  for (const double side : {-1.0, 1.0})
    list.add(Line{pen, tip, {tip.x - way * arrow_length, tip.y + side * arrow_half}});
}

}  // namespace

void level_span(List2d& list, Mm from, Mm to, Mm edge, Mm y, const std::string& label, Mm h) {
  const Pens pens(list);
  const double away = y < edge ? -1 : 1;
  for (const Mm x : {from, to})
    list.add(Line{pens.dimension, {x, edge + away * off}, {x, y + away * beyond}});
  list.add(Line{pens.dimension, {from, y}, {to, y}});
  arrowhead(list, pens.dimension, {from, y}, -1);
  arrowhead(list, pens.dimension, {to, y}, 1);
  const bool fits = text_width(label, h) + 2 < to - from;
  if (fits) {
    list.add(Text{pens.text, {(from + to) / 2, y + 0.5 * h}, h, label, Across::centre, Up::baseline, 0});
  } else {
    list.add(Text{pens.text, {to + 2, y - h / 2}, h, label, Across::left, Up::baseline, 0});
  }
}

namespace {

// An outline of a member's profile where the item lies along the bed, looking along it.
Outline as_it_lies(const Placement& place, const Outline& given) {
  // A profile turned over keeps its shape and loses its sense.
  const double sense = place.y_axis.y * place.z_axis().z < 0 ? -1 : 1;
  Outline outline;
  for (const Vertex& v : given) {
    const Vec3 p = place.point({0, v.at.x, v.at.y});
    outline.push_back({{p.y, p.z}, sense * v.bulge});
  }
  return outline;
}

}  // namespace

std::vector<Outline> cut_across(const Bed& bed, int item) {
  const Placement& place = bed.items[item].placement;
  const Member* m = std::get_if<Member>(&bed.part_of(item).form);
  if (!m || std::abs(place.x_axis.x) < 0.99) {
    const Box3 box = bounds(bed, item);
    return {rectangle({box.low.y, box.low.z}, {box.high.y, box.high.z})};
  }
  std::vector<Outline> all{as_it_lies(place, profile(m->section))};
  if (const auto inside = hollow(m->section)) all.push_back(as_it_lies(place, *inside));
  return all;
}

Outline shrunk(Outline outline, double scale) {
  for (Vertex& v : outline) v.at = (1 / scale) * v.at;
  return outline;
}

void leader(List2d& list, Vec2 to, Vec2 at, const std::string& label, Mm h, bool left) {
  const Pens pens(list);
  const double way = left ? -1 : 1;
  list.add(Line{pens.thin, to, at});
  list.add(Text{pens.text,
                {at.x + way * 1.2, at.y - h / 2},
                h,
                label,
                left ? Across::right : Across::left,
                Up::baseline,
                0});
}

}  // namespace bedwright
