// Which items are near a place, without looking at all of them: boxes sorted into
// slices along the bed. Beds are long and thin, and so are few items; those that
// run through many slices are kept apart and always looked at.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "geometry/vectors.h"

namespace bedwright {

class NearIndex {
 public:
  NearIndex() = default;
  explicit NearIndex(const std::vector<Box3>& boxes) : boxes_(&boxes) {
    Box3 all;
    for (const Box3& b : boxes) {
      if (b.low.x > b.high.x) continue;  // nothing in it
      all.add(b.low);
      all.add(b.high);
    }
    if (all.low.x > all.high.x) return;
    start_ = all.low.x;
    slices_.resize(static_cast<std::size_t>(slice_of(all.high.x)) + 1);
    for (std::size_t i = 0; i < boxes.size(); ++i) {
      const Box3& b = boxes[i];
      if (b.low.x > b.high.x) continue;
      const int from = slice_of(b.low.x), to = slice_of(b.high.x);
      if (to - from >= most_slices) {
        long_.push_back(static_cast<int>(i));
        continue;
      }
      for (int s = from; s <= to; ++s) slices_[s].push_back(static_cast<int>(i));
    }
  }

  // Calls use(index) once for each box that overlaps `box`.
  template <class Use>
  void for_each(const Box3& box, Use use) const {
    if (slices_.empty()) return;
    const int last = static_cast<int>(slices_.size()) - 1;
    const int from = std::clamp(slice_of(box.low.x), 0, last), to = std::clamp(slice_of(box.high.x), 0, last);
    for (const int i : long_)
      if ((*boxes_)[i].overlaps(box)) use(i);
    for (int s = from; s <= to; ++s)
      for (const int i : slices_[s])
        // A box in several slices is used in the first of them that was asked about.
        if (std::max(slice_of((*boxes_)[i].low.x), from) == s && (*boxes_)[i].overlaps(box)) use(i);
  }

 private:
  static constexpr Mm slice = 100;
  static constexpr int most_slices = 12;
  int slice_of(Mm x) const { return static_cast<int>(std::floor((x - start_) / slice)); }

  const std::vector<Box3>* boxes_ = nullptr;
  Mm start_ = 0;
  std::vector<std::vector<int>> slices_;
  std::vector<int> long_;
};

}  // namespace bedwright
