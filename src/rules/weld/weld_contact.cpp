// WELD-CONTACT: welded parts that do not meet cannot be welded.
#include <fmt/format.h>

#include "rules/rule_list.h"
#include "rules/scene.h"
#include "rules/weld/weld_steel.h"

namespace bedwright {
namespace {

// The widest gap a fillet weld is laid over without being made larger for it:
// 1/16 in (AWS D1.1, from memory).
constexpr Mm widest_gap = inch / 16;
// Parts that meet by less than this in both directions of the contact have an
// edge in common, not a face: no fillet lies on it. Thinner than any web here.
constexpr Mm least_patch = 3;

Mm common(Mm low_a, Mm high_a, Mm low_b, Mm high_b) {
  return std::min(high_a, high_b) - std::max(low_a, low_b);
}

// The second smallest of the three overlaps of the boxes: the narrow way of the
// patch, the smallest being across the contact itself.
Mm patch(const Box3& a, const Box3& b) {
  Mm over[] = {common(a.low.x, a.high.x, b.low.x, b.high.x), common(a.low.y, a.high.y, b.low.y, b.high.y),
               common(a.low.z, a.high.z, b.low.z, b.high.z)};
  std::sort(std::begin(over), std::end(over));
  return over[1];
}

struct Contact {
  Mm gap = std::numeric_limits<Mm>::infinity();
  Mm patch = -std::numeric_limits<Mm>::infinity();  // widest where they meet
};

// Over the pairs of pieces that may be within the gap, which is nearly always all
// that is asked; over all of them when none is.
Contact contact_of(const Scene& scene, int a, int b) {
  Contact best;
  for (const bool near_only : {true, false}) {
    for (const Convex& p : scene.pieces[a])
      for (const Convex& q : scene.pieces[b]) {
        if (near_only && !p.bounds.overlaps(q.bounds, widest_gap)) continue;
        const Mm apart = separation(p, q);
        best.gap = std::min(best.gap, apart);
        if (apart <= widest_gap) best.patch = std::max(best.patch, patch(p.bounds, q.bounds));
      }
    if (best.gap <= widest_gap) break;
  }
  return best;
}

}  // namespace

void check_weld_contact(const Scene& scene, std::vector<Finding>& findings) {
  for (const Weld& weld : scene.bed.welds) {
    // WELD-STEEL says it of all welds beyond the end of one part at once.
    if (const auto lack = steel_lack(scene, weld); lack && ends_too_soon(*lack)) continue;
    const Contact c = contact_of(scene, weld.a, weld.b);
    const bool apart = c.gap > widest_gap;
    const bool no_line = weld.leg > 0 && weld.length <= same_place;
    if (!apart && c.patch >= least_patch && !no_line) continue;
    const Figures& say = scene.figures;
    Finding f = finding_of("WELD-CONTACT", Severity::stop, scene.bed.items[weld.a],
                           scene.bed.items[weld.a].placement.origin);
    f.subjects.push_back(scene.bed.items[weld.b]);
    const std::string a = f.subjects[0].name, b = f.subjects[1].name;
    f.measured = apart ? c.gap : c.patch;
    f.limit = apart ? widest_gap : least_patch;
    f.margin = apart ? f.limit - f.measured : f.measured - f.limit;
    if (!apart && c.patch >= least_patch) {
      f.measured = weld.length;
      f.limit = 4 * weld.leg;  // AISC 360 J2.2b
      f.margin = f.measured - f.limit;
      f.message = fmt::format(
          "{} is to be welded to {} but has no edge there as long as four legs of the fillet", a, b);
      f.remedy = fmt::format("lap them further: {} at least", say.say(f.limit));
      findings.push_back(std::move(f));
      continue;
    }
    f.message = apart ? fmt::format("{} is to be welded to {} but stands {} from it", a, b, say.say(c.gap))
                      : fmt::format("{} is to be welded to {} but meets it over {} only", a, b,
                                    say.say(std::max(c.patch, 0.0)));
    f.remedy =
        fmt::format("bring them together, or overlap them by {} more", say.say(say.round_up(-f.margin)));
    findings.push_back(std::move(f));
  }
}

}  // namespace bedwright
