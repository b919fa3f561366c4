// CLASH and CLASH-MOVING: overlaps and touches, what is left out, what the judge
// is asked, and that the shift offered does free the pair.
#include "rules/clash/clash.h"

#include <random>

#include "rules/small_bed.h"

namespace bedwright {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

struct FixedJudge : PairJudge {
  std::optional<PairResult> answer = PairResult{};
  int asked = 0, last_a = -1, last_b = -1;
  bool last_without = false;
  std::optional<PairResult> judge(int a, int b, bool without_shank_of_a) override {
    ++asked;
    last_a = a, last_b = b, last_without = without_shank_of_a;
    return answer;
  }
};

constexpr Identity log_stop{Kind::log_stop, Side::middle, 1};

SmallBed two_boxes(Mm gap, bool moving = false) {
  SmallBed s;
  s.box(log_stop, {0, 0, 0}, {100, 100, 100});
  s.box(some(2), {100 + gap, 20, 20}, {180 + gap, 60, 60}, moving);
  return s;
}

TEST(Clash, TouchingIsFineAndOverlapIsNot) {
  EXPECT_THAT(two_boxes(0).faults(), IsEmpty());
  EXPECT_THAT(two_boxes(-clash_depth + 0.001).faults(), IsEmpty());
  const auto found = two_boxes(-clash_depth - 0.001).faults();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].code, "CLASH");
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_NEAR(found[0].measured, -clash_depth - 0.001, 1e-9);
  EXPECT_THAT(about(found[0]), testing::ElementsAre(log_stop, some(2)));
  EXPECT_NEAR(found[0].x, 100 - clash_depth / 2, 0.01);
}

TEST(Clash, JoinedAndStatesOfOneThingAreLeftOut) {
  SmallBed s = two_boxes(-10);
  s.bed.joined.push_back({1, 0, "by design"});
  EXPECT_THAT(s.faults(), IsEmpty());
  s.bed.joined.clear();
  const Identity jack{Kind::jack, Side::right, 2};
  s.bed.items[0].id = s.bed.items[1].id = jack;
  s.bed.items[1].id.pose = Pose::run_down;
  EXPECT_THAT(s.faults(), IsEmpty());
  s.bed.items[1].id.number = 3;
  EXPECT_THAT(s.of("CLASH"), SizeIs(1));
}

TEST(Clash, AThingThatBelongsOnNoBedIsNotMovedAboutInSilence) {
  SmallBed s = two_boxes(-1);
  s.bed.items[1].id = {Kind::overall_width};
  EXPECT_THROW(s.run(), std::logic_error);
}

TEST(Clash, AWeldDoesNotExcuseAnOverlap) {
  SmallBed s = two_boxes(-1);
  s.bed.welds.push_back({0, 1, 6, 100});
  EXPECT_THAT(s.of("CLASH"), SizeIs(1));
}

TEST(Clash, HiddenStatesAreTestedToo) {
  SmallBed s = two_boxes(-1);
  s.bed.items[1].shown = false;
  EXPECT_THAT(s.of("CLASH"), SizeIs(1));
}

TEST(Clash, ShankIsExcusedInItsPliesOnlyAndTheHeadNowhere) {
  SmallBed s;
  const int under = s.plate(some(1), {0, 0, 0}, {100, 100}, 6, {round_hole({}, 14)});
  const int top = s.plate(some(2), {0, 0, 6}, {100, 100}, 6, {round_hole({}, 14)});
  s.bolt(bunk_bolt_r1, {top, under}, 34);
  FixedJudge judge;
  s.judge = &judge;
  EXPECT_THAT(s.faults(), IsEmpty());
  EXPECT_EQ(judge.asked, 0);  // everything touches; nothing is left to ask
  // What the tip meets first is for TIP to say, and CLASH does not say it again.
  s.plate(some(3), {0, 0, -17}, {40, 100}, 1);
  judge.answer = PairResult{0, 250};
  EXPECT_THAT(s.of("TIP"), SizeIs(1));
  EXPECT_THAT(s.of("CLASH"), IsEmpty());
  // A plate that is no ply, pierced by the shank: covering shapes meet, so the judge is asked.
  s.plate(some(4), {0, 0, -21}, {40, 100}, 2);
  judge.answer = PairResult{0, 250};
  ASSERT_THAT(s.of("CLASH"), SizeIs(1));
  EXPECT_FALSE(judge.last_without);
  EXPECT_THAT(s.of("CLASH")[0].message, HasSubstr("250 mm3"));
  // The head sunk into its own ply: exact head, pierced plate.
  SmallBed sunk = s;
  sunk.bed.items.pop_back();
  sunk.bed.items.pop_back();
  for (Item& item : sunk.bed.items)
    if (item.id == bunk_bolt_r1) item.placement.origin.z -= 4;
  judge.asked = 0;
  ASSERT_THAT(sunk.of("CLASH"), SizeIs(1));
  EXPECT_EQ(sunk.bed.items[judge.last_a].id, bunk_bolt_r1);
  EXPECT_EQ(judge.last_b, top);
  EXPECT_TRUE(judge.last_without);
}

