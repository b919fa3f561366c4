// Lays both rails straight over the tabs as they were measured.
#include "bed/rail_gaps.h"

#include <algorithm>
#include <cmath>

namespace bedwright {
namespace {

// How high the rail's line of that slope runs at x = 0 when it touches the highest tab.
Mm touching(const std::vector<TabTop>& tabs, double slope) {
  Mm most = tabs.front().height - slope * tabs.front().x;
  for (const TabTop& t : tabs) most = std::max(most, t.height - slope * t.x);
  return most;
}

Mm widest_gap(const std::vector<TabTop>& tabs, double slope) {
  if (tabs.empty()) return 0;
  const Mm line = touching(tabs, slope);
  Mm widest = 0;
  for (const TabTop& t : tabs) widest = std::max(widest, line + slope * t.x - t.height);
  return widest;
}

std::vector<Mm> gaps_under(const std::vector<TabTop>& tabs, double slope) {
  std::vector<Mm> gaps;
  if (tabs.empty()) return gaps;
  const Mm line = touching(tabs, slope);
  for (const TabTop& t : tabs) gaps.push_back(std::max(0.0, line + slope * t.x - t.height));
  return gaps;
}

}  // namespace

RailGaps rail_gaps(const std::vector<TabTop>& left, const std::vector<TabTop>& right) {
  // No steeper than a frame stands that a shop would level: one in ten either way.
  double low = -0.1, high = 0.1;
  const auto widest = [&](double slope) {
    return std::max(widest_gap(left, slope), widest_gap(right, slope));
  };
  constexpr int thirds = 100;  // (2/3)^100 of the range: far below a hair over any track
  for (int i = 0; i < thirds; ++i) {
    const double third = (high - low) / 3;
    if (widest(low + third) <= widest(high - third))
      high -= third;
    else
      low += third;
  }
  const double slope = (low + high) / 2;
  return {gaps_under(left, slope), gaps_under(right, slope)};
}

Mm pack_for(Mm gap, Mm thinnest) { return thinnest * std::floor(gap / thinnest + 0.5); }

}  // namespace bedwright
