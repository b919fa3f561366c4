// The printed names of things, worked out from what they are: the only place where
// an Identity becomes words. Printed names are never turned back; tab_called() reads
// what a user writes, in the words of the order file.
#pragma once

#include <array>
#include <functional>
#include <string>

#include "bed/bed.h"

namespace bedwright {

// The words names are made of. A part may be called otherwise than its placed copies
// ("tab plate", "tab R7"); `part` is then not empty.
struct Words {
  std::array<std::string, kind_count> item, part;
  std::string clip_part;     // a tab that is a length of angle
  std::string fresh, filed;  // around the part of a tab made for a frame that stands, or filed there
  std::array<std::string, pose_count> pose;       // after an item's name
  std::array<std::string, pose_count> part_pose;  // after a part's
  std::array<std::string, piece_count> piece;     // after a bolt's
  std::array<std::string, piece_count> hardware;  // a part by what it is
  std::array<std::string, weld_line_count> weld_line;
  std::string front, rear, left, right, on_bunk;
};

// The shop's own words.
const Words& shop_words();

// The words in use. One language at a time, for the whole program.
const Words& words();

// Puts other words in use while it lives; not to be done on two threads at once.
class WordsInUse {
 public:
  explicit WordsInUse(Words other);
  ~WordsInUse();
  WordsInUse(const WordsInUse&) = delete;
  WordsInUse& operator=(const WordsInUse&) = delete;

 private:
  const Words* before_;
  Words mine_;
};

// A name in two halves: the word for its kind, and what tells it from others of that kind.
// "clamp" and "1 on bunk 5, leaning in, outer end"; `which` is empty where there is no other.
struct NameInTwo {
  std::string kind, which;
  std::string whole() const { return which.empty() ? kind : kind + " " + which; }
};
NameInTwo name_in_two(const Identity& id);
NameInTwo name_in_two(const Part& part);

// "tab R7", "clamp 1 on bunk 5, leaning in, outer end", "track bolt R3 nut".
std::string name(const Identity& id);
std::string name(const Item& item);
std::string name(const Bolt& bolt);
// "tab plate", "main", "bolt 1/2 in x 1.5 in": unique among a bed's parts.
std::string name(const Part& part);
// What a hole is for: "track bolt".
const std::string& word(Kind kind);
// "flat washer".
const std::string& word(HardwareKind kind);
// "both ends of the clip, down the web".
const std::string& words_of(WeldLine line);
// The part of a name that tells one from others of its kind: "R7", "2", "front L"; may be empty.
std::string mark(const Identity& id);
// The tab an order file calls "R7". Throws std::invalid_argument for other text, which
// reading the order has refused.
Identity tab_called(const std::string& text);
// "80 in", or each section's length from the front where they are not alike: "80 in, 60 in and
// 80 in", as `say` prints one.
std::string rail_lengths(const Track& track, const std::function<std::string(Mm)>& say);
// "L", "R" or nothing.
const std::string& letter(Side side);

}  // namespace bedwright
