// Chooses how a part is built by its form, and keeps each built part.
#include "kernel/shapes.h"

#include <TopLoc_Location.hxx>
#include <gp_Ax3.hxx>
#include <gp_Trsf.hxx>

#include "bed/names.h"
#include "kernel/build.h"
#include "kernel/guard.h"
#include "kernel/wires.h"

namespace bedwright {

namespace {

Member plain(Member member) {
  member.section.root_radius = member.section.toe_radius =
      0;  // a tube's corners stay as round as its wall is thick
  member.holes.clear();
  return member;
}

TopoDS_Shape build(const Plate& plate, Detail detail) {
  return build_plate(detail == Detail::picture ? Plate{plate.outline, plate.thickness, {}} : plate);
}
TopoDS_Shape build(const Member& member, Detail detail) {
  return build_member(detail == Detail::picture ? plain(member) : member);
}
TopoDS_Shape build(const Bought& bought, Detail) { return build_bought(bought); }
TopoDS_Shape build(const Hardware& hardware, Detail) { return build_hardware(hardware); }

}  // namespace

TopoDS_Shape build_part(const Part& part, Detail detail) {
  try {
    return guarded("kernel", [&] {
      return std::visit([detail](const auto& form) { return build(form, detail); }, part.form);
    });
  } catch (const std::exception& trouble) {
    throw std::runtime_error("part " + name(part) + " cannot be made a solid: " + trouble.what());
  }
}

TopLoc_Location location(const Placement& placement) {
  const gp_Ax3 to(point(placement.origin), gp_Dir(vector(placement.z_axis())),
                  gp_Dir(vector(placement.x_axis)));
  gp_Trsf move;
  move.SetDisplacement(gp_Ax3(), to);
  return TopLoc_Location(move);
}

Shapes::Shapes(const Bed& bed, Detail detail) : bed_(bed), detail_(detail), built_(bed.parts.size()) {}

const TopoDS_Shape& Shapes::part(int index) {
  TopoDS_Shape& shape = built_.at(index);
  if (shape.IsNull()) shape = build_part(bed_.parts[index], detail_);
  return shape;
}

TopoDS_Shape Shapes::item(int index) {
  const Item& item = bed_.items.at(index);
  return part(item.part).Located(location(item.placement));
}

}  // namespace bedwright
