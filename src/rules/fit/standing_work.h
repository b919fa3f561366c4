// What can be done to the tabs of a frame that stands: a slot filed, a tab cut off, a new
// one welded on. Nothing there is moved, re-slotted or made anew.
#pragma once

#include "rules/fit/bolt_fit.h"
#include "rules/scene.h"

namespace bedwright {

// Whether the bolt goes into a tab that stands, so that only such work is to be offered.
bool is_into_standing_tab(const Scene& scene, const Bolt& bolt);

// For rail holes with no tab under them: new tabs at all of them that have main enough
// below, or how far the track runs past the mains.
void suggest_new_tab(const Scene& scene, const Bolt& bolt, Finding& finding);

// For a bolt that does not go into its standing tab. `filed`: the slot length that lets it
// in, where the tab and the washer leave room for one.
void suggest_standing_work(const Scene& scene, const Bolt& bolt, std::optional<Mm> filed, Finding& finding);

}  // namespace bedwright
