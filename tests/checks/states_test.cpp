// Things in each of their states: jacks run down, the tongue jack's crank through its
// turn. What a shop can bring too near is found; the demos are clear.
#include "checks/small_bed.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_job;
using ::testing::IsEmpty;

std::vector<Finding> moving(const Job& job) {
  const Bed bed = testing::bed_of(job);
  std::vector<Finding> found;
  for (Finding& f : run_checks({bed, job.order.limits, &job, nullptr, {}}))
    if (f.code == "CLASH-MOVING") found.push_back(std::move(f));
  return found;
}

bool names(const std::vector<Finding>& found, const std::string& a, const std::string& b) {
  return std::any_of(found.begin(), found.end(), [&](const Finding& f) {
    return (f.subjects[0].starts_with(a) && f.subjects[1].starts_with(b)) || (f.subjects[0].starts_with(b) && f.subjects[1].starts_with(a));
  });
}

TEST(States, AreThereForTheChecksOnly) {
  const Bed bed = testing::demo_bed("base");
  for (const char* name : {"jack L1 run down", "jack R2 run down", "tongue jack run down", "tongue jack handle through its turn"}) {
    const int item = bed.find_item(name);
    ASSERT_GE(item, 0) << name;
    EXPECT_FALSE(bed.items[item].shown) << name;
    EXPECT_TRUE(bed.items[item].moving) << name;
    EXPECT_GT(bed.items[item].group, 0) << name;
  }
  EXPECT_EQ(bed.items[bed.find_item("jack L1")].group, bed.items[bed.find_item("jack L1 run down")].group);
  EXPECT_NE(bed.items[bed.find_item("jack L1")].group, bed.items[bed.find_item("jack R1")].group);
}

TEST(States, TheDemosAreClear) {
  for (const std::string& order : testing::good_orders) EXPECT_THAT(moving(demo_job(order)), IsEmpty()) << order;
}

// A tongue jack 8 in ahead of the mains, its crank turning at their height: the front
// member's toes reach 1.92 in toward it. Without the kernel the turn counts as the
// twelve-sided prism about it, 3.5 % wider; tests/planted has it to the sixteenth.
TEST(States, ALongCrankMeetsTheFrontMember) {
  Job job = demo_job("base");
  job.frame.tongue_jack.behind_front = 30 * inch;
  job.frame.tongue_jack.above = 3 * inch;
  job.frame.tongue_jack.handle_radius = 5.6 * inch;
  EXPECT_FALSE(names(moving(job), "tongue jack handle", "front member"));
  job.frame.tongue_jack.handle_radius = 5.9 * inch;
  EXPECT_TRUE(names(moving(job), "tongue jack handle", "front member"));
}

// A post in the clamp's way half along its slide, clear of it at both ends, is found;
// so is one that only a lean between the outermost ones meets.
TEST(States, AClampMeetsWhatIsBetweenItsEnds) {
  const Job job = demo_job("base");
  const KitClamp& k = job.kit.clamp;
  const auto with_post = [&](Mm y, Mm z, bool swept) {
    Bed bed = testing::bed_of(job);
    const Item pose = bed.items[bed.find_item("clamp 1 on bunk 5, leaning in, outer end")];
    const Vec3 foot{pose.placement.origin.x + k.base_length / 2, y, pose.placement.origin.z + z};
    Bought post;
    post.envelope.push_back({Placement{}, foot - Vec3{5, 5, 5}, foot + Vec3{5, 5, 5}, 0});
    Item item;
    item.part = bed.add_part({"post", "", Origin::bought, post});
    item.name = "post";
    bed.add_item(item);
    if (!swept) {
      for (Item& i : bed.items)
        if (i.between) i.placement.origin.z += 10000;
    }
    std::vector<Finding> found;
    for (Finding& f : run_checks({bed, job.order.limits, &job, nullptr, {}}))
      if (f.code == "CLASH-MOVING" && f.severity == Severity::stop && (f.subjects[0] == "post" || f.subjects[1] == "post")) found.push_back(f);
    return found;
  };
  const Mm half_way = (k.travel_from + k.travel_to) / 2, half_up = k.base_height + k.arm_height / 2;
  const auto found = with_post(half_way, half_up, true);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_TRUE(found[0].subjects[0] == "clamp 1 on bunk 5, between its ends" || found[0].subjects[1] == "clamp 1 on bunk 5, between its ends");
  EXPECT_THAT(with_post(half_way, half_up, false), IsEmpty());
  // At its outer end, a little outside the arm when that stands upright: only leaning
  // some way out does it come there.
  const Mm outside = k.travel_to + k.arm_width / 2 + 20, up = k.base_height + k.arm_height * 0.6;
  EXPECT_FALSE(with_post(outside, up, true).empty());
  EXPECT_THAT(with_post(k.travel_to + k.arm_height + k.arm_width, up, true), IsEmpty());
}

// The axle's tube rises with its wheels, toward the mains.
TEST(States, AnAxleAtFullBumpMeetsTheMain) {
  Job job = demo_job("base");
  const FrameAxle& a = job.frame.axle;
  const Mm near = a.below - a.tube_diameter / 2 - job.order.limits.moving_clearance;
  job.frame.axle.bump = near - 0.04 * a.tube_diameter / 2;
  EXPECT_FALSE(names(moving(job), "axle 1 at full bump", "main"));
  job.frame.axle.bump = near + 0.1;
  EXPECT_TRUE(names(moving(job), "axle 1 at full bump", "main"));
}

// A jack over the axle runs down onto its spring or its tyre.
TEST(States, AJackRunDownOntoTheWheelIsFound) {
  Job job = demo_job("base");
  job.frame.jack.post_bottom = -8 * inch;
  job.frame.axle.tyre_inside = 46 * inch;
  job.order.jacks = {job.order.axle.position};
  EXPECT_TRUE(names(moving(job), "jack", "wheel"));
}

}  // namespace
}  // namespace bedwright
