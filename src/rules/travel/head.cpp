// HEAD-ON-RAILS, TRACK-STOP, HEAD-LOCK: the head stays on its rails wherever it goes,
// the stops stop it, and it is locked between them.
#include <fmt/format.h>

#include <tuple>

#include "bed/head_meets.h"
#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

constexpr Identity head_in(Pose pose) { return {Kind::head, Side::middle, 0, 0, End::none, 0, pose}; }

// Nearer than this is a touch.
constexpr Mm rail_touch = 0.05;

// Contact at one place along the bed: nearer than a weld's or a bump's unevenness.
constexpr Mm one_face = 1;

const char* end_word(End end) { return end == End::front ? "front" : "rear"; }

// How far the gauge may be out on each side of the centre line.
Mm gauge_error(const Scene& scene) {
  return scene.input.job ? scene.input.job->order.tolerances.gauge / 2 : 0;
}

bool has_track_and_head(const Bed& bed) {
  return bed.track.sections > 0 && bed.find_item(head_in(Pose::running));
}

// --- on the rails ---------------------------------------------------------------------

// A wheel off the rail's end, running or locked, at that end of the track.
void check_wheels(const Scene& scene, End end, std::vector<Finding>& findings) {
  const Track& t = scene.bed.track;
  const Mm half = t.wheel_base / 2;
  const bool front = end == End::front;
  const auto left_over = [&](Mm head) { return front ? head - half : t.total_length - head - half; };
  const Mm running = left_over(front ? t.head_from : t.head_to), locked = left_over(t.head_lock);
  const Mm least = std::min(running, locked), limit = scene.limits.wheel_to_end;
  if (least >= limit - same_place) return;
  const bool in_lock = locked < running;
  const Figures& say = scene.figures;
  Finding f = finding_of("HEAD-ON-RAILS", Severity::stop, head_in(in_lock ? Pose::locked : Pose::running),
                         {front ? 0 : t.total_length, 0, t.standoff});
  f.measured = least;
  f.limit = limit;
  f.margin = least - limit;
  const std::string where = in_lock ? std::string("locked") : fmt::format("at its {} stop", end_word(end));
  f.message = least < 0 ? fmt::format("{}, the head's {} wheels are {} off the rails' ends", where,
                                      end_word(end), say.say(-least))
                        : fmt::format("{}, the head's {} wheels are {} from the rails' ends; {} is asked",
                                      where, end_word(end), say.say(least), say.say(limit));
  const Mm by = say.round_up(limit - least);
  f.remedy = in_lock ? fmt::format("lock the head {} further {}", say.say(by), front ? "rearward" : "forward")
                     : fmt::format("stops {} further in from the rails' ends", say.say(by));
  if (const Job* job = scene.input.job) {
    // The lock is measured from the end it is at.
    const bool its_own_end = front == (job->order.track.head_lock == HeadLock::front);
    if (in_lock)
      f.changes.push_back(
          {"kit.head.lock_offset", say.set(job->kit.head.lock_offset + (its_own_end ? by : -by))});
    else
      f.changes.push_back({"kit.track_stop.from_end", say.set(job->kit.track_stop.from_end + by)});
  }
  findings.push_back(std::move(f));
}

// The standing leg of a side's rails, across the bed and up; along it, all of the track.
Box3 standing_leg(const Bed& bed, Side side) {
  const int rail = bed.item({Kind::rail, side, 1});
  Box3 box = bounds(bed, rail);
  const Mm thickness = std::get<Member>(bed.part_of(rail).form).section.web;
  (side == Side::left ? box.high.y : box.low.y) = outward(side) * (bed.track.gauge / 2 - thickness);
  return box;
}

Box3 flat_leg(const Bed& bed, Side side) {
  const int rail = bed.item({Kind::rail, side, 1});
  Box3 box = bounds(bed, rail);
  box.high.z = box.low.z + std::get<Member>(bed.part_of(rail).form).section.web;
  return box;
}

