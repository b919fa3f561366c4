// Rolled and formed sections. A section is a shape with its dimensions; what a
// handbook publishes about it stands beside, so that the two can be compared.
#pragma once

#include <optional>
#include <string>

#include "geometry/outline.h"

namespace bedwright {

enum class Shape { channel, angle };

// Profile frames (what every member's holes, cuts and solids are measured in):
//  channel: y from the back of the web (0) toward the toes (flange), z from
//           -depth/2 to +depth/2. Inner flange faces slope 2 in 12; `flange_thickness`
//           is the mean, at the middle of the flange's overhang (flange - web) / 2.
//  angle:   outside corner (heel) at (0, 0); `flange` is the leg along +y,
//           `depth` the leg along +z, both of thickness `web`.
struct Section {
  std::string name;  // "C6x8.2", "L3x3x1/4", or a kit's own "rail"
  Shape shape = Shape::angle;
  Mm depth = 0;
  Mm flange = 0;
  Mm web = 0;
  Mm flange_thickness = 0;  // channel only
  Mm root_radius = 0;       // inside fillet
  Mm toe_radius = 0;        // at the free edges' inner corner
  // From the handbook; absent for a kit's own sections.
  struct Published {
    Mm2 area = 0;
    double kg_per_m = 0;
    Mm4 ix = 0;    // channel: about the axis through the centroid, normal to the web's depth (strong)
    Mm4 iy = 0;    // about the weak axis, parallel to the web
    Mm x_bar = 0;  // centroid from the back of the web (angle: from the heel)
    Mm y_bar = 0;  // angle only
    std::string source;
    friend bool operator==(const Published&, const Published&) = default;
  };
  std::optional<Published> published;
  friend bool operator==(const Section&, const Section&) = default;
};

// The 2 in 12 slope of the inner flange faces of American Standard channels.
inline constexpr double channel_flange_slope = 2.0 / 12.0;

// The profile as an outline in (y, z) of the frames above, counter-clockwise,
// with fillets as arcs. Throws std::invalid_argument when the dimensions cannot
// make a closed shape (the message names the section).
Outline profile(const Section& section);

}  // namespace bedwright
