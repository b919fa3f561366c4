// Fillet welds by AISC 360: sizes by thickness, strength by throat, and the load a
// tab's weld carries at work (bed/tab_weld.h: what it does to the weld).
#pragma once

#include <optional>

#include "bed/tab_weld.h"
#include "rules/scene.h"

namespace bedwright {

// Table J2.4: least fillet leg for the thinner part joined.
Mm least_fillet(Mm thinner);

// Section J2.2b: largest fillet along an edge of this thickness.
Mm largest_fillet(Mm edge);

// Allowable load of a fillet a millimetre long (ASD): 0.60 Fexx through the throat
// 0.707 leg, over 2.0. In N/mm.
inline constexpr Mpa e70 = 70 * ksi;
double fillet_allowable(Mm leg, Mpa electrode = e70);

// The same of the steel beside it (ASD, AISC 360 section J4.2, shear rupture): 0.60 Fu
// through the thinner part, over 2.0. Steel is matched to a weld by rupture (AISC
// Manual part 9, from memory); yielding is of a part's whole section: TAB-WORK. Fu is the least of the grades
// a frame may be of, 360 MPa (EN 10025 S235; A36 has 58 ksi).
inline constexpr Mpa least_tensile = 360;
double steel_allowable(Mm thinner);

// What a millimetre of this weld may carry (N/mm): the fillet or the steel beside it.
double line_allowable(const Weld& weld);

inline std::vector<TabWeld> tab_welds(const Scene& scene) { return tab_welds(scene.bed); }

// The load each tab's weld must carry at work (N), and in words where it comes from.
struct TabLoad {
  Newton load = 0;
  std::string basis;
};
std::optional<TabLoad> tab_load(const Scene& scene);

// The largest diameter, in whole inches or 25 mm, of a log like the order's under which
// each tab carries no more than this; nothing where no log is named, or none would do.
std::optional<Mm> largest_log(const Scene& scene, Newton load);

}  // namespace bedwright
