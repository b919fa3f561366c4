// Area, second moment and yield strength of a section.
#include "loads/steel.h"

#include <algorithm>

namespace bedwright {

Bending bending_of(const Section& section) {
  if (section.published && section.shape != Shape::angle)
    return {section.published->ix, section.published->ix / (section.depth / 2)};
  const AreaProperties a = steel_properties(section);
  const Mm low = section.shape == Shape::angle ? 0 : -section.depth / 2;
  const Mm edge = std::max(a.centroid.y - low, low + section.depth - a.centroid.y);
  return {a.about_x, a.about_x / edge};
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
