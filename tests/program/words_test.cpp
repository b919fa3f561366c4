// Files do not depend on what things are called: under other words a packet is the
// same but for those words.
#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <map>
#include <set>
#include <sstream>

#include "commands/session.h"
#include "packet/packet_files.h"
#include "support/demo.h"

namespace bedwright {
namespace {

// The text with each of its words, a run of letters, put through `change`.
template <class Change>
std::string each_word(const std::string& text, Change change) {
  std::string out, word;
  const auto flush = [&] {
    if (!word.empty()) out += change(word);
    word.clear();
  };
  for (const char c : text) {
    if (std::isalpha(static_cast<unsigned char>(c))) {
      word += c;
    } else {
      flush();
      out += c;
    }
  }
  flush();
  return out;
}

// Each word turned about letter by letter: other words of the same width, so that no
// line breaks elsewhere and no column moves.
std::string turned(const std::string& text) {
  return each_word(text, [](const std::string& word) { return std::string(word.rbegin(), word.rend()); });
}

template <std::size_t n>
void turn_all(std::array<std::string, n>& all) {
  for (std::string& text : all) text = turned(text);
}

Words turned_words() {
  Words w = shop_words();
  turn_all(w.item), turn_all(w.part), turn_all(w.pose), turn_all(w.part_pose), turn_all(w.piece),
      turn_all(w.hardware);
  turn_all(w.weld_line);
  for (std::string* text : {&w.clip_part, &w.front, &w.rear, &w.on_bunk}) *text = turned(*text);
  return w;
}

// Every word of the names, so that what stands in a file can be turned back.
std::set<std::string> words_of_names() {
  std::set<std::string> all;
  const auto take = [&](const std::string& text) {
    each_word(text, [&](const std::string& word) { return *all.insert(word).first; });
  };
  const Words& w = shop_words();
  for (const auto& text : w.item) take(text);
  for (const auto& text : w.part) take(text);
  for (const auto& text : w.pose) take(text);
  for (const auto& text : w.part_pose) take(text);
  for (const auto& text : w.piece) take(text);
  for (const auto& text : w.hardware) take(text);
  for (const auto& text : w.weld_line) take(text);
  for (const auto& text : {w.clip_part, w.front, w.rear, w.on_bunk}) take(text);
  return all;
}

// Turns each word back that is a name's word turned about, in small or capital letters.
// Words that read as another when turned ("no", "on") are left out on both sides.
std::string told_back(const std::string& text, const std::map<std::string, std::string>& back) {
  return each_word(text, [&](const std::string& word) {
    std::string small = word;
    std::transform(small.begin(), small.end(), small.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    const auto at = back.find(small);
    return at == back.end() ? word : at->second;
  });
}

// A cut file scribes the part's name in strokes: those apart.
std::string without_scribing(const std::string& dxf) {
  std::istringstream in(dxf);
  std::string out, entity, line;
  bool scribed = false;
  const auto flush = [&] {
    if (!scribed) out += entity;
    entity.clear(), scribed = false;
  };
  while (std::getline(in, line)) {
    if (line == "  0\r") flush();
    if (line == "SCRIBE\r") scribed = true;
    entity += line + "\n";
  }
  flush();
  return out;
}

std::map<std::string, std::string> packet_of(const std::string& order) {
  Progress progress;
  const auto loaded = load_and_advise({testing::order_path(order), {}}, progress);
  std::map<std::string, std::string> files;
  PacketFiles made =
      packet_files(packet_input(*loaded, PacketState::released, std::string(64, '0'), progress));
  for (PacketFile& f : made.files) files[f.path] = std::move(f.content);
  return files;
}

bool ends_in(const std::string& path, const std::string& end) { return path.ends_with(end); }

// PDF is packed, and made of the pages that stand as SVG beside it; the cut parts'
// pictures show the strokes of their letters.
bool is_compared(const std::string& path) {
  return !ends_in(path, ".pdf") && path.find("contact_sheet") == std::string::npos &&
         path.find("plate_parts") == std::string::npos;
}

class OtherWords : public ::testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Orders, OtherWords, ::testing::ValuesIn(testing::good_orders));

TEST_P(OtherWords, MakeTheSameFilesButForTheWords) {
  std::map<std::string, std::string> back;
  for (const std::string& word : words_of_names())
    back[turned(word)] = word, back[turned(word) + "s"] = word + "s";  // one, or several
  const auto usual = packet_of(GetParam());
  const WordsInUse others(turned_words());
  const auto renamed = packet_of(GetParam());
  ASSERT_EQ(usual.size(), renamed.size());
  std::map<std::string, std::string> by_usual_name;
  for (const auto& [path, bytes] : renamed) by_usual_name[told_back(path, back)] = bytes;
  int compared = 0, other = 0;
  for (const auto& [path, bytes] : usual) {
    const auto twin = by_usual_name.find(told_back(path, back));
    ASSERT_NE(twin, by_usual_name.end()) << path;
    if (!is_compared(path)) continue;
    std::string a = bytes, b = twin->second;
    other += a != b;
    if (ends_in(path, ".dxf")) a = without_scribing(a), b = without_scribing(b);
    ++compared;
    std::istringstream lines_a(told_back(a, back)), lines_b(told_back(b, back));
    std::string line_a, line_b;
    while (std::getline(lines_a, line_a) && std::getline(lines_b, line_b) && line_a == line_b) continue;
    EXPECT_TRUE(told_back(a, back) == told_back(b, back)) << path << ", first at\n"
                                                          << line_a << "\n"
                                                          << line_b;
  }
  EXPECT_GT(compared, 40);
  EXPECT_GT(other, 15) << "the words in use were not used";
}

}  // namespace
}  // namespace bedwright
