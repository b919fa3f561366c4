// The map as files.
//
// offer.csv: one line for each combination; a column for each parameter varied (by its key), then
//   fits        "yes", "no", or "cannot" (cannot be read or laid out)
//   stops, warnings   counts
//   rule        the rule that binds (fits: the one nearest to its limit)
//   margin      in `unit`, negative fails; empty where nothing was measured
//   unit        "in" or "mm" as the order prints, "%" of the limit (loads), or another
//   used        fits: needed over what there is, 1 just at the limit; else empty
//   at          the bolt or part it is about
//   stopped by  "HOLE-FIT 3, CLASH 1"
//   warned by   likewise
//   change      what the binding finding says to change; the problem where it cannot
//
// offer.json, version 2. An object with these keys, in this order:
//   format    "bedwright offer"
//   version   2; raised when a key changes its meaning or goes away. Keys may be
//             added without raising it.
//   program   {"name": "bedwright", "version": text}
//   order     {"number", "revision", "date", "printing" ("inch" or "metric"), "digest": SHA-256 over
//             the order's files and the --set it was run with}
//   holds_for list of text: what all combinations share, as the pages head it
//   varied    list of {"key", "values": list of text}
//   part      {"number", "of"}: which part of all combinations these are
//   counts    {"fits", "stopped", "impossible"}
//   rows      list, by combination, of {"n": number of the combination from 0, the last
//             parameter changing fastest, "fit": "fits", "stopped" or "impossible", "stops",
//             "warnings", "by_rule", "warned_by", "code", "margin" (lengths in mm), "unit", "used" (0 unless
//             it fits), "subject", "change"} as in the CSV
//   near      list, best first, of {"n", "changes": list of {"key", "value"}, tried together and
//             found to clear every stop, empty when none was found, "remedies": list of text}
// Margins are rounded to 1e-6. UTF-8, a row on each line, one newline at the end:
// the same run gives the same bytes, whole or merged from parts.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "offer/map.h"
#include "params/order.h"

namespace bedwright {

struct MapFile {
  std::string program_version;
  std::string number, revision, date, digest;
  Printing printing{};
  std::vector<std::string> holds_for;
  OfferMap map;
};

// What a margin of that unit is printed in: a length in the order's, all else as its finding has it.
PrintedUnit margin_unit(const std::string& unit, Printing printing);

std::string map_csv(const MapFile& file);
std::string map_json(const MapFile& file);

// The file's content, or one sentence what is wrong with the text.
std::variant<MapFile, std::string> read_map_json(const std::string& text);

// All parts of one run as that run; or what does not fit together. Keeps the best
// `near_misses`.
std::variant<MapFile, std::string> merged(std::vector<MapFile> parts, std::size_t near_misses);

}  // namespace bedwright
