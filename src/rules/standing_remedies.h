// Remedies for a bed on a frame that stands: only what can be done to standing steel.
#pragma once

#include <vector>

#include "params/job.h"
#include "rules/finding.h"

namespace bedwright {

// Whether the change is one that a shop can make with the frame as it stands: to the order, the
// track or the log; of the frame only tabs filed, cut off or added and jacks moved or added.
// `code`: of the rule that asks for it; STANDING alone may say where jacks and axle are.
bool can_be_done(const FrameFile& frame, const std::string& code, const Change& change);

// Takes out of every finding what cannot be done where the job's frame stands, and words the
// remedy anew where something was taken out.
void keep_to_what_stands(const Job& job, std::vector<Finding>& findings);

}  // namespace bedwright
