// The customer's sheets: the shop's words with the bed's figures, and clear messages
// where the words ask for what there is not.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>

#include "sheets/aids/aids.h"
#include "sheets/bolts/bolt_kinds.h"
#include "support/readable.h"

namespace bedwright {
namespace {

using testing::demo_job;

AssemblyText fill(const std::string& steps, std::vector<Problem>& problems, const std::string& head = "") {
  return fill_assembly({{"letterhead.txt", head}, {"steps.txt", steps}},
                       {{"gauge", "49 in"}, {"joints", ""}, {"rails", "6"}}, {"bolt_table"}, problems);
}

std::string only_line(const std::string& steps, const std::string& head = "") {
  std::vector<Problem> problems;
  fill(steps, problems, head);
  EXPECT_EQ(problems.size(), 1U);
  return problems.empty() ? "" : to_line(problems[0]);
}

// A letterhead saved as Latin-1, and one with the mark some editors put ahead of UTF-8.
TEST(AssemblyText, tells_text_that_is_not_utf8) {
  EXPECT_EQ(only_line("= Head\n", "A Shop\nCaf\xE9 Road\n"),
            "letterhead.txt:2:4: byte 0xE9 is not UTF-8 text; save the file as UTF-8");
  EXPECT_EQ(only_line("- Lift it by its \xFC"
                      "ber end\n"),
            "steps.txt:1:18: byte 0xFC is not UTF-8 text; save the file as UTF-8");
  std::vector<Problem> problems;
  EXPECT_EQ(fill("= Head\n", problems,
                 "\xEF\xBB\xBF"
                 "Caf\xC3\xA9 Road\n")
                .letterhead,
            std::vector<std::string>{"Caf\xC3\xA9 Road"});
  EXPECT_TRUE(problems.empty());
}

TEST(AssemblyText, fills_names_and_keeps_kinds_and_order) {
  std::vector<Problem> problems;
  const AssemblyText text = fill(
      "# note {nothing}\n= Gauge {gauge}\n\n- Set {rails} rails to\n  {gauge} {{so}}\n* tick\n! mind\n@ "
      "bolt_table\n",
      problems, "# no\nShop, {gauge}\n\n");
  EXPECT_TRUE(problems.empty());
  EXPECT_EQ(text.letterhead, std::vector<std::string>{"Shop, 49 in"});
  EXPECT_EQ(text.lines, (std::vector<AssemblyLine>{{'=', "Gauge 49 in"},
                                                   {'-', "Set 6 rails to 49 in {so}"},
                                                   {'*', "tick"},
                                                   {'!', "mind"},
                                                   {'@', "bolt_table"}}));
}

TEST(AssemblyText, leaves_out_what_this_bed_has_not) {
  std::vector<Problem> problems;
  const AssemblyText text =
      fill("- a\n- at {joints} joints\n  and more\n- on\n  at {joints}\n- b\r\n", problems);
  EXPECT_TRUE(problems.empty());
  EXPECT_EQ(text.lines, (std::vector<AssemblyLine>{{'-', "a"}, {'-', "b"}}));
}

TEST(AssemblyText, an_unknown_name_is_one_message_with_its_place_and_the_names) {
  EXPECT_EQ(only_line("= A\n- Set the rails\n  to {gage} apart\n"),
            "steps.txt:3:6: there is no figure {gage}; the names are gauge, joints, rails");
  EXPECT_EQ(only_line("", "ok\n{gage}\n"),
            "letterhead.txt:2:1: there is no figure {gage}; the names are gauge, joints, rails");
  EXPECT_EQ(only_line("- {} apart"),
            "steps.txt:1:3: there is no figure {}; the names are gauge, joints, rails");
  std::vector<Problem> problems;
  fill("- {a} {b}\n- {gauge} {c}\n", problems);
  EXPECT_EQ(problems.size(), 3U);  // all of them at once
}

TEST(AssemblyText, broken_braces_and_lines_are_told_with_their_place) {
  EXPECT_TRUE(
      only_line("- Set {gauge apart\n").starts_with("steps.txt:1:7: a brace is opened and not closed"));
  EXPECT_TRUE(
      only_line("- Set gauge} apart\n").starts_with("steps.txt:1:12: a brace is closed that was not opened"));
  EXPECT_TRUE(
      only_line("- Set {gauge {rails}\n").starts_with("steps.txt:1:7: a brace is opened and not closed"));
  EXPECT_TRUE(
      only_line("- Set {gauge:d} apart\n").starts_with("steps.txt:1:3: a figure's layout is not understood"));
  EXPECT_TRUE(only_line("Set it\n").starts_with("steps.txt:1:1: a line that is neither heading"));
  EXPECT_TRUE(only_line("  lost\n").starts_with("steps.txt:1:1: a line that is neither heading"));
  EXPECT_EQ(only_line("@ bolts\n"),
            "steps.txt:1:3: there is no picture or table bolts; there are bolt_table");
}

TEST(AssemblyFiles, a_shops_own_folder_comes_first_and_lacks_are_shipped) {
  const std::string folder = std::string(SHEETS_TEMP) + "/words";
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder + "/mine");
  std::ofstream(folder + "/mine/letterhead.txt") << "Our own shop\n";
  std::vector<Problem> problems;
  const std::string order = folder + "/order.yaml";
  const AssemblyFiles files = read_assembly_files(
      testing::shipped_words(), order, {"mine", {order, 5, 3, "order.assembly_template"}}, problems);
  EXPECT_TRUE(problems.empty());
  EXPECT_EQ(files.letterhead.content, "Our own shop\n");
  EXPECT_EQ(files.steps.path, testing::shipped_words() + "/steps.txt");
  read_assembly_files(testing::shipped_words(), order, {"yours", {order, 5, 3, "order.assembly_template"}},
                      problems);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(to_line(problems[0]), order + ":5:3: order.assembly_template: " + folder +
                                      "/yours has neither letterhead.txt nor steps.txt; name a folder that "
                                      "has one of them, or leave the key out");
}

// The note at the head of the shipped words lists the names there are, no more, no fewer.
TEST(AssemblyText, shipped_notes_name_every_figure_and_picture) {
  std::ifstream in(testing::shipped_words() + "/steps.txt");
  const std::string all((std::istreambuf_iterator<char>(in)), {});
  const std::string note = all.substr(all.find("The names:"), all.find("\n= ") - all.find("The names:"));
  std::vector<std::string> said;
  static const std::regex word("[a-z]+(_[a-z]+)*");
  std::istringstream lines(note.substr(note.find('\n') + 1));
  for (std::string line; std::getline(lines, line);)
    if (line.starts_with("#   "))
      for (std::sregex_iterator it(line.begin(), line.end(), word), end; it != end; ++it)
        said.push_back(it->str());
  const Job job = demo_job("base");
  std::vector<std::string> names = assembly_pictures();
  for (const auto& f : assembly_figures({*examine(job).bed})) names.push_back(f.first);
  std::sort(said.begin(), said.end());
  std::sort(names.begin(), names.end());
  EXPECT_EQ(said, names);
}

std::string figure(const TemplateFigures& all, const std::string& name) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const auto& f) { return f.first == name; });
  return found == all.end() ? "no such figure" : found->second;
}

