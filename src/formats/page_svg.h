// One page as an SVG 1.1 file in millimetres, the same drawing as in the PDF.
#pragma once

#include <string>

#include "formats/page.h"

namespace bedwright {

// Figures have three decimals, so the same page gives the same bytes.
std::string page_svg(const Page& page);

}  // namespace bedwright
