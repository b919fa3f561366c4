// Rails between their tabs, and what they put on them.
#pragma once

#include "loads/loads.h"
#include "loads/log.h"

namespace bedwright {

struct RailBending {
  Mm sag = 0, sag_x = 0;  // at rest
  double moment = 0;      // as a log lands
  Mpa stress = 0;
  Newton tab_load = 0;  // most one tab pushes up with, as a log lands
  TabPush tab;          // on the tab that is bent most
};

// Each rail section by itself on its tabs (the gussets at its joints are not
// counted on), bolted down, under the head's wheels and the log's bunks.
RailBending bend_rails(const Job& job, const Bed& bed, const LogOnBunks& log);

// The same on the road at rest: the rails under the head alone, its wheels at its lock.
TabPush tab_push_locked(const Job& job, const Bed& bed);

// How a tab carries a rail: root of its bending (the web's back, a clip's inner face) to the
// bolt, and stiffness. The root of a plate is the back of the main's web.
struct TabArm {
  Mm arm = 0;
  double modulus = 0;    // mm3
  double stiffness = 0;  // N mm2
  Mm wheel_off = 0;      // from the bolt out to the middle of the rail's upright leg
};
TabArm tab_arm(const Job& job);

// Part of a wheel's arm beyond the bolt, mm, that turns a tab held against roll with `hold`
// (N mm per radian): rail and tab turn alike at the bolt. The tab as a cantilever turns by
// (P a^2 / 2 + (P e - M) a) / EI under P, its moment P e and M, which the bunks take off;
// they give way by M / hold.
Mm turning_arm(const TabArm& tab, double hold);

}  // namespace bedwright