SmallBed plate_with_hole_over_box() {
  SmallBed s;
  s.plate(some(1), {0, 0, 0}, {200, 200}, 10, {round_hole({}, 60)});
  s.box(some(2), {-10, -10, -50}, {10, 10, 50});  // through the hole: no clash
  return s;
}

TEST(Clash, UndecidedPairsAreSaidToBeWhenThereIsNoJudge) {
  const auto found = plate_with_hole_over_box().faults();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::warn);
  EXPECT_THAT(found[0].message, HasSubstr("not decided"));
}

TEST(Clash, TheJudgeDecides) {
  SmallBed s = plate_with_hole_over_box();
  FixedJudge judge;
  s.judge = &judge;
  judge.answer = PairResult{20, 0};
  EXPECT_THAT(s.faults(), IsEmpty());
  judge.answer = PairResult{0, clash_volume - 0.01};
  EXPECT_THAT(s.faults(), IsEmpty());
  judge.answer = PairResult{0, clash_volume + 0.01};
  ASSERT_THAT(s.faults(), SizeIs(1));
  EXPECT_EQ(s.faults()[0].severity, Severity::stop);
}

TEST(Clash, WhatTheJudgeCannotDecideIsStopped) {
  SmallBed s = plate_with_hole_over_box();
  FixedJudge judge;
  s.judge = &judge;
  judge.answer = std::nullopt;
  const auto found = s.faults();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_THAT(found[0].message, HasSubstr("one of them cannot be made"));
}

TEST(Clash, TheShiftOfferedFreesThePair) {
  std::mt19937 r(4);
  std::uniform_real_distribution<> any(-80, 80);
  int clashes = 0;
  for (int n = 0; n < 60; ++n) {
    SmallBed s;
    s.box(some(1), {0, 0, 0}, {60, 50, 40});
    Bought two;
    two.envelope.push_back({Placement{}, {0, 0, 0}, {30, 30, 60}, 0});
    two.envelope.push_back(
        {Placement{{50, 0, 0}, {0.6, 0.8, 0}, {-0.8, 0.6, 0}}, {0, 0, 0}, {20, 40, 20}, 0});
    const int b = s.add({some(2), "", Origin::bought, two}, some(2), {{any(r), any(r), any(r) / 4}});
    if (s.of("CLASH").empty()) continue;
    ++clashes;
    const CheckInput input{s.bed, s.limits, nullptr, nullptr, {}};
    const Vec3 shift = least_shift(Scene(input), b, 0, 0, false);
    SmallBed freed = s;
    freed.bed.items[b].placement.origin = s.bed.items[b].placement.origin + shift;
    EXPECT_THAT(freed.of("CLASH"), IsEmpty());
    SmallBed short_of = s;
    short_of.bed.items[b].placement.origin =
        s.bed.items[b].placement.origin + (1 - 0.2 / norm(shift)) * shift;
    if (norm(shift) > 0.5) {
      EXPECT_THAT(short_of.of("CLASH"), SizeIs(1));
    }
  }
  EXPECT_GT(clashes, 10);
}

