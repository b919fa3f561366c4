// Rolled and formed sections. A section is a shape with its dimensions; what a
// handbook publishes about it stands beside, so that the two can be compared.
#pragma once

#include <optional>
#include <string>

#include "geometry/outline.h"

namespace bedwright {

enum class Shape { channel, angle, tube };

// The 2 in 12 slope of the inner flange faces of American Standard channels.
inline constexpr double channel_flange_slope = 2.0 / 12.0;

// Profile frames (what every member's holes, cuts and solids are measured in):
//  channel: y from the back of the web (0) toward the toes (flange), z from
//           -depth/2 to +depth/2. Inner flange faces slope `flange_slope` to the outer
//           ones; `flange_thickness` is measured at `thickness_at`.
//  angle:   outside corner (heel) at (0, 0); `flange` is the leg along +y,
//           `depth` the leg along +z, both of thickness `web`.
//  tube:    y from its outer side (0) to `flange`, its width; z from -depth/2 to +depth/2. All
//           walls are `web` thick; `root_radius` is the inside corner's, the outside corner's
//           is `web` more.
struct Section {
  std::string name;  // "C6x8.2", "L3x3x1/4", or a kit's own "rail"
  Shape shape = Shape::angle;
  Mm depth = 0;
  Mm flange = 0;
  Mm web = 0;
  Mm flange_thickness = 0;  // channel only
  Mm root_radius = 0;       // inside fillet; of a tube, inside corner
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
    // The wall the figures are worked out for, where that is not the wall ordered (AISC: 0.93
    // of it, for hollow sections to ASTM A500); 0: the wall ordered.
    Mm wall = 0;
    friend bool operator==(const Published&, const Published&) = default;
  };
  std::optional<Published> published;
  // Channel only: rise of a flange's inner face for each millimetre from toe to web (0: parallel
  // flanges), and where flange_thickness is measured from the back of the web (0: in the middle of
  // the overhang).
  double flange_slope = channel_flange_slope;
  Mm thickness_at = 0;
  friend bool operator==(const Section&, const Section&) = default;
};

// The flange of a channel or the wall of a tube, measured up and down at `y` from the web's back.
Mm flange_thickness_at(const Section& section, Mm y);
// Of the web's inner face between its two fillets, a tube's corners: what is flat.
Mm clear_depth(const Section& section);
// From a channel's inner corner, where web and flange faces would meet, to where its fillet
// leaves either face.
Mm fillet_tangent(const Section& section);
// How far the outer faces are rounded at a corner: a tube's; 0 for a channel or an angle.
Mm outer_corner(const Section& section);
// The slope of the face a nut or washer lies on inside a flange, 0 where flat.
double inner_slope(const Section& section);
// A tube holds what runs into it, and no hand or wrench gets in.
inline bool is_closed(const Section& section) { return section.shape == Shape::tube; }

// The profile as an outline in (y, z) of the frames above, counter-clockwise,
// with fillets as arcs. Throws std::invalid_argument when the dimensions cannot
// make a closed shape (the message names the section).
Outline profile(const Section& section);
// The hollow of a tube, in the same coordinates; nothing of an open section.
std::optional<Outline> hollow(const Section& section);
// Of the steel: the profile less its hollow.
AreaProperties steel_properties(const Section& section);

}  // namespace bedwright
