#include "params/job.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <filesystem>

#include "params/cross_check.h"
#include "params/samples.h"

namespace bedwright {
namespace {

using samples::changed;
using samples::Folder;
using testing::ElementsAre;
using testing::EndsWith;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::StartsWith;

TEST(LoadJob, ReadsTheWholeOrder) {
  const Folder folder;
  EXPECT_THAT(folder.faults(), IsEmpty());
  const auto loaded = folder.load({"track.rail_length=96 in", "kit.gauge=35 in", "frame.main.spacing=35 in"});
  const Job* job = std::get_if<Job>(&loaded);
  ASSERT_TRUE(job);
  EXPECT_DOUBLE_EQ(job->order.track.rail_length, 96 * inch);
  EXPECT_DOUBLE_EQ(job->kit.gauge, 35 * inch);
  EXPECT_DOUBLE_EQ(job->frame.main.spacing, 35 * inch);
  EXPECT_EQ(job->order.track.clamps.at(1).bunk, 5);
  EXPECT_EQ(job->frame.tabs.clip->section.text, "L3");
  EXPECT_EQ(job->catalog.sections.size(), 3u);
  ASSERT_EQ(job->inputs.size(), 4u);
  EXPECT_EQ(job->inputs[0].content, samples::order);
  EXPECT_EQ(job->inputs[1].path, folder.path("kit.yaml"));
  EXPECT_EQ(job->inputs[3].content, samples::catalog);
  EXPECT_EQ(job->sets.size(), 3u);
  EXPECT_DOUBLE_EQ(track_length(job->order, job->kit), 3 * 96 * inch);
}

TEST(LoadJob, FilesThatAreNotThere) {
  const Folder folder;
  const auto missing = load_job(folder.path("none.yaml"), {});
  ASSERT_EQ(std::get<std::vector<Problem>>(missing).size(), 1u);
  // Its name once, and nothing of files beside an order: it is the order.
  EXPECT_EQ(to_line(std::get<std::vector<Problem>>(missing)[0]),
            folder.path("none.yaml") + ": does not exist; check the spelling");
  EXPECT_THAT(to_line(std::get<std::vector<Problem>>(load_job(folder.path(""), {}))[0]),
              HasSubstr("is a folder"));
  EXPECT_THAT(folder.faults({"kit=none.yaml"}),
              ElementsAre("--set:1:1: kit: none.yaml does not exist; check the spelling; files are looked "
                          "for beside the order"));
  folder.write("order.yaml", changed(samples::order, "kit.yaml", "no/such.yaml"));
  EXPECT_THAT(folder.faults(), ElementsAre(StartsWith("order.yaml:6:1: kit: no/such.yaml does not exist")));
  folder.write("order.yaml", changed(samples::order, "[catalog.yaml]", "[catalog.yaml, .]"));
  EXPECT_THAT(folder.faults(),
              ElementsAre(AllOf(StartsWith("order.yaml:8:25: catalog[2]: "), HasSubstr("is a folder"))));
}

TEST(LoadJob, RefusesWhatIsNoOrdinaryFile) {
  const Folder folder;
  ASSERT_EQ(mkfifo(folder.path("pipe").c_str(), 0600), 0);
  EXPECT_THAT(folder.faults({"kit=pipe"}), ElementsAre(HasSubstr("is not an ordinary file")));
  folder.write("big.yaml", std::string((1 << 20) + 1, '#'));
  EXPECT_THAT(folder.faults({"frame=big.yaml"}), ElementsAre(HasSubstr("is larger than")));
}

TEST(LoadJob, RefusesFilesThatNameThemselvesOrEachOther) {
  const Folder folder;
  EXPECT_THAT(folder.faults({"kit=order.yaml"}), ElementsAre(HasSubstr("kit: names the order file itself")));
  EXPECT_THAT(folder.faults({"frame=./kit.yaml"}),
              ElementsAre(HasSubstr("frame: names kit.yaml, which is already read for another key")));
  EXPECT_THAT(folder.faults({"catalog[2]=catalog.yaml"}),
              ElementsAre(HasSubstr("catalog[2]: names catalog.yaml")));
  std::filesystem::create_symlink(folder.path("order.yaml"), folder.path("link.yaml"));
  EXPECT_THAT(folder.faults({"kit=link.yaml"}), ElementsAre(HasSubstr("names the order file itself")));
}

TEST(LoadJob, TellsAllFaultsOfAllFilesInFileOrder) {
  const Folder folder;
  folder.write("order.yaml", changed(changed(samples::order, "rail_length: 84 in", "rail_lenght: 84 in"),
                                     "2024-02-29", "2023-02-29"));
  folder.write("kit.yaml", changed(samples::kit, "gauge: 34 in", "gauge: 34"));
  folder.write("frame.yaml", changed(samples::frame, "grade: A36\n", ""));
  EXPECT_THAT(
      folder.faults({"track.bunk_pitch=twelve", "kit.name="}),
      ElementsAre(
          StartsWith("order.yaml:5:3: order.date: \"2023-02-29\" is no day of the calendar"),
          StartsWith("order.yaml:10:3: track.rail_length: is written \"rail_lenght\"; write rail_length"),
          StartsWith("kit.yaml:2:8: gauge: \"34\" has no unit"),
          StartsWith("frame.yaml:1:1: grade: is missing"),
          StartsWith("--set:1:18: track.bunk_pitch: \"twelve\""),
          StartsWith("--set:2:5: kit.name: has no value")));
}

// One fault each: the overrides, and how the one line that follows begins.
struct Case {
  std::vector<std::string> sets;
  std::string line;
  friend void PrintTo(const Case& fault, std::ostream* out) { *out << testing::PrintToString(fault.sets); }
};
class CrossChecks : public testing::TestWithParam<Case> {};

TEST_P(CrossChecks, EachFaultIsOneClearProblem) {
  static const Folder folder;
  EXPECT_THAT(folder.faults(GetParam().sets), ElementsAre(StartsWith(GetParam().line)));
}

INSTANTIATE_TEST_SUITE_P(
    Names, CrossChecks,
    testing::Values(
        Case{{"frame.main.section=C66"},
             "--set:1:20: frame.main.section: \"C66\" is no section of the catalogue; did you mean C6?"},
        Case{{"frame.main.section=L3"},
             "--set:1:20: frame.main.section: \"L3\" is not of the shape wanted here, a channel or a tube;"},
        Case{{"frame.tabs.clip.section=C4"},
             "--set:1:25: frame.tabs.clip.section: \"C4\" is not of the shape wanted here, an angle;"},
        Case{{"frame.tongue.section=W10"},
             "--set:1:22: frame.tongue.section: \"W10\" is no section of the catalogue; one of C6, C4"},
        Case{{"kit.bunk.hole.bolt=3/9 in"},
             "--set:1:20: kit.bunk.hole.bolt: \"3/9 in\" is no bolt size of the catalogue; did you mean 3/8 "
             "in?"},
        Case{{"kit.box[1].bolt=M12"}, "--set:1:17: kit.box[1].bolt: \"M12\" is no bolt size"},
        Case{{"frame.jack.hole.bolt=M12"}, "--set:1:22: frame.jack.hole.bolt: \"M12\" is no bolt size"}));

INSTANTIATE_TEST_SUITE_P(
    Order, CrossChecks,
    testing::Values(
        Case{{"order.number=a/b"},
             "--set:1:1: order.number: \"a/b\" has \"/\" in it; it names the output folder"},
        Case{{"order.number=.hidden"}, "--set:1:1: order.number: \".hidden\" starts with a point"},
        Case{{"order.number=.."}, "--set:1:1: order.number: \"..\" starts with a point"},
        Case{{"order.number=a b"}, "--set:1:1: order.number: \"a b\" has a space in it"},
        Case{{"order.number=" + std::string(65, 'a')}, "--set:1:1: order.number: "},
        Case{{"order.date=2025-13-01"}, "--set:1:1: order.date: \"2025-13-01\" is no day of the calendar"},
        Case{{"order.date=1 May 2025"}, "--set:1:1: order.date: "},
        Case{{"order.tape=1 mm"},
             "--set:1:1: order.tape: 1 mm (0.0394 in) goes into an inch no whole number of times"},
        Case{{"order.tape=0.065 in"}, "--set:1:1: order.tape: "},
        Case{{"order.printing=metric", "order.tape=1/16 in"},
             "--set:2:1: order.tape: 1.5875 mm (0.0625 in) is no whole tenth of a millimetre"},
        Case{{"catalog=[]"}, "--set:1:1: catalog: names no file"},
        Case{
            {"track.bunk_pitch=85 in"},
            "--set:1:1: track.bunk_pitch: 2159 mm (85 in) is more than track.rail_length, 2133.6 mm (84 in)"},
        Case{{"track.rail_lengths=[84 in, 84 in]"},
             "--set:1:1: track.rail_lengths: lists 2 sections, and the kit's own 2 with 1 more are 3"},
        Case{{"track.rail_lengths=[63 in, 63 in, 42 in]"},
             "order.yaml:10:3: track.rail_length: 2133.6 mm (84 in) is the length of none of the sections"},
        Case{{"track.rail_lengths=[84 in, 30 in, 84 in]", "track.bunk_pitch=40 in"},
             "--set:2:1: track.bunk_pitch: 1016 mm (40 in) is more than track.rail_lengths[2]"},
        Case{{"track.extension_count=12"},
             "order.yaml:10:3: track.rail_length: 14 sections come to a track of 29870.4 mm"},
        Case{{"track.rail_length=400 ft"}, "--set:1:19: track.rail_length: \"400 ft\" is out of range"},
        Case{{"track.extension_count=1000000"},
             "--set:1:23: track.extension_count: is \"1000000\"; use a whole number from 0 to 12"},
        Case{{"track.clamps[2].bunk=2"},
             "order.yaml:15:7: track.clamps[2]: bunk 2 is already named by track.clamps[1]"},
        Case{{"track.clamps[2].bunk=0"},
             "--set:1:22: track.clamps[2].bunk: is \"0\"; use a whole number from 1"},
        Case{{"track.log_stops=[2, 2]"}, "--set:1:21: track.log_stops[2]: bunk 2 is already named"},
        Case{{"tabs_found=[{tab: X7}]"}, "--set:1:14: tabs_found[1].tab: \"X7\" is no tab's name"},
        Case{{"tabs_found=[{tab: R7}, {tab: R7}]"},
             "--set:1:25: tabs_found[2].tab: R7 is already given by entry 1"}));

INSTANTIATE_TEST_SUITE_P(
    Kit, CrossChecks,
    testing::Values(
        Case{{"kit.mounting.positions=[4 in]"},
             "kit.yaml:15:3: mounting.end_offset: stands beside mounting.positions"},
        Case{{"kit.mounting={hole: {bolt: 1/2 in, diameter: 9/16 in}, line: 2 in}"},
             "--set:1:5: kit.mounting: does not say where its holes are"},
        Case{{"kit.mounting={hole: {bolt: 1/2 in, diameter: 9/16 in}, line: 2 in, max_pitch: 20 in}"},
             "--set:1:5: kit.mounting: has max_pitch but no end_offset"},
        Case{{"kit.mounting={hole: {bolt: 1/2 in, diameter: 9/16 in}, line: 2 in, positions: [4 in, 90 in]}"},
             "--set:1:86: kit.mounting.positions[2]: 2286 mm (90 in) is not within the rail"},
        Case{{"kit.mounting={hole: {bolt: 1/2 in, diameter: 9/16 in}, line: 2 in, positions: [40 in, 4 in]}"},
             "--set:1:87: kit.mounting.positions[2]: 101.6 mm (4 in) does not lie behind"},
        Case{{"kit.mounting.hole.slot=1/2 in"},
             "--set:1:5: kit.mounting.hole.slot: 12.7 mm (0.5 in) is shorter than the hole's diameter"},
        Case{{"kit.mounting.slot_along=none"},
             "--set:1:5: kit.mounting.slot_along: is none, yet the hole has a slot"},
        Case{{"kit.mounting.line=3 in"},
             "--set:1:5: kit.mounting.line: 76.2 mm (3 in) is not less than rail.flat_leg"},
        Case{{"kit.mounting.line=6 mm"},
             "--set:1:5: kit.mounting.line: 6 mm (0.2362 in) lies within the standing leg"},
        Case{{"kit.mounting.end_offset=42 in"},
             "--set:1:25: kit.mounting.end_offset: \"42 in\" is out of range"},
        Case{{"kit.clamp.travel_from=15 in"},
             "--set:1:5: kit.clamp.travel_from: 381 mm (15 in) is more than clamp.travel_to, 355.6 mm (14 "
             "in)"},
        Case{{"kit.head.boxes[1].x_from=14 in"},
             "--set:1:5: kit.head.boxes[1].x_from: 355.6 mm (14 in) is not less than head.boxes[1].x_to"},
        Case{{"kit.head.boxes=[]"}, "--set:1:5: kit.head.boxes: lists no box"},
        Case{{"kit.gusset.bolts=[]"}, "--set:1:5: kit.gusset.bolts: lists no bolt"},
        Case{{"kit.gusset.bolts[2]=6 in"},
             "--set:1:21: kit.gusset.bolts[2]: 152.4 mm (6 in) from the joint is beyond the gusset's end"},
        Case{{"kit.bunk.outer_set=12 in"},
             "--set:1:5: kit.bunk.outer_set: 304.8 mm (12 in) is not less than bunk.inner_set"},
        Case{{"kit.bunk={flat_leg: 2 in, standing_leg: 2 in, thickness: 1/4 in, end_clearance: 1/4 in, hole: "
              "{bolt: 3/8 in, diameter: 7/16 in}, line: 1-1/2 in, outer_set: 3 in}"},
             "--set:1:5: kit.bunk: has no inner_set"},
        Case{{"kit.bunk.positions=[3 in, 42 in, 81 in]"},
             "kit.yaml:24:3: bunk.outer_set: stands beside bunk.positions"},
        Case{{"kit.bunk={flat_leg: 2 in, standing_leg: 2 in, thickness: 1/4 in, end_clearance: 1/4 in, hole: "
              "{bolt: 3/8 in, diameter: 7/16 in}, line: 1-1/2 in, positions: [3 in, 42 in, 81 in]}"},
             "order.yaml:11:3: track.bunk_pitch: stands beside the kit's bunk.positions"},
        // 84 in is four pitches of 21 in: of 20 in it is not.
        Case{{"kit.rail.turned=true", "track.bunk_pitch=20 in"},
             "--set:2:1: track.bunk_pitch: 508 mm (20 in) does not go into a rail of 2133.6 mm (84 in)"},
        Case{{"kit.bunk.root_radius=30 mm", "kit.bunk.standing_leg=3 in", "kit.bunk.flat_leg=1 in"},
             "--set:3:5: kit.bunk.flat_leg: 25.4 mm (1 in) leaves nothing beside the thickness"}));

INSTANTIATE_TEST_SUITE_P(
    Frame, CrossChecks,
    testing::Values(
        Case{{"frame.jack.below=6 in"}, "--set:1:7: frame.jack.below: is for mains that are tubes"},
        Case{{"frame.jack.crank={turns: round, radius: 6 in, axle: 0 in, depth: 4 in}"},
             "--set:1:26: frame.jack.crank.turns: is \"round\""},
        Case{{"frame.welds={leg: 1/4 in, tongues: 3/8 in}"},
             "--set:1:27: frame.welds.tongues: is no known key; did you mean tongue?"},
        Case{{"frame.tabs.plate={plate_thickness: 3/8 in, inboard: 1 in, outboard: 2 in}"},
             "--set:1:7: frame.tabs.plate: is not used by tabs of style clip"},
        Case{{"frame.tabs.slot_length=1/2 in"},
             "--set:1:7: frame.tabs.slot_length: 12.7 mm (0.5 in) is shorter than the hole's diameter"},
        Case{{"frame.tabs.slot_length=3 in"},
             "--set:1:7: frame.tabs.slot_length: 76.2 mm (3 in) is not less than tabs.length"},
        Case{{"frame.tabs.existing=[]"}, "--set:1:7: frame.tabs.existing: lists no tab"},
        Case{
            {"frame.tabs.existing=[8 in, 8 in]", "frame.main.length=100 in", "frame.tabs.existing_line=1 in"},
            "--set:1:28: frame.tabs.existing[2]: 203.2 mm (8 in) does not lie behind"},
        Case{{"frame.main.length=100 in", "frame.tabs.existing=[8 in, 101 in]",
              "frame.tabs.existing_line=1 in"},
             "--set:2:28: frame.tabs.existing[2]: 2565.4 mm (101 in) is more than main.length"},
        Case{{"frame.tabs.existing=[8 in]", "frame.main.length=100 in"},
             "--set:1:7: frame.tabs.existing: says where the tabs' holes are along the mains"},
        Case{{"frame.tabs.existing=[8 in]", "frame.tabs.existing_line=1 in"},
             "--set:1:7: frame.tabs.existing: is of a frame that exists, and main.length does not say"},
        Case{{"frame.tabs.existing_line=1 in"},
             "--set:1:7: frame.tabs.existing_line: is for tabs of a frame that exists"},
        Case{{"frame.main.length=100 in", "frame.cross_member.existing=[8 in, 101 in]"},
             "--set:2:36: frame.cross_member.existing[2]: 2565.4 mm (101 in) is more than main.length"},
        Case{{"frame.standing=true"},
             "--set:1:7: frame.standing: says that the frame stands, and nothing says where its tabs are"},
        Case{{"frame.jack.existing=[8 in]"},
             "--set:1:7: frame.jack.existing: is of a frame that stands, and this one is yet to be made"},
        Case{{"frame.axle.existing=8 in"},
             "--set:1:7: frame.axle.existing: is of a frame that stands, and this one is yet to be made"},
        Case{{"frame.tabs.to_add=[8 in]"},
             "--set:1:7: frame.tabs.to_add: is of a frame that stands, and this one is yet to be made"},
        Case{{"frame.tabs.existing=[8 in, 22 in]", "frame.main.length=100 in",
              "frame.tabs.existing_line=1 in", "frame.tabs.to_cut_off=[20 in]"},
             "--set:4:24: frame.tabs.to_cut_off[1]: 508 mm (20 in): no tab stands there; give the place as "
             "tabs.existing "
             "lists it; the nearest is 558.8 mm (22 in)"},
        Case{{"frame.tabs.existing=[8 in, 22 in]", "frame.main.length=100 in",
              "frame.tabs.existing_line=1 in", "frame.tabs.to_file=[{at: 8 in, slot_length: 1/2 in}]"},
             "--set:4:32: frame.tabs.to_file[1].slot_length: 12.7 mm (0.5 in) is no filed slot's length"},
        Case{{"frame.axle.count=2"}, "frame.yaml:42:1: axle.spread: is missing for 2 axles"},
        Case{{"frame.jack.post_top=-15 in"},
             "frame.yaml:26:3: jack.post_bottom: -355.6 mm (-14 in) is not less than jack.post_top"},
        Case{{"frame.corner_gusset.corner_cut=6 in"},
             "--set:1:7: frame.corner_gusset.corner_cut: 152.4 mm (6 in) is not less than "
             "corner_gusset.leg"}));

TEST(LoadJob, ATabStyleNeedsItsOwnSizes) {
  const Folder folder;
  folder.write("frame.yaml", changed(samples::frame, "style: clip", "style: plate"));
  EXPECT_THAT(folder.faults(),
              ElementsAre(StartsWith("frame.yaml:9:3: tabs.style: is plate, yet tabs.plate is missing"),
                          StartsWith("frame.yaml:14:3: tabs.clip: is not used by tabs of style plate")));
}

TEST(LoadJob, AFaultInTheCatalogueBlamesNoName) {
  const Folder folder;
  folder.write("catalog.yaml", changed(samples::catalog, "name: C6", "nam: C6"));
  const auto faults = folder.faults();
  ASSERT_FALSE(faults.empty());
  for (const std::string& line : faults) EXPECT_THAT(line, StartsWith("catalog.yaml:3:"));
}

TEST(LoadJob, ACatalogueWithoutBoltsSaysWhatToAdd) {
  const Folder folder;
  folder.write("catalog.yaml", samples::catalog.substr(0, samples::catalog.find("bolts:")));
  const auto faults = folder.faults();
  ASSERT_FALSE(faults.empty());
  for (const std::string& line : faults)
    EXPECT_THAT(line, EndsWith("is no bolt size of the catalogue; add a catalogue file with bolts, such as "
                               "fasteners_inch.yaml"));
}

TEST(LoadJob, AMetricOrderIsLaidOutInMillimetresUnlessItSaysOtherwise) {
  const Folder folder;
  const auto tape = [&](const std::vector<std::string>& sets) {
    const auto loaded = folder.load(sets);
    return std::get<Job>(loaded).order.order.tape;
  };
  EXPECT_EQ(tape({}), inch / 16);
  EXPECT_EQ(tape({"order.printing=metric"}), 1);
  EXPECT_EQ(tape({"order.printing=metric", "order.tape=0.5 mm"}), 0.5);
}

TEST(LoadJob, PlacesGivenByTheTrackMoveWithIt) {
  const Folder folder;
  folder.write("order.yaml", changed(samples::order, "axle: {position: 130 in}\njacks: [18 in, 222 in]",
                                     "axle: {fraction: 0.5}\njacks: [18 in]\njacks_from_rear: [20 in]"));
  for (const auto& [extensions, total] : {std::pair{"1", 252.0}, {"2", 336.0}}) {
    const Job job = std::get<Job>(folder.load({std::string("track.extension_count=") + extensions}));
    EXPECT_NEAR(job.order.axle.position, total / 2 * inch, inch / 32);
    EXPECT_THAT(job.order.jacks, ElementsAre(::testing::DoubleNear(18 * inch, 1e-9),
                                             ::testing::DoubleNear((total - 20) * inch, 1e-9)));
  }
}

TEST(LoadJob, JacksBetweenStandEvenlyOnTheTape) {
  const Folder folder;
  folder.write("order.yaml", changed(samples::order, "jacks: [18 in, 222 in]",
                                     "jacks: [18 in]\njacks_from_rear: [20 in]\njacks_between: 2"));
  const Job job = std::get<Job>(folder.load());
  ASSERT_EQ(job.order.jacks.size(), 4u);
  EXPECT_EQ(jacks_listed(job.order), 1u);
  EXPECT_NEAR(job.order.jacks[2], (18 + 214 / 3.0) * inch, inch / 32 + 1e-9);
  EXPECT_NEAR(job.order.jacks[3], (18 + 2 * 214 / 3.0) * inch, inch / 32 + 1e-9);
  folder.write("order.yaml",
               changed(samples::order, "jacks: [18 in, 222 in]", "jacks: [18 in]\njacks_between: 2"));
  EXPECT_THAT(folder.faults(), ElementsAre(StartsWith("order.yaml:19:1: jacks_between: has no two pairs")));
}

TEST(LoadJob, AnOverrideOfTheOrderReachesTheFrameAndASetGoesFurther) {
  const Folder folder;
  folder.write("order.yaml",
               samples::order + "overrides:\n  - {key: frame.tabs.slot_length, value: 1-1/4 in}\n");
  EXPECT_NEAR(std::get<Job>(folder.load()).frame.tabs.slot_length, 1.25 * inch, 1e-9);
  EXPECT_NEAR(std::get<Job>(folder.load({"frame.tabs.slot_length=1-1/8 in"})).frame.tabs.slot_length,
              1.125 * inch, 1e-9);
}

TEST(LoadJob, FaultsOfOverridesAndFreeParametersStandWhereTheyAreWritten) {
  const Folder folder;
  folder.write(
      "order.yaml",
      samples::order +
          "overrides:\n  - {key: frame.tabs.slot_length, value: 3 in}\n  - {key: track.datum, value: rear}\n"
          "free:\n  - {key: jacks, values: 9..1}\n");
  EXPECT_THAT(
      folder.faults(),
      ElementsAre(StartsWith("order.yaml:20:42: frame.tabs.slot_length: 76.2 mm (3 in) is not less than"),
                  StartsWith("order.yaml:21:6: overrides[2].key: \"track.datum\" is no key of the kit"),
                  StartsWith("order.yaml:23:18: free[1].values: \"9..1\" runs backward")));
  folder.write("order.yaml",
               changed(samples::order, "{position: 130 in}", "{position: 130 in, fraction: 0.5}") +
                   "jacks_from_rear: [30 ft]\n");
  EXPECT_THAT(
      folder.faults(),
      ElementsAre(
          StartsWith("order.yaml:17:26: axle.fraction: is given as well"),
          StartsWith("order.yaml:19:19: jacks_from_rear[1]: 9144 mm (360 in) lies ahead of the track")));
}

TEST(CalendarDate, KnowsTheCalendar) {
  for (const char* good : {"2024-02-29", "2000-02-29", "2025-12-31", "1999-01-01"})
    EXPECT_TRUE(is_calendar_date(good)) << good;
  for (const char* bad : {"2023-02-29", "1900-02-29", "2025-04-31", "2025-00-01", "2025-01-00", "2025-1-01",
                          "25-01-01", "2025/01/01", "2025-01-01 ", "-025-01-01", "2025-01-0a", ""}) {
    EXPECT_FALSE(is_calendar_date(bad)) << bad;
  }
}

TEST(FolderName, TakesWhatEverySystemTakes) {
  for (const char* good : {"A-17", "2025_004", "1", "a.b"}) EXPECT_EQ(folder_name_fault(good), "") << good;
  for (const char* bad : {".", "..", ".a", "a/b", "a\\b", "a b", "é", "a:b", "a\tb", "~", "$x"}) {
    EXPECT_NE(folder_name_fault(bad), "") << bad;
  }
}

TEST(Revision, NamesAFolderBesideThoseOfTrialsAndOfWhatWasWithdrawn) {
  for (const char* good : {"A", "B", "AA", "12", "P1", "a-2_b"}) EXPECT_EQ(revision_fault(good), "") << good;
  for (const char* bad :
       {".", "..", "A.withdrawn-1", "a.b", "trial", "TRIAL", "Extra", "A/B", "a b", "é", "12345678901234567"})
    EXPECT_NE(revision_fault(bad), "") << bad;
}

TEST(Revision, FromTheSecondLetterOnHasAnEntry) {
  const Folder folder;
  for (const char* first : {"A", "0", "1"})
    EXPECT_THAT(folder.faults({std::string("order.revision=\"") + first + "\""}), ElementsAre()) << first;
  EXPECT_THAT(folder.faults({"order.revision=B"}),
              ElementsAre(AllOf(StartsWith("--set:1:1: order.revision: B has no entry under revisions"),
                                HasSubstr("add at the order's end: revisions: [{revision: B, date: "))));
  EXPECT_THAT(folder.faults({"order.revision=C", "revisions=[{revision: B, date: 2026-11-02, what: Pads}]"}),
              ElementsAre(HasSubstr("add to revisions: {revision: C, date: ")));
  EXPECT_THAT(folder.faults({"order.revision=B", "revisions=[{revision: B, date: 2026-11-02, what: Pads}]"}),
              ElementsAre());
}

// A loop of links and a name no disk takes are faults of the input like any other.
TEST(LoadJob, RefusesLoopsOfLinksAndNamesTooLong) {
  const Folder folder;
  std::filesystem::create_symlink("loop.yaml", folder.path("loop.yaml"));
  EXPECT_THAT(folder.faults({"kit=loop.yaml"}), ElementsAre(HasSubstr("loop.yaml cannot be opened")));
  EXPECT_THAT(folder.faults({"frame=" + std::string(300, 'f')}), ElementsAre(HasSubstr("cannot be opened")));
  EXPECT_THAT(folder.faults({"catalog=[" + std::string(300, 'c') + "]"}),
              ::testing::Contains(HasSubstr("cannot be opened")));
}

}  // namespace
}  // namespace bedwright
