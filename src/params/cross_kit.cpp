// Checks between the keys of a kit.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "params/cross_check.h"
#include "units/print.h"
#include "yaml/key_path.h"

namespace bedwright {

void CrossCheck::check_rail_and_bunk() {
  // An angle whose legs are shorter than its thickness and fillet has no profile.
  const auto angle = [&](const std::string& key, const auto& s) {
    if (!sound(kit_, {key + ".flat_leg", key + ".standing_leg", key + ".thickness", key + ".root_radius"}))
      return;
    for (const auto& [leg_key, leg] :
         {std::pair{key + ".flat_leg", s.flat_leg}, {key + ".standing_leg", s.standing_leg}}) {
      if (leg > s.thickness + s.root_radius) continue;
      problem(kit_, leg_key,
              fmt::format("{} leaves nothing beside the thickness and the fillet, {} together",
                          both_units(Dimension::length, leg),
                          both_units(Dimension::length, s.thickness + s.root_radius)),
              "check the leg, the thickness and the root radius against the maker's sheet");
    }
  };
  const Kit& kit = job_.kit;
  angle("rail", kit.rail);
  angle("bunk", kit.bunk);
  check_hole(kit_, "bunk.hole", kit.bunk.hole);
  if (given(kit_, "bunk.outer_set") && given(kit_, "bunk.inner_set"))
    check_order(kit_, "bunk.outer_set", kit.bunk.outer_set, "bunk.inner_set", kit.bunk.inner_set, true);
  // A hole line beyond the flat leg, or in the standing one, is no hole in the rail.
  for (const auto& [key, line] : {std::pair{"mounting.line", kit.mounting.line},
                                  {"bunk.line", kit.bunk.line},
                                  {"track_stop.line", kit.track_stop.line}}) {
    check_order(kit_, key, line, "rail.flat_leg", kit.rail.flat_leg, true);
    if (sound(kit_, {key, "rail.thickness"}) && line <= kit.rail.thickness) {
      problem(kit_, key, fmt::format("{} lies within the standing leg", both_units(Dimension::length, line)),
              fmt::format("measure from the heel; the leg is {} thick",
                          both_units(Dimension::length, kit.rail.thickness)));
    }
  }
}

void CrossCheck::check_mounting() {
  const KitMounting& mounting = job_.kit.mounting;
  check_hole(kit_, "mounting.hole", mounting.hole);
  if (sound(kit_, {"mounting.slot_along", "mounting.hole"}) && mounting.slot_along == SlotAlong::none &&
      mounting.hole.slot) {
    problem(kit_, "mounting.slot_along", "is none, yet the hole has a slot",
            "say which way the slot runs, length or width, or leave mounting.hole.slot out");
  }
  if (!sound(kit_, {"mounting.positions", "mounting.end_offset", "mounting.max_pitch"})) return;
  const bool listed = given(kit_, "mounting.positions");
  const bool offset = given(kit_, "mounting.end_offset"), pitch = given(kit_, "mounting.max_pitch");
  if (listed && (offset || pitch)) {
    problem(kit_, offset ? "mounting.end_offset" : "mounting.max_pitch", "stands beside mounting.positions",
            "keep either the list of positions or end_offset with max_pitch");
  } else if (listed && mounting.positions.empty()) {
    problem(kit_, "mounting.positions", "lists no hole", "list the holes, or give end_offset and max_pitch");
  } else if (!listed && !(offset && pitch)) {
    problem(kit_, "mounting",
            offset  ? "has end_offset but no max_pitch"
            : pitch ? "has max_pitch but no end_offset"
                    : "does not say where its holes are",
            "give end_offset and max_pitch, or list the positions");
  }
}

// Where a section's bunks are: outer_set and inner_set with the order's pitch, or a list.
void CrossCheck::check_bunk_holes() {
  if (!sound(kit_, {"bunk"}) || !sound(order_, {"track.bunk_pitch"})) return;
  const bool listed = given(kit_, "bunk.positions"), pitch = given(order_, "track.bunk_pitch");
  const bool outer = given(kit_, "bunk.outer_set"), inner = given(kit_, "bunk.inner_set");
  if (listed && job_.kit.bunk.positions.empty())
    return problem(kit_, "bunk.positions", "lists no hole",
                   "list the bunk holes, or give outer_set and inner_set");
  if (listed && (outer || inner))
    problem(kit_, outer ? "bunk.outer_set" : "bunk.inner_set", "stands beside bunk.positions",
            "keep either the list of positions or outer_set with inner_set");
  if (listed && pitch && !outer && !inner)
    problem(order_, "track.bunk_pitch", "stands beside the kit's bunk.positions, which say where bunks are",
            "leave it out");
  if (listed) {
    if (given(order_, "track.end_bunks"))
      problem(order_, "track.end_bunks",
              "chooses between two sets of holes, and the kit lists its bunk holes", "leave it out");
    return check_ascending(kit_, "bunk.positions", job_.kit.bunk.positions);
  }
  if (!pitch)
    problem(order_, "track", "has no bunk_pitch",
            "add bunk_pitch: 20 in (from bunk to bunk), or list the kit's bunk holes as bunk.positions");
  if (!outer || !inner)
    problem(kit_, "bunk", fmt::format("has no {}", outer ? "inner_set" : "outer_set"),
            "give outer_set and inner_set, or list the positions");
}

// A rail that serves both sides lies turned on the kerb side: its bunk holes must be the same
// from either end, or no bunk lies square.
void CrossCheck::check_turned() {
  const Kit& kit = job_.kit;
  if (!kit.rail.turned || !sound(kit_, {"bunk", "rail.turned"}) ||
      !sound(order_, {"track.bunk_pitch", "track.rail_lengths"}))
    return;
  std::vector<Mm> lengths = job_.order.track.rail_lengths;
  if (lengths.empty()) lengths.push_back(job_.order.track.rail_length);
  for (const Mm length : lengths) {
    const std::vector<Mm>& holes = kit.bunk.positions;
    const auto mirrored = [&](Mm at) {
      return std::any_of(holes.begin(), holes.end(),
                         [&](Mm other) { return std::abs(at + other - length) < 2 * same_place; });
    };
    const auto odd = std::find_if_not(holes.begin(), holes.end(), mirrored);
    if (odd != holes.end())
      return problem(
          kit_, path_to("bunk.positions", static_cast<std::size_t>(odd - holes.begin()) + 1),
          fmt::format("{} has no hole as far from the other end of a rail {} long, and rails that "
                      "are turned end for end bring one side's holes to the other",
                      both_units(Dimension::length, *odd), both_units(Dimension::length, length)),
          fmt::format("list {} too, or leave rail.turned out", both_units(Dimension::length, length - *odd)));
    const Mm pitch = job_.order.track.bunk_pitch;
    if (holes.empty() && pitch > 0 &&
        std::abs(length / pitch - std::round(length / pitch)) * pitch > 2 * same_place)
      return problem(
          order_, "track.bunk_pitch",
          fmt::format("{} does not go into a rail of {} a whole number of times, and rails that are "
                      "turned end for end bring one side's holes to the other",
                      both_units(Dimension::length, pitch), both_units(Dimension::length, length)),
          "choose one that does, or leave rail.turned out");
  }
}

void CrossCheck::check_positions() {
  const Kit& kit = job_.kit;
  const std::vector<Mm>& lengths = job_.order.track.rail_lengths;
  // What fits the shortest section fits all.
  const Mm rail =
      lengths.empty() ? job_.order.track.rail_length : *std::min_element(lengths.begin(), lengths.end());
  check_ascending(kit_, "mounting.positions", kit.mounting.positions);
  if (!sound(order_, {"track.rail_length", "track.rail_lengths"})) return;
  const std::string rail_told = both_units(Dimension::length, rail);
  for (const auto& [list, places] :
       {std::pair("mounting.positions", &kit.mounting.positions), {"bunk.positions", &kit.bunk.positions}})
    for (std::size_t i = 0; i < places->size(); ++i) {
      const std::string key = path_to(list, i + 1);
      const Mm at = (*places)[i];
      if (!sound(kit_, {key}) || (at > 0 && at < rail)) continue;
      problem(kit_, key,
              fmt::format("{} is not within the rail, {} long", both_units(Dimension::length, at), rail_told),
              "measure from the section's front end, and check track.rail_length in the order");
    }
  check_turned();
  // Distances kept from both ends of a section must leave its middle.
  const auto from_both_ends = [&](const char* key, Mm distance) {
    if (!sound(kit_, {key}) || 2 * distance < rail) return;
    problem(kit_, key,
            fmt::format("{} from each end does not fit a rail {} long",
                        both_units(Dimension::length, distance), rail_told),
            "check it against track.rail_length in the order");
  };
  from_both_ends("mounting.end_offset", kit.mounting.end_offset);
  from_both_ends("bunk.inner_set", kit.bunk.inner_set);
  from_both_ends("track_stop.from_end", kit.track_stop.from_end);
  for (std::size_t i = 0; i < kit.gusset.bolts.size(); ++i) {
    from_both_ends(path_to("gusset.bolts", i + 1).c_str(), kit.gusset.bolts[i]);
  }
}

void CrossCheck::check_kit_fittings() {
  const Kit& kit = job_.kit;
  check_hole(kit_, "gusset.hole", kit.gusset.hole);
  check_hole(kit_, "track_stop.hole", kit.track_stop.hole);
  if (sound(kit_, {"gusset.bolts"}) && kit.gusset.bolts.empty()) {
    problem(kit_, "gusset.bolts", "lists no bolt", "list the bolts each side of the joint, from the joint");
  }
  check_ascending(kit_, "gusset.bolts", kit.gusset.bolts);
  for (std::size_t i = 0; i < kit.gusset.bolts.size(); ++i) {
    const std::string key = path_to("gusset.bolts", i + 1);
    if (!sound(kit_, {key, "gusset.length"}) || kit.gusset.bolts[i] < kit.gusset.length / 2) continue;
    problem(kit_, key,
            fmt::format("{} from the joint is beyond the gusset's end",
                        both_units(Dimension::length, kit.gusset.bolts[i])),
            fmt::format("keep it less than half of gusset.length, {}",
                        both_units(Dimension::length, kit.gusset.length / 2)));
  }
  check_order(kit_, "track_stop.face_thickness", kit.track_stop.face_thickness, "track_stop.foot_length",
              kit.track_stop.foot_length);
  check_order(kit_, "track_stop.foot_thickness", kit.track_stop.foot_thickness, "track_stop.height",
              kit.track_stop.height, true);
  check_order(kit_, "clamp.travel_from", kit.clamp.travel_from, "clamp.travel_to", kit.clamp.travel_to);
  for (const KitBox& box : kit.box) check_bolt(box.bolt);
}

void CrossCheck::check_head() {
  const auto& boxes = job_.kit.head.boxes;
  if (sound(kit_, {"head.boxes"}) && boxes.empty()) {
    problem(kit_, "head.boxes", "lists no box", "give at least one box that holds the head");
  }
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    const std::string key = path_to("head.boxes", i + 1);
    const HeadBox& box = boxes[i];
    check_order(kit_, key + ".x_from", box.x_from, key + ".x_to", box.x_to, true);
    check_order(kit_, key + ".y_from", box.y_from, key + ".y_to", box.y_to, true);
    check_order(kit_, key + ".z_from", box.z_from, key + ".z_to", box.z_to, true);
  }
}

}  // namespace bedwright
