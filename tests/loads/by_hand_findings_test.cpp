// What the rules about loads say of a bed that is past a limit: what is measured and what is
// allowed, against hand statics and against what the order and the frame's file state. The
// sums are those of by_hand_road_test.cpp and by_hand_work_test.cpp.
#include <gtest/gtest.h>

#include <functional>

#include "loads/by_hand.h"
#include "loads/worked.h"
#include "rules/loads/rules.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using namespace testing;

struct Judged {
  Job job;
  Bed bed;
  LoadsResult loads;
  std::vector<Finding> findings;
  explicit Judged(
      const std::vector<std::string>& sets, const std::function<void(Job&)>& change = [](Job&) {})
      : job(made(sets, change)), bed(bed_of(job)), loads(run_loads(job, bed)) {
    findings = load_findings(job, bed, loads, job.order.order.figures(), false);
  }
  // `way`: what its name says of how it travels, where there is one for each way.
  const Finding& of(const std::string& code, Kind kind, const std::string& way = "") const {
    for (const Finding& f : findings)
      if (f.code == code && f.subjects.front().id.kind == kind && f.subjects.front().name.ends_with(way))
        return f;
    throw std::runtime_error("nothing is said by " + code);
  }
  double used(const std::string& code, const std::string& figure) const {
    for (const LoadMargin& m : load_margins(job, loads))
      if (m.code == code && m.figure == figure) return m.used;
    throw std::runtime_error("no margin of " + code);
  }

 private:
  static Job made(const std::vector<std::string>& sets, const std::function<void(Job&)>& change) {
    std::vector<std::string> all{"axle.position=137 in", "kit.head.lock_offset=104 in",
                                 "kit.head.mass=610 lb", "kit.head.mass_y=3 in",
                                 "jacks=[17 in, 120 in, 223 in]"};
    all.insert(all.end(), straight_log.begin(), straight_log.end());
    all.insert(all.end(), sets.begin(), sets.end());
    Job job = demo_job("base", all);
    change(job);
    return job;
  }
};

// Measured past a most.
void expect_said(const Finding& f, double measured, double most, double tolerance = 0.03) {
  EXPECT_NEAR(f.measured, measured, tolerance * std::abs(measured)) << f.code << ": " << f.message;
  EXPECT_NEAR(f.limit, most, 1e-4 * std::abs(most) + 1e-9) << f.code;
  EXPECT_NEAR(f.margin, most - f.measured, 1e-4 * std::abs(most) + 1e-9) << f.code;
}
void expect_near(double found, double by_hand, double tolerance = 0.03) {
  EXPECT_NEAR(found, by_hand, tolerance * std::abs(by_hand));
}

// "7-7/8 in" in inches.
double inches(const std::string& text) {
  const std::size_t dash = text.find('-'), slash = text.find('/');
  const double whole = dash == std::string::npos && slash != std::string::npos ? 0 : std::stod(text);
  if (slash == std::string::npos) return whole;
  const std::size_t from = dash == std::string::npos ? 0 : dash + 1;
  return whole + std::stod(text.substr(from)) / std::stod(text.substr(slash + 1));
}

Lumps all_of_base() { return both({frame_of_base(), track_of_base(), axles_at({137}), head_at_lock(610)}); }
const double tongue = tongue_of(all_of_base(), 137), whole = weight(all_of_base());