// Whether some box of the head is over the side's rail, which is what carries it, and
// none is in it.
void check_side(const Scene& scene, Pose pose, Side side, std::vector<Finding>& findings) {
  const Bed& bed = scene.bed;
  const Figures& say = scene.figures;
  const Box3 leg = standing_leg(bed, side), foot = flat_leg(bed, side);
  const Mm error = gauge_error(scene);
  Mm covers = -std::numeric_limits<Mm>::infinity(), sunk = 0;
  for (const Box3& box : block_bounds(bed, bed.item(head_in(pose)))) {
    covers = std::max(covers, std::min(box.high.y - leg.high.y, leg.low.y - box.low.y));
    for (const Box3& part : {leg, foot}) sunk = std::max(sunk, meet_along(box, part).least());
  }
  const Vec3 at{bed.track.head_lock, outward(side) * bed.track.gauge / 2, leg.high.z};
  if (covers < error - same_place) {
    Finding f = finding_of("HEAD-ON-RAILS", Severity::stop, head_in(pose), at);
    f.subjects.emplace_back(Identity{Kind::rail, side, 1});
    f.measured = covers;
    f.limit = error;
    f.margin = covers - error;
    f.message = fmt::format("no part of the head covers {}'s standing leg: {} is short sideways",
                            f.subjects[1].name, say.say(error - covers));
    f.remedy = fmt::format(
        "check the gauge, {}, and the head's boxes against the maker's sheet: the box over the rail must "
        "reach {} further",
        say.say(bed.track.gauge), say.say(error - covers));
    findings.push_back(std::move(f));
  }
  if (sunk > rail_touch) {
    Finding f = finding_of("HEAD-ON-RAILS", Severity::stop, head_in(pose), at);
    f.subjects.emplace_back(Identity{Kind::rail, side, 1});
    f.measured = -sunk;
    f.margin = -sunk;
    f.message = fmt::format("the head stands {} in {}", say.say(sunk), f.subjects[1].name);
    f.remedy = fmt::format("check the head's boxes against the maker's sheet: {} must be clear of it",
                           say.say(sunk));
    findings.push_back(std::move(f));
  }
}

// --- the stops ------------------------------------------------------------------------

struct AtStop {
  Meet meet{-std::numeric_limits<Mm>::infinity(), -std::numeric_limits<Mm>::infinity()};
  bool stopped = false;  // some box meets it at all
  Mm short_by = 0;       // of its face, the nearest of those, where none comes to it
};

// What of the stop the head meets where it comes to rest: the best of the boxes that
// are at its face then; where none meets it, of all. The best wants least of a change:
// enough one way goes before more both ways.
AtStop at_stop(const Bed& bed, const Box3& stop, End end, Meet enough) {
  const bool front = end == End::front;
  const std::vector<Box3> boxes = block_bounds(bed, bed.item(head_in(Pose::running)));
  const auto short_of_face = [&](const Box3& box) {
    return front ? box.low.x - stop.high.x : stop.low.x - box.high.x;
  };
  const auto rank = [&](const Meet& m) {
    return std::tuple((m.width >= enough.width) + (m.height >= enough.height), m.least(), m.width + m.height);
  };
  AtStop best;
  best.stopped =
      std::any_of(boxes.begin(), boxes.end(), [&](const Box3& box) { return meet_along(box, stop).touch(); });
  Mm nearest = std::numeric_limits<Mm>::infinity();
  for (const Box3& box : boxes) {
    const Meet m = meet_along(box, stop);
    if (best.stopped && !m.touch()) continue;
    if (best.stopped) nearest = std::min(nearest, short_of_face(box));
    if (best.stopped && short_of_face(box) > one_face) continue;
    if (rank(m) > rank(best.meet)) best.meet = m;
  }
  if (best.stopped && nearest > one_face) best.short_by = nearest;
  return best;
}

// How much further the stop may stand from the head's path than drawn: the gauge, the
// play of its bolt, and the standing leg's height.
Meet play(const Scene& scene) {
  const Job* job = scene.input.job;
  if (!job) return {};
  const KitStop& stop = job->kit.track_stop;
  const BoltSize* size = job->catalog.bolt(stop.hole.bolt.text);
  if (!size) throw std::invalid_argument("the catalogue has no bolt " + stop.hole.bolt.text);
  return {gauge_error(scene) + stop.hole.diameter - size->diameter + job->kit.rail.hole_tolerance,
          job->kit.rail.height_tolerance};
}

// The stop of the other side holds the head before it comes to this one, and slews it.
void report_one_sided(const Scene& scene, const Identity& stop, Mm short_by, std::vector<Finding>& findings) {
  const Figures& say = scene.figures;
  Finding f = finding_of("TRACK-STOP", Severity::stop, scene.bed.items[scene.bed.item(stop)],
                         bounds(scene.bed, scene.bed.item(stop)).high);
  f.subjects.emplace_back(head_in(Pose::running));
  f.measured = -short_by;
  f.margin = -short_by;
  f.message = fmt::format("the head comes to rest {} short of {}: the stop of the other side holds it alone",
                          say.say(short_by), f.subjects[0].name);
  f.remedy =
      "check the head's boxes against the maker's sheet: both sides must meet their stops at once, so one "
      "box "
      "must reach as far along the bed on either side";
  findings.push_back(std::move(f));
}

