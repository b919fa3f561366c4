// What is done to a frame that stands before the track goes on, step by step, as the sheet and
// the list of its changes both tell it; how much work it is.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bed/bed.h"
#include "params/job.h"

namespace bedwright {

enum class ChangeKind { cut_off, file, unbolt_jack, drill, bolt_jack, add_tab, shim };

// One step at one place along the mains; both sides' items where both want it alike.
struct FrameChange {
  ChangeKind kind = ChangeKind::cut_off;
  std::vector<Identity> items;
  Mm at = 0;                    // behind the mains' front ends: a tab's hole, a jack plate's middle, a hole
  std::optional<Mm> down = {};  // of a drilled hole, below the mains' tops
  Mm size = 0;                  // slot once filed, drilled hole, fillet's leg, pack of shims
  std::optional<Mm> from = {};  // slot before it is filed
  std::vector<Mm> shims = {};   // what a pack is made of, thickest first
  Mm bolt_length = 0;           // of the track bolt through that pack
};

// In the order a shop goes about it: off, file, unbolt, drill, bolt up, weld on; last the shims,
// which go in with the rails. Each front to rear.
std::vector<FrameChange> frame_changes(const Job& job, const Bed& bed);

// Pieces of work: tabs, holes and jacks each counted singly.
struct WorkCount {
  int cut_off = 0, file = 0, add = 0, holes = 0, jacks = 0, shims = 0;
  int to_the_frame() const { return cut_off + file + add + holes + jacks; }
};
WorkCount work_of(const std::vector<FrameChange>& changes);

// One person's minutes by the order's own times; nothing where it does not say how long one of
// the tasks takes that there is to do.
std::optional<double> minutes_of(const WorkCount& work, const TaskTimes& times);

// "CUT OFF", "FILE THE SLOT", and the items by mark: "tabs L7, R7".
std::string verb_of(ChangeKind kind);
std::string items_of(const FrameChange& change);

}  // namespace bedwright
