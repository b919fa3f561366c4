// What differs between two beds, part by part: what a shop that keeps cut parts on
// the shelf can still use.
//
// A part serves both where its form, material and origin are equal, whatever it is
// called. Of the rest, parts of one identity have changed; what is left is only in one. What
// is welded into a frame that stands is on no shelf, and none is made or fetched for it.
#pragma once

#include <string>
#include <vector>

#include "bed/bed.h"
#include "params/job.h"
#include "units/figures.h"

namespace bedwright {

struct Compared {
  const Job& job;
  const Bed& bed;
};

enum class Fate { same, changed, only_a, only_b };

struct PartChange {
  std::string name;      // as in A, or in B when it is only there
  std::string name_b;    // as in B; empty when it is only in A
  bool renamed = false;  // in both, but a different thing in each
  Origin origin = Origin::made;
  Fate fate = Fate::same;
  int in_a = 0, in_b = 0;        // how many of it
  std::vector<std::string> how;  // what changes, a phrase with figures for each
  std::string rework;            // how a piece made for A can become one of B; empty when it cannot
  bool welded_in = false;        // into a frame that stands, in A or in B
};

struct HeadLine {
  std::string what, a, b;  // "rail sections", "3", "4"
};

struct HardwareChange {
  std::string name;  // "bolt 1/2 in x 1-1/4 in"
  int in_a = 0, in_b = 0;
};

struct Comparison {
  std::vector<HeadLine> bed;      // those that differ
  std::vector<HeadLine> ordered;  // keys of the order file whose values differ, in the order's own order
  bool stands_a = false, stands_b = false;  // whether its frame stands already
  std::vector<PartChange> parts;            // made first, then the kit's, then bought; in A's order, then B's
  std::vector<HardwareChange> hardware;     // all, in order of name
};

// Whether the frame was there before the order: its tab holes are given, not laid out.
bool frame_stands(const Job& job);

// Every key except those that say whose bed it is (number, customer, date, revision). Kit, frame and
// catalogue differ when what stands in the files differs, not where they stand; the keys of
// kit and frame whose values differ follow, as "frame.jack.pad_thickness".
std::vector<HeadLine> ordered_differently(const Job& a, const Job& b, const Figures& figures);

Comparison compare(const Compared& a, const Compared& b, const Figures& figures);

// What differs between two forms of one part, in words with figures, and how one
// could be made from the other. Both plates, both members, or both bought:
// throws std::bad_variant_access.
struct FormChange {
  std::vector<std::string> how;
  std::string rework;
};
FormChange form_change(const Form& a, const Form& b, const Figures& figures);

// What tells one of the two beds from the other, and whether it goes together.
struct Told {
  const Heading& heading;
  std::string file;         // as the user named it
  int stops = 0;            // findings that stop it
  std::string called = {};  // what the text calls it; empty: by number, revision or file
};

// As the owner reads it, in lines of at most `width` columns. Two of one number are
// told apart by their revisions, two of one revision by their files.
std::string comparison_text(const Comparison& comparison, const Told& a, const Told& b, int width);

// Only what became of A in B: values ordered differently, made parts that change, are new or
// no longer needed, bolts and bought things; and in a line which made parts stay good.
std::string change_text(const Comparison& comparison, const Told& a, const Told& b, int width);

// The same for a title block: what becomes of parts, then of bolts, then of values ordered, a
// phrase each. Empty where nothing differs.
std::vector<std::string> change_phrases(const Comparison& comparison);

// "bedwright compare", version 1:
//   a, b      {"number", "revision", "file", "stops": findings that stop it, "frame_stands"}
//   bed       list of {"what", "a", "b"}: headline figures that differ
//   ordered   list of {"key", "a", "b"}: keys of the order file whose values differ
//   parts     list of {"name", "name_b" (null when only in a), "origin" ("made", "kit",
//             "bought"), "fate" ("same", "changed", "only a", "only b"), "in_a", "in_b",
//             "how": list of text, "rework": text, "welded_in": into a frame that stands}
//   hardware  list of {"name", "in_a", "in_b"}
// Same form as report.json otherwise: UTF-8, two-space indents, one newline at the end.
std::string comparison_json(const Comparison& comparison, const Told& a, const Told& b);

}  // namespace bedwright
