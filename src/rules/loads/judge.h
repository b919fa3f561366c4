// What the load rules share: figures, and the changes they propose.
#pragma once

#include <functional>

#include "rules/loads/rules.h"

namespace bedwright {

struct LoadJudge {
  const Job& job;
  const Bed& bed;
  const LoadsResult& loads;
  const Figures& figures;
  std::vector<Finding>& findings;
  bool remedies = true;  // else none that must be tried

  Finding& add(const char* code, Severity severity, Subject subject, Vec3 at) const;
  // Measured, limit, margin and unit ("kg", "MPa", "mm"), as the order prints them.
  void fill(Finding& f, double measured, double most, const std::string& unit) const;
  // Measured against a most; fills margin, and adds the finding only when it fails.
  // Nothing when it holds.
  // "21.6 ksi (149 MPa) is allowed", and by how much a stress passes it that prints alike.
  std::string allowed(Mpa measured, Mpa most) const;
  Finding* over(const char* code, Subject subject, Vec3 at, double measured, double most,
                const char* unit) const;
};

// The same for the same way of travelling, whatever others the order has: "bed, head off".
Subject in_travel(Kind what, const TravelCase& travel);

void judge_tow(const LoadJudge& judge);
void judge_roll(const LoadJudge& judge);     // part of it
void judge_details(const LoadJudge& judge);  // of road and work
void judge_balance(const LoadJudge& judge);  // parts of it
void judge_asked(const LoadJudge& judge);
void judge_stand(const LoadJudge& judge);
void judge_jack_welds(const LoadJudge& judge);  // a part of it

// Channels of the catalogue that are strong and stiff enough in place of `now`, those of
// its depth first, the lightest of them before the others, at most three.
std::vector<const Section*> stronger_channels(const Job& job, const Section& now, double modulus,
                                              Mm4 inertia);

// Whether a bed at work with another log or other jacks is as it should be.
using StandsWell = std::function<bool(const Stand&)>;

// Cross members so close that a main of this section and yield bears `strength` before it
// buckles sideways; nothing where it is as good as can be.
std::optional<Change> closer_cross_members(const LoadJudge& judge, Mpa strength);

// The least length of tab that road and work both leave standing; nothing within twice the
// stress's ratio. A longer tab is stiffer too, so that less of a wheel's arm goes to the bunks.
std::optional<Mm> longer_tabs(const LoadJudge& judge);

// "[17 in, 120 in, 223 in]" for jacks with one more pair, so placed that `well`
// holds; nearest to the middle of the longest span first, at most four.
std::vector<Change> further_jacks(const LoadJudge& judge, const StandsWell& well);

// Two pairs more, as far from the ends as `well` allows, beside those listed, or else in
// their place. At most two changes.
std::vector<Change> jacks_near_ends(const LoadJudge& judge, const StandsWell& well);

// The first of each kind told: "jacks at [17 in, 120 in, 223 in]; or mains of C7x9.8; or a log of 18 in".
std::string told(const std::vector<Change>& changes);

// The first of each kind, then the second of each: the few that are shown are of every kind.
std::vector<Change> interleaved(const std::vector<std::vector<Change>>& kinds);

// The largest diameter, in whole inches or 25 mm, of a log under which `well` holds.
std::optional<Change> smaller_log(const LoadJudge& judge, const StandsWell& well);

}  // namespace bedwright
