// What pinning the track at its front, its middle or its rear leaves at its holes.
#pragma once

#include <array>

#include "rules/scene.h"

namespace bedwright {

// Indexed by Datum: the worst margin over all track bolts, worst case sums, the
// bolt that has it, and the float it is the rest of.
struct DatumMargin {
  Mm margin = 0;
  Mm room = 0;
  int bolt = -1;
};
using DatumMargins = std::array<DatumMargin, 3>;
DatumMargins datum_margins(const Scene& scene, const Job& job);

// Where the worst hole has most room: `now` unless another place gains at least 0.01 in.
Datum recommended_datum(const DatumMargins& margins, Datum now);

const char* datum_word(Datum datum);  // "front"

}  // namespace bedwright
