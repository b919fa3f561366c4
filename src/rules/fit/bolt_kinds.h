// The fewest different bolt lengths that serve every hole of one size.
//
// Exact. Each hole has the set of stock lengths that suit it; a choice of lengths
// serves all holes when it meets every set. Among the choices with the fewest
// lengths, the one with the fewest pieces of the longest stock length is taken,
// then of the next longest, and so on: longer bolts cost more. With the choice
// made, each hole takes the shortest chosen length that suits it, which can only
// lower those counts.
//
// Solved by iterative deepening (one length, two, ...) with branching on the
// holes that have the fewest lengths left: every least choice contains one of
// them, so every least choice is met.
#pragma once

#include <bitset>
#include <optional>
#include <string>
#include <vector>

#include "rules/scene.h"

namespace bedwright {

// One bit for each stock length, shortest first; as many as a catalogue entry may list.
using LengthSet = std::bitset<100>;

struct LengthChoice {
  std::vector<int> lengths;  // indices chosen, ascending
  std::vector<int> takes;    // by hole, the index it takes
};

// `suits`: by hole. Nothing when some hole has no length that suits it.
std::optional<LengthChoice> fewest_lengths(const std::vector<LengthSet>& suits);

// One hole of the bed as the pack list needs it.
struct HoleChoice {
  int bolt = -1;               // index in Bed::bolts
  std::vector<Mm> suits;       // stock lengths that suit, ascending
  std::optional<Mm> fewest;    // what it takes in the exact choice
  std::optional<Mm> from_kit;  // what it takes when only the lengths the maker packs are used
};

// All holes of one bolt size.
struct KindsOfSize {
  std::string size;
  std::vector<HoleChoice> holes;  // bolts in place, in the Bed's order
  std::vector<Mm> now, fewest;    // different lengths, ascending
  std::vector<Mm> in_kit;         // lengths of this size that the maker packs, ascending
  bool kit_serves = false;        // they serve every hole here that the kit has (track, bunk, gusset, stop)
};

// By size, in the order the Bed first uses them. Holes that no stock length suits
// are left to their own rules: they are listed, and take no part in the choice.
std::vector<KindsOfSize> kinds_of_bolts(const Scene& scene);

// Of the six kinds of bolts; what is none throws std::invalid_argument.
const char* role_word(Kind bolts);  // "tongue jack"
// Whether the kit has the holes for these bolts, and may send the bolts.
bool comes_with_kit(Kind bolts);

}  // namespace bedwright