void check_stop(const Scene& scene, Side side, End end, std::vector<Finding>& findings) {
  const Bed& bed = scene.bed;
  const Figures& say = scene.figures;
  const Identity id{Kind::track_stop, side, 0, 0, end};
  const Box3 stop = bounds(bed, bed.item(id));
  const Meet loose = play(scene);
  const Mm limit = scene.limits.stop_overlap;
  const AtStop found = at_stop(bed, stop, end, {limit + loose.width, limit + loose.height});
  if (found.short_by > 0) return report_one_sided(scene, id, found.short_by, findings);
  const Meet left{found.meet.width - loose.width, found.meet.height - loose.height};
  if (found.stopped && left.least() >= limit - same_place) return;
  const bool narrow = left.width < left.height;
  const Mm drawn = narrow ? found.meet.width : found.meet.height;
  Finding f =
      finding_of("TRACK-STOP", Severity::stop, id,
                 {end == End::front ? stop.high.x : stop.low.x, (stop.low.y + stop.high.y) / 2, stop.high.z});
  f.subjects.emplace_back(head_in(Pose::running));
  f.measured = left.least();
  f.limit = limit;
  f.margin = f.measured - limit;
  const std::string& name = f.subjects[0].name;
  if (drawn < -same_place)
    f.message = fmt::format("the head runs past {}: it clears it by {} {}", name, say.say(-drawn),
                            narrow ? "sideways" : "over its top");
  else if (drawn <= same_place)
    f.message =
        fmt::format("the head runs past {}: it no more than brushes its {}", name, narrow ? "side" : "top");
  else
    f.message =
        fmt::format("the head meets {} by {} only {}, {} when all is as far out as it may be; {} is asked",
                    name, say.say(drawn), narrow ? "sideways" : "in height",
                    say.say(std::max(left.least(), 0.0)), say.say(limit));
  const Mm more = say.round_up(limit - left.least());
  f.remedy = narrow ? fmt::format("a stop {} wider on the head's side, or that much nearer the rail's heel",
                                  say.say(more))
                    : fmt::format("a stop {} higher", say.say(more));
  if (const Job* job = scene.input.job) {
    const KitStop& k = job->kit.track_stop;
    if (narrow) {
      if (k.line > more) f.changes.push_back({"kit.track_stop.line", say.set(k.line - more)});
      f.changes.push_back({"kit.track_stop.foot_width", say.set(k.foot_width + 2 * more)});
    } else {
      f.changes.push_back({"kit.track_stop.height", say.set(k.height + more)});
    }
  }
  findings.push_back(std::move(f));
}

// --- locked for the road --------------------------------------------------------------

// How far the locked head stands clear of that end's stops: as far as the running one
// when it is there, and none of its own boxes in a stop.
Mm clear_of_stop(const Bed& bed, End end) {
  const Track& t = bed.track;
  const bool front = end == End::front;
  Mm clear = front ? t.head_lock - t.head_from : t.head_to - t.head_lock;
  for (const Side side : both_sides) {
    const Box3 stop = bounds(bed, bed.item({Kind::track_stop, side, 0, 0, end}));
    for (const Box3& box : block_bounds(bed, bed.item(head_in(Pose::locked))))
      if (meet_along(box, stop).touch())
        clear = std::min(clear, front ? box.low.x - stop.high.x : stop.low.x - box.high.x);
  }
  return clear;
}

}  // namespace

void check_head_on_rails(const Scene& scene, std::vector<Finding>& findings) {
  if (!has_track_and_head(scene.bed)) return;
  for (const End end : {End::front, End::rear}) check_wheels(scene, end, findings);
  for (const Side side : both_sides) {
    const std::size_t before = findings.size();
    check_side(scene, Pose::running, side, findings);
    // What is so in both is told once.
    if (findings.size() == before) check_side(scene, Pose::locked, side, findings);
  }
}

void check_track_stop(const Scene& scene, std::vector<Finding>& findings) {
  if (!has_track_and_head(scene.bed)) return;
  for (const Side side : both_sides)
    for (const End end : {End::front, End::rear}) check_stop(scene, side, end, findings);
}

void check_head_lock(const Scene& scene, std::vector<Finding>& findings) {
  if (!has_track_and_head(scene.bed)) return;
  const Track& t = scene.bed.track;
  const Figures& say = scene.figures;
  for (const End end : {End::front, End::rear}) {
    const Mm clear = clear_of_stop(scene.bed, end);
    if (clear >= -same_place) continue;
    Finding f = finding_of("HEAD-LOCK", Severity::stop, head_in(Pose::locked), {t.head_lock, 0, t.standoff});
    f.subjects.emplace_back(Identity{Kind::track_stop, Side::right, 0, 0, end});
    f.measured = clear;
    f.margin = clear;
    f.message =
        fmt::format("the head's lock is {} past where {} lets it go", say.say(-clear), f.subjects[1].name);
    const Mm by = say.round_up(-clear);
    f.remedy = fmt::format("lock the head {} {}", say.say(by),
                           end == End::front ? "further rearward" : "further forward");
    if (const Job* job = scene.input.job) {
      const bool further_in = (end == End::front) == (job->order.track.head_lock == HeadLock::front);
      f.changes.push_back(
          {"kit.head.lock_offset", say.set(job->kit.head.lock_offset + (further_in ? by : -by))});
    }
    findings.push_back(std::move(f));
  }
}

}  // namespace bedwright
