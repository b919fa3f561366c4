// Lengths as tape fractions, decimals or millimetres.
#include "sheets/figures.h"

#include <algorithm>
#include <cmath>

#include "units/print.h"
#include "units/tape.h"

namespace bedwright {
namespace {

std::string without_unit(std::string s) {
  s.erase(s.rfind(' '));
  return s;
}

const char* unit(const Heading& heading) { return heading.printing == Printing::inches ? " in" : " mm"; }

}  // namespace

std::string tape_figure(Mm length, const Heading& heading) {
  if (heading.printing == Printing::metric) return mm_figure(length);
  const int denominator = std::max(1, static_cast<int>(std::lround(inch / heading.tape)));
  return without_unit(tape(on_tape(length, heading.tape), denominator));
}

std::string size_figure(Mm size, const Heading& heading) {
  return heading.printing == Printing::metric ? mm_figure(size) : without_unit(tape(size, 64));
}

std::string tape_length(Mm length, const Heading& heading) {
  return tape_figure(length, heading) + unit(heading);
}

std::string size_length(Mm size, const Heading& heading) {
  return size_figure(size, heading) + unit(heading);
}

std::string mm_figure(Mm length) {
  std::string s = without_unit(millimetres(length, 1));
  if (s.ends_with(".0")) s.erase(s.size() - 2);
  return s;
}

std::string inch_figure(Mm length) { return without_unit(decimal_inch(length)); }

}  // namespace bedwright
