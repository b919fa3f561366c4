// Bought items on the frame: axles and wheels, jacks, coupler, tongue jack.
#include <algorithm>
#include <cmath>

#include "layout/builder.h"

namespace bedwright {
namespace {

Block box(Vec3 low, Vec3 high) {
  Block b;
  b.low = low;
  b.high = high;
  return b;
}

// Cylinder about the y axis through (x, z) of the item's frame.
Block across(Mm radius, Mm from, Mm to, Mm z) {
  Block b;
  b.frame = {{0, 0, z}, {1, 0, 0}, {0, 0, -1}};  // its Z along +y
  b.low = {0, 0, from};
  b.high = {0, 0, to};
  b.radius = radius;
  return b;
}

Bought axle_item(const Builder& b) {
  const FrameAxle& a = b.frame.axle;
  const Mm end = a.tyre_inside / 2, tube = a.tube_diameter / 2;
  Bought axle;
  axle.envelope.push_back(across(tube, -end, end, 0));
  // Under a channel's web; midway under a tube, off its round corners.
  const Section& main = b.main_section();
  const Mm off = is_closed(main) ? (main.flange - a.spring_width) / 2 : 0;
  const Mm outer = b.frame.main.spacing / 2 - off;
  for (double side : {-1.0, 1.0}) {
    const Mm edge = side * outer, inner = side * (outer - a.spring_width);
    axle.envelope.push_back(box({-a.spring_length / 2, std::min(edge, inner), tube},
                                {a.spring_length / 2, std::max(edge, inner), a.below}));
  }
  axle.mass = a.mass;
  return axle;
}

// A wheel, and the room it takes at full bump: itself, itself raised, and the
// box between.
Bought wheel_item(const FrameAxle& a, Mm bump) {
  Bought wheel;
  const Mm r = a.tyre_diameter / 2, half = a.tyre_width / 2;
  wheel.envelope = {across(r, -half, half, 0)};
  if (bump > 0) {
    wheel.envelope.push_back(across(r, -half, half, bump));
    wheel.envelope.push_back(box({-r, -half, 0}, {r, half, bump}));
  }
  wheel.mass = a.wheel_mass;
  return wheel;
}

// A state for the checks only: out of the model and the lists, the same thing as `of`.
int place_state(Builder& b, int of, Pose pose, Bought form) {
  Identity id = b.bed.items[of].id, part{id.kind};
  id.pose = part.pose = pose;
  const int item = b.place(b.add(part, "", Origin::bought, std::move(form)), id, b.bed.items[of].placement);
  b.bed.items[item].shown = false;
  b.bed.items[item].moving = true;
  return item;
}

// Every place the axle's tube takes on its way up to the bump stop.
Bought axle_at_bump(const FrameAxle& a) {
  const Mm end = a.tyre_inside / 2, tube = a.tube_diameter / 2;
  Bought swept;
  swept.envelope = {across(tube, -end, end, 0), across(tube, -end, end, a.bump),
                    box({-tube, -end, 0}, {tube, end, a.bump})};
  return swept;
}

void lay_axles(Builder& b) {
  const FrameAxle& a = b.frame.axle;
  const Mm z = -b.main_section().depth - a.below;
  const int axle_part = b.add({Kind::axle}, "", Origin::bought, axle_item(b));
  const int wheel_part = b.add({Kind::wheel}, "", Origin::bought, wheel_item(a, 0));
  for (int i = 0; i < a.count; ++i) {
    const Mm x = b.order.axle.position + (i - (a.count - 1) / 2.0) * a.spread;
    const int axle = b.place(axle_part, {Kind::axle, Side::middle, i + 1}, {{x, 0, z}});
    const int risen = a.bump > 0 ? place_state(b, axle, Pose::full_bump, axle_at_bump(a)) : -1;
    for (Side side : both_sides) {
      b.weld(axle, b.main(side), 0, WeldLine::hangers, {}, {});
      const Vec3 centre{x, outward(side) * (a.tyre_inside + a.tyre_width) / 2, z};
      const int rest = b.place(wheel_part, {Kind::wheel, side, i + 1}, {centre});
      const int bump = place_state(b, rest, Pose::full_bump, wheel_item(a, a.bump));
      for (int wheel : {rest, bump}) {
        b.join(wheel, axle, "turns on it");
        if (risen >= 0) b.join(wheel, risen, "turns on it");
      }
    }
  }
}

// The middle of a jack's four bolts.
Mm jack_middle(const Builder& b) { return -b.frame.jack.below.value_or(b.main_section().depth / 2); }

Bought jack_item(const Builder& b) {
  const FrameJack& j = b.frame.jack;
  const Mm mid = jack_middle(b), flange = j.plate_thickness, post = flange + j.flange_thickness;
  Bought jack;
  jack.envelope = {
      box({-j.plate_length / 2, flange, mid - j.plate_height / 2},
          {j.plate_length / 2, post, mid + j.plate_height / 2}),
      box({-j.post_width / 2, post, j.post_bottom}, {j.post_width / 2, post + j.post_width, j.post_top})};
  for (double dx : {-0.5, 0.5})
    for (double dz : {-0.5, 0.5})
      jack.lugs.push_back({{dx * j.bolt_x, post, mid + dz * j.bolt_z},
                           {0, -1, 0},
                           j.flange_thickness,
                           bought_hole({}, j.hole, 0, Kind::jack_bolt)});
  jack.mass = j.mass;
  jack.centre_of_mass = {0, post, (j.post_top + j.post_bottom) / 2};
  return jack;
}

// On a tube it reaches from its jack up to where the main's side is flat no more.
Plate jack_plate(const Builder& b) {
  const FrameJack& j = b.frame.jack;
  const Section& main = b.main_section();
  const Mm top = is_closed(main) ? -outer_corner(main) - jack_middle(b) : j.plate_height / 2;
  Plate plate;
  plate.thickness = j.plate_thickness;
  plate.outline = rectangle({-j.plate_length / 2, -j.plate_height / 2}, {j.plate_length / 2, tidy(top)});
  for (double dx : {-0.5, 0.5})
    for (double dz : {-0.5, 0.5})
      plate.holes.push_back({{tidy(dx * j.bolt_x), tidy(dz * j.bolt_z)},
                             j.hole.diameter,
                             j.hole.slot.value_or(j.hole.diameter),
                             0,
                             j.drilled_in_place ? Process::in_place : Process::cut,
                             Kind::jack_bolt});
  return plate;
}

// What comes out of the post below when the jack is run down.
Bought run_down(Mm half_x, Mm y_from, Mm y_to, Mm from, Mm travel) {
  Bought foot;
  foot.envelope = {box({-half_x, y_from, from - travel}, {half_x, y_to, from})};
  return foot;
}

// Holes made by dx, then dz, from -1/2 to 1/2: which of the four.
int of_four(double dx, double dz) { return (dx > 0 ? 2 : 0) + (dz > 0 ? 1 : 0); }

// Both ends of a jack's plate, up the flat of a tube's side: no nut goes inside, so the plate
// is welded on and its bolts pass below.
void weld_plate_on(Builder& b, int plate, Side side, Mm x) {
  const FrameJack& j = b.frame.jack;
  const Section& main = b.main_section();
  const double out = outward(side);
  const Mm from = -outer_corner(main), to = from - clear_depth(main);
  std::vector<WeldRun> runs;
  for (const double end : {-1.0, 1.0}) {
    const Mm at = x + end * j.plate_length / 2;
    runs.push_back({{at, b.web_back(side), from}, {at, b.web_back(side), to}, {0, out, 0}, {end, 0, 0}});
  }
  b.weld(plate, b.main(side), b.frame.welds.of(b.frame.welds.jack_plate), WeldLine::plate_ends,
         {std::min(j.plate_thickness, main.web), j.plate_thickness}, std::move(runs));
}

// The room its crank takes through a turn, in the jack's frame.
Bought crank_turn(const FrameJack& j) {
  const Mm post = j.plate_thickness + j.flange_thickness;
  Block turn;
  turn.radius = j.crank->radius;
  if (j.crank->turns == CrankTurns::over_the_top) {
    turn.frame = {{0, post + j.post_width / 2, 0}, {1, 0, 0}, {0, 1, 0}};
    turn.low = {0, 0, j.post_top + j.crank->axle};
  } else {  // its Z along +y, out of the post's outer face
    turn.frame = {{0, 0, j.post_top + j.crank->axle}, {1, 0, 0}, {0, 0, -1}};
    turn.low = {0, 0, post + j.post_width};
  }
  turn.high = turn.low + Vec3{0, 0, j.crank->depth};
  return {{turn}, {}, 0, {}};
}

void lay_jacks(Builder& b) {
  const FrameJack& j = b.frame.jack;
  const Mm mid = jack_middle(b);
  const bool tube = is_closed(b.main_section());
  if (tube && (!j.to_move.empty() || !j.to_add.empty()))
    return b.problem("frame.jack", "to_move and to_add drill holes in place, and no bolt goes through a tube",
                     "leave them out: the jacks of mains of tube stay where their plates are welded on");
  const int jack_there = b.add({Kind::jack}, "", Origin::bought, jack_item(b));
  const int plate_there = b.add({Kind::jack_plate}, b.frame.grade, Origin::made, jack_plate(b));
  int number = 0;
  for (Mm x : b.order.jacks) {
    ++number;
    const bool fresh = std::any_of(j.to_add.begin(), j.to_add.end(),
                                   [&](Mm at) { return std::abs(at + b.main_start() - x) < same_place; });
    const int jack_part =
        fresh ? b.add_new({Kind::jack, Side::middle, 0, 1}, "", Origin::bought, jack_item(b)) : jack_there;
    const int plate_part =
        fresh ? b.add_new({Kind::jack_plate, Side::middle, 0, 1}, b.frame.grade, Origin::made, jack_plate(b))
              : plate_there;
    for (Side side : both_sides) {
      const double out = outward(side);
      const int main = b.main(side);
      // Plate: its Z points at the web. A channel's plate, the same either way up, is turned over on
      // the road side; a tube's hangs, and is turned about its upright there.
      const int plate = b.place(plate_part, {Kind::jack_plate, side, number},
                                {{x, b.web_back(side) + out * j.plate_thickness, mid},
                                 {tube ? out : 1, 0, 0},
                                 {0, 0, tube ? 1 : out}});
      const int jack = b.place(jack_part, {Kind::jack, side, number},
                               {{x, b.web_back(side), 0}, {out, 0, 0}, {0, out, 0}});
      const Mm post = j.plate_thickness + j.flange_thickness;
      if (j.travel > 0)
        place_state(b, jack, Pose::run_down,
                    run_down(j.post_width / 2, post, post + j.post_width, j.post_bottom, j.travel));
      if (j.crank) place_state(b, jack, Pose::handle_turn, crank_turn(j));
      int hole = 0;
      for (double dx : {-0.5, 0.5})
        for (double dz : {-0.5, 0.5}) {
          BoltPlan bolt;
          bolt.id = {Kind::jack_bolt, side, number, ++hole};
          for_hole(bolt, j.hole);
          bolt.length = b.order.bolts.jack;
          bolt.seat = {x + dx * j.bolt_x, b.web_back(side) + out * (j.plate_thickness + j.flange_thickness),
                       mid + dz * j.bolt_z};
          bolt.direction = {0, -out, 0};
          // The jack is turned about its upright on the left; the plate is turned over there,
          // and so is the main on the right.
          // Drilled in place, both holes are where the jack's are.
          const Mm cut = j.drilled_in_place ? 0 : b.order.tolerances.cut_position;
          const auto own = [&](const char* what) {
            return cut > 0 ? std::vector{either_way(what, cut, 0, cut)} : std::vector<Contribution>{};
          };
          bolt.plies = {
              {jack, of_four(out * dx, dz)},
              {plate, tube ? of_four(out * dx, dz) : of_four(dx, out * dz), own("hole in the plate")}};
          if (!tube)
            bolt.plies.push_back(
                {main, b.main_jack_holes[number - 1][of_four(dx, -out * dz)], own("hole in the main")});
          b.bolt(bolt);
        }
      if (tube) weld_plate_on(b, plate, side, x);
    }
  }
}

// The ball's socket takes up so much of the coupler ahead of the ball.
constexpr Mm socket = 2 * inch;

// Ahead of the tongue a body that holds the ball; behind its front cut a plate on the
// top flanges, as wide there as the body and wider further back, as the maker's angle
// has it. Origin: its nose, on the centre line, at the tongue's top.
Bought coupler_item(const FrameCoupler& c) {
  const Mm nose = std::min(c.ball_ahead + socket, c.length), half = c.width / 2;
  Bought coupler;
  coupler.envelope = {box({0, -half, c.plate_thickness - c.height}, {nose, half, c.plate_thickness})};
  if (c.length > nose + same_place) {
    const Mm rear = half + (c.length - nose) * std::tan(c.angle);
    coupler.envelope.push_back(prism_block(
        {}, {{nose, -half}, {c.length, -rear}, {c.length, rear}, {nose, half}}, 0, c.plate_thickness));
  }
  coupler.mass = c.mass;
  coupler.centre_of_mass = {c.length / 2, 0, c.plate_thickness - c.height / 2};
  return coupler;
}

void lay_coupler(Builder& b) {
  const FrameCoupler& c = b.frame.coupler;
  const Mm front = b.main_start() - b.frame.tongue.length;
  const int item = b.place(b.add({Kind::coupler}, "", Origin::bought, coupler_item(c)), {Kind::coupler},
                           {{front - c.ball_ahead - socket, 0, -b.main_section().depth}});
  // Along each edge of the plate, from where its leg has flange under it behind the
  // tongue's cut; none where the plate does not lie on the tongue.
  const Mm leg = b.frame.welds.of(b.frame.welds.coupler), begins = leg * std::sin(c.angle),
           ends = c.length - c.ball_ahead - socket;
  for (Side side : both_sides) {
    const double out = outward(side);
    const auto edge_at = [&](Mm behind) {
      return Vec3{front + behind, out * (c.width / 2 + behind * std::tan(c.angle)), -b.main_section().depth};
    };
    std::vector<WeldRun> runs;
    if (ends > begins + same_place)
      runs.push_back(
          {edge_at(begins), edge_at(ends), {0, 0, 1}, {-std::sin(c.angle), out * std::cos(c.angle), 0}});
    b.weld(
        item, b.bed.item({Kind::tongue, side}), leg, WeldLine::outer_edge,
        {std::min(c.plate_thickness, b.section(b.frame.tongue.section).flange_thickness), c.plate_thickness},
        std::move(runs));
  }
}

void lay_tongue_jack(Builder& b) {
  const FrameTongueJack& j = b.frame.tongue_jack;
  const Mm top = -b.main_section().depth + j.plate_thickness;
  Bought jack;
  Block tube;
  tube.radius = j.tube_diameter / 2;
  tube.low = {0, 0, -j.below};
  tube.high = {0, 0, j.above};
  // The frame file does not state the flange: square, with the edge its bolts want.
  const Mm flange = j.bolt_circle / 2 + b.job.catalog.bolt(j.hole.bolt.text)->edge_minimum;
  jack.envelope = {tube, box({-flange, -flange, 0}, {flange, flange, j.flange_thickness})};
  for (double turn : {60.0, 180.0, 300.0})
    jack.lugs.push_back({{j.bolt_circle / 2 * std::cos(turn * degree),
                          j.bolt_circle / 2 * std::sin(turn * degree), j.flange_thickness},
                         {0, 0, -1},
                         j.flange_thickness,
                         bought_hole({}, j.hole, 0, Kind::tongue_jack_bolt)});
  jack.mass = j.mass;
  jack.centre_of_mass = {0, 0, (j.above - j.below) / 2};
  const Mm x = b.main_start() - b.frame.tongue.length + j.behind_front;
  const int item =
      b.place(b.add({Kind::tongue_jack}, "", Origin::bought, jack), {Kind::tongue_jack}, {{x, 0, top}});
  const Mm r = j.tube_diameter / 2;
  if (j.travel > 0) place_state(b, item, Pose::run_down, run_down(r, -r, r, -j.below, j.travel));
  if (j.handle_radius > 0 && j.handle_height > 0) {
    Block turn;  // the crank goes all the way round
    turn.radius = j.handle_radius;
    turn.low = {0, 0, j.above};
    turn.high = {0, 0, j.above + j.handle_height};
    place_state(b, item, Pose::handle_turn, Bought{{turn}, {}, 0, {}});
  }
  const int plate = b.bed.item({Kind::tongue_plate});
  int number = 0;
  for (const Lug& lug : std::get<Bought>(b.bed.part_of(item).form).lugs) {
    BoltPlan bolt;
    bolt.id = {Kind::tongue_jack_bolt, Side::middle, ++number};
    for_hole(bolt, j.hole);
    bolt.length = b.order.bolts.tongue_jack;
    bolt.seat = Vec3{x, 0, top} + lug.at;
    bolt.direction = {0, 0, -1};
    bolt.plies = {{item, number - 1}, {plate, number}};  // the plate's first hole is the tube's
    bolt.stack_up = {
        either_way("hole in the plate", b.order.tolerances.cut_position, b.order.tolerances.cut_position)};
    b.bolt(bolt);
  }
}

}  // namespace

void lay_running_gear(Builder& b) {
  lay_axles(b);
  lay_jacks(b);
  lay_coupler(b);
  lay_tongue_jack(b);
}

}  // namespace bedwright
