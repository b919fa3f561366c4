// Area, second moment and yield strength of a section.
#include "loads/steel.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace bedwright {

Bending bending_of(const Section& section) {
  if (section.published && section.shape != Shape::angle)
    return {section.published->ix, section.published->ix / (section.depth / 2)};
  const AreaProperties a = steel_properties(section);
  const Mm low = section.shape == Shape::angle ? 0 : -section.depth / 2;
  const Mm edge = std::max(a.centroid.y - low, low + section.depth - a.centroid.y);
  return {a.about_x, a.about_x / edge};
}

Mm2 area_of(const Section& section) {
  return section.published ? section.published->area : steel_properties(section).area;
}

Mm4 torsion_of(const Section& section) {
  const auto leg = [](Mm length, Mm thickness) { return length * thickness * thickness * thickness / 3; };
  if (section.shape == Shape::angle)
    return leg(section.flange, section.web) + leg(section.depth - section.web, section.web);
  if (is_closed(section)) {  // Bredt: 4 A^2 t / perimeter, both to the middle of the wall
    const Mm wide = section.flange - section.web, deep = section.depth - section.web;
    return 2 * wide * wide * deep * deep * section.web / (wide + deep);
  }
  return 2 * leg(section.flange, section.flange_thickness) +
         leg(section.depth - 2 * section.flange_thickness, section.web);
}

Mpa channel_strength(const Section& s, Mm unbraced, Mpa yield) {
  if (is_closed(s)) return yield;  // a box this short turns no more than it bends: AISC 360 F7
  if (s.shape != Shape::channel) throw std::invalid_argument("buckling sideways is worked out for channels");
  const Mm4 iy = s.published ? s.published->iy : steel_properties(s).about_y, j = torsion_of(s);
  const double sx = bending_of(s).modulus;
  // As three plates, to the middles of the flanges.
  const Mm ho = s.depth - s.flange_thickness, b = s.flange - s.web / 2, t = s.flange_thickness, w = s.web;
  const double warping =
                   t * b * b * b * ho * ho / 12 * (3 * b * t + 2 * ho * w) / (6 * b * t + ho * w),  // mm6
      plastic = s.flange * t * ho + w * (s.depth - 2 * t) * (s.depth - 2 * t) / 4;                  // mm3
  const double c = ho / 2 * std::sqrt(iy / warping), rts = std::sqrt(std::sqrt(iy * warping) / sx),
               twist = j * c / (sx * ho);
  const Mm lp = 1.76 * std::sqrt(iy / area_of(s)) * std::sqrt(steel_modulus / yield),
           lr = 1.95 * rts * steel_modulus / (0.7 * yield) *
                std::sqrt(twist + std::sqrt(twist * twist + 6.76 * std::pow(0.7 * yield / steel_modulus, 2)));
  const double most = yield * plastic / sx;
  if (unbraced <= lp) return yield;
  if (unbraced <= lr) return std::min(yield, most - (most - 0.7 * yield) * (unbraced - lp) / (lr - lp));
  const double slender = unbraced / rts;
  return std::min(yield, std::numbers::pi * std::numbers::pi * steel_modulus / (slender * slender) *
                             std::sqrt(1 + 0.078 * twist * slender * slender));
}

Mm2 web_area(const Section& section) {
  if (!is_closed(section)) return section.depth * section.web;
  const Mm wall = section.published && section.published->wall > 0 ? section.published->wall : section.web;
  return 2 * clear_depth(section) * wall;
}

std::optional<Mpa> yield_of_grade(const std::string& grade) {
  std::string name;
  for (char c : grade)
    if (c != ' ' && c != '-') name += c;
  const std::pair<const char*, Mpa> known[] = {{"A36", 36 * ksi},  {"A572", 50 * ksi}, {"A57250", 50 * ksi},
                                               {"A529", 50 * ksi}, {"A992", 50 * ksi}, {"S235", 235},
                                               {"S275", 275},      {"S355", 355}};
  for (const auto& [word, yield] : known)
    if (name == word) return yield;
  return std::nullopt;
}

Mpa frame_yield(const FrameFile& frame) {
  if (frame.yield_strength > 0) return frame.yield_strength;
  return yield_of_grade(frame.grade).value_or(36 * ksi);
}

}  // namespace bedwright