TEST(ByHandFindings, RatingsOfWhatIsBought) {
  const Judged j({"frame.coupler.rating=1500 lb", "frame.axle.axle_rating=1200 lb",
                  "frame.axle.tyre_rating=700 lb", "frame.tongue_jack.rating=200 lb"});
  const double axle = whole - tongue, tyre = axle / 2 + (610 * 3 + aside_of_track) / 65.125,
               jack = tongue * 178 / 161;
  expect_said(j.of("TOW-COUPLER", Kind::coupler), whole, 1500);
  expect_said(j.of("TOW-AXLE", Kind::axle), axle, 1200);
  expect_said(j.of("TOW-TYRE", Kind::wheel), tyre, 700);
  expect_said(j.of("TONGUE-JACK", Kind::tongue_jack), jack, 200);
  // The next class of SAE J684, the next axle and jack that are sold: from memory.
  EXPECT_EQ(j.of("TOW-COUPLER", Kind::coupler).changes.at(0).value, "3500 lb");
  EXPECT_EQ(j.of("TOW-AXLE", Kind::axle).changes.at(0).value, "2000 lb");
  EXPECT_EQ(j.of("TONGUE-JACK", Kind::tongue_jack).changes.at(0).value, "500 lb");
  // Of the tyre's size, 205/75R15, the lightest in the Tire and Rim Association's tables.
  EXPECT_EQ(j.of("TOW-TYRE", Kind::wheel).changes.at(0).value, "1820 lb");
  expect_near(j.used("TOW-COUPLER", "coupler"), whole / 1500);
  expect_near(j.used("TOW-AXLE", "axle"), axle / 1200);
  expect_near(j.used("TOW-TYRE", "tyre"), tyre / 700);
}

// Past what is sold a rating is named in round figures, and no more than it needs.
TEST(ByHandFindings, ARatingPastWhatIsSold) {
  const Judged j({}, [](Job& job) { job.kit.head.mass = 15008 * pound; });
  const Lumps all = both({frame_of_base(), track_of_base(), axles_at({137}), head_at_lock(15008)});
  const Finding& f = j.of("TOW-COUPLER", Kind::coupler);
  expect_said(f, weight(all), 5000);
  const double next = std::stod(f.changes.at(0).value);
  EXPECT_NEAR(next, std::ceil(f.measured / 10) * 10, 1e-6);
}

TEST(ByHandFindings, ATongueJackWithoutARating) {
  const Finding f =
      Judged({}, [](Job& job) { job.frame.tongue_jack.rating = 0; }).of("TONGUE-JACK", Kind::tongue_jack);
  EXPECT_EQ(f.severity, Severity::warn);
  expect_said(f, tongue * 178 / 161, 0);
  EXPECT_NEAR(f.margin, -f.measured, 1e-9);
}

// Steel of 1 ksi yield, so that all that bends is past 1 / 1.67 ksi: what the tests of road,
// work and tabs work out, said in ksi.
TEST(ByHandFindings, StressesOfTheFramesSteel) {
  const Judged j({}, [](Job& job) { job.frame.yield_strength = 1 * ksi; });
  const double allowed = 1 / 1.67;
  const Lumps on = both({frame_of_base(), track_of_base(), head_at_lock(610)});
  const double side = 0.5 + (610 * 3 + aside_of_track) / weight(on) / 44;
  const double main = 2.0 * side * bent_by_hand(on, 261, {124, 150}, 137) / s_c6x82 / 1000;
  const double bare = bent_by_hand(frame_of_base(), 261, {124, 150}, 137) / s_c6x82 / 1000,
               off = bent_by_hand(both({frame_of_base(), track_of_base()}), 261, {124, 150}, 137) / s_c6x82 /
                     1000;
  expect_said(j.of("TOW-BEND", Kind::main), std::max({main, bare, off}), allowed, 0.06);
  expect_said(j.of("TONGUE-BEND", Kind::tongue), 2 * tongue * 41 / (2 * s_c5x67) / 1000, allowed);
  expect_near(j.used("TONGUE-BEND", "tongue"), 2 * tongue * 41 / (2 * s_c5x67) / 1000 / allowed);
  expect_near(j.used("TOW-BEND", "mains on the road"), std::max({main, bare, off}) / allowed, 0.06);
  // At work, on the figures by_hand_work_test.cpp holds to the same statics.
  const Stand& s = j.loads.stand;
  expect_said(j.of("STAND-BEND", Kind::main), s.main_stress / ksi, allowed, 1e-6);
  expect_said(j.of("STAND-BEND", Kind::main_web), s.web_stress / ksi, 0.6 * allowed, 1e-6);
  expect_said(j.of("TAB-WORK", Kind::tab), j.loads.tabs.tab_stress_at_work / ksi, allowed, 1e-6);
  expect_said(j.of("TAB-ROAD", Kind::tab), j.loads.tabs.tab_stress / ksi, allowed, 1e-6);
  const double used = j.used("STAND-BEND", "mains at work");
  expect_near(used, std::max(s.main_stress, s.web_stress / 0.6) / ksi / allowed, 1e-6);
  expect_near(j.used("TAB-WORK", "tabs at work"), j.loads.tabs.tab_stress_at_work / ksi / allowed, 1e-6);
  expect_near(j.used("TAB-ROAD", "tabs on the road"), j.loads.tabs.tab_stress / ksi / allowed, 1e-6);
}

