// Exact distance and shared volume of two items, for the few pairs a cheap test
// with convex pieces cannot decide. Plain data; the kernel stays behind it.
#pragma once

#include <memory>

#include "bed/bed.h"

namespace bedwright {

struct Closeness {
  Mm gap = 0;             // shortest distance; 0 when the items touch or overlap
  Mm3 common_volume = 0;  // 0 when they are apart or only touch
};

// Overlaps thinner than this count as touching: solids that meet face to face
// come out of rounding this close on either side.
inline constexpr Mm touching_fuzz = same_place;

// Which of an item's solids to measure: `without_shank` leaves a bolt's shank
// out (its head is measured); other items are taken whole.
enum class Extent { whole, without_shank };

// Measures pairs of one bed's items; shapes are built once and kept.
class ExactPairs {
 public:
  // Reads `bed` for as long as it lives.
  explicit ExactPairs(const Bed& bed);
  ~ExactPairs();
  ExactPairs(ExactPairs&&) noexcept;
  ExactPairs& operator=(ExactPairs&&) noexcept;

  // A bought item's blocks are measured one by one: the gap is the least, the
  // common volume the sum (blocks that overlap each other count twice).
  // Throws std::runtime_error when a part cannot be made or measured.
  Closeness measure(int a, int b, Extent extent = Extent::whole);
  // The common volume alone, without the distance: half the work.
  Mm3 shared(int a, int b, Extent extent = Extent::whole);

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace bedwright
