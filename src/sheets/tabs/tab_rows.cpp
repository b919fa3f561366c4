// Works out each tab's row, and joins left and right where they agree.
#include "sheets/tabs/tab_rows.h"

#include <algorithm>
#include <cmath>

#include "bed/names.h"

namespace bedwright {
namespace {

void add_up(const Bolt& bolt, TabRow& row) {
  Mm plus = 0, minus = 0, squares = 0;
  for (const Contribution& c : bolt.stack_up) {
    plus += c.x_plus;
    minus += c.x_minus;
    squares += std::pow(std::max(c.x_plus, c.x_minus), 2);
  }
  row.worst = std::max(plus, minus);
  row.rss = std::sqrt(squares);
}

TabRow row_of(const Bed& bed, int tab) {
  const Identity& id = bed.items[tab].id;
  const Vec3 hole = hole_in_world(bed, ply_through(bed, tab, 0)).centre;
  TabRow row;
  row.number = id.number;
  (id.side == Side::left ? row.left : row.right) = true;
  row.hole = hole.x;
  row.across = std::abs(hole.y);
  row.edge = bounds(bed, tab).low.x;
  if (const std::optional<int> bolt = track_bolt_through(bed, tab)) {
    row.used = true;
    add_up(bed.bolts[*bolt], row);
  }
  return row;
}

bool alike(const TabRow& a, const TabRow& b) {
  const auto same = [](Mm p, Mm q) { return std::abs(p - q) < same_place; };
  return same(a.hole, b.hole) && same(a.edge, b.edge) && same(a.across, b.across) && a.used == b.used &&
         same(a.worst, b.worst) && same(a.rss, b.rss);
}

}  // namespace

std::optional<int> track_bolt_through(const Bed& bed, int tab) {
  for (std::size_t i = 0; i < bed.bolts.size(); ++i) {
    const Bolt& bolt = bed.bolts[i];
    if (bolt.id.kind == Kind::track_bolt && bolt.in_place && !bolt.plies.empty() &&
        bolt.plies.back().item == tab)
      return static_cast<int>(i);
  }
  return std::nullopt;
}

std::string sides_of(const TabRow& row) {
  return row.on_both() ? letter(Side::left) + " + " + letter(Side::right)
                       : letter(row.left ? Side::left : Side::right);
}

std::vector<TabRow> tab_rows(const Bed& bed) {
  std::vector<TabRow> all;
  for (const int tab : bed.items_of(Kind::tab)) all.push_back(row_of(bed, tab));
  std::sort(all.begin(), all.end(), [](const TabRow& a, const TabRow& b) {
    return std::pair(a.number, a.right) < std::pair(b.number, b.right);
  });
  std::vector<TabRow> rows;
  for (const TabRow& r : all) {
    if (!rows.empty() && rows.back().number == r.number && alike(rows.back(), r)) {
      rows.back().right = true;
    } else {
      rows.push_back(r);
    }
  }
  return rows;
}

}  // namespace bedwright