TEST(ByHandFindings, RailsAndBunksOfTheKitsSteel) {
  const Judged j({"work.log.diameter=40 in", "work.log.position=120 in", "kit.mounting.max_pitch=70 in"});
  const Stand& s = j.loads.stand;
  for (const auto& [kind, stress] : {std::pair{Kind::rail, s.rail_stress}, {Kind::bunk, s.bunk_stress}})
    expect_said(j.of("STAND-BEND", kind), stress / ksi, 36 / 1.67, 1e-6);
  expect_near(j.used("STAND-BEND", "rails and bunks"),
              std::max(s.rail_stress, s.bunk_stress) / ksi * 1.67 / 36, 1e-6);
}

// Six times the load at rest over a bump: 0.60 x 70 ksi / 2 on the throat.
TEST(ByHandFindings, WeldsOfTheTongue) {
  const Judged j({"road.bump=6"});
  const Finding& f = j.of("TONGUE-WELD", Kind::tongue);
  expect_said(f, j.loads.tongue.weld / ksi, 21, 1e-6);
  expect_near(j.used("TONGUE-WELD", "tongue welds"), f.measured / 21, 1e-6);
}

// So heavy a head that running the tongue back does not do it: fillets larger by what is short, to
// the next sixteenth.
TEST(ByHandFindings, LargerWeldsOfTheTongue) {
  const Judged j({"road.bump=6", "kit.head.mass=9000 lb"});
  const Finding& f = j.of("TONGUE-WELD", Kind::tongue);
  const std::size_t at = f.remedy.find("fillets of ");
  ASSERT_NE(at, std::string::npos) << f.remedy;
  EXPECT_NEAR(inches(f.remedy.substr(at + 11)), std::ceil(3.0 / 16 * f.measured / 21 * 16) / 16, 1e-6);
}

// 2 g sideways on a head of 6000 lb, its centre 60 in above the rails' tops: tension, of which
// shear leaves (1.3 x 45 - 2 x 45 / 27 x f) / 2 (AISC 360 section J3.7).
TEST(ByHandFindings, TensionThatShearLeaves) {
  const Judged j({"road.cornering=2", "kit.head.mass=6000 lb", "kit.head.mass_z=60 in"});
  const double carried = 6000 + weight(track_of_base()) / 3, f = 2 * carried / 8 / 0.19635 / 1000;
  const double tension = (2.0 * 6000 * 63 / 46.5 / 4 + 0.5 * carried / 8) / 0.19635 / 1000;
  const Finding& bolt = j.of("TRACK-BOLT", Kind::track_bolt);
  EXPECT_NEAR(bolt.measured, tension, 0.02 * tension);
  EXPECT_NEAR(bolt.limit, (1.3 * 45 - 2 * 45 / 27.0 * f) / 2, 0.3);
}

