// hardware.csv and bolts.csv: what to count out, and which bolt goes where.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>
#include <tuple>

#include "bed/names.h"
#include "formats/csv.h"
#include "packet/lists.h"

namespace bedwright {
namespace {

struct Need {
  HardwareKind kind = HardwareKind::bolt;
  std::string size_name;  // for the order and for a box entry no bolt uses
  std::string grade, coating;
  Mm length = 0;
  std::map<Kind, int> by_use = {};  // by the kind of bolt they go with
  int in_box = 0;
  int total() const {
    int sum = 0;
    for (const auto& [use, count] : by_use) sum += count;
    return sum;
  }
};

// The one alike in all but its counts; `like` added where there is none.
Need& need_of(std::vector<Need>& needs, const Need& like) {
  const auto found = std::find_if(needs.begin(), needs.end(), [&](const Need& n) {
    return n.kind == like.kind && n.size_name == like.size_name && n.grade == like.grade &&
           n.coating == like.coating && std::abs(n.length - like.length) < same_place;
  });
  if (found != needs.end()) return *found;
  needs.push_back(like);
  return needs.back();
}

}  // namespace

int spares_for(int needed, const Spares& spares) {
  if (needed <= 0) return 0;
  // A hair off, so that 5 % of 20 is 1 and not 2 by rounding.
  return std::max(spares.least, static_cast<int>(std::ceil(needed * spares.percent / 100 - 1e-9)));
}

std::string hardware_csv(const Bed& bed, const std::vector<KitBox>& box, const Heading& heading,
                         const Spares& spares, const std::vector<Shim>& shims) {
  std::vector<Need> needs;
  for (const Item& item : bed.items) {
    const Hardware* h = std::get_if<Hardware>(&bed.parts[static_cast<std::size_t>(item.part)].form);
    if (h == nullptr || !item.shown) continue;
    if (item.bolt >= 0 && stands(bed, bed.bolts.at(static_cast<std::size_t>(item.bolt)))) continue;
    if (item.bolt < 0)
      throw std::logic_error(fmt::format("hardware list: {} belongs to no bolt", name(item)));
    Need& need = need_of(
        needs, {h->kind, h->size.name, h->grade, h->coating, h->kind == HardwareKind::bolt ? h->length : 0});
    ++need.by_use[bed.bolts.at(static_cast<std::size_t>(item.bolt)).id.kind];
  }
  for (const KitBox& b : box)
    need_of(needs, {HardwareKind::bolt, b.bolt.text, b.grade, b.coating, b.length}).in_box += b.quantity;
  std::stable_sort(needs.begin(), needs.end(), [](const Need& a, const Need& b) {
    if (a.kind != b.kind) return a.kind < b.kind;
    return std::tie(a.size_name, a.grade, a.coating, a.length) <
           std::tie(b.size_name, b.grade, b.coating, b.length);
  });
  Csv csv;
  csv.row({"item", "size", "grade", "coating", "length", "length mm", "needed", "for track", "for bunks",
           "for gussets", "for stops", "for jacks", "for tongue jack", "spares", "in the kit's box", "to buy",
           "left over"});
  for (Need& n : needs) {
    const bool bolt = n.kind == HardwareKind::bolt;
    // Where none is said of any, the bolts are common ones (ASTM A307, 4.6).
    std::vector<CsvCell> row{word(n.kind), n.size_name, n.grade, n.coating};
    row.emplace_back(bolt ? heading.figures().size_length(n.length) : std::string());
    row.push_back(bolt ? CsvCell(n.length, 2) : CsvCell(""));
    row.emplace_back(n.total());
    for (const Kind use : bolt_kinds) row.emplace_back(n.by_use[use]);
    const int packed = n.total() + spares_for(n.total(), spares);
    row.emplace_back(packed - n.total());
    row.emplace_back(n.in_box);
    row.emplace_back(std::max(0, packed - n.in_box));
    row.emplace_back(std::max(0, n.in_box - packed));
    csv.row(row);
  }
  for (const Shim& shim : shims) {
    const int extra = spares_for(shim.count, spares);
    std::vector<CsvCell> row{"shim, " + heading.figures().size_length(shim.thickness) + " thick",
                             shim.bolt,
                             "",
                             "",
                             "",
                             "",
                             shim.count};
    for (const Kind use : bolt_kinds) row.emplace_back(use == Kind::track_bolt ? shim.count : 0);
    for (const int figure : {extra, 0, shim.count + extra, 0}) row.emplace_back(figure);
    csv.row(row);
  }
  return csv.text();
}

std::string bolts_csv(const Bed& bed, const std::vector<KindsOfSize>& kinds) {
  Csv csv;
  csv.row({"hole", "size", "length", "length mm", "from the front mm", "lengths that suit",
           "with the fewest lengths", "from the kit's box"});
  for (const KindsOfSize& k : kinds)
    for (const HoleChoice& h : k.holes) {
      const Bolt& bolt = bed.bolts.at(static_cast<std::size_t>(h.bolt));
      const auto figure = [&](Mm length) { return bolt_length_text(bolt.size, length); };
      const auto maybe = [&](const std::optional<Mm>& length) {
        return length ? figure(*length) : std::string();
      };
      std::string suits;
      for (const Mm length : h.suits) suits += (suits.empty() ? "" : ", ") + figure(length);
      csv.row({name(bolt), k.size, figure(bolt.length), CsvCell(bolt.length, 2), CsvCell(bolt.seat.x, 2),
               suits, maybe(h.fewest), maybe(h.from_kit)});
    }
  return csv.text();
}

}  // namespace bedwright
