// The functions behind the rule table. A rule lies in the folder of its family.
#pragma once

#include <vector>

#include "rules/finding.h"

namespace bedwright {

struct Scene;

void check_hole_fit(const Scene& scene, std::vector<Finding>& findings);
void check_hole_paint(const Scene& scene, std::vector<Finding>& findings);
void check_hole_no_tab(const Scene& scene, std::vector<Finding>& findings);
void check_tab_found(const Scene& scene, std::vector<Finding>& findings);
void check_standing(const Scene& scene, std::vector<Finding>& findings);
void check_tab_line(const Scene& scene, std::vector<Finding>& findings);
void check_cross_spacing(const Scene& scene, std::vector<Finding>& findings);
void check_bolt_short(const Scene& scene, std::vector<Finding>& findings);
void check_bolt_long(const Scene& scene, std::vector<Finding>& findings);
void check_bolt_thread(const Scene& scene, std::vector<Finding>& findings);
void check_washer_flat(const Scene& scene, std::vector<Finding>& findings);
void check_washer_cover(const Scene& scene, std::vector<Finding>& findings);
void check_weld_contact(const Scene& scene, std::vector<Finding>& findings);
void check_weld_steel(const Scene& scene, std::vector<Finding>& findings);
void check_tip(const Scene& scene, std::vector<Finding>& findings);
void check_clash(const Scene& scene, std::vector<Finding>& findings);
void check_clash_moving(const Scene& scene, std::vector<Finding>& findings);
void check_clearance(const Scene& scene, std::vector<Finding>& findings);
void check_hole_steel(const Scene& scene, std::vector<Finding>& findings);
void check_edge(const Scene& scene, std::vector<Finding>& findings);
void check_spacing(const Scene& scene, std::vector<Finding>& findings);
void check_rail_remainder(const Scene& scene, std::vector<Finding>& findings);
void check_joint_support(const Scene& scene, std::vector<Finding>& findings);
void check_bolt_kinds(const Scene& scene, std::vector<Finding>& findings);
void check_datum(const Scene& scene, std::vector<Finding>& findings);
void check_joint_clamp(const Scene& scene, std::vector<Finding>& findings);
void check_joint_gap(const Scene& scene, std::vector<Finding>& findings);
void check_joint_step(const Scene& scene, std::vector<Finding>& findings);
void check_gusset_bolts(const Scene& scene, std::vector<Finding>& findings);
void check_track_length(const Scene& scene, std::vector<Finding>& findings);
void check_cut_hole(const Scene& scene, std::vector<Finding>& findings);
void check_centre_mark(const Scene& scene, std::vector<Finding>& findings);
void check_cut_web(const Scene& scene, std::vector<Finding>& findings);
void check_stock_plate(const Scene& scene, std::vector<Finding>& findings);
void check_letters(const Scene& scene, std::vector<Finding>& findings);
void check_weld_least(const Scene& scene, std::vector<Finding>& findings);
void check_weld_most(const Scene& scene, std::vector<Finding>& findings);
void check_weld_load(const Scene& scene, std::vector<Finding>& findings);
void check_torch(const Scene& scene, std::vector<Finding>& findings);
void check_reach(const Scene& scene, std::vector<Finding>& findings);
void check_head_on_rails(const Scene& scene, std::vector<Finding>& findings);
void check_track_stop(const Scene& scene, std::vector<Finding>& findings);
void check_head_lock(const Scene& scene, std::vector<Finding>& findings);
void check_jack_reach(const Scene& scene, std::vector<Finding>& findings);
void check_departure(const Scene& scene, std::vector<Finding>& findings);
void check_crest(const Scene& scene, std::vector<Finding>& findings);
void check_turn(const Scene& scene, std::vector<Finding>& findings);
void check_ball_height(const Scene& scene, std::vector<Finding>& findings);
void check_road_clear(const Scene& scene, std::vector<Finding>& findings);
void check_coupler_fit(const Scene& scene, std::vector<Finding>& findings);
void check_spring_seat(const Scene& scene, std::vector<Finding>& findings);
void check_tongue_end(const Scene& scene, std::vector<Finding>& findings);
void check_rail_shim(const Scene& scene, std::vector<Finding>& findings);
void check_tip_height(const Scene& scene, std::vector<Finding>& findings);
void check_bunk_on_rail(const Scene& scene, std::vector<Finding>& findings);
void check_on_bunk(const Scene& scene, std::vector<Finding>& findings);

}  // namespace bedwright
