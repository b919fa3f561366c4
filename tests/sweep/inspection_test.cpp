// The inspection on beds whose answer is known: the orders the sweep starts from, and the
// same with one fault put into the bed itself, past every key and every rule.
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <set>
#include <type_traits>

#include "sweep/look.h"

namespace bedwright::sweep {
namespace {

struct Laid {
  Job job;
  Bed bed;
};

Laid laid(const std::string& file) {
  FileStore store;
  const Examination e = examine(store, std::string(BEDWRIGHT_SOURCE) + "/" + file, {});
  if (!e) throw std::runtime_error(to_line(e.problems.at(0)));
  return {e.bed->job, e.bed->bed};
}

std::set<std::string> told(const Laid& l, const std::string& kind) {
  std::set<std::string> all;
  for (const Reject& r : inspect(l.job, l.bed).rejects)
    if (r.kind == kind) all.insert(r.what);
  return all;
}

TEST(Inspection, PassesTheOrdersTheSweepStartsFrom) {
  for (const std::string& file : swept_files) {
    const Laid l = laid(file);
    for (const Reject& r : inspect(l.job, l.bed).rejects)
      ADD_FAILURE() << file << ": " << r.kind << ": " << r.what;
  }
}

struct Fault {
  const char* kind;
  std::function<void(Laid&)> put;
};

Item& item(Laid& l, const Identity& id) { return l.bed.items.at(static_cast<std::size_t>(l.bed.item(id))); }
Part& part(Laid& l, const Identity& id) { return l.bed.parts.at(static_cast<std::size_t>(item(l, id).part)); }
Bolt& bolt(Laid& l, const Identity& id) { return l.bed.bolts.at(static_cast<std::size_t>(l.bed.bolt(id))); }
Member& member(Laid& l, const Identity& id) { return std::get<Member>(part(l, id).form); }
Plate& plate(Laid& l, const Identity& id) { return std::get<Plate>(part(l, id).form); }
// A hole of a part by what it is for.
template <class Holes>
Hole& hole_for(Holes& holes, Kind purpose) {
  for (auto& h : holes) {
    if constexpr (std::is_same_v<std::decay_t<decltype(h)>, FaceHole>) {
      if (h.hole.purpose == purpose) return h.hole;
    } else if (h.purpose == purpose) {
      return h;
    }
  }
  throw NotInBed("no hole for that");
}

const Identity tab{Kind::tab, Side::right, 4}, rail{Kind::rail, Side::right, 2},
    bunk{Kind::bunk, Side::middle, 6}, track_bolt{Kind::track_bolt, Side::right, 4},
    jack_bolt{Kind::jack_bolt, Side::left, 2, 3}, front_stop{Kind::track_stop, Side::left, 0, 0, End::front};

const std::vector<Fault> faults = {
    {"hole out of its part", [](Laid& l) { hole_for(plate(l, tab).holes, Kind::track_bolt).at.y += 40; }},
    {"hole out of its part", [](Laid& l) { hole_for(member(l, rail).holes, Kind::track_bolt).at.x = 3; }},
    {"hole out of its part", [](Laid& l) { hole_for(member(l, bunk).holes, Kind::bunk_bolt).length = 140; }},
    {"hole out of its part",
     [](Laid& l) {
       hole_for(member(l, {Kind::main, Side::left}).holes, Kind::jack_bolt).at.y = 72;
     }},
    {"hole at its part's edge",
     [](Laid& l) {
       hole_for(plate(l, {Kind::jack_plate, Side::left, 1}).holes, Kind::jack_bolt).at.y = 45.5;
     }},
    {"holes run together", [](Laid& l) { plate(l, tab).holes.push_back(plate(l, tab).holes.front()); }},
    {"ring over a hole's end", [](Laid& l) { hole_for(plate(l, tab).holes, Kind::track_bolt).length = 45; }},
    {"ring over a hole's end", [](Laid& l) { hole_for(member(l, bunk).holes, Kind::bunk_bolt).length = 40; }},
    {"ring on little steel",
     [](Laid& l) { hole_for(member(l, bunk).holes, Kind::bunk_bolt).diameter = 24.5; }},
    {"ring past an edge or in a fillet",
     [](Laid& l) {
       member(l, {Kind::main, Side::left}).section.root_radius = 30;
     }},
    {"bolt does not go in", [](Laid& l) { item(l, tab).placement.origin.x += 9; }},
    {"bolt does not go in", [](Laid& l) { item(l, rail).placement.origin.y += 5; }},
    {"parts of a stack do not meet", [](Laid& l) { item(l, tab).placement.origin.z -= 1; }},
    {"bolt too short", [](Laid& l) { bolt(l, track_bolt).length -= 12; }},
    {"nut on plain shank", [](Laid& l) { bolt(l, jack_bolt).length += 60; }},
    {"hole with no bolt", [](Laid& l) { bolt(l, track_bolt).in_place = false; }},
    {"two things in one place", [](Laid& l) { item(l, bunk).placement.origin.z -= 2; }},
    {"two things in one place",
     [](Laid& l) {
       item(l, {Kind::jack_plate, Side::left, 2}).placement.origin.y += 3;
     }},
    {"two things in one place",
     [](Laid& l) {
       item(l, {Kind::wheel, Side::left, 1}).placement.origin.y += 150;
     }},
    {"nearer than a cut is true",
     [](Laid& l) {
       Item& wheel = item(l, {Kind::wheel, Side::left, 1});
       const auto at = [&](const Identity& id) {
         return body_of(l.bed, static_cast<std::size_t>(l.bed.item(id))).box;
       };
       wheel.placement.origin.y += at({Kind::main, Side::left}).low.y - 0.3 - at(wheel.id).high.y;
     }},
    {"weld over air",
     [](Laid& l) {
       item(l, {Kind::cross_member, Side::middle, 2}).placement.origin.z -= 140;
     }},
    {"weld over air", [](Laid& l) { item(l, tab).placement.origin.x += 5; }},
    {"weld without its runs", [](Laid& l) { l.bed.welds.front().length = 500; }},
    {"weld without its runs", [](Laid& l) { l.bed.welds.front().runs.clear(); }},
    {"held by nothing",
     [](Laid& l) {
       std::erase_if(l.bed.welds, [&](const Weld& w) {
         return w.a == l.bed.item({Kind::corner_gusset, Side::left}) ||
                w.b == l.bed.item({Kind::corner_gusset, Side::left});
       });
     }},
    {"wheel off the rails", [](Laid& l) { l.job.kit.head.wheel_base = 1400; }},
    {"locked beyond its stops", [](Laid& l) { l.bed.track.head_lock = l.bed.track.head_from - 1; }},
    {"stop misses the head", [](Laid& l) { item(l, front_stop).placement.origin.x -= 5; }},
    {"stop misses the head", [](Laid& l) { item(l, front_stop).placement.origin.z -= 40; }},
    {"drags on the road",
     [](Laid& l) {
       item(l, {Kind::jack, Side::left, 1}).placement.origin.z -= 400;
     }},
    {"jack does not reach the ground", [](Laid& l) { l.job.frame.jack.travel = 20; }},
    {"tongue jack does not reach the ground", [](Laid& l) { l.job.frame.tongue_jack.travel = 20; }},
    {"cross members too far apart", [](Laid& l) { l.job.frame.cross_member.max_spacing = 700; }},
    {"bunk over a joint", [](Laid& l) { item(l, bunk).placement.origin.x = l.bed.track.joints.at(0) + 10; }},
    {"log stop off its bunk",
     [](Laid& l) {
       l.bed.items.at(static_cast<std::size_t>(l.bed.items_of(Kind::log_stop).at(0))).placement.origin.y -=
           300;
     }},
    {"spring wider than its flange", [](Laid& l) { l.job.frame.axle.spring_width = 60; }},
    {"tongue out past the mains",
     [](Laid& l) {
       item(l, {Kind::tongue, Side::right}).placement.origin.y += 20;
     }},
    {"coupler not on its tongue", [](Laid& l) { item(l, {Kind::coupler}).placement.origin.x -= 200; }},
    {"rail held by fewer than two bolts",
     [](Laid& l) {
       for (Bolt& b : l.bed.bolts)
         if (b.id.kind == Kind::track_bolt && b.plies.front().item == l.bed.item(rail)) b.in_place = false;
     }},
};

TEST(Inspection, TellsEachFaultPutIntoABed) {
  const Laid good = laid("params/orders/base.yaml");
  for (std::size_t i = 0; i < faults.size(); ++i) {
    Laid l = good;
    faults[i].put(l);
    const std::set<std::string> before = told(good, faults[i].kind), after = told(l, faults[i].kind);
    EXPECT_FALSE(std::includes(before.begin(), before.end(), after.begin(), after.end()))
        << "fault " << i + 1 << ": " << faults[i].kind;
  }
}

}  // namespace
}  // namespace bedwright::sweep