TEST(ByHandFindings, TrackBoltsAndTabWelds) {
  const Judged j({"road.cornering=3", "road.rebound=3", "kit.head.mass=9000 lb"});
  const TabLoads& t = j.loads.tabs;
  const double carried = 9000 + weight(track_of_base()) / 3, f = 3 * carried / 8 / 0.19635 / 1000;
  ASSERT_GT(f, 13.5);
  const Finding& bolt = j.of("TRACK-BOLT", Kind::track_bolt);
  const double tension = (3.0 * 9000 * 25 / 46.5 / 4 + 3 * carried / 8) / 0.19635 / 1000;
  const double tension_allowed = std::max(0.0, (1.3 * 45 - 2 * 45 / 27.0 * f) / 2);
  const bool sheared = f / 13.5 > tension / std::max(tension_allowed, 1e-9);
  EXPECT_NEAR(bolt.measured, sheared ? f : tension, 0.02 * (sheared ? f : tension));
  EXPECT_NEAR(bolt.limit, sheared ? 13.5 : tension_allowed, 0.5);
  const Finding& weld = j.of("TAB-ROAD", Kind::tab_weld);
  EXPECT_EQ(weld.unit, "N/mm");
  // A fillet grows by what it is short of, to the next sixteenth.
  const double leg = 0.25 * weld.measured / weld.limit;
  EXPECT_EQ(weld.changes.at(0).key, "frame.tabs.weld_leg");
  EXPECT_NEAR(inches(weld.changes.at(0).value), std::ceil(leg * 16) / 16, 1e-6);
  expect_said(weld, t.weld, 928 * 4 * pound_force / inch, 1e-3);
}

// On two pairs of jacks: sag in millimetres, a sixteenth allowed.
TEST(ByHandFindings, SagAndJacks) {
  const Judged j({"jacks=[17 in, 223 in]", "frame.jack.rating=200 lb"});
  const Stand& s = j.loads.stand;
  const Finding& sag = j.of("STAND-SAG", Kind::main);
  expect_said(sag, s.main_sag + s.rail_sag, 25.4 / 16, 1e-6);
  expect_near(j.used("STAND-SAG", "sag"), (s.main_sag + s.rail_sag) / (25.4 / 16), 1e-6);
  double most = 0;
  for (const JackLoad& jack : s.jacks) most = std::max(most, jack.most / pound_force);
  for (const Finding& f : j.findings)
    if (f.code == "JACK-LOAD") {
      EXPECT_NEAR(f.limit, 200, 1e-6);
      for (const JackLoad& jack : s.jacks)
        if (jack.id == f.subjects.front().id) {
          EXPECT_NEAR(f.measured, jack.most / pound_force, 1e-6);
        }
      EXPECT_NEAR(f.margin, 200 - f.measured, 1e-6);
      ASSERT_EQ(f.changes.back().key, "frame.jack.rating");
      // Jacks are rated in steps of 500 lb: the next that is enough.
      EXPECT_NEAR(std::stod(f.changes.back().value), std::ceil(f.measured / 500) * 500, 1e-6);
    }
  expect_near(j.used("JACK-LOAD", "jacks"), most / 200, 1e-6);
}

// A millimetre allowed, on mains of C5x6.7 (7.48 in4): of the channels that are stiff enough and
// strong enough the lightest is named first. By AISC Manual table 1-5 that is C6x8.2, 13.1 in4.
TEST(ByHandFindings, TheNextChannelThatIsStiffEnough) {
  const Judged j({"frame.main.section=C5x6.7", "frame.cross_member.section=C3x4.1",
                  "frame.front_member.section=C5x6.7", "frame.rear_member.section=C5x6.7",
                  "work.sag_limit=1 mm"});
  const Finding& f = j.of("STAND-SAG", Kind::main);
  const double wanted = 7.48 * j.loads.stand.main_sag / (1 - j.loads.stand.rail_sag);
  ASSERT_GT(wanted, 7.48);
  ASSERT_LT(wanted, 13.1);
  std::string named;
  for (const Change& c : f.changes)
    if (named.empty() && c.key == "frame.main.section") named = c.value;
  EXPECT_EQ(named, wanted <= 8.9 ? "C5x9" : "C6x8.2");
}

