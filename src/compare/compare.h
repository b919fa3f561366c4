// What differs between two beds, part by part: what a shop that keeps cut parts on
// the shelf can still use.
//
// A part serves both where its form, material and origin are equal, whatever its
// name. Of the rest, parts of one name have changed; what is left is only in one.
#pragma once

#include <string>
#include <vector>

#include "bed/bed.h"
#include "checks/figures.h"
#include "params/job.h"

namespace bedwright {

struct Compared {
  const Job& job;
  const Bed& bed;
};

enum class Fate { same, changed, only_a, only_b };

struct PartChange {
  std::string name;            // as in A, or in B when it is only there
  Origin origin = Origin::made;
  Fate fate = Fate::same;
  int in_a = 0, in_b = 0;      // how many of it
  std::vector<std::string> how; // what changes, each a phrase with figures
  std::string rework;          // how a piece made for A can become one of B; empty when it cannot
};

struct HeadLine {
  std::string what, a, b;      // "rail sections", "3", "4"
};

struct HardwareChange {
  std::string name;            // "bolt 1/2 in x 1-1/4 in"
  int in_a = 0, in_b = 0;
};

struct Comparison {
  std::vector<HeadLine> bed;   // those that differ
  std::vector<PartChange> parts;        // made first, then the kit's, then bought; in A's order, then B's
  std::vector<HardwareChange> hardware; // all, in order of name
};

Comparison compare(const Compared& a, const Compared& b, const Figures& figures);

// What differs between two forms of one part, in words with figures, and how one
// could be made from the other.
struct FormChange {
  std::vector<std::string> how;
  std::string rework;
};
FormChange form_change(const Form& a, const Form& b, const Figures& figures);

// As the owner reads it, in lines of at most `width` columns.
std::string comparison_text(const Comparison& comparison, const Heading& a, const Heading& b, int width);

// "bedwright compare", version 1:
//   a, b      {"number", "revision"}
//   bed       list of {"what", "a", "b"}: headline figures that differ
//   parts     list of {"name", "origin" ("made", "kit", "bought"), "fate" ("same", "changed",
//             "only a", "only b"), "in_a", "in_b", "how": list of text, "rework": text}
//   hardware  list of {"name", "in_a", "in_b"}
// Same form as report.json otherwise: UTF-8, two-space indents, one newline at the end.
std::string comparison_json(const Comparison& comparison, const Heading& a, const Heading& b);

}  // namespace bedwright
