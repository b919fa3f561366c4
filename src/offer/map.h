// The map of what can be offered: every combination tried, what came of each.
//
// Each combination is read, laid out and checked like an order of its own; where
// nothing else stops it, pairs that the cheap test cannot decide are asked of the
// kernel. So "fits" is what `check` says.
//
// Each thread has a FileStore of its own, which reads and parses every file once; a
// combination then costs its overrides, the reading of the structs, layout and rules.
// What the kernel said of a pair is remembered (rules/clash/pair_memory.h). Remedies
// that must be tried are worked out for the near misses only: they take ten times as
// long as the check.
//
// A map of millions is drawn in parts, each by one process, on any number of machines:
// PartOf cuts the range evenly, and merged parts are the single run byte for byte
// (tests/offer/slurm.sh does it with a job array, and says how).
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "advice/advice.h"
#include "examine/examine.h"
#include "offer/grid.h"

namespace bedwright {

enum class Fit {
  fits,
  stopped,
  impossible,  // cannot be read or laid out: an input problem, not a finding
};

struct MapRow {
  std::uint64_t combination = 0;
  Fit fit = Fit::fits;
  int stops = 0, warnings = 0;
  std::string by_rule;    // stops: "HOLE-FIT 3, CLASH 1", in the table's order
  std::string warned_by;  // warnings, likewise; without those that are only near a limit, where it is stopped
  // The rule that binds. Stopped: that of the worst margin among the stops. Loads come
  // first, by how far past their limit: a bed too weak is no near miss because a slot
  // is short too; then lengths, the rest by how far past their limit. Fits: the one nearest to its limit
  // among those measured (offer/margins.h), loads among them.
  std::string code;
  double margin = 0;    // negative fails; to 1e-6, so that a row read back is the row written
  std::string unit;     // "mm"; "%" of the limit for loads; else the finding's
  double used = 0;      // fits: needed over what there is; else 0
  std::string subject;  // the bolt or part it is about
  std::string change;   // what to change, as the finding says; the problem where impossible
};

// A near miss, and what would have to change.
struct NearMiss {
  std::uint64_t combination = 0;
  std::vector<Change> changes;        // tried: with these, too, nothing stops it; empty where none was found
  std::vector<std::string> remedies;  // one sentence for each rule that stops it
};

struct OfferMap {
  Grid grid;
  PartOf part;
  std::vector<MapRow> rows;    // by combination
  std::vector<NearMiss> near;  // best first
  double seconds = 0;          // the combinations took, near misses apart; in no file
  double cpu_seconds = 0;      // of processor time in them, all threads; in no file
  double near_seconds = 0;     // the near misses took; in no file
  unsigned threads = 1;
};

struct MapSettings {
  unsigned threads = 0;  // 0: as many as the machine has
  int near_misses = 12;
  std::function<void(const char* what, std::uint64_t done, std::uint64_t all)> progress;
};

// `sets` hold for every combination and come before its own. `judge` decides what the
// cheap test of pairs cannot; it is asked where nothing else stops the combination, and
// by several threads at once.
OfferMap draw_map(const std::string& order_path, const std::vector<std::string>& sets, Grid grid, PartOf part,
                  const JudgeMaker& judge, const MapSettings& settings);

// What a combination that was examined comes to.
MapRow row_of(const Examined& examined);

// Only rows that are stopped: fewest rules that stop it first, then fewest stops, then
// (unit by unit) the least short; and no more than most_alike that the same rules
// stop, so that a list shows more than one way to miss.
inline constexpr int most_alike = 4;
std::vector<std::size_t> nearest_rows(const std::vector<MapRow>& rows, std::size_t most);

}  // namespace bedwright