// "48-1/2 in (48.500 in)" or "1231.9 mm" back to millimetres, by this test's own reading.
Mm read_length(const std::string& words) {
  static const std::regex shape(R"((?:(\d+)-)?([\d.]+)(?:/(\d+))? (in|mm)(?: \(([\d.]+) in\))?)");
  std::smatch m;
  if (!std::regex_match(words, m, shape)) return -1e9;
  if (m[5].matched) return std::stod(m[5]) * inch;
  const double value =
      (m[1].matched ? std::stod(m[1]) : 0) + std::stod(m[2]) / (m[3].matched ? std::stod(m[3]) : 1);
  return value * (m[4] == "in" ? inch : 1);
}

TEST(Assembly, every_figure_is_the_models) {
  for (const std::string& name : testing::good_orders) {
    const Job job = demo_job(name);
    const Bed bed = testing::bed_of(job);
    const TemplateFigures f = assembly_figures({*examine(job, bed)});
    const Order& o = job.order;
    const std::map<std::string, Mm> lengths{
        {"rail_length", bed.track.rail_length},
        {"track_length", bed.track.total_length},
        {"gauge", bed.track.gauge},
        {"gauge_tolerance", o.tolerances.gauge},
        {"spacer_length", job.kit.gauge - 2 * job.kit.rail.thickness},
        {"bunk_pitch", bed.track.bunk_pitch},
        {"joint_gap_most", o.limits.joint_gap},
        {"joint_step_most", o.limits.joint_step},
        {"straight", o.work.sag_limit},
        {"straight_across", o.tolerances.gauge},
        {"most_past_nut", o.limits.most_past_nut},
        {"length_tolerance", o.limits.track_length_error},
        {"diagonal", std::sqrt(std::pow(bed.track.total_length, 2) + std::pow(job.kit.gauge, 2))},
        {"diagonal_difference", 2 * o.order.tape}};
    for (const auto& [key, wanted] : lengths)
      EXPECT_NEAR(read_length(figure(f, key)), wanted, 0.06)
          << name << ": " << key << " = " << figure(f, key);
    int rails = 0, jacks = 0;
    std::map<Kind, int> bolts;
    for (const Item& item : bed.items) {
      rails += item.shown && item.id.kind == Kind::rail;
      jacks += item.shown && item.id.kind == Kind::jack;
    }
    for (const Bolt& b : bed.bolts) bolts[b.id.kind] += b.in_place;
    EXPECT_EQ(figure(f, "rails"), std::to_string(rails));
    EXPECT_EQ(figure(f, "sections"), std::to_string(rails / 2));
    EXPECT_EQ(figure(f, "joints"), std::to_string(rails / 2 - 1));
    EXPECT_EQ(figure(f, "jacks"), std::to_string(jacks));
    EXPECT_EQ(figure(f, "jack_pairs"), std::to_string(jacks / 2));
    EXPECT_EQ(figure(f, "bunks"), std::to_string(bed.track.bunk_count()));
    EXPECT_EQ(figure(f, "track_bolt_count"), std::to_string(bolts[Kind::track_bolt]));
    EXPECT_EQ(figure(f, "bunk_bolt_count"), std::to_string(bolts[Kind::bunk_bolt]));
    EXPECT_EQ(figure(f, "gusset_bolt_count"), std::to_string(bolts[Kind::gusset_bolt]));
    EXPECT_EQ(figure(f, "stop_bolt_count"), std::to_string(bolts[Kind::stop_bolt]));
    EXPECT_EQ(figure(f, "spacers"), std::to_string(spacer_places({*examine(job, bed)}).size()));
    // Each kind by letter, size and length in the words of every use it is put to; each wrench.
    const std::map<Kind, std::string> words{{Kind::track_bolt, "track_bolts"},
                                            {Kind::bunk_bolt, "bunk_bolts"},
                                            {Kind::gusset_bolt, "gusset_bolts"},
                                            {Kind::stop_bolt, "stop_bolts"}};
    for (const BoltKind& k : track_bolt_kinds({*examine(job, bed)})) {
      const std::string said =
          std::string(1, k.letter) + " (" + k.size.name + " x " + bolt_length_text(k.size, k.length) + ")";
      for (const Kind use : k.uses) EXPECT_NE(figure(f, words.at(use)).find(said), std::string::npos) << said;
      EXPECT_NE(figure(f, "wrenches").find(o.order.figures().customer(k.size.wrench)), std::string::npos);
    }
    for (const Mm x : o.jacks)
      EXPECT_NE(figure(f, "jack_places").find(o.order.figures().customer(x)), std::string::npos);
    for (const ClampPlace& c : o.track.clamps)
      EXPECT_NE(figure(f, "clamp_bunks").find(std::to_string(c.bunk)), std::string::npos);
    for (const int b : o.track.log_stops)
      EXPECT_NE(figure(f, "log_stop_bunks").find(std::to_string(b)), std::string::npos);
  }
}

