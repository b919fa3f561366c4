// What a cut or drill file draws: closed lines and circles by layer, in millimetres.
#pragma once

#include <array>
#include <filesystem>
#include <string>
#include <vector>

namespace inspector {

using Flat = std::array<double, 2>;
using Ring = std::vector<Flat>;  // closed, arcs and circles as chords of 3 degrees or less

struct Drawn {
  std::string layer;
  bool closed = false;
  double radius = 0;  // a circle's; else 0
  Ring ring;
};

// Release 12 drawing files: POLYLINE with bulges, CIRCLE, LINE (open, of two points); other entities
// are passed over. Throws std::runtime_error when the file cannot be read or does not say its units.
std::vector<Drawn> read_drawing(const std::filesystem::path& file);

bool holds(const Ring& ring, Flat p);
double area(const Ring& ring);  // positive
double apart(const Ring& a, const Ring& b);
double apart(const Ring& a, Flat p);

}  // namespace inspector
