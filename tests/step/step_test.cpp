// The STEP file, read back by another process through the kernel's document
// framework, against the Bed it came from.
#include "kernel/step.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <sstream>

#include "bed/names.h"
#include "kernel/sample.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using testing::HasSubstr;
using testing::Not;

const StepHeader header{"A-1042", "2024-05-31", "An Author", "A Shop", "bedwright test"};

// A folder of the test's own, gone afterwards.
struct Folder {
  fs::path path;
  Folder() {
    std::string name = (fs::temp_directory_path() / "step_test_XXXXXX").string();
    if (!mkdtemp(name.data())) throw std::runtime_error("no temporary folder");
    path = name;
  }
  ~Folder() { fs::remove_all(path); }
};

std::string output_of(const std::string& command) {
  FILE* pipe = popen(command.c_str(), "r");
  std::string out;
  std::array<char, 4096> buffer{};
  while (const std::size_t n = fread(buffer.data(), 1, buffer.size(), pipe)) out.append(buffer.data(), n);
  EXPECT_EQ(pclose(pipe), 0) << command;
  return out;
}

std::string content(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream out;
  out << file.rdbuf();
  return out.str();
}

json read_back(const Bed& bed) {
  const Folder folder;
  write_step(bed, header, folder.path / "bed.step");
  return json::parse(output_of(fmt::format("{} {}", STEP_READ, (folder.path / "bed.step").string())));
}

Vec3 vec(const json& array) { return {array[0], array[1], array[2]}; }

TEST(Step, says_what_the_bed_says) {
  const Bed bed = sample::bed(8);
  const json file = read_back(bed);
  EXPECT_EQ(file["root"], "A-1042");

  std::map<std::string, json> parts;
  for (const json& part : file["parts"])
    EXPECT_TRUE(parts.emplace(part["name"], part).second) << part["name"];
  EXPECT_EQ(parts.size(), bed.parts.size());
  for (const Part& part : bed.parts) {
    ASSERT_TRUE(parts.contains(name(part))) << name(part);
    const json& found = parts[name(part)];
    EXPECT_NEAR(found["volume"].get<double>() / volume(part), 1, 1e-8) << name(part);
    EXPECT_TRUE(found["valid"]) << name(part);
    EXPECT_TRUE(found["coloured"]) << name(part);
    const auto* bought = std::get_if<Bought>(&part.form);
    EXPECT_EQ(found["solids"], bought ? bought->envelope.size() : 1) << name(part);
  }

  std::vector<const Item*> shown;
  for (const Item& item : bed.items) {
    if (item.shown) shown.push_back(&item);
  }
  ASSERT_EQ(file["components"].size(), shown.size());
  ASSERT_LT(shown.size(), bed.items.size()) << "the sample should hide something";
  Mm3 total = 0;
  Vec3 moment;
  for (std::size_t i = 0; i < shown.size(); ++i) {
    const json& component = file["components"][i];
    const Part& part = bed.parts[shown[i]->part];
    const Vec3 centre = shown[i]->placement.point(centroid(part));
    EXPECT_EQ(component["name"], name(*shown[i]));
    EXPECT_EQ(component["part"], name(part));
    EXPECT_LT(norm(vec(component["centre"]) - centre), 1e-3) << name(*shown[i]);
    total += volume(part);
    moment = moment + volume(part) * centre;
  }
  EXPECT_NEAR(file["volume"].get<double>() / total, 1, 1e-8);
  EXPECT_LT(norm(vec(file["centre"]) - (1 / total) * moment), 1e-3);
}

TEST(Step, names_survive_whatever_is_in_them) {
  Words other = shop_words();
  other.part[static_cast<int>(Kind::tab)] = "plate 1/2\" it's C:\\x";
  other.item[static_cast<int>(Kind::tab)] = "caf\xC3\xA9 \xE2\x82\xAC \xF0\x9D\x84\x9E end";
  other.item[static_cast<int>(Kind::tab_pad)] = std::string(150, 'n');
  const WordsInUse in_use(other);
  Bed bed;
  const int part = bed.add_part({{Kind::tab}, "A36", Origin::made, sample::tab()});
  bed.add_item({part, {}, {Kind::tab}});
  bed.add_item({part, {{200, 0, 0}}, {Kind::tab_pad}});
  const json file = read_back(bed);
  EXPECT_EQ(file["parts"][0]["name"], "plate 1/2\" it's C:\\x");
  EXPECT_EQ(file["components"][0]["name"], "caf\xC3\xA9 \xE2\x82\xAC \xF0\x9D\x84\x9E end");
  EXPECT_EQ(file["components"][1]["name"], std::string(150, 'n'));
}

