// A Bed with what several rules ask for worked out once: each item's convex
// pieces, what each bolt passes through, what is beyond its tip.
#pragma once

#include "geometry/convex.h"
#include "geometry/near.h"
#include "rules/rule.h"

namespace bedwright {

// Lengths along a bolt. `grip` is everything from the head's bearing face to the
// nut's, measured shims with it; `past_nut` what stands beyond the nut at nominal length.
struct Stack {
  Mm head_washers = 0, plies = 0, nut_washers = 0;
  Mm grip = 0;
  Mm past_nut = 0;
};

// The nearest thing beyond the last ply along the bolt's axis or its rim.
struct Beyond {
  Mm distance = 0;  // from the last ply's nut-side face
  int item = -1;    // -1: nothing within tip_search
};
inline constexpr Mm tip_search = 150;

struct Scene {
  explicit Scene(const CheckInput& input);
  Scene(const Scene&) = delete;  // `near` reads `boxes`
  Scene& operator=(const Scene&) = delete;

  CheckInput input;
  const Bed& bed;
  const Limits& limits;
  const Figures& figures;
  std::vector<std::vector<Convex>> pieces;  // by item
  std::vector<Box3> boxes;                  // by item, around its pieces
  NearIndex near;                           // over boxes
  std::vector<Stack> stacks;                // by bolt
  std::vector<Beyond> beyond;               // by bolt; only of bolts in place
};

Stack stack_of(const Bolt& bolt);

// What stands between the tip and the thing beyond it, the bolt at its longest.
// Negative: the tip is inside it.
Mm tip_clearance(const Stack& stack, const Bolt& bolt, Mm bolt_length, Mm free);

// Whether the bolt's tip is nearer to what is beyond it than the limit allows
// (TIP says so; CLASH then does not say it again of the same two).
bool tip_is_too_close(const Scene& scene, int bolt);

// Whether this length suits the bolt: thread enough past the nut, not too much, no
// shank under the nut, room at the tip.
bool length_suits(const Scene& scene, std::size_t bolt, Mm length);

// Stock lengths that suit every bolt in place of this kind and size: thread
// enough past the nut, not too much, no shank under the nut, room at the tip.
// Ascending.
std::vector<Mm> suiting_lengths(const Scene& scene, Kind bolts, const BoltSize& size);

// What bolts of a kind are for. Throws std::invalid_argument for what is no bolt.
struct BoltUse {
  Kind kind = Kind::none;
  const char* word = "";                            // "tongue jack"
  const char* key = "";                             // "tongue_jack", in the order's `bolts`
  const char* hole_key = "";                        // its hole, in kit or frame: "kit.mounting.hole"
  bool from_kit = false;                            // the kit has the holes, and may send the bolts
  std::optional<Mm> BoltLengths::*named = nullptr;  // the length the owner asks for
};
const BoltUse& bolt_use(Kind bolts);

// The key that sets their length: "bolts.tongue_jack".
std::string bolts_key(Kind bolts);

// A remedy built on a stock length for the bolt's kind: the sentence, and the
// change when a length does. `longest`: the longest that suits, else the shortest.
void suggest_length(const Scene& scene, const Bolt& bolt, bool longest, Finding& finding);

// World x of the hole of each mounting tab that has one.
struct TabPlace {
  int item = -1;
  Side side = Side::middle;
  Mm x = 0;
};
std::vector<TabPlace> tab_places(const Bed& bed);

Finding finding_of(const char* code, Severity severity, Subject subject, Vec3 at);

// The way along a world axis, in the shop's words: "rearward", "toward the left side", "up".
std::string way_of(Vec3 shift);

// Adds the name to the remedy's end. Findings at like places are alike but for the names
// of their subjects, so those are noted.
void add_name(Finding& finding, const Subject& named);

}  // namespace bedwright