TEST(ByHandFindings, AJackThatLifts) {
  const Judged j({}, [](Job& job) { job.kit.head.mass = 9000 * pound; });
  const Finding& f = j.of("JACK-LIFT", Kind::jack);
  double most = 0;
  for (const JackLoad& jack : j.loads.stand.jacks)
    if (jack.id == f.subjects.front().id) most = jack.lifts;
  EXPECT_NEAR(f.measured, most, 1e-9);
  EXPECT_NEAR(f.margin, -most, 1e-9);
  EXPECT_GT(most, 0);
}

// Half as much again should hold it as tips it (common practice, no published source).
TEST(ByHandFindings, PushAndRollOn) {
  const Judged j({"work.log.diameter=30 in", "work.log.position=120 in", "work.log.length=16 ft",
                  "work.log.species=northern red oak"});
  const double log = heaviest_of_its_kind * 2199.1 * 2.25, feet = 23.75;
  const double bed = weight(both({frame_of_base(), track_of_base(), axles_at({137})})) + 610,
               aside = 610 * 3 + aside_of_track;
  const double holds = bed * feet + aside + log * feet;  // its middle over the centre line
  const double factor = holds / (0.3 * log * (3.625 + 9 + 25.25));
  ASSERT_GT(factor, 1.5);
  const Judged pushed({"work.log.diameter=30 in", "work.log.position=120 in", "work.log.length=16 ft",
                       "work.log.species=northern red oak", "work.push=1"});
  const Finding& f = pushed.of("STAND-PUSH", Kind::bed);
  EXPECT_NEAR(f.measured, factor * 0.3, 0.02 * factor);
  EXPECT_NEAR(f.limit, 1.5, 1e-9);
  EXPECT_NEAR(f.margin, f.measured - 1.5, 1e-9);
}

TEST(ByHandFindings, TongueShareInPercent) {
  const Judged low({"axle.position=110 in"});
  const Lumps all = both({frame_of_base(), track_of_base(), axles_at({110}), head_at_lock(610)});
  const Finding& f = low.of("TOW-SHARE", Kind::tongue_load, "head locked front");
  const double share = 100 * tongue_of(all, 110) / weight(all);
  EXPECT_NEAR(f.measured, share, 0.6);
  EXPECT_NEAR(f.limit, 10, 1e-9);
  EXPECT_NEAR(f.margin, f.measured - 10, 1e-9);
  // "move the axle rearward by 27 in to 137 in"
  const double by = std::stod(f.remedy.substr(f.remedy.find(" by ") + 4)),
               to = std::stod(f.remedy.substr(f.remedy.find(" to ") + 4));
  EXPECT_NEAR(by, to - 110, 0.01) << f.remedy;
  EXPECT_NEAR(low.used("TOW-SHARE", "tongue share"), std::abs(f.measured - 12.5) / 2.5, 1e-6);
  const Judged high({"axle.position=170 in"});
  const Finding& g = high.of("TOW-SHARE", Kind::tongue_load, "head locked front");
  const Lumps back = both({frame_of_base(), track_of_base(), axles_at({170}), head_at_lock(610)});
  EXPECT_NEAR(g.measured, 100 * tongue_of(back, 170) / weight(back), 0.6);
  EXPECT_NEAR(g.limit, 15, 1e-9);
  EXPECT_NEAR(g.margin, 15 - g.measured, 1e-9);
}

// Towed with its head on only, and uncoupled without it: a twentieth should be on the jack.
TEST(ByHandFindings, TipsBackUncoupled) {
  const Judged j({"axle.position=112 in", "kit.head.lock_offset=76 in", "road.travels=[{head: front}]"});
  const Lumps off = both({frame_of_base(), track_of_base(), axles_at({112})});
  const Finding& found = j.of("HITCH-TIP", Kind::tongue_jack, "head off");
  EXPECT_NEAR(found.measured, 100 * (112 - centre(off)) / (112 + 24), 0.3);
  EXPECT_NEAR(found.limit, 5, 1e-9);
  EXPECT_NEAR(found.margin, found.measured - 5, 1e-9);
  // Where the axle must stand: (M0 X - first + gear X) / (X + 24) = W / 20, gear going with it.
  const Lumps rest = both({frame_of_base(), track_of_base()});
  const double needed = (moment(rest) + 24 * 0.05 * weight(off)) / (weight(rest) - 0.05 * weight(off));
  const double told = std::stod(found.remedy.substr(found.remedy.find("axle at ") + 8));
  EXPECT_GE(told, needed - 0.5);
  EXPECT_LE(told, needed + 3);
}

