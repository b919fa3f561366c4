// lists/moving.csv: the ground, and every thing that moves over it or on the bed: what
// space each piece takes where it is drawn, which way it goes and how far.
#include "packet/moving_list.h"

#include <fmt/format.h>

#include <utility>

#include "bed/names.h"
#include "formats/csv.h"

namespace bedwright {
namespace {

struct Travel {
  const char* way = "";  // x, y, z, or "turns" about an upright through its middle
  Mm from = 0, to = 0;   // from where the box is
};

struct Piece {
  std::string item, piece, state, on, shape = "box";
  Box3 box;
  Travel travel = {};
  Radians lean_from = 0, lean_to = 0;  // about the middle of the box's underside, to -y where positive
};

Box3 box_of(Vec3 low, Vec3 high) {
  Box3 box;
  box.add(low);
  box.add(high);
  return box;
}

class MovingList {
 public:
  MovingList(const Job& job, const Bed& bed) : job_(job), bed_(bed), figures_(job.order.order.figures()) {
    csv_.row({"item",
              "piece",
              "state",
              "on",
              "shape",
              "moves",
              "by from",
              "by from mm",
              "by to",
              "by to mm",
              "leans from deg",
              "leans to deg",
              "lowest over ground",
              "lowest over ground mm",
              "x from mm",
              "x to mm",
              "y from mm",
              "y to mm",
              "z from mm",
              "z to mm"});
  }

  std::string text() {
    ground();
    head();
    stops();
    log_stops();
    clamps();
    axles();
    jacks();
    coupler();
    return csv_.text();
  }

 private:
  Vec3 place(int item) const { return bed_.items[item].placement.origin; }
  std::string called(int item) const { return name(bed_.items[item]); }

  void row(const Piece& p) {
    const Mm lowest = p.box.low.z - ground_z() + (p.travel.way == std::string("z") ? p.travel.from : 0);
    const bool moves = *p.travel.way != '\0', leans = p.lean_from != p.lean_to;
    const auto travel = [&](Mm by) { return moves ? CsvCell(figures_.tape_length(by)) : CsvCell(""); };
    const auto mm = [&](bool wanted, double figure, int decimals) {
      return wanted ? CsvCell(figure, decimals) : CsvCell("");
    };
    csv_.row({p.item,
              p.piece,
              p.state,
              p.on,
              p.shape,
              p.travel.way,
              travel(p.travel.from),
              mm(moves, p.travel.from, 3),
              travel(p.travel.to),
              mm(moves, p.travel.to, 3),
              mm(leans, p.lean_from / degree, 3),
              mm(leans, p.lean_to / degree, 3),
              figures_.tape_length(lowest),
              CsvCell(lowest, 3),
              CsvCell(p.box.low.x, 3),
              CsvCell(p.box.high.x, 3),
              CsvCell(p.box.low.y, 3),
              CsvCell(p.box.high.y, 3),
              CsvCell(p.box.low.z, 3),
              CsvCell(p.box.high.z, 3)});
  }

  // Under the tyres, the bed level.
  Mm ground_z() const {
    const int wheel = bed_.item({Kind::wheel, Side::left, 1});
    return place(wheel).z - job_.frame.axle.tyre_diameter / 2;
  }

  void ground() {
    Box3 box;
    for (std::size_t i = 0; i < bed_.items.size(); ++i) {
      const Box3 b = bounds(bed_, static_cast<int>(i));
      box.add({b.low.x, b.low.y, ground_z()});
      box.add({b.high.x, b.high.y, ground_z()});
    }
    row({"ground", "level, under the tyres", "", "", "box", box});
  }

  void head() {
    const Track& t = bed_.track;
    const KitHead& h = job_.kit.head;
    const Identity locked{Kind::head, Side::middle, 0, 0, End::none, 0, Pose::locked};
    const Mm top = place(bed_.item(locked)).z;
    const std::string item = word(Kind::head);
    for (const HeadBox& b : h.boxes)
      for (const double side : {1.0, -1.0}) {
        if (side < 0 && b.sides != Sides::pair) continue;
        const auto at = [&](Mm x) {
          return box_of({x + b.x_from, side * b.y_from, top + b.z_from},
                        {x + b.x_to, side * b.y_to, top + b.z_to});
        };
        if (b.when != HeadWhen::locked)
          row({item, b.name, "running", "", "box", at(t.head_from), {"x", 0, t.head_to - t.head_from}});
        if (b.when != HeadWhen::running) row({item, b.name, "locked", "", "box", at(t.head_lock)});
      }
    // Where its wheels touch the rails: a point each, in the middle of the standing leg.
    for (const Side side : both_sides)
      for (const double way : {-0.5, 0.5}) {
        if (h.wheel_base == 0 && way > 0) continue;
        const Mm y = outward(side) * (t.gauge / 2 - job_.kit.rail.thickness / 2);
        const auto at = [&](Mm x) { return Vec3{x + way * h.wheel_base, y, top}; };
        const std::string piece = "wheel on the rail";
        row({item,
             piece,
             "running",
             "rails",
             "point",
             box_of(at(t.head_from), at(t.head_from)),
             {"x", 0, t.head_to - t.head_from}});
        row({item, piece, "locked", "rails", "point", box_of(at(t.head_lock), at(t.head_lock))});
      }
  }

