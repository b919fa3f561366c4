// The face each hole goes through: its free edges, and what stands up from it.
#include <stdexcept>

#include "rules/cut/edge.h"

namespace bedwright {
namespace {

constexpr Mm touch = 0.01;  // blocks of one bought item that meet are stated to this

// Along one of the item's own axes, from 0 to 2.
int axis_of(Vec3 direction) {
  const double along[] = {std::abs(direction.x), std::abs(direction.y), std::abs(direction.z)};
  return static_cast<int>(std::max_element(along, along + 3) - along);
}

Mm on_axis(Vec3 v, int axis) { return axis == 0 ? v.x : axis == 1 ? v.y : v.z; }

Vec3 unit_of(int axis) { return {axis == 0 ? 1.0 : 0, axis == 1 ? 1.0 : 0, axis == 2 ? 1.0 : 0}; }

// A block of a bought item in the item's frame, seen along an axis.
struct Seen {
  Outline outline;
  Mm low = 0, high = 0;  // along the axis
};

Seen seen_along(const Block& block, int axis, Vec3 first, Vec3 second) {
  const auto flat = [&](Vec3 p) { return Vec2{dot(p, first), dot(p, second)}; };
  Seen seen;
  Box3 box;
  std::vector<Vec2> corners;
  const Mm r = block.radius;
  const Vec3 low = r > 0 ? Vec3{-r, -r, block.low.z} : block.low,
             high = r > 0 ? Vec3{r, r, block.high.z} : block.high;
  for (int i = 0; i < 8; ++i) {
    const Vec3 p =
        block.frame.point({i & 1 ? high.x : low.x, i & 2 ? high.y : low.y, i & 4 ? high.z : low.z});
    box.add(p);
    corners.push_back(flat(p));
  }
  seen.low = on_axis(box.low, axis);
  seen.high = on_axis(box.high, axis);
  const bool on_end = r > 0 && std::abs(on_axis(block.frame.z_axis(), axis)) > 0.999;
  seen.outline =
      on_end ? hole_outline(flat(block.frame.origin), 2 * r, 2 * r, 0) : straight(convex_hull(corners));
  return seen;
}

// The blocks of a lug's item, seen along its hole: the one it is of, and those that
// stand beside it on either face.
struct LugBlocks {
  Outline own;
  std::vector<Outline> others;
};

LugBlocks blocks_of(const Bought& bought, const HoleOnFace& hole) {
  const Lug& lug = bought.lugs.at(hole.index);
  const int axis = axis_of(lug.direction);
  const Mm head = on_axis(lug.at, axis), nut = head + on_axis(lug.direction, axis) * lug.thickness;
  const Mm low = std::min(head, nut), high = std::max(head, nut);
  LugBlocks all;
  for (const Block& block : bought.envelope) {
    Seen seen = seen_along(block, axis, hole.first, hole.second);
    const bool same = std::abs(seen.low - low) < touch && std::abs(seen.high - high) < touch;
    if (same && all.own.empty())
      all.own = std::move(seen.outline);
    else if (seen.low < high + touch && seen.high > low - touch)
      all.others.push_back(std::move(seen.outline));
  }
  if (all.own.empty()) throw std::logic_error("a lug is no block of its item");
  return all;
}

// Where the steel beside the root begins to be thicker than the face, measured across
// the face: the leg or flange itself, and its fillet.
struct Root {
  Mm body = 0, fillet = 0;
  const char* what = "";
};

Root root_of(const Section& s, Face face) {
  // A tube's wall is flat between its two corners; from the middle of the wall either way.
  if (is_closed(s)) {
    const Mm half = (face == Face::web ? s.depth : s.flange) / 2;
    return {half - s.web, half - outer_corner(s), "the corner"};
  }
  const Mm tangent = fillet_tangent(s);
  switch (face) {
    case Face::flat_leg:
      return {s.web, s.web + s.root_radius, "the standing leg"};
    case Face::standing_leg:
      return {s.web, s.web + s.root_radius, "the flat leg"};
    case Face::top_flange:
    case Face::bottom_flange:
      return {s.web, s.web + tangent, "the web"};
    case Face::web: {
      // From the middle of the web either way.
      const Mm corner = s.depth / 2 - flange_thickness_at(s, s.web);
      return {corner, corner - tangent, "the flange"};
    }
  }
  throw std::logic_error("a face of no known kind");
}

std::optional<Raised> raised_on(const Member& member, const HoleOnFace& hole) {
  const Root root = root_of(member.section, *hole.face);
  const auto [a, b] = arc_centres(hole.hole);
  const Mm r = hole.hole.diameter / 2;
  Mm to_body, to_fillet;
  Vec2 toward{0, -1};
  if (*hole.face == Face::web || is_closed(member.section)) {
    const Mm middle = *hole.face == Face::web ? 0 : member.section.flange / 2;
    const Mm above = std::max(a.y, b.y) - middle, below = middle - std::min(a.y, b.y),
             far = std::max(above, below) + r;
    to_body = root.body - far;
    to_fillet = root.fillet - far;
    toward.y = above >= below ? 1 : -1;
  } else {
    const Mm near = std::min(a.y, b.y) - r;
    to_body = near - root.body;
    to_fillet = near - root.fillet;
  }
  const bool is_fillet = to_body >= -same_place;
  return Raised{is_fillet ? to_fillet : to_body, toward, root.what, is_fillet};
}

constexpr int places_along_a_slot = 32;

const char* beside_lug(Kind kind) {
  switch (kind) {
    case Kind::track_stop:
      return "its upright face";
    case Kind::jack:
      return "its post";
    case Kind::tongue_jack:
      return "its tube";
    default:
      return "what stands beside it";
  }
}

std::optional<Raised> raised_on(const Bought& bought, const HoleOnFace& hole, Kind kind) {
  std::optional<Raised> nearest;
  const auto [a, b] = arc_centres(hole.hole);
  for (const Outline& other : blocks_of(bought, hole).others)
    for (int i = 0; i <= places_along_a_slot; ++i) {
      const NearestEdge edge =
          nearest_edge(other, a + (static_cast<double>(i) / places_along_a_slot) * (b - a));
      const Mm distance = -edge.distance - hole.hole.diameter / 2;
      if (!nearest || distance < nearest->distance)
        nearest = Raised{distance, -1.0 * edge.toward, beside_lug(kind), false};
    }
  return nearest;
}

}  // namespace

std::vector<HoleOnFace> holes_on_faces(const Part& part) {
  std::vector<HoleOnFace> all;
  int index = 0;
  if (const auto* plate = std::get_if<Plate>(&part.form))
    for (const Hole& h : plate->holes) all.push_back({h, std::nullopt, index++, {1, 0, 0}, {0, 1, 0}});
  if (const auto* member = std::get_if<Member>(&part.form))
    for (const FaceHole& h : member->holes) {
      const bool upright = h.face == Face::web || h.face == Face::standing_leg;
      all.push_back({h.hole, h.face, index++, {1, 0, 0}, upright ? Vec3{0, 0, 1} : Vec3{0, 1, 0}});
    }
  if (const auto* bought = std::get_if<Bought>(&part.form))
    for (const Lug& lug : bought->lugs) {
      const int axis = axis_of(lug.direction);
      const Vec3 first = unit_of(axis == 0 ? 1 : 0), second = unit_of(axis == 2 ? 1 : 2);
      HoleOnFace hole{lug.hole, std::nullopt, index++, first, second};
      hole.hole.at = {dot(lug.at, first), dot(lug.at, second)};
      all.push_back(hole);
    }
  return all;
}

NearestEdge nearest_edge_of(const Part& part, const HoleOnFace& hole) {
  const std::pair<Vec2, Vec2> ends = arc_centres(hole.hole);
  const auto nearer = [&](const auto& from) {
    const NearestEdge first = from(ends.first), second = from(ends.second);
    return first.distance <= second.distance ? first : second;
  };
  if (const auto* plate = std::get_if<Plate>(&part.form))
    return nearer([&](Vec2 at) { return nearest_edge(plate->outline, at); });
  if (const auto* member = std::get_if<Member>(&part.form))
    return nearer([&](Vec2 at) { return nearest_edge(*member, *hole.face, at); });
  const Outline own = blocks_of(std::get<Bought>(part.form), hole).own;
  return nearer([&](Vec2 at) { return nearest_edge(own, at); });
}

Outline steel_of(const Part& part, const HoleOnFace& hole) {
  if (const auto* plate = std::get_if<Plate>(&part.form)) return plate->outline;
  if (const auto* bought = std::get_if<Bought>(&part.form)) return blocks_of(*bought, hole).own;
  const Member& member = std::get<Member>(part.form);
  const Section& s = member.section;
  const Face face = *hole.face;
  const bool web = face == Face::web, upright = web || face == Face::standing_leg;
  const Mm low = web ? -s.depth / 2 : 0, high = web                          ? s.depth / 2
                                                : face == Face::standing_leg ? s.depth
                                                                             : s.flange;
  // A mitred end crosses a flat leg or flange at an angle, an upright face square.
  const double start = std::tan(member.start_mitre), end = std::tan(member.end_mitre);
  const auto from = [&](Mm y) { return upright ? std::max(0.0, s.web * start) : y * start; };
  const auto to = [&](Mm y) { return member.length + (upright ? std::min(0.0, s.web * end) : y * end); };
  return polygon({{from(low), low}, {to(low), low}, {to(high), high}, {from(high), high}});
}

std::optional<Raised> nearest_raised(const Part& part, const HoleOnFace& hole) {
  if (const auto* member = std::get_if<Member>(&part.form)) return raised_on(*member, hole);
  if (const auto* bought = std::get_if<Bought>(&part.form)) return raised_on(*bought, hole, part.id.kind);
  return std::nullopt;
}

}  // namespace bedwright
