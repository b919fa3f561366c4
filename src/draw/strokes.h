// Letters drawn with single strokes, for a marker or scribe that follows lines
// and has no fonts. Our own shapes, on a grid four wide and six high.
#pragma once

#include <string>
#include <vector>

#include "geometry/vectors.h"

namespace bedwright {

// Open runs of straight pieces, the text's lower left corner at (0, 0), all
// within [0, stroke_width] x [0, height]. Small letters are drawn as capitals,
// save an x that stands between figures ("2 x 4"). A character with no shape of
// its own is drawn as a question mark.
std::vector<std::vector<Vec2>> strokes(const std::string& text, Mm height);

// Width of the drawn text in the unit of `height`; 0 for an empty one.
Mm stroke_width(const std::string& text, Mm height);

}  // namespace bedwright
