// Solids of members: a prism of the section, with mitred ends and holes.
#include <stdexcept>

#include "kernel/build.h"
#include "kernel/flats.h"
#include "kernel/mitre.h"
#include "kernel/shell_edit.h"
#include "kernel/wires.h"

namespace bedwright {

namespace {

TopoDS_Solid blank(const Member& member) {
  const Outline outline = profile(member.section);
  const auto inside = hollow(member.section);
  if (member.start_mitre != 0 || member.end_mitre != 0) {
    if (inside) throw std::invalid_argument("a mitred tube: only open sections are cut on the slant");
    return slanted_prism(outline, member.length, std::tan(member.start_mitre), std::tan(member.end_mitre));
  }
  const gp_Ax2 plane = plane_frame({}, {0, 1, 0}, {0, 0, 1});
  std::vector<TopoDS_Wire> inner;
  if (inside) inner.push_back(outline_wire(*inside, plane));
  return prism_solid(outline_wire(outline, plane), inner, plane, member.length);
}

// The plane of a face's outer side in the face's own coordinates, its direction
// into the steel. A face whose coordinates turn the other way about that
// direction is described with its second axis turned round.
struct FacePlane {
  gp_Ax2 plane;
  bool mirrored = false;
  Mm depth = 0;  // through the steel at its thickest there, fillet included
};

FacePlane face_plane(const Section& section, Face face) {
  const Mm leg = section.web + section.root_radius;
  const Mm flange = flange_thickness_at(section, section.web) + section.root_radius;
  switch (face) {
    case Face::web:
    case Face::standing_leg:
      return {plane_frame({0, 0, 0}, {1, 0, 0}, {0, 0, -1}), true, leg};
    case Face::flat_leg:
      return {plane_frame({0, 0, 0}, {1, 0, 0}, {0, 1, 0}), false, leg};
    case Face::top_flange:
      return {plane_frame({0, 0, section.depth / 2}, {1, 0, 0}, {0, -1, 0}), true, flange};
    case Face::bottom_flange:
      return {plane_frame({0, 0, -section.depth / 2}, {1, 0, 0}, {0, 1, 0}), false, flange};
  }
  throw std::logic_error("a face of no known kind");
}

Hole in_plane(Hole hole, const FacePlane& face) {
  if (face.mirrored) {
    hole.at.y = -hole.at.y;
    hole.angle = -hole.angle;
  }
  return hole;
}

std::vector<Hole> holes_of(const Member& member, Face face) {
  std::vector<Hole> holes;
  for (const FaceHole& f : member.holes) {
    if (f.face == face) holes.push_back(f.hole);
  }
  return holes;
}

}  // namespace

TopoDS_Solid build_member(const Member& member) {
  if (member.holes.empty()) return blank(member);
  ShellEdit edit(blank(member));
  std::vector<CutHole> rest;
  for (Face face : {Face::web, Face::top_flange, Face::bottom_flange, Face::flat_leg, Face::standing_leg}) {
    const std::vector<Hole> holes = holes_of(member, face);
    if (holes.empty()) continue;
    const std::vector<bool> clear = clear_holes(flat_region(member, face), holes);
    const FacePlane on = face_plane(member.section, face);
    for (std::size_t i = 0; i < holes.size(); ++i) {
      const Hole hole = in_plane(holes[i], on);
      if (clear[i]) {
        edit.through_hole(hole_wire(hole, on.plane), on.plane, member.section.web);
      } else {
        rest.push_back({hole, on.plane, 1, on.depth});
      }
    }
  }
  return cut_holes(edit.solid(), rest);
}

}  // namespace bedwright
