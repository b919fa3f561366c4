// The program as its users run it: exit codes, what it writes and what it never does.
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <random>
#include <regex>
#include <sstream>

#include "bed/names.h"
#include "formats/digest.h"
#include "rules/rule.h"
#include "support/demo.h"
#include "support/run_program.h"

namespace bedwright {
namespace {

using namespace testing;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

std::vector<std::string> to_cut_or_drill(const std::map<std::string, std::string>& files) {
  std::vector<std::string> found;
  for (const auto& [path, bytes] : files)
    if (path.find("/cut/") != std::string::npos || path.find("/drill/") != std::string::npos ||
        (path.ends_with(".dxf") && path.find("/sheets/") == std::string::npos))
      found.push_back(path);
  return found;
}

std::vector<std::string> sheets(const std::map<std::string, std::string>& files, const std::string& ending) {
  std::vector<std::string> found;
  for (const auto& [path, bytes] : files)
    if (path.find("/sheets/") != std::string::npos && path.ends_with(ending)) found.push_back(path);
  return found;
}

class GoodOrder : public Program, public ::testing::WithParamInterface<std::string> {};
INSTANTIATE_TEST_SUITE_P(Demo, GoodOrder, ::testing::ValuesIn(testing::good_orders));

TEST_P(GoodOrder, IsReleasedWithEveryFileOfItsManifest) {
  const Job job = testing::demo_job(GetParam());
  const Outcome drawn = run({"draw", testing::order_path(GetParam()), "--out", folder});
  ASSERT_EQ(drawn.code, 0) << drawn.out;
  EXPECT_THAT(drawn.out, HasSubstr("Released"));
  const auto files = tree(folder / job.order.order.number / "A");
  for (const char* needed :
       {"bed.step", "bed.svg", "report.json", "report.txt", "manifest.json", "lists/parts.csv",
        "lists/cut_list.csv", "lists/drill_list.csv", "lists/hardware.csv", "lists/bolts.csv",
        "lists/stacks.csv", "lists/welds.csv", "lists/moving.csv"})
    EXPECT_TRUE(files.contains(needed)) << needed;
  // Nothing of a frame that stands is cut or drilled; any other has its files.
  for (const char* made : {"drill/main.dxf", "cut/jack_plate.dxf"})
    EXPECT_EQ(files.contains(made), !stands(job.frame)) << made;
  if (stands(job.frame)) {
    EXPECT_THAT(to_cut_or_drill(tree(folder)), IsEmpty());
  }
  EXPECT_EQ(files.contains("lists/standing_welds.csv"), stands(job.frame));
  const auto manifest = nlohmann::json::parse(files.at("manifest.json"));
  EXPECT_EQ(manifest.at("state"), "released");
  EXPECT_EQ(manifest.at("files").size() + 1, files.size());
  for (const auto& f : manifest.at("files"))
    EXPECT_EQ(f.at("sha256"), sha256(files.at(f.at("path").get<std::string>())));
  EXPECT_EQ(nlohmann::json::parse(files.at("report.json")).at("state"), "released");
}

TEST_P(GoodOrder, GivesTheSameBytesASecondTimeInAnotherPlace) {
  ASSERT_EQ(run({"draw", testing::order_path(GetParam()), "--out", folder / "a"}).code, 0);
  ASSERT_EQ(run({"draw", testing::order_path(GetParam()), "--out", folder / "b"}).code, 0);
  const auto a = tree(folder / "a");
  EXPECT_GT(a.size(), 12u);
  EXPECT_EQ(a, tree(folder / "b"));
}

// Count, names, volume and centre of mass of the model, read by another process,
// against the Bed's closed forms.
void expect_model_is_the_bed(const fs::path& folder, const std::string& order,
                             const std::vector<std::string>& sets) {
  const Bed bed = testing::demo_bed(order, sets);
  std::vector<std::string> arguments = {"draw", testing::order_path(order), "--draft", "--out", folder};
  for (const std::string& set : sets) arguments.insert(arguments.end(), {"--set", set});
  ASSERT_LE(run(arguments).code, 1);
  const fs::path step = folder / testing::demo_job(order).order.order.number / "trial" / "bed.step";
  const fs::path json = folder / "read.json";
  ASSERT_EQ(std::system((quoted(STEP_READ) + " " + quoted(step) + " >" + quoted(json)).c_str()), 0);
  const auto read = nlohmann::json::parse(content(json));
  std::vector<std::string> names, wanted;
  Mm3 total = 0;
  Vec3 moment;
  for (const Item& item : bed.items) {
    if (!item.shown) continue;
    wanted.push_back(name(item));
    const Part& part = bed.parts[item.part];
    total += volume(part);
    moment = moment + volume(part) * item.placement.point(centroid(part));
  }
  for (const auto& c : read.at("components")) names.push_back(c.at("name"));
  EXPECT_THAT(names, ::testing::UnorderedElementsAreArray(wanted));
  EXPECT_NEAR(read.at("volume").get<double>() / total, 1, 1e-6);
  const auto centre = read.at("centre");
  EXPECT_NEAR(centre.at(0).get<double>(), moment.x / total, 1e-3);
  EXPECT_NEAR(centre.at(1).get<double>(), moment.y / total, 1e-3);
  EXPECT_NEAR(centre.at(2).get<double>(), moment.z / total, 1e-3);
  for (const auto& part : read.at("parts")) {
    EXPECT_TRUE(part.at("valid").get<bool>()) << part.at("name");
    // What a reader of the file has of a part is its printed name.
    const auto made = std::find_if(bed.parts.begin(), bed.parts.end(),
                                   [&](const Part& p) { return name(p) == part.at("name"); });
    ASSERT_NE(made, bed.parts.end()) << part.at("name");
    EXPECT_NEAR(part.at("volume").get<double>() / volume(*made), 1, 1e-6) << part.at("name");
  }
}

std::string output_of(const std::string& command) {
  const Outcome result = outcome_of(command);
  if (result.code != 0) throw std::runtime_error(command + " failed");
  return result.out;
}

// Sizes on the printed sheets, as pdftotext reads them, against the STEP file as
// another process reads it: over all, the cross members' and jacks' places, the
// frame's diagonal.
TEST_P(GoodOrder, PrintedSizesAreThoseOfTheModelReadBack) {
  ASSERT_EQ(run({"draw", testing::order_path(GetParam()), "--out", folder}).code, 0);
  const Job job = testing::demo_job(GetParam());
  const fs::path packet = folder / job.order.order.number / "A";
  const auto read = nlohmann::json::parse(output_of(quoted(STEP_READ) + " " + quoted(packet / "bed.step")));
  const std::string text = output_of("pdftotext -layout " + quoted(packet / "sheets/all.pdf") + " -");
  const auto printed = [&](const std::string& before) {
    // The last figure in millimetres after the words, on their line.
    const std::size_t at = text.find(before);
    if (at == std::string::npos) return -1e9;
    const std::string line = text.substr(at + before.size(), text.find('\n', at) - at - before.size());
    const std::regex figure(job.order.order.printing == Printing::metric ? R"(^\s*(-?[\d.]+))"
                                                                         : R"(^\s*\S+ \((-?[\d.]+) mm\))");
    std::smatch m;
    return std::regex_search(line, m, figure) ? std::stod(m[1]) : -1e9;
  };
  const auto& low = read.at("bounds").at(0);
  const auto& high = read.at("bounds").at(1);
  // The picture's polygons stray from a tyre's circle by half a millimetre at most; a figure is rounded to
  // 0.05.
  EXPECT_NEAR(printed("over all "), high.at(0).get<double>() - low.at(0).get<double>(), 0.06);
  std::map<std::string, nlohmann::json> boxes;
  for (const auto& c : read.at("components")) boxes[c.at("name")] = c.at("bounds");
  const std::regex place(job.order.order.printing == Printing::metric
                             ? R"((cross member \d+|rear member), web back\s+(-?[\d.]+)\n)"
                             : R"((cross member \d+|rear member), web back\s+\S+\s+\S+\s+(-?[\d.]+))");
  int places = 0;
  for (std::sregex_iterator it(text.begin(), text.end(), place), end; it != end; ++it, ++places) {
    const auto& box = boxes.at((*it)[1]);
    const bool toes_forward = (*it)[1] != "rear member";
    const double back = box.at(toes_forward ? 1 : 0).at(0);
    EXPECT_NEAR(std::stod((*it)[2]), back, 0.051) << (*it)[1];
  }
  EXPECT_GE(places, 3);
  const auto &left = boxes.at("main L"), &right = boxes.at("main R");
  const double length = left.at(1).at(0).get<double>() - left.at(0).at(0).get<double>();
  // Webs out: the backs are the mains' outermost faces.
  const double across = right.at(1).at(1).get<double>() - left.at(0).at(1).get<double>();
  const std::regex diagonal(job.order.order.printing == Printing::metric
                                ? R"(Both are\s+([\d.]+)\s+mm)"
                                : R"(Both[^(]*\([\d.]+ in,?\s+([\d.]+) mm)");
  std::smatch m;
  ASSERT_TRUE(std::regex_search(text, m, diagonal) ||
              std::regex_search(text, m, std::regex(R"(\n\s+([\d.]+) mm\)\. They must)")))
      << text.substr(0, 3000);
  EXPECT_NEAR(std::stod(m[1]), std::hypot(length, across), 0.06);
}

TEST_P(GoodOrder, ModelReadBackIsTheBed) { expect_model_is_the_bed(folder, GetParam(), {}); }

// The same of orders nobody chose: the seed is fixed so that a failure can be seen again.
TEST_F(Program, ModelsOfRandomOrdersAreTheirBeds) {
  std::mt19937 random(20261005);
  const auto pick = [&](int low, int high) {
    return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
  };
  for (int i = 0; i < 6; ++i) {
    const int sixteenths = pick(15 * 16, 25 * 16), pitches = pick(3, 5);
    const std::vector<std::string> sets = {
        fmt::format("track.bunk_pitch={} in", sixteenths / 16.0),
        fmt::format("track.rail_length={} in", pitches * sixteenths / 16.0),
        fmt::format("track.extension_count={}", pick(0, 2)),
        "track.clamps=[]",
        "track.log_stops=[]",
        "jacks=[17 in, 100 in]",
        fmt::format("frame.tongue.angle={} deg", pick(20, 30)),
        fmt::format("frame.tabs.slot_length={} in", pick(12, 20) / 16.0)};
    SCOPED_TRACE(::testing::PrintToString(sets));
    expect_model_is_the_bed(folder / std::to_string(i), i % 2 ? "one_extension" : "base", sets);
  }
}

TEST_F(Program, TheWrongOrderExitsOneAndLeavesNothingToCut) {
  const Outcome drawn = run({"draw", testing::order_path("wrong"), "--out", folder});
  EXPECT_EQ(drawn.code, 1);
  EXPECT_THAT(drawn.out, HasSubstr("Not released"));
  const auto files = tree(folder);
  EXPECT_THAT(to_cut_or_drill(files), IsEmpty());
  EXPECT_FALSE(files.contains("QB-1045/trial/bed.step"));
  EXPECT_TRUE(files.contains("QB-1045/trial/report.json"));
}

TEST_F(Program, ADraftIsStampedAndHasNothingToCut) {
  for (const char* order : {"base", "wrong"}) {
    const Outcome drawn = run({"draw", testing::order_path(order), "--draft", "--out", folder / order});
    EXPECT_EQ(drawn.code, std::string(order) == "base" ? 0 : 1);
    const auto files = tree(folder / order);
    EXPECT_THAT(to_cut_or_drill(files), IsEmpty());
    // A drawing file can be sent to a table, so a draft has none of any kind.
    for (const auto& [path, bytes] : files) EXPECT_FALSE(path.ends_with(".dxf")) << path;
    EXPECT_THAT(sheets(files, ".svg"), Not(IsEmpty()));
    for (const std::string& sheet : sheets(files, ".svg"))
      EXPECT_THAT(files.at(sheet), HasSubstr("NOT FOR FABRICATION")) << sheet;
    const std::string number = std::string(order) == "base" ? "QB-1041" : "QB-1045";
    EXPECT_THAT(files.at(number + "/trial/bed.svg"), HasSubstr("NOT FOR FABRICATION"));
    EXPECT_TRUE(files.contains(number + "/trial/bed.step"));
  }
}

TEST_F(Program, AReleasedPictureIsNotStamped) {
  ASSERT_EQ(run({"draw", testing::order_path("base"), "--out", folder}).code, 0);
  EXPECT_THAT(content(folder / "QB-1041/A/bed.svg"), Not(HasSubstr("NOT FOR FABRICATION")));
}

TEST_F(Program, BadInputExitsTwoSaysWhereAndWritesNothing) {
  const Outcome drawn = run({"draw", testing::order_path("base"), "--out", folder / "out", "--set",
                             "track.rail_lenght=84 in", "--set", "track.bunk_pitch=20"});
  EXPECT_EQ(drawn.code, 2);
  EXPECT_THAT(drawn.out, HasSubstr("rail_lenght"));
  EXPECT_THAT(drawn.out, HasSubstr("rail_length"));
  EXPECT_THAT(drawn.out, HasSubstr("bunk_pitch"));
  EXPECT_FALSE(fs::exists(folder / "out"));
  EXPECT_EQ(run({"check", folder / "no_such.yaml"}).code, 2);
  EXPECT_EQ(run({"frobnicate"}).code, 2);
  EXPECT_EQ(run({"draw"}).code, 2);
  EXPECT_EQ(run({"explain", "NO-SUCH"}).code, 2);
  EXPECT_EQ(run({"schema", "nothing"}).code, 2);
}

TEST_F(Program, AnUnknownNameInTheShopsWordsExitsTwoAndSaysWhere) {
  fs::create_directories(folder / "words");
  std::ofstream(folder / "words" / "letterhead.txt") << "Our shop\nGauge {gage}\n";
  const std::vector<std::string> draw{"draw",  testing::order_path("base"),
                                      "--out", (folder / "out").string(),
                                      "--set", "order.assembly_template=" + (folder / "words").string()};
  const Outcome refused = run(draw);
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.out,
              HasSubstr("letterhead.txt:2:7: there is no figure {gage}; the names are bunk_bolt_count, "));
  EXPECT_THAT(tree(folder / "out"), IsEmpty());
  std::ofstream(folder / "words" / "letterhead.txt") << "Our shop\nGauge {gauge}\n";
  EXPECT_EQ(run(draw).code, 0);
  EXPECT_TRUE(fs::exists(folder / "out" / "QB-1041" / "trial" / "sheets" / "assembly.pdf"));
}

TEST_F(Program, APlaceThatIsNotOursIsNotReplaced) {
  fs::create_directories(folder / "QB-1041" / "A");
  std::ofstream(folder / "QB-1041" / "A" / "letters.txt") << "keep";
  const Outcome drawn = run({"draw", testing::order_path("base"), "--out", folder});
  EXPECT_EQ(drawn.code, 2);
  EXPECT_EQ(content(folder / "QB-1041" / "A" / "letters.txt"), "keep");
}

TEST_F(Program, ANewOrderIsGoodAsWrittenAndNeverWrittenOver) {
  for (const std::vector<std::string>& extra : {std::vector<std::string>{}, {"--metric"}}) {
    const std::string file = folder / (extra.empty() ? "mine.yaml" : "metric.yaml");
    std::vector<std::string> arguments = {"new", file};
    arguments.insert(arguments.end(), extra.begin(), extra.end());
    EXPECT_EQ(run(arguments).code, 0);
    const std::string written = content(file);
    EXPECT_THAT(written, Not(HasSubstr("{{")));
    const Outcome checked = run({"check", file});
    EXPECT_EQ(checked.code, 0) << checked.out;
    EXPECT_EQ(run(arguments).code, 2);
    EXPECT_EQ(content(file), written);
  }
}

TEST_F(Program, AnUnknownWordIsNamedWithTheCommandsThereAre) {
  const std::string all =
      "the commands are draw, check, offer, compare, schema, explain, new, verify, sheet, built, orders; "
      "bedwright --help "
      "says what each "
      "does\n";
  const std::vector<std::pair<std::vector<std::string>, std::string>> told = {
      {{"quote", "x"}, "bedwright: quote is no command; " + all},
      {{"chek", "my.yaml"}, "bedwright: chek is no command; did you mean check? " + all},
      {{"--frobnicate"}, "bedwright: --frobnicate is no option here; " + all},
      {{"--verison"}, "bedwright: --verison is no option here; did you mean --version? " + all},
      {{}, "bedwright: no command was given; " + all},
  };
  for (const auto& [words, message] : told) {
    const Outcome outcome = run(words);
    EXPECT_EQ(outcome.code, 2) << message;
    EXPECT_EQ(outcome.out, message);
  }
  const Outcome option = run({"check", testing::order_path("base"), "--sugest"});
  EXPECT_EQ(option.code, 2);
  EXPECT_THAT(option.out, ::testing::StartsWith(
                              "bedwright check: --sugest is no option of it; did you mean --suggest? "));
  const Outcome more = run({"check", "my", "order.yaml"});
  EXPECT_EQ(more.code, 2);
  EXPECT_THAT(more.out,
              HasSubstr("order.yaml is one word more than it takes; put a name with spaces in quotes"));
  for (const char* fine : {"--help", "-h", "--version"}) EXPECT_EQ(run({fine}).code, 0) << fine;
}

TEST_F(Program, AFolderThatCannotBeMadeIsNamedOnce) {
  const Outcome drawn = run({"draw", testing::order_path("base"), "--out", "/proc/nope"});
  EXPECT_EQ(drawn.code, 2);
  EXPECT_EQ(drawn.out, "bedwright: cannot make /proc/nope: No such file or directory\n");
  const Outcome missing = run({"check", folder / "none.yaml"});
  EXPECT_EQ(missing.code, 2);
  EXPECT_THAT(run({"check", ""}).out,
              ::testing::StartsWith("an empty name is the name of no file; name one\n"));
  for (const std::string& no_file : {std::string(), folder.string(), folder.string() + "/"}) {
    const Outcome made = run({"new", no_file});
    EXPECT_EQ(made.code, 2);
    EXPECT_THAT(made.out, HasSubstr("is no name for a file; give one, as my_order.yaml"));
  }
  EXPECT_THAT(missing.out, ::testing::StartsWith((folder / "none.yaml").string() +
                                                 ": does not exist; check the spelling\n"));
}

TEST_F(Program, ANewOrderWithASpaceInItsNameCanBeDrawnAsPrinted) {
  const fs::path file = folder / "Ann's new order.yaml";
  const Outcome made = run({"new", file});
  ASSERT_EQ(made.code, 0) << made.out;
  EXPECT_THAT(content(file), HasSubstr("number: Ann-s-new-order "));
  // The line as printed, pasted into a shell that knows the program by that name.
  const std::size_t at = made.out.find("./bedwright check ");
  ASSERT_NE(at, std::string::npos);
  const std::string line = made.out.substr(at + 12, made.out.find('\n', at) - at - 12);
  const Outcome checked = outcome_of(quoted(BEDWRIGHT_PROGRAM) + " " + line + " 2>&1 </dev/null");
  EXPECT_EQ(checked.code, 0) << checked.out;
}

TEST_F(Program, ANewOrderIsWorkedOutWithALogAndSaysWhichWayIsPlus) {
  for (const char* units : {"", "--metric"}) {
    const fs::path file = folder / (std::string("order") + units + ".yaml");
    std::vector<std::string> arguments = {"new", file};
    if (*units) arguments.push_back(units);
    ASSERT_EQ(run(arguments).code, 0);
    EXPECT_THAT(content(file), ::testing::ContainsRegex("tabs_found:\n#   - \\{tab: R7"));
    EXPECT_THAT(content(file), HasSubstr("x is how far rearward of its place"));
    const Outcome checked = run({"check", file, "--json"});
    ASSERT_EQ(checked.code, 0) << checked.out;
    EXPECT_FALSE(std::get<Job>(load_job(file.string(), {})).order.work.log->species.text.empty());
  }
}

TEST_F(Program, CompareRunsTheRulesOnBoth) {
  const Outcome checked = run({"check", testing::order_path("wrong"), "--json"});
  const int stops = nlohmann::json::parse(checked.out).at("counts").at("stop");
  const Outcome compared = run({"compare", testing::order_path("base"), testing::order_path("wrong")});
  EXPECT_EQ(compared.code, 0);
  EXPECT_THAT(
      compared.out,
      ::testing::StartsWith(fmt::format(
          "QB-1041 against QB-1045\nQB-1041 goes together\nQB-1045 is stopped: {} stops (see check); ",
          stops)));
  const Outcome json = run({"compare", testing::order_path("base"), testing::order_path("wrong"), "--json"});
  EXPECT_EQ(nlohmann::json::parse(json.out).at("b").at("stops"), stops);
}

TEST_F(Program, AnotherOrdersFolderIsRefusedAndLeftAlone) {
  ASSERT_EQ(run({"draw", testing::order_path("base"), "--out", folder}).code, 0);
  fs::rename(folder / "QB-1041", folder / "QB-1044");
  const auto before = tree(folder);
  const Outcome drawn = run({"draw", testing::order_path("lot_frame"), "--out", folder});
  EXPECT_EQ(drawn.code, 2);
  EXPECT_THAT(drawn.out, HasSubstr("QB-1044 holds the release of order QB-1041, not of QB-1044; nothing was "
                                   "touched: give another folder with --out"));
  // Nor may an order's folder be taken for the one above it.
  const Outcome inside = run({"draw", testing::order_path("metric"), "--out", folder / "QB-1044" / "A"});
  EXPECT_EQ(inside.code, 2);
  EXPECT_THAT(inside.out, HasSubstr("holds the files of order QB-1041 itself; nothing was touched"));
  EXPECT_EQ(tree(folder), before);
}

TEST_F(Program, ChecksReportIsTheOneDocumented) {
  const Outcome checked = run({"check", testing::order_path("wrong"), "--json"});
  EXPECT_EQ(checked.code, 1);
  const auto report = nlohmann::json::parse(checked.out);
  EXPECT_EQ(report.at("format"), "bedwright report");
  EXPECT_EQ(report.at("version"), 1);
  EXPECT_EQ(report.at("state"), "stopped");
  EXPECT_GT(report.at("counts").at("stop"), 10);
}

TEST_F(Program, ExplainsEveryRuleAndPrintsEverySchema) {
  for (const Rule& rule : rules()) {
    const Outcome explained = run({"explain", rule.code});
    EXPECT_EQ(explained.code, 0);
    EXPECT_THAT(explained.out, HasSubstr(rule.source));
  }
  for (const char* which : {"order", "kit", "frame"}) {
    const Outcome printed = run({"schema", which});
    EXPECT_EQ(printed.code, 0);
    EXPECT_EQ(nlohmann::json::parse(printed.out).at("type"), "object");
  }
}

TEST_F(Program, NoColourWithoutATerminal) {
  EXPECT_THAT(run({"check", testing::order_path("wrong")}).out, Not(HasSubstr("\x1b")));
}

TEST_F(Program, HelpHasAnExampleForEachCommand) {
  for (const char* command : {"draw", "check", "offer", "compare", "schema", "explain", "new", "verify",
                              "sheet", "built", "orders"}) {
    const Outcome help = run({command, "--help"});
    EXPECT_EQ(help.code, 0);
    EXPECT_THAT(help.out, ::testing::ContainsRegex("Examples?:\n  bedwright"));
  }
}

}  // namespace
}  // namespace bedwright
