#include "export/drill_rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>
#include <numbers>

namespace bedwright {
namespace {

// Slots turned by less than this of each other are laid out alike.
constexpr Radians same_turn = 0.1 * degree;

bool same_size(const DrillSize& size, const FaceHole& other) {
  const Hole &a = size.hole, &b = other.hole;
  const Radians apart = std::remainder(size.turned - turned_in_view(other), std::numbers::pi);
  return std::abs(a.diameter - b.diameter) < same_place && std::abs(a.length - b.length) < same_place &&
         a.process == b.process && std::abs(apart) < same_turn;
}

DrillSize& size_of(std::vector<DrillSize>& sizes, const FaceHole& hole) {
  const auto found =
      std::find_if(sizes.begin(), sizes.end(), [&](const DrillSize& s) { return same_size(s, hole); });
  if (found != sizes.end()) return *found;
  if (sizes.size() == 26) throw std::invalid_argument("drill drawing: more than 26 sizes of hole in one part");
  const char letter = static_cast<char>('A' + static_cast<int>(sizes.size()));
  sizes.push_back({letter, 0, hole.hole, turned_in_view(hole), ""});
  return sizes.back();
}

void add_purpose(std::string& purposes, const std::string& purpose) {
  const std::string listed = fmt::format(", {}, ", purposes);
  if (purpose.empty() || listed.find(fmt::format(", {}, ", purpose)) != std::string::npos) return;
  purposes += purposes.empty() ? purpose : fmt::format(", {}", purpose);
}

}  // namespace

FaceView face_view(const Section& s, Face face) {
  switch (face) {
    case Face::web: return {face, "WEB", "seen from the web's back", "top edge", true, s.depth, false};
    case Face::top_flange: return {face, "TOP FLANGE", "seen from above", "web back", false, s.flange, true};
    case Face::bottom_flange:
      return {face, "BOTTOM FLANGE", "seen from below", "web back", true, s.flange, true};
    case Face::flat_leg: return {face, "FLAT LEG", "seen from outside", "heel", true, s.flange, true};
    case Face::standing_leg: return {face, "STANDING LEG", "seen from outside", "heel", false, s.depth, false};
  }
  throw std::logic_error("face_view: unknown face");
}

Radians turned_in_view(const FaceHole& hole) {
  if (!hole.hole.slotted()) return 0;
  // The second axis of these two faces points down in the view.
  const bool flipped = hole.face == Face::bottom_flange || hole.face == Face::flat_leg;
  return std::remainder(flipped ? -hole.hole.angle : hole.hole.angle, std::numbers::pi);
}

Mm across(const Section& section, const FaceHole& hole) {
  return hole.face == Face::web ? section.depth / 2 - hole.hole.at.y : hole.hole.at.y;
}

DrillRows drill_rows(const Member& member) {
  DrillRows out;
  for (std::size_t i = 0; i < member.holes.size(); ++i) {
    const FaceHole& h = member.holes[i];
    if (h.hole.process == Process::as_bought) continue;
    out.rows.push_back({0, 'A', i, h.hole.at.x, across(member.section, h), h});
  }
  std::stable_sort(out.rows.begin(), out.rows.end(), [](const DrillRow& a, const DrillRow& b) {
    if (a.hole.face != b.hole.face) return a.hole.face < b.hole.face;
    if (std::abs(a.along - b.along) > same_place) return a.along < b.along;
    return a.across < b.across;
  });
  for (DrillRow& row : out.rows) {
    row.number = static_cast<int>(&row - out.rows.data()) + 1;
    DrillSize& size = size_of(out.sizes, row.hole);
    ++size.count;
    row.letter = size.letter;
    add_purpose(size.purposes, row.hole.hole.purpose);
    if (out.faces.empty() || out.faces.back() != row.hole.face) out.faces.push_back(row.hole.face);
  }
  return out;
}

std::string process_name(Process process) {
  switch (process) {
    case Process::as_bought: return "as bought";
    case Process::cut: return "cut";
    case Process::drilled: return "drilled";
  }
  throw std::logic_error("process_name: unknown process");
}

std::string first_end_name(const Bed& bed, int part) {
  // Within 10 degrees of an axis of the bed counts as along it.
  constexpr double along = 0.985;
  std::string name;
  for (const Item& item : bed.items) {
    if (item.part != part) continue;
    const Vec3 x = item.placement.x_axis;
    const std::string here = x.x > along    ? "FRONT END"
                             : x.x < -along ? "REAR END"
                             : x.y > along  ? "LEFT END"
                             : x.y < -along ? "RIGHT END"
                                            : "END MARKED 0";
    if (!name.empty() && name != here) return "END MARKED 0";
    name = here;
  }
  return name.empty() ? "END MARKED 0" : name;
}

std::string hand(const std::string& part_name) {
  if (part_name.ends_with(" L")) return "LEFT HAND";
  if (part_name.ends_with(" R")) return "RIGHT HAND";
  return "";
}

}  // namespace bedwright
