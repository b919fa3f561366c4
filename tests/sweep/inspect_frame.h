// Welds, what is held to what, the head on its rails, the ground, and spacing.
#pragma once

#include <algorithm>
#include <numeric>

#include "sweep/rejects.h"

namespace bedwright::sweep {

// --- welds ---------------------------------------------------------------------

// A fillet bridges a gap so wide without being made larger: AWS D1.1 (from memory).
inline constexpr Mm weld_gap = 1.6;

// How much of a run has no steel of the item under the middle of its leg. `along` the leg
// on the item, `in` from the face into its steel.
inline Mm bare_of(const Body& body, const WeldRun& run, Vec3 along, Vec3 in, Mm leg) {
  constexpr int steps = 60;
  int bare = 0;
  for (int i = 0; i < steps; ++i) {
    const Vec3 p = run.from + ((i + 0.5) / steps) * (run.to - run.from) + (leg / 2) * along;
    bare += !is_steel(body, p + 0.3 * in) && !is_steel(body, p + weld_gap * in);
  }
  return run.length() * bare / steps;
}

inline void inspect_welds(Inspected& in) {
  const auto body = [&](int i) -> const Body& { return in.bodies[static_cast<std::size_t>(i)]; };
  for (const Weld& w : in.bed.welds) {
    if (w.leg <= 0) continue;  // bought, as its maker says
    Mm length = 0, bare = 0;
    for (const WeldRun& run : w.runs) {
      length += run.length();
      bare = std::max({bare, bare_of(body(w.a), run, run.on_a, -run.on_b, w.leg),
                       bare_of(body(w.b), run, run.on_b, -run.on_a, w.leg)});
    }
    const std::string both = fmt::format("{} to {}", in.called(w.a), in.called(w.b));
    if (w.runs.empty() || std::abs(length - w.length) > 0.5)
      in.reject("weld without its runs",
                fmt::format("{}: {:.1f} mm of weld, {:.1f} mm in runs", both, w.length, length));
    // A run may end a leg early, at a rounded toe: AISC 360 J2.2b ends fillets no nearer
    // than their size to an edge (from memory).
    else if (bare > 2 * w.leg)
      in.reject("weld over air", fmt::format("{}: {:.1f} mm of {:.1f} mm", both, bare, length));
  }
}

// --- held together -----------------------------------------------------------------

inline void inspect_held(Inspected& in) {
  std::vector<int> group(in.bed.items.size());
  std::iota(group.begin(), group.end(), 0);
  const auto root = [&](int i) {
    while (group[static_cast<std::size_t>(i)] != i) i = group[static_cast<std::size_t>(i)];
    return i;
  };
  const auto tie = [&](int a, int b) { group[static_cast<std::size_t>(root(a))] = root(b); };
  for (const Weld& w : in.bed.welds) tie(w.a, w.b);
  for (const Joined& j : in.bed.joined) tie(j.a, j.b);
  for (const Bolt& b : in.bed.bolts)
    for (const Ply& p : b.plies)
      if (b.in_place) tie(p.item, b.plies.front().item);
  const int main = root(in.bed.item({Kind::main, Side::left}));
  for (std::size_t i = 0; i < in.bed.items.size(); ++i)
    if (in.bed.items[i].bolt < 0 && in.bed.items[i].shown && root(static_cast<int>(i)) != main)
      in.reject("held by nothing", in.called(static_cast<int>(i)));
}

// --- head and stops ------------------------------------------------------------------

inline void inspect_travel(Inspected& in) {
  const Track& t = in.bed.track;
  const Mm half = in.job.kit.head.wheel_base / 2;
  for (const Mm centre : {t.head_from, t.head_to, t.head_lock})
    if (centre - half < 0 || centre + half > t.total_length)
      in.reject("wheel off the rails",
                fmt::format("head at {:.1f} mm, wheels {:.1f} mm either way, rails to {:.1f} mm", centre,
                            half, t.total_length));
  if (t.head_lock < t.head_from - 1e-6 || t.head_lock > t.head_to + 1e-6)
    in.reject("locked beyond its stops",
              fmt::format("at {:.1f} mm, stops at {:.1f} and {:.1f}", t.head_lock, t.head_from, t.head_to));
  // At each end of the travel a box of the head must meet each stop's face.
  const Body& head = in.bodies[static_cast<std::size_t>(
      in.bed.item({Kind::head, Side::middle, 0, 0, End::none, 0, Pose::running}))];
  for (const Side side : both_sides)
    for (const End end : {End::front, End::rear}) {
      const int stop = in.bed.item({Kind::track_stop, side, 0, 0, end});
      const Hull& face = in.bodies[static_cast<std::size_t>(stop)].hulls.back();
      Mm best = -1e30;
      for (const Hull& h : head.hulls) {
        const auto over = [](Mm a_low, Mm a_high, Mm b_low, Mm b_high) {
          return std::min(a_high, b_high) - std::max(a_low, b_low);
        };
        const Mm x_gap = end == End::front ? h.box.low.x - face.box.high.x : face.box.low.x - h.box.high.x;
        if (std::abs(x_gap) > 0.1) continue;
        best = std::max(best, std::min(over(h.box.low.y, h.box.high.y, face.box.low.y, face.box.high.y),
                                       over(h.box.low.z, h.box.high.z, face.box.low.z, face.box.high.z)));
      }
      // A stop that a wobble of the head misses is none: a plate's thickness, common practice.
      if (best < 6)
        in.reject("stop misses the head",
                  fmt::format("{}: {:.2f} mm of it in the head's way", in.called(stop), best));
    }
}

// --- the ground ------------------------------------------------------------------------

inline void inspect_ground(Inspected& in) {
  const Job& job = in.job;
  const FrameFile& f = job.frame;
  Mm ground = 1e30;
  for (const int i : in.bed.items_of(Kind::wheel))
    if (in.bed.items[static_cast<std::size_t>(i)].shown)
      ground = std::min(ground, in.bodies[static_cast<std::size_t>(i)].box.low.z);
  for (std::size_t i = 0; i < in.bed.items.size(); ++i) {
    const Item& item = in.bed.items[i];
    if (!item.shown || item.id.kind == Kind::wheel) continue;
    if (in.bodies[i].box.low.z < ground + 25)
      in.reject("drags on the road",
                fmt::format("{}: {:.1f} mm over the ground", in.called(static_cast<int>(i)),
                            in.bodies[i].box.low.z - ground));
  }
  const auto reach = [&](Kind kind, Mm travel, const char* what) {
    for (const int i : in.bed.items_of(kind)) {
      if (!in.bed.items[static_cast<std::size_t>(i)].shown) continue;
      const Mm foot = in.bodies[static_cast<std::size_t>(i)].box.low.z;
      if (foot - travel > ground) {
        in.reject(what,
                  fmt::format("{}: {:.1f} mm short of the ground", in.called(i), foot - travel - ground));
        break;
      }
    }
  };
  reach(Kind::jack, f.jack.travel, "jack does not reach the ground");
  reach(Kind::tongue_jack, f.tongue_jack.travel, "tongue jack does not reach the ground");
}

// --- places along and across the bed ----------------------------------------------------

inline void inspect_places(Inspected& in) {
  const Job& job = in.job;
  const Bed& bed = in.bed;
  std::vector<Mm> across;
  for (const Kind kind : {Kind::front_member, Kind::cross_member, Kind::rear_member})
    for (const int i : bed.items_of(kind))
      across.push_back(bed.items[static_cast<std::size_t>(i)].placement.origin.x);
  std::sort(across.begin(), across.end());
  // How a frame that stands was built is past asking.
  const bool made = bed.part_of(bed.item({Kind::front_member})).origin != Origin::standing;
  for (std::size_t i = 1; made && i < across.size(); ++i)
    if (across[i] - across[i - 1] > job.frame.cross_member.max_spacing + job.order.order.tape)
      in.reject("cross members too far apart",
                fmt::format("{:.1f} mm, {:.1f} asked", across[i] - across[i - 1],
                            job.frame.cross_member.max_spacing));
  for (const int i : bed.items_of(Kind::bunk)) {
    const Box3& box = in.bodies[static_cast<std::size_t>(i)].box;
    for (const Mm joint : bed.track.joints)
      if (box.low.x < joint && joint < box.high.x)
        in.reject("bunk over a joint", fmt::format("{} from {:.1f} to {:.1f}, joint at {:.1f}", in.called(i),
                                                   box.low.x, box.high.x, joint));
  }
  for (const int i : bed.items_of(Kind::log_stop)) {
    const Identity& id = bed.items[static_cast<std::size_t>(i)].id;
    const Box3 &stop = in.bodies[static_cast<std::size_t>(i)].box,
               &bunk = in.bodies[static_cast<std::size_t>(bed.item({Kind::bunk, Side::middle, id.bunk}))].box;
    if (stop.low.y < bunk.low.y - 0.1 || stop.high.y > bunk.high.y + 0.1 || stop.low.x < bunk.low.x - 0.1)
      in.reject("log stop off its bunk",
                fmt::format("{}: y {:.1f} to {:.1f}, bunk {:.1f} to {:.1f}", in.called(i), stop.low.y,
                            stop.high.y, bunk.low.y, bunk.high.y));
  }
  const Section* main = job.catalog.section(job.frame.main.section.text);
  const Mm flat =
      !main ? 0 : main->flange - (main->shape == Shape::tube ? 2 * (main->web + main->root_radius) : 0);
  if (main && job.frame.axle.spring_width > flat + 0.1)
    in.reject("spring wider than its flange",
              fmt::format("{:.1f} on {:.1f} mm", job.frame.axle.spring_width, flat));
  const Mm web = job.frame.main.spacing / 2;
  for (const int i : bed.items_of(Kind::tongue))
    if (in.bodies[static_cast<std::size_t>(i)].box.high.y > web + 1 ||
        in.bodies[static_cast<std::size_t>(i)].box.low.y < -web - 1)
      in.reject("tongue out past the mains", in.called(i));
  const Box3& coupler = in.bodies[static_cast<std::size_t>(bed.item({Kind::coupler}))].box;
  for (const int i : bed.items_of(Kind::tongue)) {
    const Box3& tongue = in.bodies[static_cast<std::size_t>(i)].box;
    if (coupler.high.x < tongue.low.x + 25 || coupler.low.x > tongue.low.x)
      in.reject("coupler not on its tongue",
                fmt::format("coupler to {:.1f}, tongue from {:.1f}", coupler.high.x, tongue.low.x));
  }
  // A rail section on one bolt or none.
  for (const int i : bed.items_of(Kind::rail)) {
    int bolts = 0;
    for (const Bolt& b : bed.bolts)
      bolts += b.id.kind == Kind::track_bolt && b.in_place && b.plies.front().item == i;
    if (bolts < 2) in.reject("rail held by fewer than two bolts", in.called(i));
  }
}

}  // namespace bedwright::sweep
