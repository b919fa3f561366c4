// Facts of the trade, as people who build such beds know them. Each is common
// practice, no published source; where a figure is needed it stands beside.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "rules/rule.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::bed_of;
using testing::demo_bed;
using testing::demo_job;
using ::testing::HasSubstr;

std::vector<Finding> check(const Job& job) {
  const Bed bed = bed_of(job);
  return run_checks({bed, job.order.limits, &job, nullptr, {job.order.order.printing, job.order.order.tape}});
}

int count(const std::vector<Finding>& findings, const std::string& code, Severity severity) {
  return static_cast<int>(std::count_if(findings.begin(), findings.end(), [&](const Finding& f) {
    return f.code == code && f.severity == severity;
  }));
}

// The clip tabs' standoff moves the rail up and down over the main, with nothing
// else changed: the bunk bolts' tips are as far above the main as we choose.
// Standoff for `room` between nominal tip and main: lock washer, nut and what
// stands past it come below the rail.
Job clip_job_with_tip_room(Mm room) {
  Job job = demo_job("one_extension");
  const Bed bed = bed_of(job);
  const auto bolt = std::find_if(bed.bolts.begin(), bed.bolts.end(),
                                 [](const Bolt& b) { return b.id.kind == Kind::bunk_bolt; });
  Mm above = 0;
  for (const Washer& w : bolt->under_head) above += w.thickness;
  for (const Ply& p : bolt->plies) above += p.thickness;
  job.frame.tabs.clip->standoff = bolt->length - above + room;
  return job;
}

// Common practice, no published source: a tip about 1/8 in above the main is fine.
TEST(Trade, ATipAnEighthAboveTheMainIsFine) {
  EXPECT_EQ(count(check(clip_job_with_tip_room(inch / 8)), "TIP", Severity::stop), 0);
}

// Common practice, no published source: a bolt 1/16 in longer than the room
// under it lifts the rail.
TEST(Trade, ABoltASixteenthTooLongLiftsTheRail) {
  const std::vector<Finding> findings = check(clip_job_with_tip_room(-inch / 16));
  EXPECT_EQ(count(findings, "TIP", Severity::stop), 2 * 17);
  for (const Finding& f : findings)
    if (f.code == "TIP") {
      EXPECT_LT(f.measured, -inch / 16 + 1e-6) << f.message;
    }
}

// Common practice, no published source: the maker packs two bolt lengths, and only
// the short ones go over the main.
TEST(Trade, OnlyTheShortKitBoltsGoOverTheMain) {
  for (const char* order : {"base", "lot_frame", "metric"}) {
    const Job job = demo_job(order);
    std::vector<Mm> in_box;
    for (const KitBox& b : job.kit.box)
      if (b.bolt.text == job.kit.bunk.hole.bolt.text) in_box.push_back(b.length);
    ASSERT_EQ(in_box.size(), 2u);
    const auto [shorter, longer] = std::minmax(in_box[0], in_box[1]);
    const Bed bed = bed_of(job);
    int over_the_main = 0;
    for (const Bolt& bolt : bed.bolts)
      if (bolt.id.kind == Kind::bunk_bolt) {
        EXPECT_EQ(bolt.length, shorter) << name(bolt);
        ++over_the_main;
      }
    Job with_long = job;
    with_long.order.bolts.bunk = longer;
    EXPECT_EQ(count(check(with_long), "TIP", Severity::stop), over_the_main) << order;
  }
}

// Common practice, no published source: the end bunks go in the outermost hole
// set, because one set in, the track stop's bolt hits the bunk.
TEST(Trade, EndBunksOneSetInMeetTheTrackStopsBolt) {
  Job job = demo_job("base");
  job.order.track.end_bunks = EndBunks::inner;
  const int last = bed_of(job).track.bunk_count();
  const auto end_bunk = [&](const Subject& s) {
    return s.id.kind == Kind::bunk && (s.id.number == 1 || s.id.number == last);
  };
  const auto stop_bolt = [](const Subject& s) { return s.id.kind == Kind::stop_bolt; };
  int met = 0;
  for (const Finding& f : check(job))
    if (f.code == "CLASH")
      met += (end_bunk(f.subjects[0]) && stop_bolt(f.subjects[1])) ||
             (stop_bolt(f.subjects[0]) && end_bunk(f.subjects[1]));
  EXPECT_EQ(met, 4) << "front and rear, both sides";
}

// Common practice, no published source: the bed bolts take a flat washer on top
// and a lock washer under.
TEST(Trade, BedBoltsTakeAFlatWasherOnTopAndALockWasherUnder) {
  for (const std::string& order : testing::good_orders)
    for (const Bolt& bolt : demo_bed(order).bolts) {
      if (bolt.id.kind != Kind::track_bolt && bolt.id.kind != Kind::bunk_bolt) continue;
      ASSERT_EQ(bolt.under_head.size(), 1u);
      EXPECT_EQ(bolt.under_head[0], bolt.size.flat);
      EXPECT_EQ(bolt.under_nut.back(), bolt.size.lock);
    }
}

// Common practice, no published source: a six-inch channel carries such a bed.
// By hand, hard on the bed: everything on it spread along the mains, the head
// and a 1,500 lb log (invented, from memory of oak about 20 in by 12 ft) both at
// mid-span between the end jacks, each main half. Elastic section modulus of
// C6x8.2 4.35 in3 (AISC Manual table 1-5, from memory), A36 yields at 36 ksi,
// allowable 0.6 of it (AISC ASD, bending of a member not fully braced: 1 / 1.67).
TEST(Trade, ASixInchChannelCarriesSuchABed) {
  const Job job = demo_job("base");
  const Bed bed = bed_of(job);
  Kg spread = 0, head = 0;
  for (const Item& item : bed.items) {
    if (!item.shown) continue;
    const Part& part = bed.parts[item.part];
    (part.id.kind == Kind::head ? head : spread) += mass(part);
  }
  const Mm span = job.order.jacks.back() - job.order.jacks.front();
  const Newton point = (head + 1500 * pound) * gravity / 2;
  const Newton uniform = spread * gravity / 2;
  const double moment = point * span / 4 + uniform * span / 8;  // N mm
  const Mpa stress = moment / (4.35 * inch * inch * inch);
  EXPECT_LT(stress, 0.6 * 36 * ksi);
  EXPECT_GT(stress, 0.2 * 36 * ksi) << "and is not absurdly heavy for it";
}

}  // namespace
}  // namespace bedwright
