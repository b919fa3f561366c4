// Printed colours and dash lengths, shared by the PDF and the SVG writer.
#include "formats/page.h"

namespace bedwright {

Rgb printed_colour(int index) {
  switch (index) {
    case 1:
      return {0.75, 0, 0};
    case 2:
      return {0.6, 0.5, 0};
    case 3:
      return {0, 0.5, 0};
    case 4:
      return {0, 0.5, 0.55};
    case 5:
      return {0, 0, 0.75};
    case 6:
      return {0.6, 0, 0.6};
    case 8:
      return {0.4, 0.4, 0.4};
    case 9:
      return {0.7, 0.7, 0.7};
    default:
      break;
  }
  if (index < 250 || index > 255) return {};
  const double grey = 0.2 + 0.12 * (index - 250);
  return {grey, grey, grey};
}

std::vector<double> dashes(LineKind kind) {
  switch (kind) {
    case LineKind::hidden:
      return {3, 1.5};
    case LineKind::centre:
      return {8, 1.5, 0.5, 1.5};
    case LineKind::continuous:
      break;
  }
  return {};
}

}  // namespace bedwright
