// Measures whether a drawing can be read: no letters on letters, lines or the frame.
#pragma once

#include <string>
#include <vector>

#include "draw/list2d.h"

namespace bedwright {

// One sentence for each text whose box meets another text's box, a line, arc or
// outline, or leaves the box `inside`. Boxes are list2d's text_box, less a
// thousandth of the letters' height, so that touching is no overlap.
std::vector<std::string> overlaps(const List2d& list, const Box2& inside);

}  // namespace bedwright
