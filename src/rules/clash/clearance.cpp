// CLEARANCE: things that are not to touch stay apart however they come to lie within
// the tolerances of how each was placed.
#include <fmt/format.h>

#include <cmath>
#include <set>

#include "geometry/slack.h"
#include "rules/clash/clash.h"
#include "rules/clash/placing.h"
#include "rules/fit/standing_work.h"
#include "rules/rule_list.h"

namespace bedwright {
namespace {

// No chain of tolerances that a shop holds is longer: pairs further apart are not looked at.
constexpr Mm looked_at = 8;

bool overlap_along(const Convex& p, const Convex& q, Vec3 axis) {
  const auto span = [&](const Convex& c) {
    Mm low = std::numeric_limits<Mm>::infinity(), high = -low;
    for (const Vec3& corner : c.corners) {
      low = std::min(low, dot(corner, axis));
      high = std::max(high, dot(corner, axis));
    }
    return std::pair(low, high);
  };
  const auto [pl, ph] = span(p);
  const auto [ql, qh] = span(q);
  return std::min(ph, qh) - std::max(pl, ql) > clash_depth;
}

// The way along a world axis from the second piece to the first where their boxes are
// furthest apart.
Vec3 away(const Box3& p, const Box3& q) {
  const std::pair<Mm, Vec3> ways[] = {{p.low.x - q.high.x, {1, 0, 0}}, {q.low.x - p.high.x, {-1, 0, 0}},
                                      {p.low.y - q.high.y, {0, 1, 0}}, {q.low.y - p.high.y, {0, -1, 0}},
                                      {p.low.z - q.high.z, {0, 0, 1}}, {q.low.z - p.high.z, {0, 0, -1}}};
  return std::max_element(std::begin(ways), std::end(ways),
                          [](const auto& a, const auto& b) { return a.first < b.first; })
      ->second;
}

struct Close {
  Meeting meeting;  // gap: as drawn
  Mm nearer = 0;    // what the tolerances come to along the nearest way
  Vec3 away;        // from b to a
};

class CloseThings {
 public:
  explicit CloseThings(const Scene& scene) : scene_(scene), placing_(scene) {
    for (const Joined& j : scene.bed.joined) joined_.insert(std::minmax(j.a, j.b));
  }

  std::vector<Close> all() const {
    std::vector<Close> found;
    for (int a = 0; a < static_cast<int>(scene_.bed.items.size()); ++a) {
      Box3 around = scene_.boxes[a];
      around.low = around.low - Vec3{looked_at, looked_at, looked_at};
      around.high = around.high + Vec3{looked_at, looked_at, looked_at};
      scene_.near.for_each(around, [&](int b) {
        if (b <= a || !asked(a, b)) return;
        if (const auto close = meeting(a, b)) found.push_back(*close);
      });
    }
    return found;
  }

 private:
  // States are CLASH-MOVING's; welded to each other, set by the welder to each other, or
  // the next section of one rail, two things touch by design.
  bool asked(int a, int b) const {
    const Item &x = scene_.bed.items[a], &y = scene_.bed.items[b];
    if (x.moving || y.moving || !x.shown || !y.shown || is_same_thing(x.id, y.id)) return false;
    if (x.id.kind == Kind::rail && y.id.kind == Kind::rail) return false;
    return !joined_.contains(std::minmax(a, b)) && !placing_.both_welded(a, b);
  }

  // Two things on one bolt lie on each other along it: only what stands beside counts.
  bool counts(const Convex& p, const Convex& q, int bolt) const {
    if (bolt < 0) return true;
    if (p.fillet || q.fillet || p.shank || q.shank) return false;
    return overlap_along(p, q, scene_.bed.bolts[bolt].direction);
  }

