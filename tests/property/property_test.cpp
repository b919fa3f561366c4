// What must hold for any valid order, tried on random ones.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <functional>

#include "rules/rule.h"
#include "support/demo.h"
#include "support/same_bed.h"

namespace bedwright {
namespace {

using testing::bed_of;
using testing::demo_job;

const Job& base_job(int which) {
  static const std::vector<Job> jobs = {demo_job("base"), demo_job("one_extension"), demo_job("metric")};
  return jobs[which];
}

// A bed a shop might quote: any of the kits and tab styles, any number of whole
// pitches, pitches a tape shows, jacks and axle in proportion.
Job random_job() {
  Job job = base_job(*rc::gen::inRange(0, 3));
  const bool metric = job.order.order.printing == Printing::metric;
  TrackOrder& track = job.order.track;
  const int pitches = *rc::gen::inRange(3, 6);
  track.bunk_pitch =
      metric ? 10.0 * *rc::gen::inRange(38, 62) : *rc::gen::inRange(15 * 16, 25 * 16) * inch / 16;
  track.rail_length = pitches * track.bunk_pitch;
  track.extension_count = *rc::gen::inRange(0, 3);
  track.datum = *rc::gen::element(Datum::front, Datum::middle, Datum::rear);
  job.kit.rail.base_sections = *rc::gen::inRange(2, 4);
  track.clamps.clear();
  track.log_stops.clear();
  const Mm total = (job.kit.rail.base_sections + track.extension_count) * track.rail_length;
  job.order.jacks = {0.1 * total, 0.9 * total};
  job.order.axle.position = 0.58 * total;
  return job;
}

std::vector<Finding> check(const Job& job, const Bed& bed) {
  return run_checks({bed, job.order.limits, &job, nullptr, {job.order.order.printing, job.order.order.tape}});
}

RC_GTEST_PROP(AnyOrder, EveryTrackHoleHasItsTabHole, ()) {
  const Job job = random_job();
  const Bed bed = bed_of(job);
  int track_bolts = 0;
  for (const Bolt& bolt : bed.bolts) {
    if (bolt.id.kind != Kind::track_bolt) continue;
    ++track_bolts;
    RC_ASSERT(bolt.in_place);
    // No tab further off than half a mark of the tape, and none used twice.
    const HoleInWorld rail = hole_in_world(bed, bolt.plies.front()),
                      tab = hole_in_world(bed, bolt.plies.back());
    RC_ASSERT(std::abs(rail.centre.x - tab.centre.x) <= job.order.order.tape / 2 + 1e-6);
    RC_ASSERT(std::abs(rail.centre.y - tab.centre.y) < 1e-6);
  }
  const Member& section = std::get<Member>(bed.part_of(bed.item({Kind::rail, Side::left, 1})).form);
  const auto per_section = std::count_if(section.holes.begin(), section.holes.end(), [](const FaceHole& h) {
    return h.hole.purpose == Kind::track_bolt;
  });
  RC_ASSERT(track_bolts == 2 * bed.track.sections * static_cast<int>(per_section));
}

RC_GTEST_PROP(AnyOrder, LeftAndRightMirrorEachOther, ()) {
  const Bed bed = bed_of(random_job());
  int on_the_left = 0;
  for (const Bolt& bolt : bed.bolts) {
    if (bolt.id.side != Side::left) continue;
    ++on_the_left;
    Identity other = bolt.id;
    other.side = Side::right;
    const Bolt& twin = bed.bolts[bed.bolt(other)];
    RC_ASSERT(std::abs(twin.seat.x - bolt.seat.x) + std::abs(twin.seat.y + bolt.seat.y) +
                  std::abs(twin.seat.z - bolt.seat.z) <
              1e-6);
    RC_ASSERT(twin.plies.size() == bolt.plies.size());
  }
  RC_ASSERT(on_the_left > 0);
}

// The float of a track bolt by hand: rail slot across, tab slot along, both ends
// round. A tab moved past it along the bed, or past the other across, must stop.
RC_GTEST_PROP(AnyOrder, ATabMovedByMoreThanItsFloatIsCaught, ()) {
  Job job = random_job();
  const Bed straight = bed_of(job);
  std::vector<const Bolt*> track;
  for (const Bolt& bolt : straight.bolts)
    if (bolt.id.kind == Kind::track_bolt) track.push_back(&bolt);
  const Bolt& bolt = *track[*rc::gen::inRange<std::size_t>(0, track.size())];
  const Hole rail = hole_in_world(straight, bolt.plies.front()).hole,
             tab = hole_in_world(straight, bolt.plies.back()).hole;
  const Mm play = (rail.diameter + tab.diameter) / 2 - bolt.size.diameter;
  const bool along = *rc::gen::arbitrary<bool>();
  const Mm travel = along ? (tab.length - tab.diameter) / 2 : (rail.length - rail.diameter) / 2;
  const Mm past = *rc::gen::inRange(1, 200) / 20.0;
  const Mm moved = (*rc::gen::arbitrary<bool>() ? 1 : -1) * (play + travel + past);
  TabFound found;
  found.tab.text = mark(straight.items[bolt.plies.back().item].id);
  (along ? found.x : found.y) = moved;
  job.order.tabs_found = {found};
  const std::vector<Finding> findings = check(job, bed_of(job));
  RC_ASSERT(std::any_of(findings.begin(), findings.end(), [&](const Finding& f) {
    return f.severity == Severity::stop && f.code == "HOLE-FIT" && f.subjects.front().id == bolt.id;
  }));
}

// In every field, though other beds are laid out in between and job and bed stand
// elsewhere in memory: nothing is kept from one to the next, nor put in an order of addresses.
RC_GTEST_PROP(AnyOrder, TheSameOrderGivesTheSameBed, ()) {
  const Job job = random_job();
  const Bed first = bed_of(job);
  const Job copy = job;
  bed_of(random_job());
  RC_ASSERT(testing::same_bed(first, bed_of(copy)));
  RC_ASSERT(testing::same_bed(first, bed_of(job)));
}

// The comparison itself: a bed is the same as its copy, and no other where any one field is.
TEST(SameBed, SeesAnyOneFieldChanged) {
  const Bed bed = testing::demo_bed("base");
  EXPECT_TRUE(testing::same_bed(bed, Bed(bed)));
  const std::vector<std::function<void(Bed&)>> changes{
      [](Bed& b) { b.parts[1].id.number += 1; },
      [](Bed& b) { b.parts[1].material += "x"; },
      [](Bed& b) { b.parts[1].origin = b.parts[1].origin == Origin::made ? Origin::kit : Origin::made; },
      [](Bed& b) { b.parts[1].form = Bought{}; },
      [](Bed& b) { b.parts.pop_back(); },
      [](Bed& b) { b.items[3].part += 1; },
      [](Bed& b) { b.items[3].placement.origin.z += 1e-9; },
      [](Bed& b) { b.items[3].id.side = Side::middle, b.items[3].id.of += 1; },
      [](Bed& b) { b.items[3].shown = !b.items[3].shown; },
      [](Bed& b) { b.items[3].bolt += 1; },
      [](Bed& b) { b.items[3].moving = !b.items[3].moving; },
      [](Bed& b) { b.items.pop_back(); },
      [](Bed& b) { b.bolts[2].id.number += 1; },
      [](Bed& b) { b.bolts[2].size.pitch += 1e-9; },
      [](Bed& b) { b.bolts[2].length += 1e-9; },
      [](Bed& b) { b.bolts[2].seat.x += 1e-9; },
      [](Bed& b) { b.bolts[2].direction.z *= -1; },
      [](Bed& b) { b.bolts[2].under_head.clear(); },
      [](Bed& b) { b.bolts[2].under_nut.clear(); },
      [](Bed& b) { b.bolts[2].plies[0].item += 1; },
      [](Bed& b) { b.bolts[2].plies[0].hole += 1; },
      [](Bed& b) { b.bolts[2].plies[0].thickness += 1e-9; },
      [](Bed& b) { b.bolts[2].plies[0].slope += 1e-9; },
      [](Bed& b) { b.bolts[2].plies[0].smaller += 1e-9; },
      [](Bed& b) { b.bolts[2].plies[1].own[0].x_plus += 1e-9; },
      [](Bed& b) { b.bolts[2].finds_its_place = !b.bolts[2].finds_its_place; },
      [](Bed& b) { std::swap(b.bolts[2].plies.front(), b.bolts[2].plies.back()); },
      [](Bed& b) { b.bolts[2].stack_up[0].what += "x"; },
      [](Bed& b) { b.bolts[2].stack_up[0].x_plus += 1e-9; },
      [](Bed& b) { b.bolts[2].stack_up[0].x_minus += 1e-9; },
      [](Bed& b) { b.bolts[2].stack_up[0].y_plus += 1e-9; },
      [](Bed& b) { b.bolts[2].stack_up[0].y_minus += 1e-9; },
      [](Bed& b) { b.bolts[2].stack_up[0].z_plus += 1e-9; },
      [](Bed& b) { b.bolts[2].stack_up[0].z_minus += 1e-9; },
      [](Bed& b) { b.bolts[2].stack_up[0].from_datum = !b.bolts[2].stack_up[0].from_datum; },
      [](Bed& b) { b.bolts[2].in_place = !b.bolts[2].in_place; },
      [](Bed& b) { b.bolts.pop_back(); },
      [](Bed& b) { b.welds[4].a += 1; },
      [](Bed& b) { b.welds[4].b += 1; },
      [](Bed& b) { b.welds[4].leg += 1e-9; },
      [](Bed& b) { b.welds[4].length += 1e-9; },
      [](Bed& b) { b.welds[4].line = WeldLine::none; },
      [](Bed& b) { b.welds[4].thinner += 1e-9; },
      [](Bed& b) { b.welds[4].edge += 1e-9; },
      [](Bed& b) { std::swap(b.welds.front(), b.welds.back()); },
      [](Bed& b) { b.joined[0].a += 1; },
      [](Bed& b) { b.joined[0].b += 1; },
      [](Bed& b) { b.joined[0].why = "x"; },
      [](Bed& b) { b.track.rail_length += 1e-9; },
      [](Bed& b) { b.track.bunk_pitch += 1e-9; },
      [](Bed& b) { b.track.total_length += 1e-9; },
      [](Bed& b) { b.track.remainder += 1e-9; },
      [](Bed& b) { b.track.sections += 1; },
      [](Bed& b) { b.track.starts[1] += 1e-9; },
      [](Bed& b) { b.track.joints[0] += 1e-9; },
      [](Bed& b) { b.track.lengths[0] += 1e-9; },
      [](Bed& b) { b.track.holes[0].mounting_left[0] += 1e-9; },
      [](Bed& b) { b.track.holes[0].mounting_right[0] += 1e-9; },
      [](Bed& b) { b.track.holes[0].bunk_sets[0] += 1e-9; },
      [](Bed& b) { b.track.holes[0].stop_holes[0] += 1e-9; },
      [](Bed& b) { b.track.bunks[1].section += 1; },
      [](Bed& b) { b.track.bunks[1].set += 1; },
      [](Bed& b) { b.track.bunks[1].within += 1e-9; },
      [](Bed& b) { b.track.bunks[1].x += 1e-9; },
      [](Bed& b) { b.track.gauge += 1e-9; },
      [](Bed& b) { b.track.standoff += 1e-9; },
      [](Bed& b) { b.track.head_from += 1e-9; },
      [](Bed& b) { b.track.head_to += 1e-9; },
      [](Bed& b) { b.track.head_lock += 1e-9; },
  };
  for (std::size_t i = 0; i < changes.size(); ++i) {
    Bed other = bed;
    changes[i](other);
    EXPECT_FALSE(testing::same_bed(bed, other)) << "change " << i;
    EXPECT_FALSE(testing::same_bed(other, bed)) << "change " << i;
  }
}

}  // namespace
}  // namespace bedwright
