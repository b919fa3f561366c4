// WASHER-COVER: a washer on a root fillet stands askew and bears on its rim alone.
#include "rules/fit/washer_flat.h"

#include <fmt/format.h>

#include "rules/cut/edge.h"
#include "rules/cut/edge_remedy.h"

namespace bedwright {
namespace {

// Which way the rest of the section stands up from the face, in the profile's frame.
Vec3 inside_of(Face face) {
  switch (face) {
    case Face::flat_leg:
    case Face::bottom_flange:
      return {0, 0, 1};
    case Face::top_flange:
      return {0, 0, -1};
    case Face::standing_leg:
    case Face::web:
      return {0, 1, 0};
  }
  throw std::logic_error("a face of no known kind");
}

}  // namespace

void lies_flat(const Scene& scene, const Bolt& bolt, const Ply& ply, const EndOfBolt& end,
               std::vector<Finding>& findings) {
  const Item& item = scene.bed.items[ply.item];
  const Part& part = scene.bed.part_of(ply.item);
  HoleOnFace about = holes_on_faces(part).at(static_cast<std::size_t>(ply.hole));
  if (!about.face || dot(item.placement.local_direction(end.out), inside_of(*about.face)) < 0.5) return;
  const HoleInWorld hole = hole_in_world(scene.bed, ply);
  const Vec3 off = item.placement.local_direction(bolt.seat - hole.centre);
  about.hole.at = about.hole.at + Vec2{dot(off, about.first), dot(off, about.second)};
  about.hole.diameter = about.hole.length = end.outside;
  const std::optional<Raised> raised = nearest_raised(part, about);
  if (!raised || raised->distance >= -same_place) return;
  Finding f = finding_of("WASHER-COVER", Severity::stop, bolt, bolt.seat);
  f.subjects.emplace_back(item);
  f.measured = raised->distance;
  f.limit = 0;
  f.margin = raised->distance;
  f.message = fmt::format("the {}, {} across, lies {} into {}{} of {}, and does not lie flat", end.what,
                          scene.figures.say(end.outside), scene.figures.say(-raised->distance),
                          raised->is_fillet ? "the fillet beside " : "", raised->what, f.subjects[1].name);
  const Vec3 toward =
      item.placement.direction(raised->toward.x * about.first + raised->toward.y * about.second);
  suggest_away(scene, {ply.item, part, hole.hole, toward, -raised->distance}, f);
  findings.push_back(std::move(f));
}

}  // namespace bedwright