  void stops() {
    const KitStop& k = job_.kit.track_stop;
    for (const int item : bed_.items_of(Kind::track_stop)) {
      const Placement& at = bed_.items[item].placement;
      const Mm half = k.foot_length / 2;
      row({called(item), "face", "stops the head", "", "box",
           box_of(at.point({half - k.face_thickness, -k.foot_width / 2, k.foot_thickness}),
                  at.point({half, k.foot_width / 2, k.height}))});
    }
  }

  std::string bunk_under(int item) const {
    return name(Identity{Kind::bunk, Side::middle, bed_.items[item].id.bunk});
  }

  void log_stops() {
    for (const int item : bed_.items_of(Kind::log_stop))
      row({called(item), "post", "clamped", bunk_under(item), "box", bounds(bed_, item)});
  }

  // Where the model shows it: leaning in, at the outer end of its slide.
  void clamps() {
    const KitClamp& k = job_.kit.clamp;
    const Travel slide{"y", k.travel_from - k.travel_to, 0};
    for (const int item : bed_.items_of(Kind::clamp)) {
      if (!bed_.items[item].shown) continue;
      const Vec3 at = place(item), foot = at + Vec3{k.base_length / 2, 0, k.base_height};
      row({called(item), "base", "slides", bunk_under(item), "box",
           box_of(at + Vec3{0, -k.base_width / 2, 0},
                  at + Vec3{k.base_length, k.base_width / 2, k.base_height}),
           slide});
      row({called(item), "arm upright", "slides and leans", bunk_under(item), "box",
           box_of(foot + Vec3{-k.arm_thickness / 2, -k.arm_width / 2, 0},
                  foot + Vec3{k.arm_thickness / 2, k.arm_width / 2, k.arm_height}),
           slide, -k.lean_out, k.lean_in});
    }
  }

  void axles() {
    const FrameAxle& a = job_.frame.axle;
    const Mm tube = a.tube_diameter / 2, end = a.tyre_inside / 2;
    const Travel up{"z", 0, a.bump};
    for (const int item : bed_.items_of(Kind::axle)) {
      if (!bed_.items[item].shown) continue;
      const Vec3 at = place(item);
      row({called(item), "tube", "springs", "", "cylinder along y",
           box_of(at - Vec3{tube, end, tube}, at + Vec3{tube, end, tube}), up});
    }
    const Mm r = a.tyre_diameter / 2, half = a.tyre_width / 2;
    for (const int item : bed_.items_of(Kind::wheel)) {
      if (!bed_.items[item].shown) continue;
      const Vec3 at = place(item);
      const std::string on = name(Identity{Kind::axle, Side::middle, bed_.items[item].id.number});
      row({called(item), "tyre", "springs", on, "cylinder along y",
           box_of(at - Vec3{r, half, r}, at + Vec3{r, half, r}), up});
    }
  }

  void jacks() {
    const FrameJack& j = job_.frame.jack;
    const Mm post = j.plate_thickness + j.flange_thickness, half = j.post_width / 2;
    for (const int item : bed_.items_of(Kind::jack)) {
      if (!bed_.items[item].shown) continue;
      const Placement& at = bed_.items[item].placement;
      row({called(item),
           "foot drawn up",
           "runs down",
           "",
           "box",
           box_of(at.point({-half, post, j.post_bottom}),
                  at.point({half, post + j.post_width, j.post_bottom})),
           {"z", -j.travel, 0}});
    }
    const FrameTongueJack& t = job_.frame.tongue_jack;
    const int item = bed_.item({Kind::tongue_jack});
    const Vec3 at = place(item);
    const Mm r = t.tube_diameter / 2, turn = t.handle_radius;
    row({called(item),
         "foot drawn up",
         "runs down",
         "",
         "cylinder along z",
         box_of(at + Vec3{-r, -r, -t.below}, at + Vec3{r, r, -t.below}),
         {"z", -t.travel, 0}});
    if (turn > 0 && t.handle_height > 0)
      row({called(item), "crank, all the way round", "turns", "", "cylinder along z",
           box_of(at + Vec3{-turn, -turn, t.above}, at + Vec3{turn, turn, t.above + t.handle_height})});
  }

  void coupler() {
    const int item = bed_.item({Kind::coupler});
    const Mm front = -job_.frame.main.front_overhang - job_.frame.tongue.length;
    // Its origin is at the tongue's top; the ball is at the middle of its body.
    const Box3 body = block_bounds(bed_, item).at(0);
    const Vec3 ball{front - job_.frame.coupler.ball_ahead, 0, (body.low.z + body.high.z) / 2};
    row({called(item), "ball's centre", "", "", "point", box_of(ball, ball)});
  }

  const Job& job_;
  const Bed& bed_;
  const Figures figures_;
  Csv csv_;
};

}  // namespace

std::string moving_csv(const Job& job, const Bed& bed) { return MovingList(job, bed).text(); }

}  // namespace bedwright
