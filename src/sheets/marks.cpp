// Draws dimensions and weld symbols, and spreads labels that would meet.
#include "sheets/marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <numbers>

#include "sheets/drill/drill_strip.h"

namespace bedwright {
namespace {

constexpr double pitch = 1.5;  // from label to label, in text heights

std::vector<Mm> label_places(std::vector<Running>& places, Mm height) {
  std::sort(places.begin(), places.end(), [](const Running& a, const Running& b) { return a.at < b.at; });
  std::vector<Mm> wanted;
  for (const Running& r : places) wanted.push_back(r.at);
  return spread(wanted, pitch * height);
}

// Along x, or with x and y changed over.
void dimension(List2d& list, Mm from, Mm to, Mm edge, Mm at, const std::string& label, Mm h, bool along) {
  const Pens pens(list);
  const auto place = [&](Mm u, Mm v) { return along ? Vec2{u, v} : Vec2{v, u}; };
  const auto line = [&](Vec2 a, Vec2 b) { list.add(Line{pens.dimension, a, b}); };
  const Mm out = at < edge ? -1 : 1;
  for (const Mm u : {from, to}) line(place(u, edge + out * 0.8), place(u, at + out * 1.2));
  line(place(from, at), place(to, at));
  for (const auto& [u, way] : {std::pair(from, 1.0), std::pair(to, -1.0)})
    for (const double side : {-0.6, 0.6}) line(place(u, at), place(u + way * 2.5, at + side));
  // The label reads from below, or from the right; "above" the line is then up or left.
  const Mm above = along ? at + 0.5 * h : at - 0.5 * h;
  const Radians turn = along ? 0 : std::numbers::pi / 2;
  if (text_width(label, h) <= to - from - 2) {
    list.add(Text{pens.text, place((from + to) / 2, above), h, label, Across::centre, Up::baseline, turn});
    return;
  }
  const Mm reach = to + 2 + text_width(label, h);
  line(place(to, at), place(reach, at));
  list.add(Text{pens.text, place(to + 2, above), h, label, Across::left, Up::baseline, turn});
}

}  // namespace

void dimension_along(List2d& list, Mm from, Mm to, Mm edge, Mm at, const std::string& label, Mm height) {
  dimension(list, from, to, edge, at, label, height, true);
}

void dimension_up(List2d& list, Mm from, Mm to, Mm edge, Mm at, const std::string& label, Mm height) {
  dimension(list, from, to, edge, at, label, height, false);
}

Mm running_along(List2d& list, std::vector<Running> places, Mm edge, bool up, Mm h) {
  const Pens pens(list);
  const std::vector<Mm> labels = label_places(places, h);
  const double way = up ? 1 : -1;
  Mm reach = edge;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const Mm bend = edge + way * 2, end = edge + way * 7;
    list.add(Line{pens.dimension, {places[i].at, edge + way * 0.8}, {places[i].at, bend}});
    list.add(Line{pens.dimension, {places[i].at, bend}, {labels[i], end}});
    const Text t{pens.text,           {labels[i] + h / 2, end + way},    h,
                 places[i].label,     up ? Across::left : Across::right, Up::baseline,
                 std::numbers::pi / 2};
    list.add(t);
    const Box2 box = text_box(t);
    reach = up ? std::max(reach, box.high.y) : std::min(reach, box.low.y);
  }
  return reach;
}

Mm running_across(List2d& list, std::vector<Running> places, Mm edge, bool right, Mm h) {
  const Pens pens(list);
  const std::vector<Mm> labels = label_places(places, h);
  const double way = right ? 1 : -1;
  Mm reach = edge;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const Mm bend = edge + way * 2, end = edge + way * 7;
    list.add(Line{pens.dimension, {edge + way * 0.8, places[i].at}, {bend, places[i].at}});
    list.add(Line{pens.dimension, {bend, places[i].at}, {end, labels[i]}});
    const Text t{pens.text,
                 {end + way, labels[i] - h / 2},
                 h,
                 places[i].label,
                 right ? Across::left : Across::right,
                 Up::baseline,
                 0};
    list.add(t);
    const Box2 box = text_box(t);
    reach = right ? std::max(reach, box.high.x) : std::min(reach, box.low.x);
  }
  return reach;
}

Mm weld_symbol_width(const WeldMark& m, Mm h) {
  return 4 * h + text_width(m.size, h) + text_width(m.length, h) +
         (m.tail.empty() ? 0 : 2 * h + text_width(m.tail, h));
}

void weld_symbol(List2d& list, const WeldMark& m, Vec2 tip, Vec2 knee, Mm h) {
  const Pens pens(list);
  const Mm size_at = knee.x + h, leg_at = size_at + text_width(m.size, h) + 0.5 * h;
  const Mm length_at = leg_at + 1.5 * h, end = length_at + text_width(m.length, h) + h;
  const auto line = [&](Vec2 a, Vec2 b) { list.add(Line{pens.weld, a, b}); };
  line(tip, knee);
  const Vec2 back = (1 / norm(knee - tip)) * (knee - tip), square{-back.y, back.x};
  for (const double side : {-1.0, 1.0}) line(tip, tip + 2.5 * back + side * 0.6 * square);
  line(knee, {end, knee.y});
  for (const double side : {-1.0, 1.0}) {
    if (side > 0 && !m.both_sides) continue;
    // The upright leg stands at the left whichever side the weld is on.
    line({leg_at, knee.y}, {leg_at, knee.y + side * h});
    line({leg_at, knee.y + side * h}, {leg_at + h, knee.y});
    const Mm base = side < 0 ? knee.y - 1.4 * h : knee.y + 0.4 * h;
    list.add(Text{pens.text, {size_at, base}, h, m.size, Across::left, Up::baseline, 0});
    if (!m.length.empty())
      list.add(Text{pens.text, {length_at, base}, h, m.length, Across::left, Up::baseline, 0});
  }
  if (m.tail.empty()) return;
  for (const double side : {-1.0, 1.0}) line({end, knee.y}, {end + h, knee.y + side * h});
  list.add(Text{pens.text, {end + 1.5 * h, knee.y - h / 2}, h, m.tail, Across::left, Up::baseline, 0});
}

}  // namespace bedwright
