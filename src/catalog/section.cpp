// True profiles of channels and angles from their published dimensions.
#include "catalog/section.h"

#include <fmt/format.h>

#include <stdexcept>

namespace bedwright {
namespace {

[[noreturn]] void refuse(const Section& section, const std::string& why) {
  throw std::invalid_argument(fmt::format("section {}: {}", section.name, why));
}

void demand(const Section& section, bool holds, const char* why) {
  if (!holds) refuse(section, why);
}

void round_by(const Section& section, Outline& outline, std::size_t corner, Mm radius, const char* what) {
  if (radius == 0) return;
  try {
    round_corner(outline, corner, radius);
  } catch (const std::invalid_argument& error) {
    refuse(section, fmt::format("{} of {:.2f} mm does not fit: {}", what, radius, error.what()));
  }
}

Outline channel(const Section& s) {
  demand(s, s.flange_thickness > 0, "flange thickness must be over 0");
  const Mm taper = channel_flange_slope * (s.flange - s.web) / 2;
  const Mm toe = s.flange_thickness - taper, root = s.flange_thickness + taper;
  demand(s, toe > same_place, "flange tapers to nothing before its toe");
  demand(s, 2 * root < s.depth, "flanges meet inside the depth");
  const Mm z = s.depth / 2;
  Outline outline = polygon({{0, -z},
                             {s.flange, -z},
                             {s.flange, -z + toe},
                             {s.web, -z + root},
                             {s.web, z - root},
                             {s.flange, z - toe},
                             {s.flange, z},
                             {0, z}});
  // Last corner first: rounding adds a vertex and moves the later ones along.
  round_by(s, outline, 5, s.toe_radius, "toe radius");
  round_by(s, outline, 4, s.root_radius, "root radius");
  round_by(s, outline, 3, s.root_radius, "root radius");
  round_by(s, outline, 2, s.toe_radius, "toe radius");
  return outline;
}

Outline angle(const Section& s) {
  demand(s, s.web < s.depth, "a leg must be longer than it is thick");
  const Mm t = s.web;
  Outline outline = polygon({{0, 0}, {s.flange, 0}, {s.flange, t}, {t, t}, {t, s.depth}, {0, s.depth}});
  round_by(s, outline, 4, s.toe_radius, "toe radius");
  round_by(s, outline, 3, s.root_radius, "root radius");
  round_by(s, outline, 2, s.toe_radius, "toe radius");
  return outline;
}

}  // namespace

Outline profile(const Section& section) {
  demand(section, section.depth > 0 && section.flange > 0 && section.web > 0,
         "depth, flange and web must be over 0");
  demand(section, section.web < section.flange, "web must be thinner than the flange is wide");
  demand(section, section.root_radius >= 0 && section.toe_radius >= 0, "radii must not be negative");
  return section.shape == Shape::channel ? channel(section) : angle(section);
}

}  // namespace bedwright
