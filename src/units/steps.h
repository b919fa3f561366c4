// Trying places one after another, outward from where one would best be.
#pragma once

namespace bedwright {

// 0, 1, -1, 2, -2, ... for i from 0.
constexpr int steps_out(int i) {
  const int far = (i + 1) / 2;
  return i % 2 == 1 ? far : -far;
}

}  // namespace bedwright
