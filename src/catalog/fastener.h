// Bolts, nuts and washers as their standards state them. Millimetres.
#pragma once

#include <string>
#include <vector>

#include "units/units.h"

namespace bedwright {

// A washer's size: nominal figures used for layout.
struct Washer {
  Mm inside = 0, outside = 0, thickness = 0;
  friend bool operator==(const Washer&, const Washer&) = default;
};

// The room its tools take. 0: not stated, the usual size for the flats (see usual_tools).
struct Tools {
  Mm socket_outside = 0, socket_length = 0;
  Mm wrench_width = 0, wrench_thickness = 0;  // open end's jaws
  Mm wrench_length = 0;
  friend bool operator==(const Tools&, const Tools&) = default;
};

// How much longer or shorter than its nominal length a bolt of up to `up_to` may be.
struct LengthTolerance {
  Mm up_to = 0, plus = 0, minus = 0;
  friend bool operator==(const LengthTolerance&, const LengthTolerance&) = default;
};

// One thread size with the hardware that goes on it.
struct BoltSize {
  std::string name;     // "1/2 in", "M12"
  bool metric = false;  // by its thread: stated as a pitch, not as threads per inch
  Mm diameter = 0;
  Mm pitch = 0;  // thread pitch
  Mm head_flats = 0, head_height = 0;
  Mm nut_flats = 0, nut_height = 0;
  Washer flat, lock;
  Mm wrench = 0;         // across flats of the wrench that fits
  Mm standard_hole = 0;  // standard (inch, AISC) or medium (metric, ISO 273) clearance hole
  Mm oversize_hole = 0;  // oversize (AISC) or coarse (ISO 273)
  Mm edge_minimum = 0;   // hole centre to edge, AISC table J3.4 (metric J3.4M; below its first row 1.5 d)
  Mm thread_length = 0;  // nominal thread length of a bolt long enough to have a plain shank
  std::vector<LengthTolerance> tolerances;  // by length, ascending; at least one
  std::vector<Mm> lengths;                  // stock lengths, ascending
  Tools tools;
  // Of a bolt that long; of the longest known where that is longer. Throws std::logic_error where
  // none is known at all.
  const LengthTolerance& tolerance(Mm length) const;
  friend bool operator==(const BoltSize&, const BoltSize&) = default;
};

// A bolt length in its own standard's unit, whatever the order prints in: "1-1/2 in", "35 mm".
std::string bolt_length_text(const BoltSize& size, Mm length);

// The size's tools, what is not stated filled in from the wrench's opening.
Tools usual_tools(const BoltSize& size);

}  // namespace bedwright
