// Draws what bears on the bed, its sag and its moments.
#include "sheets/loads/loads_pictures.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "bed/names.h"

namespace bedwright {
namespace {

constexpr Mm letters = 2.5, title_letters = 2.8;

void title(const Picture& p, const std::string& text) {
  p.labels.fixed({0,
                  {p.space.low.x, p.space.high.y - title_letters},
                  title_letters,
                  text,
                  Across::left,
                  Up::baseline,
                  0});
}

void label(const Picture& p, Vec2 at, const std::string& text, bool up = false) {
  p.labels.near({0, at, letters, text, Across::centre, up ? Up::baseline : Up::top, 0}, p.space, up);
}

Mm depth_of_main(const Picture& p) { return p.job.catalog.section(p.job.frame.main.section.text)->depth; }

// Mains and tongue seen from the kerb side; `top` is the mains' tops on paper.
void draw_frame(const Picture& p, Mm top) {
  const Mm start = main_start(p.job), end = main_end(p.job, p.bed), deep = p.along.size(depth_of_main(p));
  p.labels.box(p.pens.thick, {p.along(start), top - deep}, {p.along(end), top});
  const Mm rail = top + p.along.size(p.bed.track.standoff);
  p.labels.box(
      p.pens.thin, {p.along(0), rail},
      {p.along(p.bed.track.total_length), rail + std::max(0.6, p.along.size(p.job.kit.rail.standing_leg))});
  const Mm nose = start - p.job.frame.tongue.length;
  const Mm tongue = p.along.size(p.job.catalog.section(p.job.frame.tongue.section.text)->depth);
  p.labels.box(p.pens.thin, {p.along(nose), top - deep - tongue},
               {p.along(start + p.job.frame.tongue.back), top - deep});
}

// The head's boxes as one outline, in the state it is drawn in.
Box2 head_box(const Picture& p, HeadWhen when, Mm x, Mm rail_tops) {
  Box2 box;
  for (const HeadBox& b : p.job.kit.head.boxes) {
    if (b.when != when && b.when != HeadWhen::both) continue;
    box.add({p.along(x + b.x_from), rail_tops + p.along.size(b.z_from)});
    box.add({p.along(x + b.x_to), rail_tops + p.along.size(b.z_to)});
  }
  return box;
}

void dimension(const Picture& p, Mm from, Mm to, Mm y, const std::string& text) {
  for (Mm x : {from, to}) p.labels.line(p.pens.thin, {p.along(x), y - 1.5}, {p.along(x), y + 1.5});
  p.labels.line(p.pens.thin, {p.along(from), y}, {p.along(to), y});
  label(p, {(p.along(from) + p.along(to)) / 2, y + 1}, text, true);
}

bool has_curve(const Picture& p) { return !p.loads.stand.curve.x.empty(); }

const TowCondition& drawn_condition(const Tow& tow) { return tow.conditions.front(); }

}  // namespace

void draw_on_road(const Picture& p) {
  const Tow& tow = p.loads.tow;
  const TowCondition& c = drawn_condition(tow);
  const FrameAxle& a = p.job.frame.axle;
  title(p, fmt::format("On the road, {}", name(c.travel)));
  const Mm ground = p.space.low.y + 26, top = ground - p.along.size(tow.ground_z);
  draw_frame(p, top);
  p.labels.line(p.pens.thin, {p.space.low.x, ground}, {p.space.high.x, ground});
  const Mm radius = p.along.size(a.tyre_diameter / 2);
  std::vector<Mm> axles;
  for (int i = 0; i < a.count; ++i) axles.push_back(tow.axle_x + (i - (a.count - 1) / 2.0) * a.spread);
  for (Mm x : axles) p.labels.circle(p.pens.thick, {p.along(x), ground + radius}, radius);
  const Mm ball_height = top - p.along.size(depth_of_main(p)) - 1.5;
  p.labels.circle(p.pens.thick, {p.along(tow.ball_x), ball_height}, 1.2);

  std::optional<Box2> head;
  if (c.travel.head != HeadAt::off) {
    const Mm tops = top + p.along.size(rail_top(p.job, p.bed));
    head = head_box(p, HeadWhen::locked, head_locked(p.job, p.bed, c.travel.head), tops);
    p.labels.box(p.pens.thin, head->low, head->high);
  }

  // Arrows first, so that no text is put across one.
  const Mm high = std::max(head ? head->high.y : top, top + 12);
  p.labels.arrow(p.pens.thick, {p.along(c.centre.x), high + 2}, {p.along(c.centre.x), top});
  p.labels.arrow(p.pens.thick, {p.along(tow.ball_x), ball_height - 12},
                 {p.along(tow.ball_x), ball_height - 1.4});
  for (Mm x : axles) p.labels.arrow(p.pens.thick, {p.along(x), ground - 9}, {p.along(x), ground});
  const Mm band = ground - 2.2;
  if (tow.axle_from <= tow.axle_to) {
    const Mm from = std::max(p.along(tow.axle_from), p.space.low.x),
             to = std::min(p.along(tow.axle_to), p.space.high.x);
    p.labels.line(p.pens.thick, {from, band}, {to, band});
    for (Mm x : {from, to}) p.labels.line(p.pens.thick, {x, band - 1.2}, {x, band + 1.2});
  }
  dimension(p, tow.ball_x, c.centre.x, p.space.low.y + 8, p.say.place(c.centre.x - tow.ball_x));
  dimension(p, tow.ball_x, tow.axle_x, p.space.low.y + 2, p.say.place(tow.axle_x - tow.ball_x));
  label(p, {p.along(c.centre.x), high + 2.6}, fmt::format("all {}", p.say.mass(c.mass)), true);
  if (head)
    label(p, {(head->low.x + head->high.x) / 2, head->high.y + 1},
          fmt::format("head {}", p.say.mass(p.loads.weights.head.mass)), true);
  label(p, {p.along(tow.ball_x) + 14, ball_height - 13},
        fmt::format("coupler {}, {:.1f} %", p.say.mass(c.tongue), 100 * c.share));
  label(p, {p.along(tow.axle_x), ground - 10},
        a.count > 1 ? fmt::format("each axle {}", p.say.mass(c.axle))
                    : fmt::format("axle {}", p.say.mass(c.axle)));
  if (tow.axle_from <= tow.axle_to)
    label(p, {p.along(tow.axle_to) + 40, band - 3},
          fmt::format("axle may stand {} to {}", p.say.place(tow.axle_from), p.say.place(tow.axle_to)));
}

void draw_at_work(const Picture& p) {
  const Stand& s = p.loads.stand;
  const bool drawn = has_curve(p);
  title(p, drawn ? "At work, head and log where it sags most; under each jack its load then, in brackets "
                   "least and most over all places"
                 : "At work: it does not stand on the jacks as listed");
  const Mm top = p.space.low.y + 27, deep = p.along.size(depth_of_main(p));
  draw_frame(p, top);
  const Mm seat = top + p.along.size(rail_seat(p.job, p.bed)),
           bunk = p.along.size(p.job.kit.bunk.standing_leg);
  for (const BunkPlace& place : p.bed.track.bunks)
    p.labels.line(p.pens.thin, {p.along(place.x), seat}, {p.along(place.x), seat + bunk});
  for (const JackLoad& k : s.jacks) {
    if (k.id.side != Side::left) continue;
    const Vec2 tip{p.along(k.x), top - deep};
    p.labels.path(p.pens.thick, {tip, tip + Vec2{-2, -4}, tip + Vec2{2, -4}, tip});
  }
  if (!drawn) return;
  Mm log_top = seat + bunk;
  if (p.job.order.work.log && s.log_lies) {
    const LogOrder& log = *p.job.order.work.log;
    const Mm from = p.along(s.log_position - log.length / 2), to = p.along(s.log_position + log.length / 2);
    p.labels.box(p.pens.thick, {from, log_top}, {to, log_top + p.along.size(log.diameter)});
    p.labels.near(
        {0,
         {(from + to) / 2, log_top + p.along.size(log.diameter) / 2},
         letters,
         fmt::format("log {}, its weight at {}", p.say.mass(s.log_mass), p.say.place(s.log_position)),
         Across::centre,
         Up::middle,
         0},
        p.space);
    log_top += p.along.size(log.diameter);
  }
  const Mm tops = top + p.along.size(rail_top(p.job, p.bed));
  const Mm half = p.job.kit.head.wheel_base / 2;
  for (Mm x : {s.head_x - half, s.head_x + half}) p.labels.circle(p.pens.thin, {p.along(x), tops + 1}, 1);
  p.labels.arrow(p.pens.thick, {p.along(s.wheels_x), log_top + 9}, {p.along(s.wheels_x), log_top + 0.5});
  // The bed's own weight at its centre, on the side of the mains below the rails.
  const BedWeights& w = p.loads.weights;
  const Body bed = together(together(w.frame, w.track), w.gear);
  p.labels.arrow(p.pens.thick, {p.along(bed.centre.x), top - deep - 0.5},
                 {p.along(bed.centre.x), top - deep - 8});
  label(p, {p.along(s.head_x), log_top + 9.5},
        fmt::format("head {} at {}", p.say.mass(w.head.mass), p.say.place(s.wheels_x)), true);
  for (Side side : both_sides)
    for (const JackLoad& k : s.jacks)
      if (k.id.side == side)
        label(p, {p.along(k.x), top - deep - (side == Side::left ? 5 : 9)},
              fmt::format("{}: {} ({} to {})", mark(k.id), p.say.mass(k.drawn / gravity),
                          p.say.mass_figure(k.least / gravity), p.say.mass_figure(k.most / gravity)));
  label(p, {p.along(bed.centre.x), top - deep - 14},
        fmt::format("bed {} at {}", p.say.mass(bed.mass), p.say.place(bed.centre.x)));
}

namespace {

struct Curves {
  const Envelope& values;
  double up = 1;  // +1: positive values are drawn upward
  Mm axis = 0;
  double scale = 1;  // paper per unit
};

void draw_curves(const Picture& p, const std::vector<Mm>& x, const Curves& c) {
  const auto run = [&](const std::vector<double>& values) {
    std::vector<Vec2> points;
    for (std::size_t i = 0; i < x.size(); ++i)
      points.push_back({p.along(x[i]), c.axis + c.up * c.scale * values[i]});
    return points;
  };
  p.labels.line(p.pens.thin, {p.along(x.front()), c.axis}, {p.along(x.back()), c.axis});
  p.labels.path(p.pens.dashed, run(c.values.least));
  p.labels.path(p.pens.dashed, run(c.values.most));
  p.labels.path(p.pens.thick, run(c.values.drawn));
  for (const JackLoad& k : p.loads.stand.jacks)
    p.labels.path(p.pens.thick, {{p.along(k.x), c.axis},
                                 {p.along(k.x) - 1.2, c.axis - 2.2},
                                 {p.along(k.x) + 1.2, c.axis - 2.2},
                                 {p.along(k.x), c.axis}});
}

// A round number of units that 10 to 25 mm of paper stand for: 1, 2 or 5 times a power of ten.
double round_unit(double scale) {
  const double units = 20 / scale;
  const double ten = std::pow(10, std::floor(std::log10(units)));
  for (double times : {5.0, 2.0})
    if (ten * times <= units) return ten * times;
  return ten;
}

void scale_bar(const Picture& p, Mm length, const std::string& text) {
  const Mm x = p.space.high.x - 2, y = p.space.high.y - 2;
  p.labels.line(p.pens.thick, {x, y}, {x, y - length});
  for (Mm end : {y, y - length}) p.labels.line(p.pens.thick, {x - 1, end}, {x + 1, end});
  p.labels.near({0, {x - 1.8, y - length / 2}, letters, text, Across::right, Up::middle, 0}, p.space);
}

struct Extreme {
  double value = 0;
  Mm x = 0;
};

Extreme extreme(const std::vector<Mm>& x, const std::vector<double>& values, double sign) {
  Extreme e;
  for (std::size_t i = 0; i < x.size(); ++i)
    if (sign * values[i] > sign * e.value) e = {values[i], x[i]};
  return e;
}

}  // namespace

void draw_sag(const Picture& p) {
  if (!has_curve(p)) return;
  const Stand& s = p.loads.stand;
  const MainCurve& c = s.curve;
  title(p,
        fmt::format(
            "Sag of main {}: thick as drawn above, dashed the least and most over all places of head and log",
            letter(s.side)));
  const Extreme low = extreme(c.x, c.down.most, 1), high = extreme(c.x, c.down.least, -1);
  const Mm main_limit = std::max(0.0, s.sag_limit - s.rail_sag);
  const double reach = std::max({low.value, std::min(main_limit, 4 * low.value), 1e-6}),
               rise = std::max(-high.value, 0.0);
  const Mm paper = p.space.height() - 13;
  const double scale = paper / (reach + rise);
  const Mm axis = p.space.high.y - 6 - rise * scale;
  draw_curves(p, c.x, {c.down, -1, axis, scale});
  const bool shown = main_limit <= reach + 1e-9;
  if (shown)
    p.labels.line(p.pens.centre, {p.along(c.x.front()), axis - main_limit * scale},
                  {p.along(c.x.back()), axis - main_limit * scale});
  const PrintedUnit length = p.say.length_scale();
  const double unit = round_unit(scale * length.one);
  scale_bar(p, unit * length.one * scale, fmt::format("{:g} {}", unit, length.name));
  label(p, {p.along(low.x), axis - low.value * scale - 1},
        fmt::format("{} at {}", p.say.small(low.value), p.say.place(low.x)));
  const std::string limit = fmt::format("limit {} less {} in the rail: {}", p.say.small(s.sag_limit),
                                        p.say.small(s.rail_sag), p.say.small(main_limit));
  label(p,
        {p.along(c.x.front()) + text_width(limit, letters) / 2 + 2,
         shown ? axis - main_limit * scale - 1.4 : p.space.low.y + 3},
        limit);
}

void draw_moment(const Picture& p) {
  if (!has_curve(p)) return;
  const MainCurve& c = p.loads.stand.curve;
  title(p, fmt::format("Bending moment of main {}: up where it sags between jacks, down over them",
                       letter(p.loads.stand.side)));
  const Extreme most = extreme(c.x, c.moment.most, 1), least = extreme(c.x, c.moment.least, -1);
  const double reach = std::max(most.value - least.value, 1.0), scale = (p.space.height() - 18) / reach;
  const Mm axis = p.space.high.y - 9 - most.value * scale;
  draw_curves(p, c.x, {c.moment, 1, axis, scale});
  const PrintedUnit turning = p.say.moment_scale();
  const double unit = round_unit(scale * turning.one);
  scale_bar(p, unit * turning.one * scale, fmt::format("{:g} {}", unit, turning.name));
  label(p, {p.along(most.x), axis + most.value * scale + 1},
        fmt::format("{} at {}", p.say.turning(most.value), p.say.place(most.x)), true);
  label(p, {p.along(least.x), axis + least.value * scale - 1},
        fmt::format("{} at {}", p.say.turning(least.value), p.say.place(least.x)));
}

}  // namespace bedwright
