#include "sheets/tab_rows.h"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace bedwright {
namespace {

bool is_tab(const std::string& name) {
  return name.size() > 5 && name.starts_with("tab ") && (name[4] == 'L' || name[4] == 'R') &&
         std::isdigit(static_cast<unsigned char>(name[5]));
}

const Bolt* bolt_through(const Bed& bed, int item) {
  for (const Bolt& bolt : bed.bolts)
    if (bolt.role == Role::track && bolt.in_place && !bolt.plies.empty() && bolt.plies.back().item == item) return &bolt;
  return nullptr;
}

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

TabRow row_of(const Bed& bed, int item) {
  Ply ply;
  ply.item = item;
  ply.hole = 0;
  const Vec3 hole = hole_in_world(bed, ply).centre;
  TabRow row;
  row.number = std::stoi(bed.items[item].name.substr(5));
  row.sides = bed.items[item].name.substr(4, 1);
  row.hole = hole.x;
  row.across = std::abs(hole.y);
  row.edge = bounds(bed, item).low.x;
  if (const Bolt* bolt = bolt_through(bed, item)) {
    row.used = true;
    add_up(*bolt, row);
  }
  return row;
}

bool alike(const TabRow& a, const TabRow& b) {
  const auto same = [](Mm p, Mm q) { return std::abs(p - q) < same_place; };
  return same(a.hole, b.hole) && same(a.edge, b.edge) && same(a.across, b.across) && a.used == b.used && same(a.worst, b.worst) &&
         same(a.rss, b.rss);
}

}  // namespace

std::vector<TabRow> tab_rows(const Bed& bed) {
  std::vector<TabRow> all;
  for (std::size_t i = 0; i < bed.items.size(); ++i)
    if (is_tab(bed.items[i].name)) all.push_back(row_of(bed, static_cast<int>(i)));
  std::sort(all.begin(), all.end(), [](const TabRow& a, const TabRow& b) { return std::pair(a.number, a.sides) < std::pair(b.number, b.sides); });
  std::vector<TabRow> rows;
  for (const TabRow& r : all) {
    if (!rows.empty() && rows.back().number == r.number && alike(rows.back(), r)) {
      rows.back().sides = "L + R";
    } else {
      rows.push_back(r);
    }
  }
  return rows;
}

}  // namespace bedwright
