// Works out spacers, string line and check strip from the Bed.
#include "sheets/aids/aids.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

#include "units/steps.h"

namespace bedwright {
namespace {

constexpr Mm jaw = 40;         // room for a bar clamp's jaw and bar outside and above a rail
constexpr Mm off_others = 3;   // what is set by hand keeps this far from what is there
constexpr Mm line_clear = 10;  // string from the nearest tab's edge, at least
constexpr Mm furthest = 400;   // a spacer moves no further than this for room

Mm rounded_up(Mm value, Mm step) { return std::ceil(value / step - 1e-9) * step; }

Box3 rail_box(const SheetInput& in, Side side, int section) {
  return bounds(in.bed, in.bed.item({Kind::rail, side, section}));
}

const Member& rail_of(const SheetInput& in, Side side) {
  return std::get<Member>(in.bed.part_of(in.bed.item({Kind::rail, side, 1})).form);
}

// The largest usual square tube lower than the standing leg's inner face.
Mm tube_side(const Figures& figures, Mm room) {
  const std::vector<Mm> sizes = figures.usual_tubes();
  for (const Mm size : sizes)
    if (size <= room) return size;
  return sizes.back();
}

// Boxes of what stands on the bed when the track is bolted, rails left out.
std::vector<Box3> in_the_way(const Bed& bed) {
  std::vector<Box3> all;
  for (std::size_t i = 0; i < bed.items.size(); ++i) {
    const Item& item = bed.items[i];
    if (item.shown && !item.moving && item.id.kind != Kind::rail)
      all.push_back(bounds(bed, static_cast<int>(i)));
  }
  return all;
}

std::vector<Mm> wanted(const SheetInput& in, const Box3& rail) {
  Mm first = rail.low.x + 6 * inch, last = rail.high.x - 6 * inch;
  std::vector<Mm> bolts;
  for (const Bolt& b : in.bed.bolts)
    if (b.id.kind == Kind::track_bolt && b.seat.x > rail.low.x && b.seat.x < rail.high.x)
      bolts.push_back(b.seat.x);
  if (bolts.size() > 1) {
    const auto [low, high] = std::minmax_element(bolts.begin(), bolts.end());
    if (*high - *low > 2 * spacers_most_apart / 4) first = *low, last = *high;
  }
  const int count = std::max(2, static_cast<int>(std::ceil((last - first) / spacers_most_apart - 1e-9)) + 1);
  std::vector<Mm> places;
  for (int i = 0; i < count; ++i) places.push_back(first + (last - first) * i / (count - 1));
  return places;
}

}  // namespace

GaugeSpacer gauge_spacer(const SheetInput& in) {
  const Section& rail = rail_of(in, Side::right).section;
  const Box3 r = rail_box(in, Side::right, 1), l = rail_box(in, Side::left, 1);
  GaugeSpacer s;
  s.left = l.low.y + rail.web;
  s.right = r.high.y - rail.web;
  s.length = s.right - s.left;
  s.bottom = r.low.z + rail.web;
  s.side = tube_side(in.figures(), rail.depth - rail.web);
  const Mm step = in.figures().shop_step();
  s.corner = rounded_up(rail.root_radius + step, step);
  s.tolerance = in.job.order.tolerances.gauge / 2;
  return s;
}

std::vector<SpacerPlace> spacer_places(const SheetInput& in) {
  const GaugeSpacer spacer = gauge_spacer(in);
  const std::vector<Box3> boxes = in_the_way(in.bed);
  const Mm step = in.figures().setting_step(), half = spacer.side / 2 + off_others;
  std::vector<SpacerPlace> all;
  for (int section = 1; section <= in.bed.track.sections; ++section) {
    const Box3 rail = rail_box(in, Side::right, section);
    const auto clear = [&](Mm x) {
      if (x - half < rail.low.x || x + half > rail.high.x) return false;
      Box3 room;
      room.add({x - half, spacer.left - jaw, spacer.bottom});
      room.add({x + half, spacer.right + jaw, rail.high.z + jaw});
      return std::none_of(boxes.begin(), boxes.end(),
                          [&](const Box3& b) { return room.overlaps(b, -same_place); }) &&
             std::none_of(all.begin(), all.end(),
                          [&](const SpacerPlace& p) { return std::abs(p.x - x) < 2 * half; });
    };
    for (const Mm place : wanted(in, rail)) {
      const Mm start = std::round(place / step) * step;
      for (int k = 0; k * step / 2 <= furthest; ++k) {
        const Mm x = start + steps_out(k) * step;
        if (!clear(x)) continue;
        all.push_back({section, x});
        break;
      }
    }
  }
  std::sort(all.begin(), all.end(), [](const SpacerPlace& a, const SpacerPlace& b) { return a.x < b.x; });
  return all;
}

Table2d spacer_table(const SheetInput& in) {
  const Figures figures = in.figures();
  Table2d table{table_row({{"SPACER", "SECTION"}, figures.heads("FROM FRONT"), {"LIES"}}), {}};
  const std::vector<BunkPlace>& bunks = in.bed.track.bunks;
  int number = 0;
  for (const SpacerPlace& p : spacer_places(in)) {
    const auto after =
        std::count_if(bunks.begin(), bunks.end(), [&](const BunkPlace& b) { return b.x <= p.x; });
    const std::string lies = after == 0 ? "ahead of bunk 1"
                             : after == in.bed.track.bunk_count()
                                 ? fmt::format("behind bunk {}", after)
                                 : fmt::format("bunk {} to {}", after, after + 1);
    table.rows.push_back(table_row(
        {{fmt::format("S{}", ++number), fmt::format("{}", p.section)}, figures.cells(p.x), {lies}}));
  }
  return table;
}

StringLine string_line(const SheetInput& in) {
  const Mm web = in.job.frame.main.spacing / 2;
  Mm outermost = web;
  for (const int tab : in.bed.items_of(Kind::tab)) {
    const Box3 box = bounds(in.bed, tab);
    outermost = std::max({outermost, box.high.y, -box.low.y});
  }
  StringLine s;
  s.block = rounded_up(outermost - web + line_clear, in.figures().setting_step());
  s.along = web + s.block;
  const Tolerances& t = in.job.order.tolerances;
  s.limit = stands(in.job.frame) ? t.existing_tab : t.weld_placement;
  return s;
}

std::vector<TabReading> tab_readings(const SheetInput& in) {
  const StringLine line = string_line(in);
  std::vector<TabReading> all;
  for (const int tab : in.bed.items_of(Kind::tab)) {
    const HoleInWorld hole = hole_in_world(in.bed, ply_through(in.bed, tab, 0));
    const Mm to_middle = line.along - std::abs(hole.centre.y), to_edge = to_middle - hole.hole.diameter / 2;
    const auto alike = std::find_if(all.begin(), all.end(), [&](const TabReading& r) {
      return std::abs(r.to_middle - to_middle) < same_place;
    });
    const Identity& id = in.bed.items[tab].id;
    if (alike == all.end()) {
      all.push_back({{id}, to_middle, to_edge});
    } else {
      alike->tabs.push_back(id);
    }
  }
  return all;
}

namespace {

// The track bolts' holes of one rail, from its front end.
std::vector<Mm> strip_holes(const SheetInput& in, int rail) {
  const Member& member = std::get<Member>(in.bed.part_of(rail).form);
  const Mm front = bounds(in.bed, rail).low.x;
  std::vector<Mm> all;
  for (std::size_t i = 0; i < member.holes.size(); ++i) {
    if (member.holes[i].hole.purpose != Kind::track_bolt) continue;
    all.push_back(hole_in_world(in.bed, ply_through(in.bed, rail, static_cast<int>(i))).centre.x - front);
  }
  std::sort(all.begin(), all.end());
  return all;
}

bool fits(const CheckStrip& strip, Mm length, const std::vector<Mm>& holes) {
  const auto same = [](Mm a, Mm b) { return std::abs(a - b) < 2 * same_place; };
  return same(strip.length, length) &&
         std::equal(strip.holes.begin(), strip.holes.end(), holes.begin(), holes.end(), same);
}

}  // namespace

std::vector<CheckStrip> check_strips(const SheetInput& in) {
  std::vector<CheckStrip> strips;
  for (int s = 1; s <= in.bed.track.sections; ++s)
    for (const Side side : both_sides) {
      const Identity id{Kind::rail, side, s};
      const int rail = in.bed.item(id);
      const Mm length = std::get<Member>(in.bed.part_of(rail).form).length;
      std::vector<Mm> holes = strip_holes(in, rail);
      const auto at = std::find_if(strips.begin(), strips.end(),
                                   [&](const CheckStrip& strip) { return fits(strip, length, holes); });
      if (at == strips.end())
        strips.push_back({length, std::move(holes), {id}});
      else
        at->rails.push_back(id);
    }
  return strips;
}

}  // namespace bedwright
