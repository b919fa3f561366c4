// The hand tools that turn a bolt, where the catalogue names none.
#include "catalog/fastener.h"

#include <algorithm>
#include <stdexcept>

#include "units/figures.h"

namespace bedwright {
namespace {

// Hand tools of common make, against the flats they fit; from memory, checked
// against the ring heads of A-A-1346 (tests/published/tools_test.cpp): no socket
// has a thinner wall than a ring needs.
constexpr double socket_wall = 1.5;  // outside / flats
constexpr Mm shortest_socket = 1.5 * inch;
constexpr double jaw_width = 2.2;  // over the jaws / flats
constexpr double jaw_thickness = 0.45;
constexpr double handle = 10;

Mm stated_or(Mm stated, Mm usual) { return stated > 0 ? stated : usual; }

}  // namespace

const LengthTolerance& BoltSize::tolerance(Mm length) const {
  if (tolerances.empty()) throw std::logic_error("no length tolerance is known of " + name + " bolts");
  const auto row = std::find_if(tolerances.begin(), tolerances.end(),
                                [&](const LengthTolerance& t) { return length <= t.up_to + same_place; });
  return row == tolerances.end() ? tolerances.back() : *row;
}

std::string bolt_length_text(const BoltSize& size, Mm length) {
  return figures_of_standard(size.metric).set(length);
}

Tools usual_tools(const BoltSize& size) {
  const Mm flats = size.wrench;
  return {stated_or(size.tools.socket_outside, socket_wall * flats),
          stated_or(size.tools.socket_length, std::max(shortest_socket, 2 * flats)),
          stated_or(size.tools.wrench_width, jaw_width * flats),
          stated_or(size.tools.wrench_thickness, jaw_thickness * flats),
          stated_or(size.tools.wrench_length, handle * flats)};
}

}  // namespace bedwright
