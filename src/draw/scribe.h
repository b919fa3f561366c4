// Finds a clear place for a part's name inside its outline.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bed/bed.h"
#include "draw/list2d.h"
#include "params/order.h"

namespace bedwright {

// Letters keep this far from every hole and edge, and are at least this high:
// a scribed or plasma-marked letter smaller than that is not read (common
// practice, no published source).
inline constexpr Mm scribe_clearance = 3;
inline constexpr Mm scribe_least_height = 4;
inline constexpr Mm scribe_most_height = 12;

struct Lettering {
  Mm height = 0;
  Box2 box;  // around all the strokes
  std::vector<std::vector<Vec2>> strokes;
};

// An arrow and the words, on one, two or three lines, upright or turned a quarter,
// as large as fits, as near the middle as fits. The arrow stands ahead of the first
// line and points along the plate's own +y, the top of its view on the sheets,
// whichever way the words run. Nothing when letters of the least height have no place.
std::optional<Lettering> scribe(const Plate& plate, const std::vector<std::string>& words);

// Whether the words have a place at this height, as scribe() would look for one.
bool letters_fit(const Plate& plate, const std::vector<std::string>& words, Mm height);

// What a part's cut file has scribed on it: its name, the order and the revision.
std::vector<std::string> scribe_words(const Part& part, const Heading& heading);

}  // namespace bedwright
