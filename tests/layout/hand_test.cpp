// Left and right: two items of one part on the two sides of the bed must be each
// other's mirror image, or the part would have to be two, a left and a right one.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "bed/names.h"
#include "support/demo.h"

namespace bedwright {
namespace {

// A part's own points, enough to tell its hand: corners of its outline or profile at
// both ends, and each hole's middle with points along its slot and axis.
std::vector<Vec3> own_points(const Part& part) {
  std::vector<Vec3> all;
  if (const Plate* p = std::get_if<Plate>(&part.form)) {
    for (const Mm z : {0.0, p->thickness}) {
      for (const Vertex& v : p->outline) all.push_back({v.at.x, v.at.y, z});
      for (const Hole& h : p->holes)
        for (const double way : {-1.0, 1.0})
          all.push_back({h.at.x + way * h.length / 2 * std::cos(h.angle),
                         h.at.y + way * h.length / 2 * std::sin(h.angle), z});
    }
  } else if (const Member* m = std::get_if<Member>(&part.form)) {
    for (const Vertex& v : profile(m->section)) {
      all.push_back({v.at.x * std::tan(m->start_mitre), v.at.x, v.at.y});
      all.push_back({m->length + v.at.x * std::tan(m->end_mitre), v.at.x, v.at.y});
    }
    for (const FaceHole& h : m->holes) {
      const HoleFrame f = hole_frame(m->section, h);
      for (const double way : {-1.0, 1.0})
        all.push_back(f.centre + way * (h.hole.slotted() ? h.hole.length : 0) / 2 * f.slot_axis);
    }
  }
  return all;
}

std::vector<Vec3> world_points(const Bed& bed, const Item& item, double flip) {
  std::vector<Vec3> all;
  for (const Vec3& p : own_points(bed.parts[item.part])) {
    const Vec3 w = item.placement.point(p);
    all.push_back({w.x, flip * w.y, w.z});
  }
  return all;
}

bool holds(const std::vector<Vec3>& all, Vec3 p) {
  return std::any_of(all.begin(), all.end(), [&](const Vec3& q) { return norm(q - p) < 1e-3; });
}

// How many pairs were looked at.
int expect_mirrored(const Bed& bed, const std::string& what) {
  int pairs = 0;
  for (const Item& right : bed.items) {
    if (!right.shown || right.id.side != Side::right || right.bolt >= 0) continue;
    Identity other = right.id;
    other.side = Side::left;
    const Item& left = bed.items[bed.item(other)];
    const std::vector<Vec3> there = world_points(bed, left, 1), here = world_points(bed, right, -1);
    if (there.empty()) continue;
    ++pairs;
    EXPECT_EQ(there.size(), here.size()) << what << ": " << name(right);
    EXPECT_TRUE(std::all_of(here.begin(), here.end(), [&](const Vec3& p) { return holds(there, p); }))
        << what << ": " << name(right) << " is not the mirror image of " << name(left);
  }
  return pairs;
}

TEST(Hand, the_demo_beds_two_sides_are_mirror_images) {
  for (const std::string& name : testing::good_orders)
    EXPECT_GT(expect_mirrored(testing::demo_bed(name), name), 20);
}

TEST(Hand, the_sides_of_random_beds_are_mirror_images) {
  std::mt19937 random(4);
  const auto pick = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(random); };
  const std::vector<Job> jobs = {testing::demo_job("base"), testing::demo_job("one_extension"),
                                 testing::demo_job("metric")};
  for (int i = 0; i < 60; ++i) {
    Job job = jobs[static_cast<std::size_t>(pick(0, 2))];
    TrackOrder& track = job.order.track;
    track.clamps.clear();
    track.log_stops.clear();
    track.bunk_pitch = pick(15 * 16, 25 * 16) * inch / 16;
    track.rail_length = pick(3, 5) * track.bunk_pitch;
    job.order.jacks = {pick(300, 600) * 1.0, pick(1500, 3000) * 1.0};
    job.frame.jack.bolt_x = pick(60, 120);
    job.frame.jack.bolt_z = pick(40, 70);
    job.frame.jack.hole.slot = pick(0, 1) ? std::optional<Mm>(25) : std::nullopt;
    if (pick(0, 1)) {  // holes a maker lists, not even about the section's middle
      job.kit.mounting.max_pitch.reset();
      job.kit.mounting.positions = {120, 500.0 + pick(0, 60), track.rail_length - 90};
    }
    EXPECT_GT(expect_mirrored(testing::bed_of(job), "random bed " + std::to_string(i)), 10);
  }
}

// Holes that are not the same from either end make the rail two parts, each named by
// its side, one the mirror image of the other.
TEST(Hand, a_rail_with_uneven_holes_is_a_left_and_a_right_one) {
  Job job = testing::demo_job("base");
  job.kit.mounting.max_pitch.reset();
  job.kit.mounting.positions = {100, 500, 1900};
  const Bed bed = testing::bed_of(job);
  const int left = bed.part({Kind::rail, Side::left}), right = bed.part({Kind::rail, Side::right});
  EXPECT_FALSE(bed.find_part({Kind::rail}));
  EXPECT_EQ(bed.count(left), bed.track.sections);
  EXPECT_EQ(bed.count(right), bed.track.sections);
  EXPECT_FALSE(bed.parts[left].form == bed.parts[right].form);
  EXPECT_GT(expect_mirrored(bed, "uneven"), 10);
  // Even holes: one part serves both.
  const Bed even = testing::demo_bed("base");
  EXPECT_EQ(even.count(even.part({Kind::rail})), 2 * even.track.sections);
}

// The looking itself: a main whose hole is off mid depth, used for both sides, is seen.
TEST(Hand, a_part_used_on_the_wrong_side_is_seen) {
  Bed bed = testing::demo_bed("base");
  Member& main = std::get<Member>(bed.parts[bed.items[bed.item({Kind::main, Side::right})].part].form);
  main.holes.push_back({Face::web, {{700, 20}, 12, 12, 0, Process::drilled, Kind::none}});
  const Item &right = bed.items[bed.item({Kind::main, Side::right})],
             &left = bed.items[bed.item({Kind::main, Side::left})];
  const std::vector<Vec3> there = world_points(bed, left, 1), here = world_points(bed, right, -1);
  EXPECT_FALSE(std::all_of(here.begin(), here.end(), [&](const Vec3& p) { return holds(there, p); }));
}

}  // namespace
}  // namespace bedwright
