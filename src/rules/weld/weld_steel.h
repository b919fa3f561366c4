// Along how much of a weld both its parts have steel for the fillet.
#pragma once

#include <optional>

#include "rules/scene.h"

namespace bedwright {

// What a weld lacks: how much of its length, on which of its two items, and how far that
// item would have to reach for the worst place (no length where the place lies within its
// outside measures, as over a gap between two flanges).
struct SteelLack {
  Mm length = 0;
  int item = -1;
  Vec3 reach;
};

// Nothing where both have steel under each root from end to end, and the face the fillet
// lies on goes on beyond it by the leg; nor for a bought joint.
std::optional<SteelLack> steel_lack(const Scene& scene, const Weld& weld);

// The lack is that the item ends too soon along the bed.
inline bool ends_too_soon(const SteelLack& lack) { return std::abs(lack.reach.x) > same_place; }

}  // namespace bedwright