  std::optional<Close> meeting(int a, int b) const {
    const int bolt = placing_.common_bolt(a, b);
    std::optional<Close> nearest;
    std::optional<Vec3> slack;
    for (const Convex& p : scene_.pieces[a])
      for (const Convex& q : scene_.pieces[b]) {
        if (!p.bounds.overlaps(q.bounds, looked_at) || !counts(p, q, bolt)) continue;
        const Mm apart = separation(p, q);
        // Into each other: CLASH says so, or asks exactly.
        if (apart < -clash_depth) return std::nullopt;
        if (apart > looked_at) continue;
        if (!slack) slack = placing_.between(a, b);
        // Nothing holds the one to the other: no tolerance to ask about.
        if (!std::isfinite(slack->x + slack->y + slack->z)) return std::nullopt;
        const Mm left = separation_with_slack(p, q, *slack), gap = std::max(0.0, apart);
        if (left >= -same_place || (nearest && gap >= nearest->meeting.gap)) continue;
        nearest.emplace();
        nearest->meeting.a = a;
        nearest->meeting.b = b;
        nearest->meeting.standing = Standing::near;
        nearest->meeting.gap = gap;
        nearest->meeting.place = 0.5 * (p.bounds.low + p.bounds.high);
        nearest->nearer = gap - left;
        nearest->away = away(p.bounds, q.bounds);
      }
    return nearest;
  }

  const Scene& scene_;
  Placing placing_;
  std::set<std::pair<int, int>> joined_;
};

}  // namespace

void check_clearance(const Scene& scene, std::vector<Finding>& findings) {
  const std::vector<Close> all = CloseThings(scene).all();
  std::vector<Meeting> meetings;
  meetings.reserve(all.size());
  for (const Close& close : all) meetings.push_back(close.meeting);
  const std::vector<ThingPair> pairs = by_thing(scene.bed, meetings);
  TabsInTheWay tabs(scene);
  for (const ThingPair& pair : pairs) tabs.add_both(pair.worst.a, pair.worst.b);
  for (const ThingPair& pair : pairs) {
    const Meeting& m = pair.worst;
    const Close& close = *std::find_if(
        all.begin(), all.end(), [&](const Close& c) { return c.meeting.a == m.a && c.meeting.b == m.b; });
    const Figures& say = scene.figures;
    Finding f = finding_of("CLEARANCE", Severity::stop, spoken_of(scene.bed, m.a), m.place);
    f.subjects.push_back(spoken_of(scene.bed, m.b));
    f.measured = m.gap;
    f.limit = close.nearer;
    f.margin = f.measured - f.limit;
    f.message = fmt::format("{} and {} are drawn {} apart, and by their tolerances may come to lie {} nearer",
                            f.subjects[0].name, f.subjects[1].name, say.say(m.gap), say.say(close.nearer));
    if (pair.others > 0) f.message += fmt::format(" (the worst of {} such places)", pair.others + 1);
    const int a = readiness(scene.bed, scene.bed.items[m.a]), b = readiness(scene.bed, scene.bed.items[m.b]);
    const std::string more = say.say(say.round_up(-f.margin));
    if (const auto tab = tabs.add_both(m.a, m.b)) {
      tabs.suggest(*tab, f);
    } else if (std::max(a, b) == 0 && (scene.bed.part_of(m.a).origin == Origin::standing ||
                                       scene.bed.part_of(m.b).origin == Origin::standing)) {
      f.remedy = fmt::format(
          "measure the room there: {} more is wanted than is drawn; where it is not there, another track on "
          "this frame, or another frame: this one stands",
          more);
    } else if (std::max(a, b) == 0) {
      f.remedy = fmt::format("leave {} more between ", more);
      add_name(f, f.subjects[0]);
      f.remedy += " and ";
      add_name(f, f.subjects[1]);
    } else {
      f.remedy = "move ";
      add_name(f, f.subjects[b > a ? 1 : 0]);
      f.remedy += fmt::format(" {} {}", more, way_of(b > a ? -close.away : close.away));
    }
    const Job* job = scene.input.job;
    const auto is = [&](Kind kind) {
      return scene.bed.items[m.a].id.kind == kind || scene.bed.items[m.b].id.kind == kind;
    };
    if (job && is(Kind::rail) && is(Kind::bunk))
      f.changes.push_back(
          {"kit.bunk.end_clearance", say.set(job->kit.bunk.end_clearance + say.round_up(-f.margin))});
    findings.push_back(std::move(f));
  }
}

}  // namespace bedwright
