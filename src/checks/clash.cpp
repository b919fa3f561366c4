// CLASH and CLASH-MOVING: no two things in one place, and room around what moves.
#include "checks/clash.h"

#include <fmt/format.h>

#include <map>

#include "checks/rule_list.h"

namespace bedwright {
namespace {

// Items that are one thing to the reader: states of one group, hardware of one bolt.
using Thing = std::pair<int, int>;
Thing thing_of(const Item& item, int index) {
  if (item.group > 0) return {0, item.group};
  return item.bolt >= 0 ? Thing{1, item.bolt} : Thing{2, index};
}

// A pose with a name says more than "between": it goes first where both meet.
bool is_worse(const Bed& bed, const Meeting& p, const Meeting& q) {
  const auto rank = [](Standing s) { return s == Standing::overlap ? 2 : s == Standing::undecided ? 1 : 0; };
  if (p.standing != q.standing) return rank(p.standing) > rank(q.standing);
  const auto is_between = [&](const Meeting& m) { return bed.items[m.a].between || bed.items[m.b].between; };
  if (is_between(p) != is_between(q)) return is_between(q);
  return p.standing == Standing::near ? p.gap < q.gap : p.depth > q.depth;
}

struct Pair {
  Meeting worst;
  int others = 0;
};

// One entry for each two things, in order of their first meeting.
std::vector<Pair> by_thing(const Bed& bed, const std::vector<Meeting>& all) {
  std::vector<Pair> pairs;
  std::map<std::pair<Thing, Thing>, std::size_t> seen;
  for (const Meeting& m : all) {
    const Thing a = thing_of(bed.items[m.a], m.a), b = thing_of(bed.items[m.b], m.b);
    const auto [at, added] = seen.try_emplace(std::minmax(a, b), pairs.size());
    if (added) {
      pairs.push_back({m, 0});
      continue;
    }
    Pair& pair = pairs[at->second];
    // All places between are not one place more.
    if (!bed.items[m.a].between && !bed.items[m.b].between) ++pair.others;
    if (is_worse(bed, m, pair.worst)) pair.worst = m;
  }
  return pairs;
}

// How readily a shop moves a thing: what is only clamped on, then what it makes
// or buys for the frame, then the rest of the kit. Bolts, rails, bunks, the
// head and what the rails' holes want under them are where the kit puts them: 0.
int readiness(const Bed& bed, int item) {
  const std::string& name = bed.items[item].name;
  if (bed.items[item].bolt >= 0) return 0;
  if (name.starts_with("tab ") || name.starts_with("pad ")) return 0;  // under the rails' holes
  if (name.starts_with("clamp")) return 4;
  if (name.starts_with("log stop")) return 3;
  if (bed.part_of(item).origin == Origin::kit) return 0;
  return bed.items[item].moving ? 2 : 1;
}

// A bolt's washer or nut is the bolt, to a person.
const std::string& spoken_name(const Bed& bed, int item) {
  const int bolt = bed.items[item].bolt;
  return bolt >= 0 ? bed.bolts[bolt].name : bed.items[item].name;
}

std::string way(Vec3 shift) {
  if (shift.x != 0) return shift.x > 0 ? "rearward" : "forward";
  if (shift.y != 0) return shift.y > 0 ? "toward the right side" : "toward the left side";
  return shift.z > 0 ? "up" : "down";
}

// What a shop moves, it moves along the bed.
std::string remedy(const Scene& scene, const Meeting& m, Mm clearance) {
  const int a = readiness(scene.bed, m.a), b = readiness(scene.bed, m.b);
  const int mover = b > a ? m.b : m.a, other = b > a ? m.a : m.b;
  const bool fixed = std::max(a, b) == 0;
  const Vec3 shift = least_shift(scene, mover, other, clearance, !fixed);
  const Figures& say = scene.figures;
  const std::string far = say.say(say.round_up(norm(shift)));
  if (fixed)
    return fmt::format("{} and {} must come {} further apart", spoken_name(scene.bed, m.a),
                       spoken_name(scene.bed, m.b), far);
  return fmt::format("move {} {} {}", spoken_name(scene.bed, mover), far, way(shift));
}

std::string message(const Scene& scene, const Pair& pair, Mm clearance) {
  const Meeting& m = pair.worst;
  const std::string& a = spoken_name(scene.bed, m.a);
  const std::string& b = spoken_name(scene.bed, m.b);
  const Figures& say = scene.figures;
  std::string text;
  switch (m.standing) {
    case Standing::overlap:
      text = m.common_volume > 0 ? fmt::format("{} and {} share {:.0f} mm3, up to {} deep", a, b,
                                               m.common_volume, say.say(m.depth))
                                 : fmt::format("{} and {} overlap by {}", a, b, say.say(m.depth));
      break;
    case Standing::undecided:
      text = fmt::format("whether {} and {} overlap is not decided: the shapes that cover them meet {} deep, and {}", a, b, say.say(m.depth),
                         scene.input.judge ? "one of them cannot be made as it is" : "no exact test was made");
      break;
    case Standing::near:
      text = fmt::format("{} {} within {} of {}; {} is asked", a, m.gap_is_bound ? "may come" : "comes",
                         say.say(m.gap), b, say.say(clearance));
      break;
    case Standing::clear:
      break;
  }
  if (pair.others > 0) text += fmt::format(" (the worst of {} such places)", pair.others + 1);
  return text;
}

void report(const Scene& scene, const char* code, bool moving, std::vector<Finding>& findings) {
  const Mm clearance = moving ? scene.limits.moving_clearance : 0;
  for (const Pair& pair : by_thing(scene.bed, meetings(scene, moving))) {
    const Meeting& m = pair.worst;
    // What was to be decided and could not be holds the bed back.
    const bool is_stop = m.standing == Standing::overlap || (m.standing == Standing::undecided && scene.input.judge);
    const Severity severity = is_stop ? Severity::stop : Severity::warn;
    Finding f = finding_of(code, severity, spoken_name(scene.bed, m.a), m.place);
    f.subjects.push_back(spoken_name(scene.bed, m.b));
    f.measured = m.standing == Standing::near ? m.gap : -m.depth;
    f.limit = clearance;
    f.margin = f.measured - f.limit;
    f.message = message(scene, pair, clearance);
    f.remedy = (m.standing == Standing::undecided ? "if they do, " : "") + remedy(scene, m, clearance);
    findings.push_back(std::move(f));
  }
}

}  // namespace

void check_clash(const Scene& scene, std::vector<Finding>& findings) {
  report(scene, "CLASH", false, findings);
}

void check_clash_moving(const Scene& scene, std::vector<Finding>& findings) {
  report(scene, "CLASH-MOVING", true, findings);
}

}  // namespace bedwright