// What a shop moves of two things in each other's way, whichever comes first.
TEST(Clash, ThingsAreMovedByHowReadilyAShopMovesThem) {
  const auto remedy = [](Kind first, Kind second, bool moving = false) {
    SmallBed s;
    s.box({first, Side::right, 1}, {0, 0, 0}, {50, 50, 50});
    s.box({second, Side::right, 2}, {45, 0, 0}, {90, 50, 50}, moving);
    return s.run().at(0).remedy;
  };
  const Kind stays[] = {
      Kind::rail,      Kind::bunk,      Kind::joint_gusset,    Kind::track_stop, Kind::head,
      Kind::tab,       Kind::tab_pad,   Kind::track_bolt,      Kind::bunk_bolt,  Kind::gusset_bolt,
      Kind::stop_bolt, Kind::jack_bolt, Kind::tongue_jack_bolt};
  const Kind moved[] = {Kind::main,       Kind::cross_member, Kind::front_member,  Kind::rear_member,
                        Kind::tongue,     Kind::tongue_plate, Kind::corner_gusset, Kind::jack_plate,
                        Kind::axle,       Kind::wheel,        Kind::jack,          Kind::coupler,
                        Kind::tongue_jack};
  for (const Kind kind : stays) {
    EXPECT_THAT(remedy(Kind::rail, kind), HasSubstr("must come")) << word(kind);
    EXPECT_THAT(remedy(Kind::main, kind), HasSubstr("move main R1")) << word(kind);
  }
  for (const Kind kind : moved) {
    EXPECT_THAT(remedy(Kind::rail, kind), HasSubstr("move " + word(kind) + " R2")) << word(kind);
    EXPECT_THAT(remedy(Kind::log_stop, kind), HasSubstr("move log stop R1")) << word(kind);
    EXPECT_THAT(remedy(Kind::coupler, kind, true), HasSubstr("move " + word(kind) + " R2"))
        << word(kind) << ", which moves anyway";
  }
  EXPECT_THAT(remedy(Kind::log_stop, Kind::clamp), HasSubstr("move clamp R2"));
}

TEST(ClashMoving, WarnsWithinTheClearanceAndStopsOnOverlap) {
  const Mm clearance = inch / 4;
  EXPECT_THAT(two_boxes(clearance + 0.001, true).faults(), IsEmpty());
  auto found = two_boxes(clearance - 0.001, true).faults();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].code, "CLASH-MOVING");
  EXPECT_EQ(found[0].severity, Severity::warn);
  EXPECT_NEAR(found[0].measured, clearance - 0.001, 1e-9);
  EXPECT_EQ(two_boxes(0, true).run().at(0).severity, Severity::warn);
  found = two_boxes(-1, true).faults();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_THAT(found[0].remedy, HasSubstr("move log stop 1"));
  EXPECT_THAT(found[0].remedy, HasSubstr("forward"));
}

TEST(ClashMoving, TheJudgesGapReplacesTheBound) {
  // Corner to corner the axes show 5 and 5, the distance is 7.07: past 6.35.
  SmallBed s;
  s.box(some(1), {0, 0, 0}, {10, 10, 10});
  s.box(some(2), {15, 15, 0}, {25, 25, 10}, true);
  ASSERT_THAT(s.faults(), SizeIs(1));
  EXPECT_THAT(s.faults()[0].message, HasSubstr("may come"));
  FixedJudge judge;
  judge.answer = PairResult{std::sqrt(50.0), 0};
  s.judge = &judge;
  EXPECT_THAT(s.faults(), IsEmpty());
}

TEST(ClashMoving, PosesOfOneThingMakeOneFindingTheWorst) {
  SmallBed s;
  const Identity head{Kind::head, Side::middle, 0, 0, End::none, 0, Pose::running};
  const auto clamp = [](Pose pose) { return Identity{Kind::clamp, Side::middle, 1, 0, End::none, 5, pose}; };
  s.box(head, {0, 0, 0}, {1000, 100, 100}, true);
  s.box(clamp(Pose::in_outer), {500, 95, 0}, {540, 140, 100}, true);
  s.box(clamp(Pose::out_outer), {500, 80, 0}, {540, 140, 100}, true);
  const auto found = s.faults();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_THAT(about(found[0]), testing::ElementsAre(head, clamp(Pose::out_outer)));
  EXPECT_NEAR(found[0].measured, -20, 1e-9);
  EXPECT_THAT(found[0].message, HasSubstr("the worst of 2"));
  EXPECT_THAT(found[0].remedy, HasSubstr("move clamp 1 on bunk 5, leaning out, outer end"));
}

}  // namespace
}  // namespace bedwright
