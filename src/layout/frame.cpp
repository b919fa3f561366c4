// The made frame: mains, cross members, front and rear members, tongue and
// corner gussets.
#include <fmt/format.h>

#include <cmath>

#include "bed/tongue_lap.h"
#include "layout/builder.h"

namespace bedwright {
namespace {

// How far a plate's edge is held in from the channel's under or over it, so that a
// fillet has a ledge to lie on.
constexpr Mm plate_ledge = 6;
// Room kept between a cross member and a jack's bolts for a wrench.
constexpr Mm cross_to_jack = inch;

Mm on_tape(Mm x, Mm mark) { return tidy(std::round(x / mark) * mark); }

// A length that goes between two things is cut to the mark below, never above: what
// is left is gap, half at each end. A hair added, for a length that is on the mark.
Mm fit_between(Mm x, Mm mark) { return tidy(std::floor(x / mark + 1e-6) * mark); }

// Flat height of a channel's web between its fillets: what a smaller channel
// has to fit into. The fillet's tangent point lies R tan(turn / 2) from the
// corner, the corner where the tapered inner face meets the web.
Mm clear_depth(const Section& s) {
  const Mm at_web = s.flange_thickness + channel_flange_slope * (s.flange - s.web) / 2;
  const Radians turn = 90 * degree - std::atan(channel_flange_slope);
  return s.depth - 2 * (at_web + s.root_radius * std::tan(turn / 2));
}

// Of a tapered flange at its free edge.
Mm toe_thickness(const Section& s) { return s.flange_thickness - channel_flange_slope * (s.flange - s.web) / 2; }

// The holes of a main: jack bolts, in member coordinates (from the front end).
// They are drilled from a sheet in marks of the tape, so that is where they are:
// the rounding is a real offset from the jack's own holes, and the fit counts it.
std::vector<FaceHole> main_holes(const Builder& b) {
  const FrameJack& j = b.frame.jack;
  const Mm mark = b.order.order.tape, half = b.main_section().depth / 2;
  const Mm up = half - on_tape(half - j.bolt_z / 2, mark);
  std::vector<FaceHole> holes;
  for (Mm jack : b.order.jacks)
    for (double dx : {-0.5, 0.5})
      for (double dz : {-1.0, 1.0})
        holes.push_back({Face::web, {{on_tape(jack - b.main_start() + dx * j.bolt_x, mark), tidy(dz * up)},
                                     j.hole.diameter, j.hole.slot.value_or(j.hole.diameter), 0, Process::drilled, "jack bolt"}});
  std::sort(holes.begin(), holes.end(), [](const FaceHole& p, const FaceHole& q) {
    return std::pair(p.hole.at.x, p.hole.at.y) < std::pair(q.hole.at.x, q.hole.at.y);
  });
  return holes;
}

// The left and right mains are the same part turned over, because every hole
// pattern in their webs is even about mid depth.
void lay_mains(Builder& b) {
  const Section& s = b.main_section();
  for (Side side : both_sides) {
    const Member main{s, tidy(b.main_length()), 0, 0, main_holes(b)};
    const int part = b.add("main", b.frame.grade, Origin::made, main);
    b.place(part, fmt::format("main {}", letter(side)),
            {{b.main_start(), b.web_back(side), -s.depth / 2}, {1, 0, 0}, {0, -outward(side), 0}});
  }
}

bool near_a_jack(const Builder& b, Mm x, Mm flange) {
  const Mm reach = b.frame.jack.bolt_x / 2 + cross_to_jack;
  for (Mm jack : b.order.jacks)
    if (x > jack - reach && x - flange < jack + reach) return true;
  return false;
}

// Even spacing, on the tape; one that falls at a jack moves to the nearest inch
// that leaves its bolts free.
std::vector<Mm> cross_positions(const Builder& b, const Section& s) {
  std::vector<Mm> places = evenly(b.main_start(), b.main_end(), b.frame.cross_member.max_spacing);
  places.erase(places.begin());
  places.pop_back();
  for (Mm& x : places) {
    const Mm wanted = on_tape(x, b.order.order.tape);
    x = wanted;
    for (int step = 1; near_a_jack(b, x, s.flange) && step <= 24; ++step)
      x = wanted + (step % 2 ? -1 : 1) * ((step + 1) / 2) * inch;
  }
  return places;
}

void lay_cross_members(Builder& b) {
  const Section& main = b.main_section();
  const Section& s = b.section(b.frame.cross_member.section);
  if (s.depth > clear_depth(main)) {
    b.problem("frame.cross_member.section",
              fmt::format("{} is {:.1f} mm deep and does not fit between the flanges of {}, which leave {:.1f} mm", s.name, s.depth, main.name, clear_depth(main)),
              "name a shallower channel, or a deeper main");
    return;
  }
  const Mm length = fit_between(b.frame.main.spacing - 2 * main.web, b.order.order.tape);
  const int part = b.add("cross member", b.frame.grade, Origin::made, Member{s, length, 0, 0, {}});
  int number = 0;
  for (Mm x : cross_positions(b, s)) {
    const int item = b.place(part, fmt::format("cross member {}", ++number),
                             {{x, -length / 2, -main.depth / 2}, {0, 1, 0}, {-1, 0, 0}});
    for (Side side : both_sides)
      b.weld(item, b.bed.find_item(fmt::format("main {}", letter(side))), b.frame.welds.leg, 2 * (s.depth - 2 * s.flange_thickness),
             "both sides of the web",
             {std::min(s.web, main.web), 0});
  }
}

// Across the mains' ends, web against them, toes away from the bed. Front and
// rear are one part when they are of one section.
void lay_end_members(Builder& b) {
  const Mm depth = b.main_section().depth;
  const Mm half = b.frame.main.spacing / 2;
  const bool alike = b.frame.front_member.section.text == b.frame.rear_member.section.text;
  const auto lay = [&](const char* name, const Name& section, Placement at) {
    const Section& s = b.section(section);
    const int part = b.add(alike ? "end member" : name, b.frame.grade, Origin::made, Member{s, tidy(2 * half), 0, 0, {}});
    const int item = b.place(part, name, at);
    // The outside faces are flush, so only the inside has a corner for a fillet.
    const Section& main = b.main_section();
    const Mm inside = main.depth - 2 * main.flange_thickness + 2 * (main.flange - main.web);
    for (Side side : both_sides)
      b.weld(item, b.bed.find_item(fmt::format("main {}", letter(side))), b.frame.welds.leg, inside,
             "inside the main's end; bevel and fill the flush outside", {std::min(s.web, main.web), 0});
  };
  lay("front member", b.frame.front_member.section, {{b.main_start(), -half, -depth / 2}, {0, 1, 0}, {-1, 0, 0}});
  lay("rear member", b.frame.rear_member.section, {{b.main_end(), half, -depth / 2}, {0, -1, 0}, {1, 0, 0}});
}

// Each channel to the main it lies under, and to the front member, which it crosses
// askew.
void lay_tongue_welds(Builder& b, int item, Side side) {
  const FrameTongue& t = b.frame.tongue;
  const Section &s = b.section(t.section), &main = b.main_section(), &nose = b.section(b.frame.front_member.section);
  const Mm leg = b.frame.welds.leg, across = 1 / std::cos(t.angle);
  const TongueLap lap = tongue_lap({t.length, t.back, t.angle}, s, main, b.main_start(), b.main_end(), b.frame.main.spacing);
  const std::vector<LapRun> runs = lap_runs(lap, least_fillet_legs * leg);
  const int over = b.bed.find_item(fmt::format("main {}", letter(side)));
  const Builder::WeldSteel steel{std::min(s.flange_thickness, main.flange_thickness), toe_thickness(s)};
  for (const LapRun& run : runs) b.weld(item, over, leg, run.length(), run.what + ", under the main", steel);
  // Wanted all the same, so that WELD-CONTACT stops it.
  if (runs.empty()) b.weld(item, over, leg, 0, "under the main", steel);
  b.weld(item, b.bed.find_item("front member"), leg, 2 * nose.flange * across, "both edges of the flange",
         {std::min(s.flange_thickness, nose.flange_thickness), toe_thickness(s)});
}

// Two channels under the frame, toes inward, both ends cut square to the bed.
// Left and right are one part: a channel is even about mid depth.
void lay_tongue(Builder& b) {
  const FrameTongue& t = b.frame.tongue;
  const Section& s = b.section(t.section);
  const double cosine = std::cos(t.angle), sine = std::sin(t.angle);
  const Mm front = b.main_start() - t.length;
  const Mm web_at_front = s.flange / cosine + tongue_toe_gap;
  const Mm length = tidy((t.length + t.back) / cosine);
  const int part = b.add("tongue", b.frame.grade, Origin::made, Member{s, length, -t.angle, -t.angle, {}});
  for (Side side : both_sides) {
    const double out = outward(side);
    const int item = b.place(part, fmt::format("tongue {}", letter(side)),
                             {{front, out * web_at_front, -b.main_section().depth - s.depth / 2},
                              {cosine, out * sine, 0}, {sine, -out * cosine, 0}});
    lay_tongue_welds(b, item, side);
  }
}

// Three bolt holes and the tube's, on a plate across the tongue.
void lay_tongue_plate(Builder& b) {
  const FrameTongue& t = b.frame.tongue;
  const FrameTongueJack& j = b.frame.tongue_jack;
  const Section& s = b.section(t.section);
  const double slope = std::tan(t.angle);
  const Mm web_at_front = s.flange / std::cos(t.angle) + tongue_toe_gap;
  const auto half_width = [&](Mm behind) { return web_at_front + behind * slope - plate_ledge; };
  const Mm near = half_width(j.behind_front - j.plate_length / 2), far = half_width(j.behind_front + j.plate_length / 2);
  if (near <= j.centre_hole) {
    b.problem("frame.tongue_jack.behind_front", "the tongue is too narrow there for the jack's plate", "put the jack further back");
    return;
  }
  Plate plate;
  plate.thickness = j.plate_thickness;
  const Mm half = j.plate_length / 2;
  plate.outline = polygon({{-half, tidy(-near)}, {half, tidy(-far)}, {half, tidy(far)}, {-half, tidy(near)}});
  plate.holes.push_back({{0, 0}, j.centre_hole, j.centre_hole, 0, Process::cut, "jack tube"});
  for (double turn : {60.0, 180.0, 300.0}) {
    const Vec2 at{tidy(j.bolt_circle / 2 * std::cos(turn * degree)), tidy(j.bolt_circle / 2 * std::sin(turn * degree))};
    plate.holes.push_back({at, j.hole.diameter, j.hole.slot.value_or(j.hole.diameter), 0, Process::cut, "tongue jack bolt"});
  }
  const int part = b.add("tongue plate", b.frame.grade, Origin::made, plate);
  const int item = b.place(part, "tongue plate", {{b.main_start() - t.length + j.behind_front, 0, -b.main_section().depth}, {1, 0, 0}, {0, 1, 0}});
  for (Side side : both_sides)
    b.weld(item, b.bed.find_item(fmt::format("tongue {}", letter(side))), b.frame.welds.leg, j.plate_length / std::cos(t.angle), "outer edge",
           {std::min(j.plate_thickness, s.flange_thickness), j.plate_thickness});
}

// A triangle under each rear corner, sharp ends cut off. The front corners have
// the tongue, which braces them already.
void lay_corner_gussets(Builder& b) {
  const FrameCornerGusset& g = b.frame.corner_gusset;
  Plate plate;
  plate.thickness = g.thickness;
  plate.outline = g.corner_cut > same_place
                      ? polygon({{0, 0}, {g.leg, 0}, {g.leg, g.corner_cut}, {g.corner_cut, g.leg}, {0, g.leg}})
                      : polygon({{0, 0}, {g.leg, 0}, {0, g.leg}});
  const int part = b.add("corner gusset", b.frame.grade, Origin::made, plate);
  // In from the main's web back and from the rear member's toes, so that a fillet
  // has a ledge to lie on.
  const Mm flange = b.section(b.frame.rear_member.section).flange;
  const Mm x = b.main_end() + flange - plate_ledge;
  const Mm z = -b.main_section().depth - g.thickness;
  const int right = b.place(part, "corner gusset R", {{x, b.web_back(Side::right) - plate_ledge, z}, {-1, 0, 0}, {0, -1, 0}});
  const int left = b.place(part, "corner gusset L", {{x, b.web_back(Side::left) + plate_ledge, z}, {0, 1, 0}, {-1, 0, 0}});
  for (int item : {left, right}) {
    const auto steel = [&](const Section& s) { return Builder::WeldSteel{std::min(g.thickness, s.flange_thickness), g.thickness}; };
    b.weld(item, b.bed.find_item(item == left ? "main L" : "main R"), b.frame.welds.leg, std::max(0.0, g.leg + plate_ledge - flange), "edge under the main",
           steel(b.main_section()));
    b.weld(item, b.bed.find_item("rear member"), b.frame.welds.leg, g.leg, "edge under the rear member",
           steel(b.section(b.frame.rear_member.section)));
  }
}

}  // namespace

void lay_frame(Builder& b) {
  lay_mains(b);
  lay_cross_members(b);
  lay_end_members(b);
  lay_tongue(b);
  lay_tongue_plate(b);
  lay_corner_gussets(b);
}

}  // namespace bedwright
