// WELD-LEAST, WELD-MOST, WELD-LOAD: fillet welds by size and by load.
#include <fmt/format.h>

#include <set>

#include "rules/rule_list.h"
#include "rules/weld/weld.h"

namespace bedwright {
namespace {

// Welds alike in both parts and size are one to the reader: the first stands for all.
template <class Use>
void for_each_kind(const Bed& bed, Use use) {
  std::set<std::tuple<int, int, Mm>> seen;
  for (const Weld& w : bed.welds)
    if (w.leg > 0 && seen.insert({bed.items[w.a].part, bed.items[w.b].part, w.leg}).second) use(w);
}

// The key of the leg of one joint alone, and whether the frame's file gives it.
struct JointLeg {
  const char* key = "";
  bool given = true;
};

JointLeg joint_leg(const Scene& scene, const Weld& w) {
  const Job* job = scene.input.job;
  const FrameWelds none, &legs = job ? job->frame.welds : none;
  switch (scene.bed.items[w.a].id.kind) {
    case Kind::tab:
    case Kind::tab_pad:
      return {"frame.tabs.weld_leg"};
    case Kind::cross_member:
      return {"frame.welds.cross_member", legs.cross_member.has_value()};
    case Kind::front_member:
    case Kind::rear_member:
      return {"frame.welds.end_member", legs.end_member.has_value()};
    case Kind::tongue:
      return {"frame.welds.tongue", legs.tongue.has_value()};
    case Kind::tongue_plate:
      return {"frame.welds.tongue_plate", legs.tongue_plate.has_value()};
    case Kind::coupler:
      return {"frame.welds.coupler", legs.coupler.has_value()};
    case Kind::corner_gusset:
      return {"frame.welds.corner_gusset", legs.corner_gusset.has_value()};
    case Kind::jack_plate:
      return {"frame.welds.jack_plate", legs.jack_plate.has_value()};
    default:
      return {"frame.welds.leg"};
  }
}

// The key that sets this weld's leg now: its joint's own, or that of all members.
std::string leg_key(const Scene& scene, const Weld& w) {
  const JointLeg own = joint_leg(scene, w);
  return own.given ? own.key : "frame.welds.leg";
}

// One value sets the leg of many welds: the least that all of them need, and the largest that
// all of their edges stand.
struct LegRange {
  Mm least = 0, largest = std::numeric_limits<Mm>::infinity();
};

template <class IsOne>
LegRange leg_range(const Scene& scene, IsOne is_one) {
  LegRange range;
  for (const Weld& w : scene.bed.welds) {
    if (w.leg <= 0 || !is_one(w)) continue;
    if (w.thinner > 0) range.least = std::max(range.least, least_fillet(w.thinner));
    if (w.edge > 0) range.largest = std::min(range.largest, largest_fillet(w.edge));
  }
  return range;
}

// The leg for all welds that are set together with this one; where no one leg suits them all,
// for its joint alone.
struct LegChange {
  std::string key;
  LegRange range;
  bool suits() const { return range.least <= range.largest + same_place; }
};

LegChange leg_change(const Scene& scene, const Weld& w) {
  const std::string now = leg_key(scene, w), own = joint_leg(scene, w).key;
  const LegRange together = leg_range(scene, [&](const Weld& other) { return leg_key(scene, other) == now; });
  if (LegChange all{now, together}; all.suits() || now == own) return all;
  return {own, leg_range(scene, [&](const Weld& other) { return joint_leg(scene, other).key == own; })};
}

Finding found(const Scene& scene, const char* code, const Weld& w) {
  const Box3& box = scene.boxes[w.a];
  Finding f = finding_of(code, Severity::stop, scene.bed.items[w.a], 0.5 * (box.low + box.high));
  f.subjects.push_back(scene.bed.items[w.b]);
  f.measured = w.leg;
  return f;
}

Mm down_to_step(const Figures& say, Mm leg) { return std::floor(leg / say.step() + 1e-6) * say.step(); }

// Steel of the item beside its weld, where a plate's thickness is all there is to it.
std::optional<Mm> plate_thickness(const Bed& bed, int item) {
  const auto* plate = std::get_if<Plate>(&bed.part_of(item).form);
  return plate ? std::optional<Mm>(plate->thickness) : std::nullopt;
}

// A larger fillet where the steel beside it stands that; thicker plate where plate is
// what is too thin. A rolled member's flange is as thick as it is.
void suggest_for_load(const Scene& scene, const Weld& w, double needed, double steel, Finding& f) {
  const Figures& say = scene.figures;
  if (needed <= steel) {
    const Mm leg = say.round_up(w.leg * needed / fillet_allowable(w.leg));
    const bool room = w.edge <= 0 || leg <= largest_fillet(w.edge) + same_place;
    f.remedy = fmt::format("make the fillet {}{}", say.say(leg), room ? "" : ", on thicker steel");
    if (room) f.changes.push_back({"frame.tabs.weld_leg", say.set(leg)});
    return;
  }
  const Mm thick = say.round_up(w.thinner * needed / steel);
  std::vector<int> thin;
  for (const int item : {w.a, w.b}) {
    const auto plate = plate_thickness(scene.bed, item);
    if (plate && *plate >= thick - same_place) continue;
    if (!plate) return;  // no plate: taken as what makes the weld's thinner steel
    thin.push_back(item);
  }
  f.remedy = "make ";
  for (std::size_t i = 0; i < thin.size(); ++i) {
    if (i > 0) f.remedy += " and ";
    add_name(f, scene.bed.items[thin[i]]);
  }
  f.remedy += fmt::format(" at least {} thick, and the fillet {}", say.say(thick),
                          say.say(say.round_up(w.leg * needed / fillet_allowable(w.leg))));
}

}  // namespace

void check_weld_least(const Scene& scene, std::vector<Finding>& findings) {
  for_each_kind(scene.bed, [&](const Weld& w) {
    const Mm limit = least_fillet(w.thinner);
    if (w.thinner <= 0 || w.leg >= limit - same_place) return;
    Finding f = found(scene, "WELD-LEAST", w);
    f.limit = limit;
    f.margin = w.leg - limit;
    const Figures& say = scene.figures;
    f.message = fmt::format(
        "the {} fillet, {} to {}, is small for steel {} thick, which chills it; at least {} is asked",
        say.say(w.leg), f.subjects[0].name, f.subjects[1].name, say.say(w.thinner), say.say(limit));
    const LegChange change = leg_change(scene, w);
    const Mm leg = say.round_up(change.range.least);
    f.remedy = fmt::format("make it {}", say.say(say.round_up(limit)));
    if (leg <= change.range.largest + same_place) f.changes.push_back({change.key, say.set(leg)});
    findings.push_back(std::move(f));
  });
}

void check_weld_most(const Scene& scene, std::vector<Finding>& findings) {
  for_each_kind(scene.bed, [&](const Weld& w) {
    const Mm limit = largest_fillet(w.edge);
    if (w.edge <= 0 || w.leg <= limit + same_place) return;
    Finding f = found(scene, "WELD-MOST", w);
    f.limit = limit;
    f.margin = limit - w.leg;
    const Figures& say = scene.figures;
    f.message = fmt::format(
        "the {} fillet, {} to {}, runs along an edge {} thick, which it melts away; at most {} is allowed",
        say.say(w.leg), f.subjects[0].name, f.subjects[1].name, say.say(w.edge), say.say(limit));
    const LegChange change = leg_change(scene, w);
    const Mm leg = down_to_step(say, change.range.largest);
    f.remedy = fmt::format("make it {}", say.say(down_to_step(say, limit)));
    if (leg >= change.range.least - same_place)
      f.changes.push_back({change.key, say.set(leg)});
    else
      f.remedy += fmt::format(", and {} where the steel asks for it: no one leg suits all of these welds",
                              say.say(change.range.least));
    findings.push_back(std::move(f));
  });
}

void check_weld_load(const Scene& scene, std::vector<Finding>& findings) {
  const auto asked = tab_load(scene);
  if (!asked) return;
  // Tabs of one kind carry alike: the worst of each stands for all.
  std::vector<TabWeld> worst;
  for (const TabWeld& t : tab_welds(scene)) {
    const auto part = [&](const TabWeld& x) { return scene.bed.items[scene.bed.welds[x.weld].a].part; };
    const auto at =
        std::find_if(worst.begin(), worst.end(), [&](const TabWeld& x) { return part(x) == part(t); });
    if (at == worst.end())
      worst.push_back(t);
    else if (line_load(t, asked->load) > line_load(*at, asked->load))
      *at = t;
  }
  for (const TabWeld& t : worst) {
    const Weld& w = scene.bed.welds[t.weld];
    const double needed = line_load(t, asked->load),
                 steel = w.thinner > 0 ? steel_allowable(w.thinner) : std::numeric_limits<double>::infinity();
    const double allowed = line_allowable(w);
    if (needed <= allowed * (1 + 1e-9)) continue;
    Finding f = found(scene, "WELD-LOAD", w);
    const Figures& say = scene.figures;
    const PrintedUnit unit = say.line_load_unit();
    f.measured = needed / unit.one;
    f.limit = allowed / unit.one;
    f.margin = f.limit - f.measured;
    f.unit = unit.name;
    f.message = fmt::format(
        "the load ({}, {}) at the bolt puts {:.0f} {} on the {} fillet of {}; it may carry {:.0f}{}",
        say.in_one_unit().mass(asked->load / gravity), asked->basis, f.measured, f.unit, say.say(w.leg),
        f.subjects[0].name, f.limit,
        needed <= steel ? "" : fmt::format(", for the steel beside it is {} thick", say.say(w.thinner)));
    suggest_for_load(scene, w, needed, steel, f);
    const auto add = [&](const std::string& more) { f.remedy += (f.remedy.empty() ? "" : "; or ") + more; };
    const Job* job = scene.input.job;
    if (job && t.flat && job->frame.tabs.plate) {
      // Line that carries it at this leg: load (1 / 2L + 3 (g + L/2) / L^2) = allowed, g the bolt from the
      // line's outer end.
      const Mm gap = t.off - t.line / 2, k = asked->load / allowed;
      const Mm line = k + std::sqrt(k * k + 3 * k * gap);
      const Section* main = job->catalog.section(job->frame.main.section.text);
      const Mm inboard = say.round_up(line);
      if (line > t.line && main && !is_closed(*main) && inboard <= main->flange) {
        add(fmt::format("let the plate reach {} inboard", say.say(inboard)));
        f.changes.push_back({"frame.tabs.plate.inboard", say.set(inboard)});
      }
    }
    if (const auto log = largest_log(scene, asked->load * allowed / needed)) {
      add(fmt::format("no log over {}", say.say(*log)));
      f.changes.push_back({"work.log.diameter", say.set(*log)});
    }
    if (f.remedy.empty()) add("a lighter log, or tabs of another shape");
    findings.push_back(std::move(f));
  }
}

}  // namespace bedwright
