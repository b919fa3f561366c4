// The Bed's parts as kernel shapes. Each distinct part is built once, when first
// asked for, and shared by all its placed copies.
#pragma once

#include <TopLoc_Location.hxx>
#include <TopoDS_Shape.hxx>
#include <vector>

#include "bed/bed.h"

namespace bedwright {

// `picture`: no holes, and members without fillets and toe radii; for pictures
// of the whole bed only.
enum class Detail { full, picture };

class Shapes {
 public:
  // Reads `bed` for as long as it lives; the bed's parts must not change.
  explicit Shapes(const Bed& bed, Detail detail = Detail::full);

  // In the part's own frame. A TopoDS_Solid, or for bought items a compound of
  // them. Throws std::runtime_error (naming the part) when it cannot be built.
  const TopoDS_Shape& part(int index);

  // Placed in the world; shares the part's geometry.
  TopoDS_Shape item(int index);

  const Bed& bed() const { return bed_; }

 private:
  const Bed& bed_;
  Detail detail_;
  std::vector<TopoDS_Shape> built_;
};

// One part built for itself, not kept.
TopoDS_Shape build_part(const Part& part, Detail detail = Detail::full);

// The location that carries local coordinates to the world's.
TopLoc_Location location(const Placement& placement);

}  // namespace bedwright
