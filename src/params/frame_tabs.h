// Mounting tabs of a frame: their sizes, and of a frame that stands where they are, how high
// each stands, what was done to them and what is still to be done.
#pragma once

#include <algorithm>
#include <optional>
#include <vector>

#include "units/units.h"
#include "yaml/mark.h"

namespace bedwright {

enum class TabStyle { plate, clip };

// Plate tab: a plate on the main's top flange with a pad under the rail.
struct PlateTab {
  Mm plate_thickness = 0, pad_thickness = 0;
  Mm inboard = 0, outboard = 0;  // plate's edges from the web back
  Mm pad_width = 0;              // across, centred on the hole
};

// Clip tab: a length of angle on the web's back.
struct ClipTab {
  Name section;
  Mm standoff = 0;
};

// The slot of a tab that stands, filed longer evenly both ways.
struct TabFiled {
  Mm at = 0;  // the hole, behind the mains' front end
  Mm slot_length = 0;
};

// A tab of a frame that stands, to be cut off, and a new one in its stead.
struct TabReplaced {
  Mm at = 0, with = 0;  // old and new hole, behind the mains' front end
};

// How high the two tabs at one place stand over one level line along and across the bed.
struct TabHeight {
  Mm at = 0;                      // the hole, behind the mains' front end
  std::optional<Mm> left, right;  // minus: below the line; left out where that side has no tab
};

// What was done to tabs that stand, and what is still to be done; holes behind the mains' front end.
struct TabWork {
  std::vector<TabFiled> filed, to_file;
  std::vector<Mm> to_cut_off, to_add;
  std::vector<TabReplaced> to_replace;
};

// One side of a frame that stands: where its tabs are, and the work on them.
struct OneSideTabs : TabWork {
  std::vector<Mm> existing;
};

struct FrameTabs : TabWork {  // the work: on both sides alike
  TabStyle style = TabStyle::plate;
  Mm length = 0;         // along the main
  Mm hole_diameter = 0;  // width of the slot
  Mm slot_length = 0;    // overall, along the main
  Mm weld_leg = 0;
  std::optional<PlateTab> plate;
  std::optional<ClipTab> clip;
  std::vector<Mm> existing;         // tab holes of a frame that exists, behind the mains' front end
  std::optional<Mm> existing_line;  // the same holes, outward from the web's back
  std::vector<TabHeight> heights;
  // Where one side is not as the other: its own tabs in place of `existing`, and work on it alone.
  std::optional<OneSideTabs> left, right;
};

// A side's tabs, front to rear, with all the work on them: `own` is FrameTabs::left or right.
inline OneSideTabs one_side(const FrameTabs& tabs, const std::optional<OneSideTabs>& own) {
  OneSideTabs side{tabs, tabs.existing};
  if (own) {
    const auto add = [](auto& to, const auto& more) { to.insert(to.end(), more.begin(), more.end()); };
    if (!own->existing.empty()) side.existing = own->existing;
    add(side.filed, own->filed);
    add(side.to_file, own->to_file);
    add(side.to_cut_off, own->to_cut_off);
    add(side.to_add, own->to_add);
    add(side.to_replace, own->to_replace);
  }
  std::sort(side.existing.begin(), side.existing.end());
  return side;
}

// Whether something is still to be done to the tabs of a frame that stands.
inline bool is_to_be_changed(const TabWork& work) {
  return !work.to_file.empty() || !work.to_cut_off.empty() || !work.to_add.empty() ||
         !work.to_replace.empty();
}
inline bool is_to_be_changed(const FrameTabs& tabs) {
  return is_to_be_changed(static_cast<const TabWork&>(tabs)) || (tabs.left && is_to_be_changed(*tabs.left)) ||
         (tabs.right && is_to_be_changed(*tabs.right));
}

template <class V>
void describe(V& v, PlateTab& p) {
  v.length("plate_thickness", p.plate_thickness, {3, 50}, "Plate on the main's flange");
  v.length("pad_thickness", p.pad_thickness, {0, 50}, "Pad between plate and rail; 0 for none", v.optional);
  v.length("inboard", p.inboard, {0, 300}, "Plate's inner edge, inward from the web back");
  v.length("outboard", p.outboard, {10, 300}, "Plate's outer edge, outward from the web back");
  v.length("pad_width", p.pad_width, {0, 300}, "Pad across the rail, centred on the hole", v.optional);
}
template <class V>
void describe(V& v, ClipTab& c) {
  v.name("section", c.section, "Angle, as the catalogue names it");
  v.length("standoff", c.standoff, {0, 200}, "Top of the clip above the main");
}
template <class V>
void describe(V& v, TabFiled& t) {
  v.length("at", t.at, {0, 25000}, "The tabs' hole, behind the mains' front end, as tabs.existing lists it");
  v.length("slot_length", t.slot_length, {5, 150}, "Overall length of the slot once it is filed");
}
template <class V>
void describe(V& v, TabReplaced& t) {
  v.length("at", t.at, {0, 25000},
           "The old tabs' hole, behind the mains' front end, as tabs.existing lists it");
  v.length("with", t.with, {0, 25000}, "The new tabs' hole, behind the mains' front end");
}
template <class V>
void describe(V& v, TabHeight& t) {
  v.length("at", t.at, {0, 25000}, "The tabs' hole, behind the mains' front end, as tabs.existing lists it");
  v.length("left", t.left, {-150, 150}, "Top of the left tab over the line (minus: below it)", v.optional);
  v.length("right", t.right, {-150, 150}, "Top of the right tab over the line (minus: below it)", v.optional);
}
template <class V>
void describe_work(V& v, TabWork& t) {
  v.list("filed", t.filed, 200, "Tabs that stand whose slots were filed longer", v.optional);
  v.list("to_file", t.to_file, 200, "Tabs that stand whose slots are still to be filed", v.optional);
  v.lengths("to_cut_off", t.to_cut_off, {0, 25000}, 200,
            "Tabs that stand and are still to be cut off, by their holes as `existing` lists them",
            v.optional);
  v.lengths("to_add", t.to_add, {0, 25000}, 200,
            "New tabs still to be made and welded on a frame that stands: their holes behind the mains' "
            "front end",
            v.optional);
  v.list("to_replace", t.to_replace, 200,
         "Tabs that stand and are still to be cut off for new ones in their stead", v.optional);
}
template <class V>
void describe(V& v, OneSideTabs& t) {
  v.lengths(
      "existing", t.existing, {0, 25000}, 200,
      "Tab holes of this side alone, behind the mains' front end; leave out where tabs.existing is right "
      "for it",
      v.optional);
  describe_work(v, t);
}
template <class V>
void describe(V& v, FrameTabs& t) {
  v.choice("style", t.style, {{"plate", TabStyle::plate}, {"clip", TabStyle::clip}},
           "A plate on the main's top flange, or an angle clip on its web");
  v.length("length", t.length, {20, 500}, "Tab along the main");
  v.length("hole_diameter", t.hole_diameter, {5, 60}, "Width of the tab's slot");
  v.length("slot_length", t.slot_length, {5, 150},
           "Overall length of the slot along the main; same as hole_diameter for a round hole");
  v.length("weld_leg", t.weld_leg, {2, 20}, "Fillet weld, tab to main");
  v.object("plate", t.plate, "Sizes of a plate tab", v.optional);
  v.object("clip", t.clip, "Sizes of a clip tab", v.optional);
  v.lengths("existing", t.existing, {0, 25000}, 200,
            "Tab holes of a frame that exists, each side alike, behind the mains' front end; leave out to "
            "put a tab under every track hole",
            v.optional);
  v.length("existing_line", t.existing_line, {-300, 300},
           "The same holes' middle outward from the back of the main's web (minus: inward), as measured",
           v.optional);
  v.list(
      "heights", t.heights, 200,
      "How high each tab's top stands over one level line along and across the bed, as measured; one entry "
      "for each place, every tab that stands in it",
      v.optional);
  describe_work(v, t);  // both sides alike
  v.object("left", t.left, "The left side, facing forward, where it is not as the right", v.optional);
  v.object("right", t.right, "The right side, facing forward, where it is not as the left", v.optional);
}

}  // namespace bedwright
