// True profiles of channels, tubes and angles from their published dimensions.
#include "catalog/section.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
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
  demand(s, s.flange_slope >= 0 && s.thickness_at >= 0 && s.thickness_at <= s.flange,
         "the flange's thickness must be measured on the flange");
  const Mm toe = flange_thickness_at(s, s.flange), root = flange_thickness_at(s, s.web);
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

// A rectangle between `inset` and its full size less that, all corners rounded alike.
Outline rounded(const Section& s, Mm inset, Mm radius) {
  const Mm z = s.depth / 2 - inset;
  Outline outline = rectangle({inset, -z}, {s.flange - inset, z});
  for (std::size_t corner = 4; corner-- > 0;) round_by(s, outline, corner, radius, "corner radius");
  return outline;
}

Outline tube(const Section& s) {
  demand(s, 2 * s.web < std::min(s.flange, s.depth), "its walls meet in the middle");
  return rounded(s, 0, outer_corner(s));
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
  switch (section.shape) {
    case Shape::channel:
      return channel(section);
    case Shape::tube:
      return tube(section);
    case Shape::angle:
      break;
  }
  return angle(section);
}

std::optional<Outline> hollow(const Section& section) {
  if (!is_closed(section)) return std::nullopt;
  return rounded(section, section.web, section.root_radius);
}

AreaProperties steel_properties(const Section& section) {
  const AreaProperties whole = area_properties(profile(section));
  const auto inside = hollow(section);
  if (!inside) return whole;
  // The two share their centroid: a tube is even both ways.
  const AreaProperties out = area_properties(*inside);
  return {whole.area - out.area, whole.centroid, whole.about_x - out.about_x, whole.about_y - out.about_y};
}

Mm flange_thickness_at(const Section& s, Mm y) {
  if (is_closed(s)) return s.web;
  const Mm at = s.thickness_at > 0 ? s.thickness_at : (s.flange + s.web) / 2;
  return s.flange_thickness + s.flange_slope * (at - y);
}

Mm fillet_tangent(const Section& s) {
  const Radians turn = std::numbers::pi / 2 - std::atan(s.flange_slope);
  return s.root_radius * std::tan(turn / 2);
}

Mm outer_corner(const Section& s) { return is_closed(s) ? s.root_radius + s.web : 0; }

Mm clear_depth(const Section& s) {
  if (is_closed(s)) return s.depth - 2 * outer_corner(s);
  return s.depth - 2 * (flange_thickness_at(s, s.web) + fillet_tangent(s));
}

double inner_slope(const Section& s) { return s.shape == Shape::channel ? s.flange_slope : 0; }

}  // namespace bedwright
