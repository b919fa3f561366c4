// The lists of the packet, as comma-separated values with a heading row. Rows
// keep the Bed's order of parts, so that the same bed makes the same bytes.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "bed/bed.h"
#include "params/job.h"
#include "params/kit.h"
#include "params/order.h"
#include "rules/fit/bolt_kinds.h"
#include "rules/height/height.h"

namespace bedwright {

// Every distinct part that is shown: quantity, material, section or form,
// origin, size, mass each and together (kg and, for inch printing, lb). Of a frame that stands
// only what is added; the rest, with the bolts that are in it already, is standing_parts_csv.
std::string parts_csv(const Bed& bed, const Heading& heading);
std::string standing_parts_csv(const Bed& bed, const Heading& heading);

// lists/changes.csv: what is done to a frame that stands, in the order a shop goes about it:
// tabs cut off and filed, holes drilled in place (from the mains' front ends and below their
// tops), what is bolted up and welded on, shims by tab. No file is cut or drilled from it.
std::string changes_csv(const Job& job, const Bed& bed);

// What the saw and the plate table cut: made members with the length along their
// first edge, the length over all with mitres, and the mitres; made plates with
// thickness and bounding size.
std::string cut_list_csv(const Bed& bed, const Heading& heading);

// lists/layout.csv: where each made item, axle and jack goes on the frame: its
// front edge, middle and rear edge in running dimensions from the mains' front
// end, its middle from the centre line (minus: road side), and for a tab its
// hole. On the tape with the exact millimetres beside. The mains themselves and
// the mitred tongue are on the cut list.
// What stands is where it is and is not listed.
std::string layout_csv(const Bed& bed, const Heading& heading);

// Every hole of made members, and every drilled hole of made plates. Numbers and
// letters are those of the drill drawings. A plate's holes are measured from the
// lower left corner of its cut file.
std::string drill_list_csv(const Bed& bed, const Heading& heading);

// lists/stacks.csv: what each bolt goes through, a row for each hole in order from its
// head: the hole's place on the bolt's axis in the coordinates of bed.step, its width, a
// slot's overall length and direction.
std::string stacks_csv(const Bed& bed, const Heading& heading);
// The bolts of a frame that stands, in the same columns.
std::string standing_stacks_csv(const Bed& bed, const Heading& heading);

// lists/welds.csv: a row for each straight line of each weld, with both parts, the
// fillet's leg and both ends of its root: on the tape from the mains' front end, and in
// millimetres in the coordinates of bed.step. A bought joint has a row without ends.
std::string welds_csv(const Bed& bed, const Heading& heading);
// The welds of a frame that stands, in the same columns: looked at, never laid again.
std::string standing_welds_csv(const Bed& bed, const Heading& heading);

// The pack list. Bolts by size and length, how many each use takes, then nuts and
// washers; how many spares are packed beyond them, how many the maker packs,
// how many are left to buy for both, and how many of the box are left over. Last the
// shims, as many of each thickness as the tabs may want.
std::string hardware_csv(const Bed& bed, const std::vector<KitBox>& box, const Heading& heading,
                         const Spares& spares, const std::vector<Shim>& shims = {});

// Pieces packed beyond `needed`: the percentage, rounded up, and the least number
// at least; none of what is not needed.
int spares_for(int needed, const Spares& spares);

// Which length each hole takes: now, of those in stock that suit it, with the fewest
// different lengths, and with the kit's own. Bolts that stand are not listed.
std::string bolts_csv(const Bed& bed, const std::vector<KindsOfSize>& kinds);

}  // namespace bedwright