// What is on paper, from the sheets' own texts: the figures in words, the tables' rows.
TEST(Assembly, sheets_carry_the_figures_and_what_is_asked_for) {
  for (const std::string& name : testing::good_orders) {
    const Job job = demo_job(name);
    const Bed bed = testing::bed_of(job);
    const auto examined = examine(job, bed);
    SheetInput in{*examined};
    in.assembly = testing::filled_words(*examined);
    const std::vector<std::string> texts = testing::texts_of(assembly_sheets(in));
    std::string all;
    for (const std::string& t : texts) all += t + " ";
    const TemplateFigures f = assembly_figures(in);
    for (const char* key : {"gauge", "spacer_length", "section_order", "track_bolts", "gusset_bolts",
                            "bunk_bolts", "diagonal", "jack_places", "shop", "order"})
      EXPECT_NE(all.find(figure(f, key)), std::string::npos)
          << name << ": " << key << " = " << figure(f, key);
    for (const char* word :
         {"BOLTS BY LETTER", "BUNKS", "SPACERS AND BAR CLAMPS", "MEASURED AT THE END", "CAUTION", "R1", "L1"})
      EXPECT_NE(std::find(texts.begin(), texts.end(), word), texts.end()) << name << ": " << word;
    for (const BunkPlace& bunk : bed.track.bunks)
      EXPECT_NE(std::find(texts.begin(), texts.end(), job.order.order.figures().customer(bunk.x)),
                texts.end());
  }
}

TEST(Assembly, a_bed_with_one_section_and_no_clamps_has_no_words_of_them) {
  Job job = demo_job("base");
  job.kit.rail.base_sections = 1;
  job.order.track.clamps.clear();
  job.order.track.log_stops.clear();
  job.order.jacks = {500, 1500};
  const Bed bed = testing::bed_of(job);
  for (const AssemblyLine& line : testing::filled_words(*examine(job, bed)).lines) {
    EXPECT_EQ(line.text.find("slide the sections together"), std::string::npos) << line.text;
    EXPECT_EQ(line.text.find("go on bunks"), std::string::npos) << line.text;
  }
}

}  // namespace
}  // namespace bedwright
