// Of a frame that stands nothing is made anew: no remedy asks for it, whatever is wrong. Held over
// standing frames, each with many faults planted, by patterns written here.
#include "rules/standing_remedies.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <functional>
#include <iostream>
#include <regex>
#include <set>

#include "advice/advice.h"
#include "bed/names.h"
#include "examine/examine.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::bed_of;
using testing::demo_job;

// The demo's bed, built: its frame now stands, measured just so.
Job standing_twin(const std::string& order) {
  Job job = demo_job(order);
  const Bed bed = bed_of(job);
  FrameFile& frame = job.frame;
  if (stands(frame)) return job;
  const Mm start = -frame.main.front_overhang;
  const auto places = [&](Kind kind) {
    std::vector<Mm> all;
    for (const int i : bed.items_of(kind))
      if (bed.items[i].id.side != Side::left) all.push_back(bed.items[i].placement.origin.x - start);
    std::sort(all.begin(), all.end());
    return all;
  };
  frame.standing = true;
  frame.main.length =
      std::get<Member>(bed.parts[static_cast<std::size_t>(bed.part({Kind::main}))].form).length;
  for (const int i : bed.items_of(Kind::tab))
    if (bed.items[i].id.side == Side::right)
      frame.tabs.existing.push_back(hole_in_world(bed, ply_through(bed, i, 0)).centre.x - start);
  frame.tabs.existing_line = job.kit.gauge / 2 - job.kit.mounting.line - frame.main.spacing / 2;
  frame.cross_member.existing = places(Kind::cross_member);
  frame.jack.existing = places(Kind::jack_plate);
  frame.axle.existing = job.order.axle.position - start;
  return job;
}

struct Fault {
  const char* what;
  std::function<void(Job&)> plant;
};

const std::vector<Fault>& faults() {
  static const std::vector<Fault> all = {
      {"none", [](Job&) {}},
      {"another gauge", [](Job& j) { j.kit.gauge += 10; }},
      {"rails 3 in longer", [](Job& j) { j.order.track.rail_length += 3 * inch; }},
      {"rails a foot longer", [](Job& j) { j.order.track.rail_length += 12 * inch; }},
      {"a hole half an inch on",
       [](Job& j) {
         if (!j.kit.mounting.positions.empty()) j.kit.mounting.positions[1] += inch / 2;
       }},
      {"a hole an inch on",
       [](Job& j) {
         if (!j.kit.mounting.positions.empty()) j.kit.mounting.positions[1] += inch;
       }},
      {"bunks closer", [](Job& j) { j.order.track.bunk_pitch *= 0.75; }},
      {"pinned at the front", [](Job& j) { j.order.track.datum = Datum::front; }},
      {"tabs found out of place",
       [](Job& j) {
         j.order.tabs_found = {{{"R2", {}}, 8, 0}, {{"L3", {}}, 0, 7}};
       }},
      {"rounder slots", [](Job& j) { j.frame.tabs.slot_length = j.frame.tabs.hole_diameter; }},
      {"narrow holes", [](Job& j) { j.frame.tabs.hole_diameter = 12.9; }},
      {"short tabs", [](Job& j) { j.frame.tabs.length = 1.6 * inch; }},
      {"thin pads",
       [](Job& j) {
         if (j.frame.tabs.plate) j.frame.tabs.plate->pad_thickness /= 3;
         if (j.frame.tabs.clip) j.frame.tabs.clip->standoff /= 3;
       }},
      {"narrow pads",
       [](Job& j) {
         if (j.frame.tabs.plate) j.frame.tabs.plate->pad_width = 22;
       }},
      {"plates that end at their holes",
       [](Job& j) {
         if (j.frame.tabs.plate) j.frame.tabs.plate->outboard = 45;
       }},
      {"thin fillets", [](Job& j) { j.frame.tabs.weld_leg = 2; }},
      {"long bolts", [](Job& j) { j.order.bolts.bunk = 2.5 * inch; }},
      {"short bolts", [](Job& j) { j.order.bolts.track = inch; }},
      {"bowed mains", [](Job& j) { j.order.tolerances.main_camber = 20; }},
      {"pulled tabs", [](Job& j) { j.order.tolerances.weld_pull = 6; }},
      {"a heavy log", [](Job& j) { j.order.work.log.value().diameter *= 2.2; }},
      {"a heavy head", [](Job& j) { j.kit.head.mass *= 6; }},
      {"weak jacks", [](Job& j) { j.frame.jack.rating /= 8; }},
      {"two pairs of jacks", [](Job& j) { j.order.jacks.erase(j.order.jacks.begin() + 1); }},
      {"jacks elsewhere", [](Job& j) { j.order.jacks[0] += 4 * inch; }},
      {"a weak tongue jack", [](Job& j) { j.frame.tongue_jack.rating /= 12; }},
      {"a weak axle", [](Job& j) { j.frame.axle.axle_rating /= 4; }},
      {"weak tyres", [](Job& j) { j.frame.axle.tyre_rating /= 4; }},
      {"a weak coupler", [](Job& j) { j.frame.coupler.rating /= 6; }},
      {"a wide coupler", [](Job& j) { j.frame.coupler.width *= 1.4; }},
      {"a short coupler", [](Job& j) { j.frame.coupler.length = j.frame.coupler.ball_ahead + 60; }},
      {"the axle forward",
       [](Job& j) {
         j.order.axle.position -= 300;
         if (j.frame.axle.existing) *j.frame.axle.existing -= 300;
       }},
      {"the axle back",
       [](Job& j) {
         j.order.axle.position += 400;
         if (j.frame.axle.existing) *j.frame.axle.existing += 400;
       }},
      {"low jacks", [](Job& j) { j.frame.jack.post_bottom -= 10 * inch; }},
      {"jacks of no travel", [](Job& j) { j.frame.jack.travel = inch; }},
      {"wide springs", [](Job& j) { j.frame.axle.spring_width *= 2; }},
      {"a low axle", [](Job& j) { j.frame.axle.below = 0; }},
      {"a tongue that runs far back", [](Job& j) { j.frame.tongue.back += 14 * inch; }},
      {"cross members that were not measured", [](Job& j) { j.frame.cross_member.existing.clear(); }},
      {"high posts", [](Job& j) { j.frame.jack.post_top += 20 * inch; }},
      {"jack bolts at their plates' edge",
       [](Job& j) { j.frame.jack.bolt_x = j.frame.jack.plate_length - 22; }},
      {"light mains", [](Job& j) { j.frame.yield_strength = 100; }},
      {"head locked behind", [](Job& j) { j.order.track.head_lock = HeadLock::rear; }},
      {"clamps under the head",
       [](Job& j) {
         for (ClampPlace& c : j.order.track.clamps) c.bunk = 1;
       }},
      {"no shims", [](Job& j) { j.order.limits.most_shim = 0; }},
  };
  return all;
}

