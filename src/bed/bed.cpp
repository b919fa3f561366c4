// Adding parts and items to a Bed, and finding them again by identity.
#include "bed/bed.h"

#include <algorithm>
#include <stdexcept>

#include "bed/names.h"

namespace bedwright {
namespace {

template <class... Ts>
struct Overloaded : Ts... {
  using Ts::operator()...;
};
template <class... Ts>
Overloaded(Ts...) -> Overloaded<Ts...>;

Vec3 plate_hole_axis(const Hole& h) { return {std::cos(h.angle), std::sin(h.angle), 0}; }

}  // namespace

int Bed::add_part(Part part) {
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Part& p = parts[i];
    if (p.origin == part.origin && p.material == part.material && p.form == part.form)
      return static_cast<int>(i);
    if (p.id == part.id && part.id.kind != Kind::hardware)
      throw std::logic_error("two different parts are " + name(part));
  }
  parts.push_back(std::move(part));
  return static_cast<int>(parts.size()) - 1;
}

int Bed::add_item(const Item& item) {
  items.push_back(item);
  return static_cast<int>(items.size()) - 1;
}

namespace {

template <class Thing>
std::optional<int> index_of(const std::vector<Thing>& things, const Identity& id) {
  const auto at = std::find_if(things.begin(), things.end(), [&](const Thing& t) { return t.id == id; });
  return at == things.end() ? std::nullopt : std::optional(static_cast<int>(at - things.begin()));
}

int there(std::optional<int> index, const Identity& id, const char* what) {
  if (!index) throw NotInBed(std::string("the bed has no ") + what + " " + name(id));
  return *index;
}

}  // namespace

std::optional<int> Bed::find_item(const Identity& id) const { return index_of(items, id); }
std::optional<int> Bed::find_part(const Identity& id) const { return index_of(parts, id); }
int Bed::item(const Identity& id) const { return there(find_item(id), id, "item"); }
int Bed::part(const Identity& id) const { return there(find_part(id), id, "part"); }
int Bed::bolt(const Identity& id) const { return there(index_of(bolts, id), id, "bolt"); }

std::vector<int> Bed::items_of(Kind kind) const {
  std::vector<int> all;
  for (std::size_t i = 0; i < items.size(); ++i)
    if (items[i].id.kind == kind && items[i].bolt < 0) all.push_back(static_cast<int>(i));
  return all;
}

int Bed::count(int part) const {
  return static_cast<int>(std::count_if(items.begin(), items.end(),
                                        [&](const Item& item) { return item.shown && item.part == part; }));
}

HoleFrame hole_frame(const Section& section, const FaceHole& face_hole) {
  const Hole& h = face_hole.hole;
  const double along = std::cos(h.angle), across = std::sin(h.angle);
  switch (face_hole.face) {
    case Face::web:
    case Face::standing_leg:
      return {{h.at.x, 0, h.at.y}, {0, -1, 0}, {along, 0, across}, section.web};
    case Face::flat_leg:
      return {{h.at.x, h.at.y, 0}, {0, 0, -1}, {along, across, 0}, section.web};
    case Face::top_flange:
    case Face::bottom_flange: {
      const double up = face_hole.face == Face::top_flange ? 1 : -1;
      return {{h.at.x, h.at.y, up * section.depth / 2},
              {0, 0, up},
              {along, across, 0},
              flange_thickness_at(section, h.at.y)};
    }
  }
  throw std::logic_error("a face of no known kind");
}

HoleInWorld hole_in_world(const Bed& bed, const Ply& ply) {
  const Item& item = bed.items.at(ply.item);
  const Placement& at = item.placement;
  return std::visit(
      Overloaded{
          [&](const Plate& p) {
            const Hole& h = p.holes.at(ply.hole);
            return HoleInWorld{h, at.point({h.at.x, h.at.y, 0}), at.direction(plate_hole_axis(h))};
          },
          [&](const Member& m) {
            const HoleFrame f = hole_frame(m.section, m.holes.at(ply.hole));
            return HoleInWorld{m.holes.at(ply.hole).hole, at.point(f.centre), at.direction(f.slot_axis)};
          },
          [&](const Bought& b) {
            const Lug& lug = b.lugs.at(ply.hole);
            return HoleInWorld{lug.hole, at.point(lug.at), at.direction(plate_hole_axis(lug.hole))};
          },
          [&](const Hardware&) -> HoleInWorld { throw std::logic_error("hardware carries no holes"); },
      },
      bed.parts.at(item.part).form);
}

int hole_count(const Part& part) {
  return std::visit(Overloaded{[](const Plate& p) { return static_cast<int>(p.holes.size()); },
                               [](const Member& m) { return static_cast<int>(m.holes.size()); },
                               [](const Bought& b) { return static_cast<int>(b.lugs.size()); },
                               [](const Hardware&) { return 0; }},
                    part.form);
}

Ply ply_through(const Bed& bed, int item, int hole) {
  const auto at = static_cast<std::size_t>(hole);
  return std::visit(Overloaded{
                        [&](const Plate& p) {
                          return p.holes.at(at), Ply{item, hole, p.thickness, 0};
                        },
                        [&](const Member& m) {
                          const FaceHole& h = m.holes.at(at);
                          const bool tapered = h.face == Face::top_flange || h.face == Face::bottom_flange;
                          return Ply{item, hole, hole_frame(m.section, h).thickness,
                                     tapered ? std::atan(inner_slope(m.section)) : 0};
                        },
                        [&](const Bought& b) {
                          return Ply{item, hole, b.lugs.at(at).thickness, 0};
                        },
                        [&](const Hardware&) -> Ply { throw std::logic_error("hardware carries no holes"); },
                    },
                    bed.part_of(item).form);
}

bool stands(const Bed& bed, const Weld& weld) {
  return bed.part_of(weld.a).origin == Origin::standing && bed.part_of(weld.b).origin == Origin::standing;
}

bool stands(const Bed& bed, const Bolt& bolt) {
  return !bolt.plies.empty() && std::all_of(bolt.plies.begin(), bolt.plies.end(), [&](const Ply& ply) {
    return ply.item >= 0 && bed.part_of(ply.item).origin == Origin::standing;
  });
}

}  // namespace bedwright
