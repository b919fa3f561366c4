// Outlines of items seen from above, and the reduction that fits the paper.
#include "sheets/plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

#include "sheets/drill/drill_strip.h"

namespace bedwright {

int reduction(Mm length, Mm space) {
  for (int tens = 1; tens <= 1000; tens *= 10)
    for (const int step : {10, 12, 15, 20, 25, 30, 40, 50, 60, 80}) {
      const int n = step * tens / 10;
      if (step * tens % 10 == 0 && length <= space * n) return n;
    }
  throw std::invalid_argument("a picture fits at no reduction");
}

void tag_row(List2d& list, std::vector<Tag> tags, Mm edge, Mm y, Mm h, int layer) {
  const Pens pens(list);
  std::sort(tags.begin(), tags.end(), [](const Tag& a, const Tag& b) { return a.at < b.at; });
  std::vector<Mm> places;
  Mm widest = 0;
  for (const Tag& t : tags) {
    places.push_back(t.at);
    widest = std::max(widest, text_width(t.label, h));
  }
  places = spread(places, widest + 0.4 * h);
  const bool up = y > edge;
  for (std::size_t i = 0; i < tags.size(); ++i) {
    list.add(Line{pens.thin, {tags[i].at, edge}, {places[i], up ? y - 0.4 * h : y + 1.3 * h}});
    list.add(Text{layer, {places[i], y}, h, tags[i].label, Across::centre, Up::baseline, 0});
  }
}

int thin_out(std::vector<Tag>& tags, Mm height, Mm room) {
  Mm widest = 0;
  for (const Tag& t : tags) widest = std::max(widest, text_width(t.label, height) + 0.4 * height);
  const auto most = static_cast<std::size_t>(std::max(1.0, room / std::max(widest, 1e-3)));
  int n = 1;
  for (const int next : {2, 5, 10, 20, 50, 100})
    if (tags.size() / static_cast<std::size_t>(n) + 2 > most && tags.size() > most) n = next;
  std::vector<Tag> left;
  for (std::size_t i = 0; i < tags.size(); ++i)
    if (i == 0 || i + 1 == tags.size() || (i + 1) % static_cast<std::size_t>(n) == 0) left.push_back(tags[i]);
  tags = std::move(left);
  return n;
}

std::string every_words(int n) { return n == 1 ? "" : fmt::format(", every {}{}", n, n == 2 ? "nd" : "th"); }

std::vector<Vec2> footprint(const Bed& bed, int item) {
  const Placement& at = bed.items[item].placement;
  std::vector<Vec2> out;
  const auto put = [&](Vec3 local) {
    const Vec3 p = at.point(local);
    out.push_back({p.x, p.y});
  };
  const Form& form = bed.part_of(item).form;
  if (const Plate* p = std::get_if<Plate>(&form); p && std::abs(at.z_axis().z) > 0.99) {
    for (const Vec2 v : flattened(p->outline, 0.2)) put({v.x, v.y, 0});
  } else if (const Member* m = std::get_if<Member>(&form); m && std::abs(at.z_axis().z) > 0.99) {
    for (const Mm y : {0.0, m->section.flange}) {
      const Mm start = y * std::tan(m->start_mitre), end = m->length + y * std::tan(m->end_mitre);
      put({y == 0 ? start : end, y, 0});
      put({y == 0 ? end : start, y, 0});
    }
  } else {
    const Box3 box = bounds(bed, item);
    out = {
        {box.low.x, box.low.y}, {box.high.x, box.low.y}, {box.high.x, box.high.y}, {box.low.x, box.high.y}};
  }
  return out;
}

namespace {

double twice_area(const std::vector<Vec2>& p) {
  double twice = 0;
  for (std::size_t i = 0; i < p.size(); ++i) twice += cross(p[i], p[(i + 1) % p.size()]);
  return twice;
}

}  // namespace

void turn_counter_clockwise(std::vector<Vec2>& outline) {
  if (twice_area(outline) < 0) std::reverse(outline.begin(), outline.end());
}

// One side of `b` after another cuts off what of `a` lies outside it.
std::vector<Vec2> common(std::vector<Vec2> a, std::vector<Vec2> b) {
  turn_counter_clockwise(b);
  for (std::size_t k = 0; k < b.size() && !a.empty(); ++k) {
    const Vec2 from = b[k], side = b[(k + 1) % b.size()] - from;
    std::vector<Vec2> kept;
    for (std::size_t i = 0; i < a.size(); ++i) {
      const Vec2 p = a[i], q = a[(i + 1) % a.size()];
      const double at_p = cross(side, p - from), at_q = cross(side, q - from);
      if (at_p >= 0) kept.push_back(p);
      if ((at_p > 0 && at_q < 0) || (at_p < 0 && at_q > 0))
        kept.push_back(p + (at_p / (at_p - at_q)) * (q - p));
    }
    a = std::move(kept);
  }
  if (std::abs(twice_area(a)) < same_place) a.clear();
  turn_counter_clockwise(a);
  return a;
}

}  // namespace bedwright
