// How long the shop's own people take for the work on a frame that stands.
#pragma once

#include "yaml/describe.h"

namespace bedwright {

// Minutes of one person for each; 0 where the shop has not said.
struct TaskTimes {
  double cut_off_tab = 0, file_tab = 0, add_tab = 0, drill_hole = 0, move_jack = 0, shim_tab = 0;
};

template <class V>
void describe(V& v, TaskTimes& t) {
  constexpr Range minutes{0, 1440};
  v.number("cut_off_tab", t.cut_off_tab, minutes, "Minutes to cut one tab off and grind its place flush",
           v.optional);
  v.number("file_tab", t.file_tab, minutes, "Minutes to file one tab's slot longer, its pad's with it",
           v.optional);
  v.number("add_tab", t.add_tab, minutes, "Minutes to make one new tab, set it and weld it on", v.optional);
  v.number("drill_hole", t.drill_hole, minutes, "Minutes to lay out and drill one hole in standing steel",
           v.optional);
  v.number("move_jack", t.move_jack, minutes, "Minutes to unbolt one jack and bolt it up elsewhere",
           v.optional);
  v.number("shim_tab", t.shim_tab, minutes, "Minutes to shim one tab", v.optional);
}

}  // namespace bedwright