// ISO 10303-21 allows the bytes 32 to 126 and line ends.
TEST(Step, is_plain_ascii) {
  Words other = shop_words();
  other.part[static_cast<int>(Kind::tab)] = other.item[static_cast<int>(Kind::tab)] = "t\xC3\xB4le";
  const WordsInUse in_use(other);
  Bed bed;
  bed.add_item(
      {bed.add_part({{Kind::tab}, "A36", Origin::made, sample::tab()}), {}, {Kind::tab, Side::middle, 1}});
  for (const char c : step_text(bed, header)) EXPECT_TRUE((c >= 32 && c <= 126) || c == '\n') << int(c);
}

TEST(Step, header_is_what_was_given) {
  const std::string text = step_text(sample::bed(2), header);
  const std::string head = text.substr(0, text.find("DATA;"));
  EXPECT_THAT(head, HasSubstr("'2024-05-31T00:00:00'"));
  EXPECT_THAT(head, HasSubstr("'An Author'"));
  EXPECT_THAT(head, HasSubstr("'A Shop'"));
  EXPECT_THAT(head, HasSubstr("'bedwright test'"));
  EXPECT_THAT(head, HasSubstr("AUTOMOTIVE_DESIGN"));
  EXPECT_THAT(text, HasSubstr(".MILLI.,.METRE."));
  // No name the kernel counted up, no place in the file system.
  EXPECT_THAT(text, Not(HasSubstr("translator")));
  EXPECT_THAT(text, Not(HasSubstr("/tmp")));
}

TEST(Step, same_bytes_twice_in_a_process) {
  const Bed bed = sample::bed(4);
  const std::string first = step_text(bed, header);
  step_text(sample::bed(2), header);
  EXPECT_EQ(first, step_text(bed, header));
}

TEST(Step, same_bytes_in_other_processes_and_folders) {
  const Folder a, b;
  const std::string here = step_text(sample::bed(4), header);
  for (const fs::path& path : {a.path / "one.step", b.path / "two.step"}) {
    // Nothing is printed either: the kernel would, left to itself.
    EXPECT_EQ(output_of(fmt::format("{} {} 4 2>&1", STEP_WRITE, path.string())), "");
    EXPECT_EQ(content(path), here);
  }
}

// The kernel's settings are one table for the whole process; another use of it must not show.
TEST(Step, settings_in_the_environment_do_not_show) {
  const Folder folder;
  const fs::path path = folder.path / "bed.step";
  output_of(fmt::format("TZ=Asia/Tokyo LC_ALL=C.UTF-8 {} {} 4", STEP_WRITE, path.string()));
  EXPECT_EQ(content(path), step_text(sample::bed(4), header));
}

TEST(Step, nothing_shown_is_refused) { EXPECT_THROW(step_text(Bed{}, header), std::runtime_error); }

TEST(Step, a_place_that_cannot_be_written_is_named) {
  try {
    write_step(sample::bed(2), header, "/nonexistent/bed.step");
    FAIL() << "written";
  } catch (const std::runtime_error& e) {
    EXPECT_THAT(e.what(), HasSubstr("/nonexistent/bed.step"));
  }
}

// A plate 10 wide that a hole of 12 cuts in two: no release shows it, a draft shows it
// without the hole and says so.
TEST(StepOfADraft, ShowsWhatItsHolesLeaveInPieces) {
  Bed bed;
  const Plate plate{rectangle({-50, -5}, {50, 5}), 6, {sample::round_hole({0, 0}, 12)}};
  const int part = bed.add_part({{Kind::joint_gusset}, "steel", Origin::kit, plate});
  Item item;
  item.part = part;
  item.id = {Kind::joint_gusset, Side::left, 1};
  bed.add_item(item);
  EXPECT_THROW(step_text(bed, header), std::runtime_error);
  StepHeader draft = header;
  draft.draft = true;
  EXPECT_THAT(step_text(bed, draft), HasSubstr("joint gusset, its holes not drawn"));
}

}  // namespace
}  // namespace bedwright
