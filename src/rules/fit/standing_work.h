// What can be done to the tabs of a frame that stands: a slot filed, a tab cut off, a new
// one welded on. Nothing there is moved or made anew.
#pragma once

#include "rules/fit/sided_work.h"
#include "rules/scene.h"

namespace bedwright {

// Whether the bolt goes into a tab that stands, so that only such work is to be offered.
bool is_into_standing_tab(const Scene& scene, const Bolt& bolt);

// Where a new tab's hole may be on mains that stand, from their front end: its plate and the
// fillets at both its ends lie on the main.
struct RoomOnMain {
  Mm from = 0, to = 0;
};
RoomOnMain room_on_main(const FrameFile& frame);

// The tabs' work of one side of the job's frame, its tabs front to rear.
OneSideTabs tabs_on(const FrameTabs& tabs, Side side);

// Work that lets every track bolt in: new tabs under holes that have none, tabs that stand in
// their way replaced, slots filed.
class StandingWork {
 public:
  explicit StandingWork(const Scene& scene);
  // A bolt that does not go into its standing tab. `filed`: the slot length that lets it in,
  // where tab and washer leave room for one; else its tab is to be replaced.
  void add(const Bolt& bolt, std::optional<Mm> filed);
  // For one of those added: its own part of the work in words, all of it as a change.
  void suggest(const Bolt& bolt, Finding& finding) const;
  // A tab that does not lie as it should: cut off and made new at its place.
  void renew(Side side, Mm at, Finding& finding);
  // For a hole without a tab: a new one; or how far the track runs past the mains.
  void suggest_new_tab(const Bolt& bolt, Finding& finding) const;

 private:
  Mm place_of_tab(const Bolt& bolt) const;  // its hole, from the mains' front end
  void suggest_replaced(Side side, const TabReplaced& tab, Finding& finding) const;
  const Scene& scene_;
  SidedWork<TabFiled> file_;
  SidedWork<TabReplaced> replace_;
  SidedWork<Mm> add_;
};

// Tabs that stand in the way of something else and that no track bolt needs: cut off.
class TabsInTheWay {
 public:
  explicit TabsInTheWay(const Scene& scene);
  // Whether the item is such a tab or its pad; it is then among those to come off.
  bool add(int item);
  // The same of two that meet: the one of them that is.
  std::optional<int> add_both(int a, int b);
  // For one of those added: "cut tab R7 off at ...", and all of them as a change.
  void suggest(int item, Finding& finding) const;

 private:
  std::optional<Mm> place_of_tab(int item) const;  // where it stands on a frame that stands
  const Scene& scene_;
  SidedWork<Mm> off_;
};

}  // namespace bedwright
