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

bool is_worse(const Meeting& p, const Meeting& q) {
  const auto rank = [](Standing s) { return s == Standing::overlap ? 2 : s == Standing::undecided ? 1 : 0; };
  if (p.standing != q.standing) return rank(p.standing) > rank(q.standing);
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
    ++pair.others;
    if (is_worse(m, pair.worst)) pair.worst = m;
  }
  return pairs;
}

// Which of the two a shop would move: what moves anyway, a clamp before the head;
// else the smaller.
bool move_second(const Scene& scene, const Meeting& m) {
  const auto rank = [&](int i) {
    const Item& item = scene.bed.items[i];
    return (item.moving ? 1 : 0) + (item.name.starts_with("clamp") ? 1 : 0);
  };
  if (rank(m.a) != rank(m.b)) return rank(m.b) > rank(m.a);
  const auto size = [&](int i) {
    const Vec3 d = scene.boxes[i].high - scene.boxes[i].low;
    return d.x * d.y * d.z;
  };
  return size(m.b) < size(m.a);
}

std::string way(Vec3 shift) {
  if (shift.x != 0) return shift.x > 0 ? "rearward" : "forward";
  if (shift.y != 0) return shift.y > 0 ? "toward the kerb side" : "toward the road side";
  return shift.z > 0 ? "up" : "down";
}

std::string remedy(const Scene& scene, const Meeting& m, Mm clearance) {
  const bool second = move_second(scene, m);
  const int mover = second ? m.b : m.a, other = second ? m.a : m.b;
  const std::string& name = scene.bed.items[mover].name;
  const Figures& say = scene.figures;
  const Vec3 shift = least_shift(scene, mover, other, clearance, false);
  std::string text = fmt::format("move {} {} {}", name, say.say(say.round_up(norm(shift))), way(shift));
  if (shift.x != 0 || !name.starts_with("clamp")) return text;
  const Vec3 along = least_shift(scene, mover, other, clearance, true);
  return text + fmt::format("; or set it on a bunk at least {} {}", say.say(norm(along)), way(along));
}

std::string message(const Scene& scene, const Pair& pair, Mm clearance) {
  const Meeting& m = pair.worst;
  const std::string& a = scene.bed.items[m.a].name;
  const std::string& b = scene.bed.items[m.b].name;
  const Figures& say = scene.figures;
  std::string text;
  switch (m.standing) {
    case Standing::overlap:
      text = m.common_volume > 0 ? fmt::format("{} and {} share {:.0f} mm3, up to {} deep", a, b,
                                               m.common_volume, say.say(m.depth))
                                 : fmt::format("{} and {} overlap by {}", a, b, say.say(m.depth));
      break;
    case Standing::undecided:
      text = fmt::format(
          "whether {} and {} overlap is not decided: the shapes that cover them meet {} deep, and no "
          "exact test was made",
          a, b, say.say(m.depth));
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
    const Severity severity = m.standing == Standing::overlap ? Severity::stop : Severity::warn;
    Finding f = finding_of(code, severity, scene.bed.items[m.a].name, m.place);
    f.subjects.push_back(scene.bed.items[m.b].name);
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
