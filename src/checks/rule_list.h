// The functions behind the rule table, a file each family.
#pragma once

#include <vector>

#include "checks/finding.h"

namespace bedwright {

struct Scene;

void check_hole_fit(const Scene& scene, std::vector<Finding>& findings);
void check_hole_no_tab(const Scene& scene, std::vector<Finding>& findings);
void check_bolt_short(const Scene& scene, std::vector<Finding>& findings);
void check_bolt_long(const Scene& scene, std::vector<Finding>& findings);
void check_bolt_thread(const Scene& scene, std::vector<Finding>& findings);
void check_washer_flat(const Scene& scene, std::vector<Finding>& findings);
void check_washer_cover(const Scene& scene, std::vector<Finding>& findings);
void check_weld_contact(const Scene& scene, std::vector<Finding>& findings);
void check_tip(const Scene& scene, std::vector<Finding>& findings);
void check_clash(const Scene& scene, std::vector<Finding>& findings);
void check_clash_moving(const Scene& scene, std::vector<Finding>& findings);
void check_edge(const Scene& scene, std::vector<Finding>& findings);
void check_spacing(const Scene& scene, std::vector<Finding>& findings);
void check_rail_remainder(const Scene& scene, std::vector<Finding>& findings);
void check_joint_support(const Scene& scene, std::vector<Finding>& findings);

}  // namespace bedwright
