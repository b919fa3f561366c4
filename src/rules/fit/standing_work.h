// What can be done to the tabs of a frame that stands: a slot filed, a tab cut off, a new
// one welded on. Nothing there is moved or made anew.
#pragma once

#include "rules/fit/bolt_fit.h"
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

// For rail holes with no tab under them: new tabs at all of them that have main enough
// below, in place of one that stands in their way; or how far the track runs past the mains.
void suggest_new_tab(const Scene& scene, const Bolt& bolt, Finding& finding);

// Of all bolts that do not go into their standing tabs, what would let them in.
class StandingWork {
 public:
  explicit StandingWork(const Scene& scene);
  // `filed`: the slot length that lets the bolt in, where tab and washer leave room for
  // one; else its tabs are to be replaced.
  void add(const Bolt& bolt, std::optional<Mm> filed);
  // For one of those added: its own part of the work in words, all of it as a change.
  void suggest(const Bolt& bolt, Finding& finding) const;

 private:
  Mm place_of(const Bolt& bolt) const;  // of its tab's hole, from the mains' front end
  const Scene& scene_;
  std::vector<TabFiled> file_;
  std::vector<TabReplaced> replace_;
};

}  // namespace bedwright
