// A picture of the whole bed as one A3 page.
#pragma once

#include <string>
#include <vector>

#include "draw/view.h"
#include "formats/page.h"

namespace bedwright {

struct PictureCaption {
  std::string order, revision;
  std::vector<std::string> notes;  // one line each, under the order number
  bool draft = false;              // stamped NOT FOR FABRICATION
  std::string digest = {};         // of what the bed is made from (sheets/issue.h); empty: no code is drawn
};

// A3 landscape, black on white, hidden lines dashed. The view is drawn as large as a
// round reduction allows, between the stamp above and the caption below.
Page picture_page(const View& view, const PictureCaption& caption);

// The denominator of the largest reduction 1:n at which `width` by `height` fits
// into `space_width` by `space_height`, n a round number: 1, 2, 3, 4, 5, 6, 8, then
// 10, 12, 15, 20, 25, 30, 40, 50, 60, 80 and their tenfolds. (The steps of ISO
// 5455, 20 to 50, would leave a picture half its sheet.) All in millimetres; an
// empty size fits at 1. Throws std::invalid_argument when none does.
int round_reduction(Mm width, Mm height, Mm space_width, Mm space_height);

}  // namespace bedwright
