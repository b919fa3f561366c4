// CLASH and CLASH-MOVING: no two things in one place, and room around what moves.
#include "rules/clash/clash.h"

#include <fmt/format.h>

#include <map>

#include "rules/fit/standing_work.h"
#include "rules/rule_list.h"

namespace bedwright {
namespace {

// One of the two is everywhere between its ends.
bool is_between(const Bed& bed, const Meeting& m) {
  return bed.items[m.a].id.pose == Pose::between || bed.items[m.b].id.pose == Pose::between;
}

// A pose with a name says more than "between": it goes first where both meet.
bool is_worse(const Bed& bed, const Meeting& p, const Meeting& q) {
  const auto rank = [](Standing s) { return s == Standing::overlap ? 2 : s == Standing::undecided ? 1 : 0; };
  if (p.standing != q.standing) return rank(p.standing) > rank(q.standing);
  if (is_between(bed, p) != is_between(bed, q)) return is_between(bed, q);
  return p.standing == Standing::near ? p.gap < q.gap : p.depth > q.depth;
}

}  // namespace

std::vector<ThingPair> by_thing(const Bed& bed, const std::vector<Meeting>& all) {
  std::vector<ThingPair> pairs;
  std::map<std::pair<Identity, Identity>, std::size_t> seen;
  for (const Meeting& m : all) {
    const Identity a = whole_thing(bed.items[m.a].id), b = whole_thing(bed.items[m.b].id);
    const auto [at, added] = seen.try_emplace(std::minmax(a, b), pairs.size());
    if (added) {
      pairs.push_back({m, 0});
      continue;
    }
    ThingPair& pair = pairs[at->second];
    // All places between are not one place more.
    if (!is_between(bed, m)) ++pair.others;
    if (is_worse(bed, m, pair.worst)) pair.worst = m;
  }
  return pairs;
}

// How readily a shop moves a thing: what is only clamped on, then what it makes
// or buys for the frame, then the rest of the kit. Bolts, rails, bunks, the
// head and what the rails' holes want under them are where the kit puts them, and what
// stands stays where it is: 0.
int readiness(const Bed& bed, const Item& item) {
  if (bed.parts[static_cast<std::size_t>(item.part)].origin == Origin::standing) return 0;
  switch (item.id.kind) {
    case Kind::clamp:
      return 4;
    case Kind::log_stop:
      return 3;
    case Kind::main:
    case Kind::cross_member:
    case Kind::front_member:
    case Kind::rear_member:
    case Kind::tongue:
    case Kind::tongue_plate:
    case Kind::corner_gusset:
    case Kind::jack_plate:
    case Kind::axle:
    case Kind::wheel:
    case Kind::jack:
    case Kind::coupler:
    case Kind::tongue_jack:
      return item.moving ? 2 : 1;
    case Kind::tab:
    case Kind::tab_pad:
    case Kind::rail:
    case Kind::bunk:
    case Kind::joint_gusset:
    case Kind::track_stop:
    case Kind::head:
    case Kind::track_bolt:
    case Kind::bunk_bolt:
    case Kind::gusset_bolt:
    case Kind::stop_bolt:
    case Kind::jack_bolt:
    case Kind::tongue_jack_bolt:
      return 0;
    case Kind::none:
    case Kind::end_member:
    case Kind::jack_tube:
    case Kind::drain:
    case Kind::hardware:
    case Kind::joint:
    case Kind::joints:
    case Kind::track:
    case Kind::log:
    case Kind::jacks:
    case Kind::main_web:
    case Kind::tab_weld:
    case Kind::bed:
    case Kind::tongue_load:
    case Kind::overall_width:
    case Kind::overall_size:
    case Kind::law:
    case Kind::bolt_size:
      break;
  }
  throw std::logic_error(name(item) + " is placed on no bed");
}

Subject spoken_of(const Bed& bed, int item) {
  const int bolt = bed.items[item].bolt;
  return bolt >= 0 ? Subject(bed.bolts[bolt]) : Subject(bed.items[item]);
}

namespace {

// What a shop moves, it moves along the bed.
void add_remedy(const Scene& scene, const Meeting& m, Mm clearance, Finding& f) {
  const int a = readiness(scene.bed, scene.bed.items[m.a]), b = readiness(scene.bed, scene.bed.items[m.b]);
  const int mover = b > a ? m.b : m.a, other = b > a ? m.a : m.b;
  const bool fixed = std::max(a, b) == 0;
  const Vec3 shift = least_shift(scene, mover, other, clearance, !fixed);
  const Figures& say = scene.figures;
  const std::string far = say.say(say.round_up(norm(shift)));
  if (m.standing == Standing::undecided) f.remedy = "if they do, ";
  for (const int item : {m.a, m.b})
    if (fixed && scene.bed.part_of(item).origin == Origin::standing) {
      f.remedy += fmt::format("{} stands and is {} in the way: ", spoken_of(scene.bed, item).name, far);
      f.remedy += "another track on this frame, or another frame";
      return;
    }
  if (fixed) {
    add_name(f, f.subjects[0]);
    f.remedy += " and ";
    add_name(f, f.subjects[1]);
    f.remedy += fmt::format(" must come {} further apart", far);
    return;
  }
  f.remedy += "move ";
  add_name(f, f.subjects[b > a ? 1 : 0]);
  f.remedy += fmt::format(" {} {}", far, way_of(shift));
}

std::string message(const Scene& scene, const ThingPair& pair, const std::string& a, const std::string& b,
                    Mm clearance) {
  const Meeting& m = pair.worst;
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
          "whether {} and {} overlap is not decided: the shapes that cover them meet {} deep, and {}", a, b,
          say.say(m.depth),
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
  const std::vector<ThingPair> pairs = by_thing(scene.bed, meetings(scene, moving));
  TabsInTheWay tabs(scene);
  for (const ThingPair& pair : pairs) tabs.add_both(pair.worst.a, pair.worst.b);
  for (const ThingPair& pair : pairs) {
    const Meeting& m = pair.worst;
    // What was to be decided and could not be holds the bed back.
    const bool is_stop =
        m.standing == Standing::overlap || (m.standing == Standing::undecided && scene.input.judge);
    const Severity severity = is_stop ? Severity::stop : Severity::warn;
    Finding f = finding_of(code, severity, spoken_of(scene.bed, m.a), m.place);
    f.subjects.push_back(spoken_of(scene.bed, m.b));
    f.measured = m.standing == Standing::near ? m.gap : -m.depth;
    f.limit = clearance;
    f.margin = f.measured - f.limit;
    f.message = message(scene, pair, f.subjects[0].name, f.subjects[1].name, clearance);
    if (const auto tab = tabs.add_both(m.a, m.b))
      tabs.suggest(*tab, f);
    else
      add_remedy(scene, m, clearance, f);
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
