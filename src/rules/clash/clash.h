// What two items are to each other, by convex pieces first and exactly where
// those cannot say.
#pragma once

#include <vector>

#include "rules/scene.h"

namespace bedwright {

// Overlap up to this is a touch: parts that lie on each other in the model differ
// by rounding and by the chords that stand for arcs, a few micrometres at most,
// and a twentieth of a millimetre is well under what a shop can measure on steel.
inline constexpr Mm clash_depth = 0.05;
// Common volume up to this is a touch, for pairs judged exactly: the same depth
// over a contact of 20 mm2, the smallest bearing here.
inline constexpr Mm3 clash_volume = 1.0;

enum class Standing {
  clear,  // apart, or touching
  near,   // one of the two moves, and it comes closer than it may
  overlap,
  undecided,  // pieces that only cover the steel meet, and no judge was given
};

struct Meeting {
  int a = -1, b = -1;
  Standing standing = Standing::clear;
  Mm gap = 0;  // near: least distance (a lower bound without a judge)
  bool gap_is_bound = false;
  Mm depth = 0;           // overlap, undecided: deepest of the pieces that meet
  Mm3 common_volume = 0;  // overlap judged exactly
  Vec3 place;
};

// Every pair that is not clear, in order of a then b: those with a moving item in
// them, or those without. Left out: states of one thing, hardware of one bolt, pairs joined by design, and a
// bolt's shank against the items it passes through.
std::vector<Meeting> meetings(const Scene& scene, bool moving);

// The worst meeting of each two things, in order of their first, and how many others.
struct ThingPair {
  Meeting worst;
  int others = 0;
};
std::vector<ThingPair> by_thing(const Bed& bed, const std::vector<Meeting>& all);

// A bolt's washer or nut is the bolt, to a person.
Subject spoken_of(const Bed& bed, int item);

// How readily a shop moves a thing; 0 where it is where the kit puts it, or stands. Throws
// std::logic_error for what is placed on no bed.
int readiness(const Bed& bed, const Item& item);

// Least move of item `a` along one world axis after which it and `b` are at least
// `clearance` apart, as a signed vector; by convex pieces, so on the safe side.
Vec3 least_shift(const Scene& scene, int a, int b, Mm clearance, bool only_along_bed);

}  // namespace bedwright
