// Counts the sections and gaps between the pinned end and a place.
#include "params/datum.h"

#include <cmath>

namespace bedwright {

Accumulated accumulated(Datum datum, int sections, int index, bool from_rear_end) {
  const double pinned = datum == Datum::front ? 0 : datum == Datum::rear ? sections : sections / 2.0;
  const double reference = index + (from_rear_end ? 1 : 0);
  Accumulated a;
  a.sections = std::abs(reference - pinned);
  a.direction = index >= pinned ? 1 : index + 1 <= pinned ? -1 : 0;
  // Joint k lies between sections k - 1 and k.
  for (int k = 1; k < sections; ++k) {
    const bool between = a.direction > 0 ? (k > pinned && k <= index) : (k < pinned && k > index);
    if (between) a.joints += 1;
    if (k == pinned) a.joints += 0.5;
  }
  return a;
}

bool held_from_rear_end(const KitMounting& mounting, bool turned, Mm within, Mm rail_length) {
  return mounting.positions.empty() ? within > rail_length / 2 + same_place : turned;
}

}  // namespace bedwright
