// Numbers and letters a part's holes, and measures each from its edges.
#include "sheets/drill/drill_rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "bed/names.h"

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
  if (sizes.size() == 26)
    throw std::invalid_argument("drill drawing: more than 26 sizes of hole in one part");
  const char letter = static_cast<char>('A' + static_cast<int>(sizes.size()));
  sizes.push_back({letter, 0, hole.hole, turned_in_view(hole), {}});
  return sizes.back();
}

void add_purpose(std::vector<Kind>& purposes, Kind purpose) {
  if (purpose == Kind::none || std::find(purposes.begin(), purposes.end(), purpose) != purposes.end()) return;
  purposes.push_back(purpose);
}

// Within 10 degrees of an axis of the bed counts as along it.
constexpr double along_axis = 0.985;

FirstEnd first_end(Vec3 x_axis) {
  if (x_axis.x > along_axis) return FirstEnd::front;
  if (x_axis.x < -along_axis) return FirstEnd::rear;
  if (x_axis.y > along_axis) return FirstEnd::left;
  if (x_axis.y < -along_axis) return FirstEnd::right;
  return FirstEnd::unnamed;
}

std::string listed(const std::vector<std::string>& names) {
  if (names.size() > 8) return fmt::format("{} of them, {} to {}", names.size(), names.front(), names.back());
  return fmt::format("{}", fmt::join(names, ", "));
}

}  // namespace

namespace {

// A tube's walls, and the edge their holes are measured from.
FaceView wall_view(const Section& s, Face face, bool upright) {
  if (face == Face::web)
    return {face, "OUTER SIDE", "seen from outside", upright ? "top" : "upper side", true, s.depth, false};
  const bool top = face == Face::top_flange;
  return {face,
          upright ? top ? "TOP" : "UNDERSIDE"
          : top   ? "UPPER SIDE"
                  : "LOWER SIDE",
          !upright ? "seen from outside"
          : top    ? "seen from above"
                   : "seen from below",
          "outer side",
          !top,
          s.flange,
          true};
}

}  // namespace

FaceView face_view(const Section& s, Face face, bool upright) {
  if (is_closed(s)) return wall_view(s, face, upright);
  switch (face) {
    case Face::web:
      return {face,    "WEB", "seen from the web's back", upright ? "top edge" : "upper edge", true,
              s.depth, false};
    case Face::top_flange:
      return {face,
              upright ? "TOP FLANGE" : "UPPER FLANGE",
              upright ? "seen from above" : "seen from outside",
              "web back",
              false,
              s.flange,
              true};
    case Face::bottom_flange:
      return {face,
              upright ? "BOTTOM FLANGE" : "LOWER FLANGE",
              upright ? "seen from below" : "seen from outside",
              "web back",
              true,
              s.flange,
              true};
    case Face::flat_leg:
      return {face, "FLAT LEG", "seen from outside", "heel", true, s.flange, true};
    case Face::standing_leg:
      return {face, "STANDING LEG", "seen from outside", "heel", false, s.depth, false};
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

std::string process_name(const Hole& hole) {
  switch (hole.process) {
    case Process::as_bought:
      return "as bought";
    case Process::cut:
      return "cut";
    case Process::drilled:
      return hole.slotted() ? "ends drilled, cut between" : "drilled";
    case Process::in_place:
      return "drilled in place";
    case Process::on_site:
      return "drilled in the frame that stands";
  }
  throw std::logic_error("process_name: unknown process");
}

namespace {

// Whether turning a channel over on its web brings every hole onto a hole.
bool alike_turned_over(const Member& m) {
  return std::all_of(m.holes.begin(), m.holes.end(), [&](const FaceHole& h) {
    return std::any_of(m.holes.begin(), m.holes.end(), [&](const FaceHole& other) {
      return h.face == Face::web && other.face == Face::web &&
             std::abs(h.hole.at.x - other.hole.at.x) < same_place &&
             std::abs(h.hole.at.y + other.hole.at.y) < same_place && h.hole.diameter == other.hole.diameter &&
             h.hole.length == other.hole.length && !h.hole.slotted();
    });
  });
}

}  // namespace

Setting setting(const Bed& bed, int part) {
  Setting out;
  std::vector<std::string> standing, turned;
  out.hand = bed.parts.at(static_cast<std::size_t>(part)).id.side;
  std::size_t items = 0;
  for (const Item& item : bed.items) {
    if (item.part != part || !item.shown) continue;
    const FirstEnd end = first_end(item.placement.x_axis);
    out.first_end = items++ == 0 || out.first_end == end ? end : FirstEnd::unnamed;
    const double up = item.placement.z_axis().z;
    if (up > along_axis) standing.push_back(name(item));
    if (up < -along_axis) turned.push_back(name(item));
    // One sheet for both hands names neither.
    if (item.id.side != out.hand) out.hand = Side::middle;
  }
  out.upright = standing.size() == items;
  const Member* member = std::get_if<Member>(&bed.parts[static_cast<std::size_t>(part)].form);
  if (member != nullptr && std::any_of(member->holes.begin(), member->holes.end(),
                                       [](const FaceHole& h) { return h.hole.process == Process::in_place; }))
    out.note =
        "Drilled in place: set the jack by these figures, clamp it with its plate, and drill both through "
        "its "
        "own holes. ";
  if (turned.empty() || member == nullptr || member->section.shape != Shape::channel) return out;
  if (alike_turned_over(*member)) {
    out.note += "The pattern is the same from either edge: drill all of them alike.";
    return out;
  }
  out.note +=
      fmt::format("Turned over in the bed, the upper edge as drawn at the bottom: {}.", listed(turned));
  if (!standing.empty()) out.note += fmt::format(" As drawn: {}.", listed(standing));
  return out;
}

const char* words_of(FirstEnd end) {
  switch (end) {
    case FirstEnd::front:
      return "FRONT END";
    case FirstEnd::rear:
      return "REAR END";
    case FirstEnd::left:
      return "LEFT END";
    case FirstEnd::right:
      return "RIGHT END";
    case FirstEnd::unnamed:
      break;
  }
  return "END MARKED 0";
}

const char* words_opposite(FirstEnd end) {
  switch (end) {
    case FirstEnd::front:
      return words_of(FirstEnd::rear);
    case FirstEnd::rear:
      return words_of(FirstEnd::front);
    case FirstEnd::left:
      return words_of(FirstEnd::right);
    case FirstEnd::right:
      return words_of(FirstEnd::left);
    case FirstEnd::unnamed:
      break;
  }
  return "OTHER END";
}

}  // namespace bedwright
