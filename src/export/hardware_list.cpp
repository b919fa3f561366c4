#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <stdexcept>

#include "export/csv.h"
#include "export/figures.h"
#include "export/lists.h"

namespace bedwright {
namespace {

constexpr std::array roles{Role::track, Role::bunk, Role::gusset, Role::stop, Role::jack, Role::tongue_jack};

struct Need {
  HardwareKind kind = HardwareKind::bolt;
  std::string size_name;  // for the order and for a box entry no bolt uses
  Mm length = 0;
  std::array<int, roles.size()> by_role{};
  int in_box = 0;
  int total() const {
    int sum = 0;
    for (const int n : by_role) sum += n;
    return sum;
  }
};

Need& need_of(std::vector<Need>& needs, HardwareKind kind, const std::string& size, Mm length) {
  const auto found = std::find_if(needs.begin(), needs.end(), [&](const Need& n) {
    return n.kind == kind && n.size_name == size && std::abs(n.length - length) < same_place;
  });
  if (found != needs.end()) return *found;
  Need fresh;
  fresh.kind = kind;
  fresh.size_name = size;
  fresh.length = length;
  needs.push_back(fresh);
  return needs.back();
}

std::size_t role_index(Role role) {
  return static_cast<std::size_t>(std::find(roles.begin(), roles.end(), role) - roles.begin());
}

}  // namespace

std::string hardware_name(HardwareKind kind) {
  switch (kind) {
    case HardwareKind::bolt:
      return "bolt";
    case HardwareKind::nut:
      return "nut";
    case HardwareKind::flat_washer:
      return "flat washer";
    case HardwareKind::lock_washer:
      return "lock washer";
  }
  throw std::logic_error("hardware_name: unknown kind");
}

std::string hardware_csv(const Bed& bed, const std::vector<KitBox>& box, const Heading& heading) {
  std::vector<Need> needs;
  for (const Item& item : bed.items) {
    const Hardware* h = std::get_if<Hardware>(&bed.parts[static_cast<std::size_t>(item.part)].form);
    if (h == nullptr || !item.shown) continue;
    if (item.bolt < 0) throw std::logic_error(fmt::format("hardware list: {} belongs to no bolt", item.name));
    const Role role = bed.bolts.at(static_cast<std::size_t>(item.bolt)).role;
    Need& need = need_of(needs, h->kind, h->size.name, h->kind == HardwareKind::bolt ? h->length : 0);
    ++need.by_role.at(role_index(role));
  }
  for (const KitBox& b : box) need_of(needs, HardwareKind::bolt, b.bolt.text, b.length).in_box += b.quantity;
  std::stable_sort(needs.begin(), needs.end(), [](const Need& a, const Need& b) {
    if (a.kind != b.kind) return a.kind < b.kind;
    if (a.size_name != b.size_name) return a.size_name < b.size_name;
    return a.length < b.length;
  });
  Csv csv;
  csv.row({"item", "size", "length", "length mm", "needed", "for track", "for bunks", "for gussets",
           "for stops", "for jacks", "for tongue jack", "in the kit's box", "to buy", "left over"});
  for (const Need& n : needs) {
    const bool bolt = n.kind == HardwareKind::bolt;
    std::vector<CsvCell> row{hardware_name(n.kind), n.size_name};
    row.emplace_back(bolt ? fmt::format("{} {}", size_figure(n.length, heading),
                                        heading.printing == Printing::inches ? "in" : "mm")
                          : std::string());
    row.push_back(bolt ? CsvCell(n.length, 2) : CsvCell(""));
    row.emplace_back(n.total());
    for (const int count : n.by_role) row.emplace_back(count);
    row.emplace_back(n.in_box);
    row.emplace_back(std::max(0, n.total() - n.in_box));
    row.emplace_back(std::max(0, n.in_box - n.total()));
    csv.row(row);
  }
  return csv.text();
}

}  // namespace bedwright