TEST(ByHandFindings, HeadPastWhereItTips) {
  const Judged j({});
  const Lumps rest = both({frame_of_base(), track_of_base(), axles_at({137})});
  const Finding& f = j.of("HEAD-TIP", Kind::head);
  EXPECT_NEAR(f.measured / inch, 137 + weight(rest) * (137 - centre(rest)) / 610, 4);
  EXPECT_NEAR(f.limit, j.bed.track.head_to, 1e-9);
  EXPECT_NEAR(f.margin, f.measured - f.limit, 1e-9);
}

TEST(ByHandFindings, WidthSizeAndLaws) {
  const Judged j({"road.width_limit=70 in"});
  for (const char* code : {"TOW-WIDTH", "TOW-SIZE"}) {
    const Finding& f = j.of(code, code == std::string("TOW-SIZE") ? Kind::overall_size : Kind::overall_width);
    expect_said(f, (57 + 2 * 8.125) * 25.4, 70 * 25.4, 1e-6);
  }
  expect_near(j.used("TOW-WIDTH", "width"), 73.25 / 70, 1e-6);
  expect_said(j.of("TOW-LAWS", Kind::law), whole, 3000);
}

// An order's own factors against the usual ones.
TEST(ByHandFindings, MilderFactors) {
  const Judged j({"road.bump=1.5", "road.share_high=0.2"});
  int said = 0;
  for (const Finding& f : j.findings)
    if (f.code == "OWN-FACTOR" && f.subjects.front().name.starts_with("road.")) {
      const bool bump = f.subjects.front().name == "road.bump";
      EXPECT_NEAR(f.measured, bump ? 1.5 : 0.2, 1e-9);
      EXPECT_NEAR(f.limit, bump ? 2.0 : 0.15, 1e-9);
      EXPECT_NEAR(f.margin, bump ? -0.5 : -0.05, 1e-9);
      ++said;
    }
  EXPECT_EQ(said, 2);
}

// A log of 15 in does not reach from bunk to bunk, 20 in; one at 1 in belongs at 98 in, its
// half behind the first bunk; none at all is a warning. One pair of jacks is one too few.
TEST(ByHandFindings, LogsAndJacksThatAreNotThere) {
  const Finding small = Judged({"work.log.length=15 in"}).of("STAND-LOG", Kind::log);
  EXPECT_NEAR(small.measured / inch, 15, 1e-6);
  EXPECT_NEAR(small.limit / inch, 20, 1e-6);
  EXPECT_NEAR(small.margin, -5 * inch, 1e-6);
}
TEST(ByHandFindings, ALogOffItsBunks) {
  const Finding off = Judged({"work.log.position=1 in", "work.log.length=16 ft"}).of("STAND-LOG", Kind::log);
  EXPECT_NEAR(off.measured / inch, 1, 1e-6);
  EXPECT_NEAR(off.limit / inch, 98, 1);
  EXPECT_NEAR(off.margin, off.measured - off.limit, 1e-6);
  const Finding none = Judged({}, [](Job& job) { job.order.work.log.reset(); }).of("STAND-LOG", Kind::log);
  EXPECT_EQ(none.limit, 1);
  EXPECT_EQ(none.margin, -1);
}
TEST(ByHandFindings, OnePairOfJacks) {
  const Finding one = Judged({"jacks=[120 in]"}).of("STAND-TIP", Kind::jacks);
  EXPECT_EQ(one.measured, 1);
  EXPECT_EQ(one.limit, 2);
  EXPECT_EQ(one.margin, -1);
}

}  // namespace
}  // namespace bedwright
