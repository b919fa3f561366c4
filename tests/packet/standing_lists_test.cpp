// Lists of a bed on a frame that stands: they count what is added and nothing else; what is done
// to the frame, step by step. Figures by hand, from params/frames/lot_frame_7.yaml.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "packet/lists.h"
#include "rules/scene.h"
#include "sheets/frame/changes.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::bed_of;
using ::testing::Contains;
using testing::demo_job;
using ::testing::ElementsAre;
using ::testing::Not;
using ::testing::StartsWith;

// No cell of these lists has a line of its own within.
std::vector<std::string> lines_of(const std::string& csv) {
  std::vector<std::string> lines;
  std::istringstream in(csv);
  for (std::string line; std::getline(in, line);) lines.push_back(line.substr(0, line.find('\r')));
  return lines;
}

// Three rails a side of the kit, and the frame with its three pairs of jacks, is what the demo
// is of: jack bolts, jacks and mains are there already.
TEST(StandingLists, CountOnlyWhatIsAdded) {
  const Job job = demo_job("lot_frame");
  const Bed bed = bed_of(job);
  const Heading& h = job.order.order;
  const std::vector<std::string> parts = lines_of(parts_csv(bed, h)),
                                 there = lines_of(standing_parts_csv(bed, h));
  for (const char* part :
       {"main,", "jack,", "jack plate,", "tab plate,", "axle,", "coupler,", "cross member,"}) {
    EXPECT_THAT(parts, Not(Contains(StartsWith(part))));
    EXPECT_THAT(there, Contains(StartsWith(part)));
  }
  // 3 pairs of 4 bolts each, 1/2 in; the 3 of the tongue jack are 3/8 in.
  int jack_nuts = 0, track_nuts = 0;
  for (const std::string& line : there)
    if (line.starts_with("nut 1/2 in,")) jack_nuts += std::stoi(line.substr(11));
  for (const std::string& line : parts)
    if (line.starts_with("nut 1/2 in,")) track_nuts += std::stoi(line.substr(11));
  EXPECT_EQ(jack_nuts, 24);
  int others = 0;
  for (const Bolt& bolt : bed.bolts)
    if (bolt.in_place && bolt.size.name == "1/2 in" && bolt.id.kind != Kind::jack_bolt) ++others;
  EXPECT_EQ(track_nuts, others);
  EXPECT_EQ(lines_of(layout_csv(bed, h)).size(), 1u) << "nothing is placed on the frame";
  for (const std::string& list :
       {stacks_csv(bed, h), bolts_csv(bed, kinds_of_bolts(Scene(CheckInput{bed, job.order.limits, &job,
                                                                           nullptr, h.figures()})))}) {
    EXPECT_THAT(lines_of(list), Not(Contains(StartsWith("jack bolt"))));
    EXPECT_THAT(lines_of(list), Contains(StartsWith("track bolt")));
  }
  EXPECT_THAT(lines_of(standing_stacks_csv(bed, h)), Contains(StartsWith("jack bolt")));
}

// On a frame yet to be made nothing stands.
TEST(StandingLists, AFrameYetToBeMadeHasAllOnItsOwnLists) {
  const Job job = demo_job("base");
  const Bed bed = bed_of(job);
  EXPECT_EQ(lines_of(standing_parts_csv(bed, job.order.order)).size(), 1u);
  EXPECT_EQ(lines_of(standing_stacks_csv(bed, job.order.order)).size(), 1u);
  EXPECT_EQ(lines_of(changes_csv(job, bed)).size(), 1u);
}

// The tab at 35 in is the third; jack bolts are 4 in apart along and 2-1/2 in up on mains 6 in
// deep: 1-3/4 and 4-1/4 in below their tops.
TEST(StandingLists, ChangesAreInTheOrderOfTheWork) {
  const Job job =
      demo_job("lot_frame", {"frame.tabs.to_cut_off=[21 in]",
                             "frame.tabs.right.to_file=[{at: 35 in, slot_length: 1-1/8 in}]",
                             "frame.tabs.left.to_replace=[{at: 231 in, with: 230 in}]", "jacks[2]=120 in",
                             "frame.jack.to_move=[{from: 126 in, to: 120 in}]"});
  std::vector<std::string> lines = lines_of(changes_csv(job, bed_of(job)));
  ASSERT_FALSE(lines.empty());
  lines.erase(lines.begin());
  EXPECT_THAT(lines,
              ElementsAre("1,CUT OFF,\"tabs L2, R2\",2,both,21 in,533.400,,,,,",
                          "2,CUT OFF,tab L17,1,left,231 in,5867.400,,,,,",
                          "3,FILE,tab R3,1,right,35 in,889.000,,,1-1/8 in,28.575,25.400",
                          "4,UNBOLT,both jacks,2,both,126 in,3200.400,,,,,",
                          "5,DRILL,both mains' webs,2,both,118 in,2997.200,1-3/4 in,44.450,5/8 in,15.875,",
                          "6,DRILL,both mains' webs,2,both,118 in,2997.200,4-1/4 in,107.950,5/8 in,15.875,",
                          "7,DRILL,both mains' webs,2,both,122 in,3098.800,1-3/4 in,44.450,5/8 in,15.875,",
                          "8,DRILL,both mains' webs,2,both,122 in,3098.800,4-1/4 in,107.950,5/8 in,15.875,",
                          "9,BOLT UP,\"jacks L2, R2\",2,both,120 in,3048.000,,,,,",
                          "10,WELD ON,new tab L19,1,left,230 in,5842.000,,,1/4 in,6.350,"));
}

// 3 tabs cut off at 12 minutes, 1 filed at 10, 8 holes at 6, 2 jacks at 20, 1 tab welded on at 30:
// 36 + 10 + 48 + 40 + 30 = 164; not one left out.
TEST(StandingLists, MinutesAreTheShopsOwnOrNotSaid) {
  const WorkCount work{3, 1, 1, 8, 2, 0};
  TaskTimes times{12, 10, 30, 6, 20, 0};
  ASSERT_TRUE(minutes_of(work, times));
  EXPECT_NEAR(*minutes_of(work, times), 164, 1e-9);
  EXPECT_NEAR(*minutes_of(WorkCount{}, TaskTimes{}), 0, 1e-9);
  times.drill_hole = 0;
  EXPECT_FALSE(minutes_of(work, times));
}

}  // namespace
}  // namespace bedwright
