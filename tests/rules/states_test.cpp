// Things in each of their states: jacks run down, the tongue jack's crank through its
// turn. What a shop can bring too near is found; the demos are clear.
#include "rules/small_bed.h"
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

// Whether a thing of kind `a`, in that pose, is found too near one of kind `b`.
bool meet(const std::vector<Finding>& found, Kind a, Pose pose, Kind b) {
  return std::any_of(found.begin(), found.end(), [&](const Finding& f) {
    const auto is = [&](int p, int q) {
      const Identity &first = f.subjects[p].id, &second = f.subjects[q].id;
      return first.kind == a && first.pose == pose && second.kind == b;
    };
    return is(0, 1) || is(1, 0);
  });
}

Identity posed(Identity id, Pose pose) {
  id.pose = pose;
  return id;
}

TEST(States, AreThereForTheChecksOnly) {
  const Bed bed = testing::demo_bed("base");
  const Identity jack_l1{Kind::jack, Side::left, 1}, jack_r2{Kind::jack, Side::right, 2},
      tongue_jack{Kind::tongue_jack};
  for (const Identity& state : {posed(jack_l1, Pose::run_down), posed(jack_r2, Pose::run_down),
                                posed(tongue_jack, Pose::run_down), posed(tongue_jack, Pose::handle_turn)}) {
    const Item& item = bed.items[bed.item(state)];
    EXPECT_FALSE(item.shown) << name(state);
    EXPECT_TRUE(item.moving) << name(state);
    EXPECT_TRUE(bed.items[bed.item(whole_thing(state))].shown) << name(state);
  }
}

TEST(States, TheDemosAreClear) {
  for (const std::string& order : testing::good_orders)
    EXPECT_THAT(moving(demo_job(order)), IsEmpty()) << order;
}

// A tongue jack 8 in ahead of the mains, its crank turning at their height: the front
// member's toes reach 1.92 in toward it. Without the kernel the turn counts as the
// twelve-sided prism about it, 3.5 % wider; tests/planted has it to the sixteenth.
TEST(States, ALongCrankMeetsTheFrontMember) {
  Job job = demo_job("base");
  job.frame.tongue_jack.behind_front = 30 * inch;
  job.frame.tongue_jack.above = 3 * inch;
  job.frame.tongue_jack.handle_radius = 5.6 * inch;
  EXPECT_FALSE(meet(moving(job), Kind::tongue_jack, Pose::handle_turn, Kind::front_member));
  job.frame.tongue_jack.handle_radius = 5.9 * inch;
  EXPECT_TRUE(meet(moving(job), Kind::tongue_jack, Pose::handle_turn, Kind::front_member));
}

// A post in the clamp's way half along its slide, clear of it at both ends, is found;
// so is one that only a lean between the outermost ones meets.
TEST(States, AClampMeetsWhatIsBetweenItsEnds) {
  const Job job = demo_job("base");
  const KitClamp& k = job.kit.clamp;
  const Identity clamp{Kind::clamp, Side::middle, 1, 0, End::none, 5}, post_id = some(99);
  const auto with_post = [&](Mm y, Mm z, bool swept) {
    Bed bed = testing::bed_of(job);
    const Item pose = bed.items[bed.item(posed(clamp, Pose::in_outer))];
    const Vec3 foot{pose.placement.origin.x + k.base_length / 2, y, pose.placement.origin.z + z};
    Bought post;
    post.envelope.push_back({Placement{}, foot - Vec3{5, 5, 5}, foot + Vec3{5, 5, 5}, 0});
    Item item;
    item.part = bed.add_part({post_id, "", Origin::bought, post});
    item.id = post_id;
    bed.add_item(item);
    if (!swept) {
      for (Item& i : bed.items)
        if (i.id.pose == Pose::between) i.placement.origin.z += 10000;
    }
    std::vector<Finding> found;
    for (Finding& f : run_checks({bed, job.order.limits, &job, nullptr, {}}))
      if (f.code == "CLASH-MOVING" && f.severity == Severity::stop &&
          (f.subjects[0].id == post_id || f.subjects[1].id == post_id))
        found.push_back(f);
    return found;
  };
  const Mm half_way = (k.travel_from + k.travel_to) / 2, half_up = k.base_height + k.arm_height / 2;
  const auto found = with_post(half_way, half_up, true);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_THAT(about(found[0]), ::testing::Contains(posed(clamp, Pose::between)));
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
  EXPECT_FALSE(meet(moving(job), Kind::axle, Pose::full_bump, Kind::main));
  job.frame.axle.bump = near + 0.1;
  EXPECT_TRUE(meet(moving(job), Kind::axle, Pose::full_bump, Kind::main));
}

// A jack over the axle runs down onto its spring or its tyre.
TEST(States, AJackRunDownOntoTheWheelIsFound) {
  Job job = demo_job("base");
  job.frame.jack.post_bottom = -8 * inch;
  job.frame.axle.tyre_inside = 46 * inch;
  job.order.jacks = {job.order.axle.position};
  EXPECT_TRUE(meet(moving(job), Kind::jack, Pose::run_down, Kind::wheel));
}

}  // namespace
}  // namespace bedwright
