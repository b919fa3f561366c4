// Whether two beds are the same in every field. Each struct is taken apart whole, so that
// one that gets a field more does not compile here until the field is compared too.
#pragma once

#include <algorithm>
#include <string>
#include <tuple>
#include <vector>

#include "bed/bed.h"

namespace bedwright::testing {

inline auto fields(const Part& x) {
  const auto& [a, b, c, d] = x;
  return std::tie(a, b, c, d);
}
inline auto fields(const Item& x) {
  const auto& [a, b, c, d, e, f] = x;
  return std::tie(a, b, c, d, e, f);
}
inline auto fields(const Contribution& x) {
  const auto& [a, b, c, d, e, f, g, h] = x;
  return std::tie(a, b, c, d, e, f, g, h);
}
inline auto fields(const Weld& x) {
  const auto& [a, b, c, d, e, f, g, h] = x;
  return std::tie(a, b, c, d, e, f, g, h);
}
inline auto fields(const Joined& x) {
  const auto& [a, b, why] = x;
  return std::tuple(a, b, std::string(why));  // the words, not where they stand
}
inline auto fields(const BunkPlace& x) {
  const auto& [a, b, c, d] = x;
  return std::tie(a, b, c, d);
}

template <class T>
bool same_all(const std::vector<T>& p, const std::vector<T>& q) {
  return std::equal(p.begin(), p.end(), q.begin(), q.end(),
                    [](const T& x, const T& y) { return fields(x) == fields(y); });
}

inline bool same_ply(const Ply& p, const Ply& q) {
  const auto& [a, b, c, d, e, f] = p;
  const auto& [k, l, m, n, o, r] = q;
  return std::tie(a, b, c, d, e) == std::tie(k, l, m, n, o) && same_all(f, r);
}

inline bool same_bolt(const Bolt& p, const Bolt& q) {
  const auto& [a, b, c, d, e, f, g, h, i, j, x, shim_p] = p;
  const auto& [k, l, m, n, o, r, s, t, u, v, y, shim_q] = q;
  return std::tie(a, b, c, d, e, f, g, j, x, shim_p) == std::tie(k, l, m, n, o, r, s, v, y, shim_q) &&
         std::equal(h.begin(), h.end(), t.begin(), t.end(), same_ply) && same_all(i, u);
}

inline bool same_track(const Track& p, const Track& q) {
  const auto& [a, b, c, d, e, f, g, h, i, bunks_p, k, l, m, n, o, w] = p;
  const auto& [A, B, C, D, E, F, G, H, I, bunks_q, K, L, M, N, O, W] = q;
  return std::tie(a, b, c, d, e, f, g, h, i, k, l, m, n, o, w) ==
             std::tie(A, B, C, D, E, F, G, H, I, K, L, M, N, O, W) &&
         same_all(bunks_p, bunks_q);
}

inline bool same_bed(const Bed& p, const Bed& q) {
  const auto& [parts, items, bolts, welds, joined, track] = p;
  return same_all(parts, q.parts) && same_all(items, q.items) && same_all(welds, q.welds) &&
         same_all(joined, q.joined) && same_track(track, q.track) &&
         std::equal(bolts.begin(), bolts.end(), q.bolts.begin(), q.bolts.end(), same_bolt);
}

}  // namespace bedwright::testing