// What may be changed: the order, the kit and the log; of the frame only work on what stands.
bool may_be_changed(const std::string& code, const std::string& key) {
  static const std::regex of_the_order("(track|bolts|work|limits|tolerances|road|cut|spares|kit)([.[].*)?"),
      on_what_stands(R"(frame\.(tabs\.((left|right)\.)?|jack\.)to_\w+)"), places(R"((jacks|axle)([.[].*)?)");
  return std::regex_match(key, of_the_order) || std::regex_match(key, on_what_stands) ||
         (code == "STANDING" && std::regex_match(key, places));
}

// Words for steel made, moved or bought anew. Tabs L19, R19 and on are those the ninety track's
// order adds: they are still to be welded on.
constexpr const char* asks_for_other_steel =
    "make the tab|raise the standoff|move tab|move the tab|move main|move jack|move cross|move tongue|move "
    "axle|"
    "move coupler|mains of|tab plates? reach|make the pads|jacks and plates|jacks' bolts|longer tongue|"
    "shorter tongue|mains bowed|tabs held|further apart there|thicker plate|thicker pad|larger fillet|"
    "weld a tab with|narrower springs|jacks at|welds? of|further pair|let .* reach|bring (pad|tab|main)|"
    "leave .* more between (main|jack|cross|(tab|pad) [LR]([1-9]|1[0-8])\\b)|(jack|main|axle|tab|cross "
    "member) \\w+ must come";

class OnStandingFrames : public ::testing::TestWithParam<const char*> {};

TEST_P(OnStandingFrames, NoRemedyAsksForSteelAnew) {
  const std::regex other_steel(asks_for_other_steel);
  std::set<std::string> codes, said;
  for (const Fault& fault : faults()) {
    Job job = standing_twin(GetParam());
    fault.plant(job);
    auto laid = lay_out(job);
    Bed* bed = std::get_if<Bed>(&laid);
    if (!bed) continue;  // told as a problem of the file
    const auto examined = examine(std::move(job), std::move(*bed));
    for (const Finding& f : examined->findings) {
      if (f.severity == Severity::note) continue;
      codes.insert(f.code);
      said.insert(f.code + ": " + f.remedy);
      EXPECT_FALSE(f.remedy.empty()) << fault.what << ": " << f.code;
      EXPECT_FALSE(std::regex_search(f.remedy, other_steel))
          << fault.what << ": " << f.code << ": " << f.remedy;
      for (const Change& c : f.changes)
        EXPECT_TRUE(may_be_changed(f.code, c.key))
            << fault.what << ": " << f.code << ": " << c.key << "=" << c.value;
    }
  }
  EXPECT_GE(codes.size(), 20u) << "the faults planted are found";
  if (std::getenv("BEDWRIGHT_SAY"))
    for (const std::string& s : said) std::cout << s << "\n";
}

INSTANTIATE_TEST_SUITE_P(Demos, OnStandingFrames,
                         ::testing::Values("lot_frame", "lot_frame_90", "base", "one_extension", "metric"));

// What no rule proposes is tried too: none of it is where a standing jack might go.
TEST(StandingRemedies, CandidatesAreOnlyWhatCanBeDone) {
  Finding clash;
  clash.code = "CLASH";
  const Subject jack = Identity{Kind::jack, Side::left, 1},
                clamp = Identity{Kind::clamp, Side::middle, 1, 0, End::none, 3};
  clash.subjects = {jack, clamp};
  std::set<std::string> tried;
  const Retry retry = [&](const std::vector<std::string>& sets) -> std::optional<std::vector<Finding>> {
    tried.insert(sets.front());
    return std::vector<Finding>{};
  };
  std::vector<Finding> findings = {clash};
  advise(demo_job("lot_frame"), 12, retry, findings);
  EXPECT_FALSE(tried.empty());
  for (const std::string& set : tried) EXPECT_THAT(set, ::testing::StartsWith("track.clamps")) << set;
  tried.clear();
  findings = {clash};
  findings[0].subjects = {jack};
  advise(demo_job("base"), 12, retry, findings);
  EXPECT_FALSE(tried.empty()) << "on a frame yet to be made jacks are moved";
}

}  // namespace
}  // namespace bedwright
