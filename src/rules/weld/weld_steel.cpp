// WELD-STEEL: a fillet lies on two parts, from its one end to its other.
#include "rules/weld/weld_steel.h"

#include <fmt/format.h>

#include <map>

#include "bed/names.h"
#include "rules/rule_list.h"
#include "rules/weld/weld.h"

namespace bedwright {
namespace {

// The root lies on one part's face as laid out; the other may stand off by what a fillet is
// laid over without being made larger for it: 1/16 in (AWS D1.1 fit-up, from memory).
constexpr Mm on_face = 0.1, over_gap = inch / 16;
// Less than this is rounding, and the radius at a rolled flange's toe.
constexpr Mm counts = 0.5;

// A part of a line, from 0 to 1 along it.
struct Span {
  double from = 0, to = 1;
};

// Where the line from `a` to `b` is within `near` of the piece's faces.
std::optional<Span> within(const Convex& piece, Vec3 a, Vec3 b, Mm near) {
  Span s;
  for (const Vec3& normal : piece.normals) {
    Mm face = -std::numeric_limits<Mm>::infinity();
    for (const Vec3& c : piece.corners) face = std::max(face, dot(normal, c));
    const Mm at_a = dot(normal, a) - face - near, at_b = dot(normal, b) - face - near;
    if (at_a > 0 && at_b > 0) return std::nullopt;
    if (at_a > 0) s.from = std::max(s.from, at_a / (at_a - at_b));
    if (at_b > 0) s.to = std::min(s.to, at_a / (at_a - at_b));
  }
  return s.from < s.to ? std::optional<Span>(s) : std::nullopt;
}

// Where any of them is, in order and joined. `round`: whether what covers a round corner counts.
std::vector<Span> within(const std::vector<Convex>& pieces, Vec3 a, Vec3 b, Mm near, bool round) {
  std::vector<Span> all, joined;
  for (const Convex& piece : pieces) {
    if (piece.fillet && !round) continue;
    if (const auto s = within(piece, a, b, near)) all.push_back(*s);
  }
  std::sort(all.begin(), all.end(), [](const Span& p, const Span& q) { return p.from < q.from; });
  for (const Span& s : all) {
    if (!joined.empty() && s.from <= joined.back().to + 1e-9)
      joined.back().to = std::max(joined.back().to, s.to);
    else
      joined.push_back(s);
  }
  return joined;
}

std::vector<Span> common(const std::vector<Span>& p, const std::vector<Span>& q) {
  std::vector<Span> both;
  for (const Span& a : p)
    for (const Span& b : q)
      if (std::max(a.from, b.from) < std::min(a.to, b.to))
        both.push_back({std::max(a.from, b.from), std::min(a.to, b.to)});
  return both;
}

double share(const std::vector<Span>& spans) {
  double sum = 0;
  for (const Span& s : spans) sum += s.to - s.from;
  return sum;
}

Mm beyond(Mm at, Mm low, Mm high) { return at < low ? at - low : at > high ? at - high : 0; }

// What one of the two parts has under a run: the root within `near` of it and, `ledge`
// beyond the root, its face going on.
struct Under {
  std::vector<Span> held;
  Vec3 reach;  // the furthest an end of the run lies outside the part
};

Under under(const Scene& scene, int item, const WeldRun& run, Mm near, Vec3 ledge) {
  const std::vector<Convex>& pieces = scene.pieces[item];
  const Box3& box = scene.boxes[item];
  // A tube's corner is round on the outside, where welds lie: it is no steel for a fillet.
  const Member* member = std::get_if<Member>(&scene.bed.part_of(item).form);
  const bool round = !member || !is_closed(member->section);
  Under u;
  u.held = within(pieces, run.from, run.to, near, round);
  if (norm(ledge) > 0) u.held = common(u.held, within(pieces, run.from + ledge, run.to + ledge, near, round));
  for (const Vec3& end : {run.from, run.to, run.from + ledge, run.to + ledge}) {
    const Vec3 out{beyond(end.x, box.low.x - near, box.high.x + near),
                   beyond(end.y, box.low.y - near, box.high.y + near),
                   beyond(end.z, box.low.z - near, box.high.z + near)};
    if (norm(out) > norm(u.reach)) u.reach = out;
  }
  return u;
}

struct Lacking {
  const Weld* weld;
  SteelLack lack;
};

// What ends too soon and which way, alike on both sides; all welds that lack steel for that
// are one finding.
using Cause = std::tuple<Kind, Kind, int, int, int>;
Cause cause(const Scene& scene, const Lacking& l) {
  const auto sign = [](Mm v) { return v > same_place ? 1 : v < -same_place ? -1 : 0; };
  const Item& item = scene.bed.items[l.lack.item];
  const int other = l.lack.item == l.weld->a ? l.weld->b : l.weld->a;
  const int side = item.id.side == Side::left ? -1 : 1;
  return {item.id.kind, scene.bed.items[other].id.kind, sign(l.lack.reach.x), side * sign(l.lack.reach.y),
          sign(l.lack.reach.z)};
}

// Welded parts that stand apart are WELD-CONTACT's, unless one ends before it comes there.
bool told_by_contact(const Scene& scene, const Lacking& l) {
  return !ends_too_soon(l.lack) && !scene.boxes[l.weld->a].overlaps(scene.boxes[l.weld->b], over_gap);
}

// The greatest of the three ways the item would have to reach.
Vec3 chief(Vec3 reach) {
  if (std::abs(reach.x) >= std::max(std::abs(reach.y), std::abs(reach.z))) return {reach.x, 0, 0};
  return std::abs(reach.y) >= std::abs(reach.z) ? Vec3{0, reach.y, 0} : Vec3{0, 0, reach.z};
}

// Longer mains, where the shop makes them; a pad's narrower sides or a larger plate under it.
void add_changes(const Scene& scene, const Lacking& l, Vec3 reach, Finding& f) {
  const Job* job = scene.input.job;
  if (!job || stands(job->frame)) return;
  const FrameFile& frame = job->frame;
  const Figures& say = scene.figures;
  const Mm more = say.round_up(norm(reach));
  const Kind kind = scene.bed.items[l.lack.item].id.kind;
  if (kind == Kind::main && reach.x > 0) {
    if (frame.main.length)
      f.changes.push_back({"frame.main.length", say.set(*frame.main.length + more)});
    else
      f.changes.push_back({"frame.main.rear_overhang", say.set(frame.main.rear_overhang + more)});
  } else if (kind == Kind::main && reach.x < 0) {
    f.changes.push_back({"frame.main.front_overhang", say.set(frame.main.front_overhang + more)});
  } else if (kind == Kind::tab && reach.y != 0 && frame.tabs.plate) {
    const bool outboard = reach.y * outward(scene.bed.items[l.lack.item].id.side) > 0;
    const PlateTab& plate = *frame.tabs.plate;
    f.changes.push_back({outboard ? "frame.tabs.plate.outboard" : "frame.tabs.plate.inboard",
                         say.set((outboard ? plate.outboard : plate.inboard) + more)});
  }
}

Finding describe(const Scene& scene, const Lacking& l, int alike) {
  const Bed& bed = scene.bed;
  const Weld& weld = *l.weld;
  const Figures& say = scene.figures;
  Finding f = finding_of("WELD-STEEL", Severity::stop, bed.items[weld.a], weld.runs.front().from);
  f.subjects.push_back(bed.items[weld.b]);
  const Subject lacks = bed.items[l.lack.item], other = bed.items[l.lack.item == weld.a ? weld.b : weld.a];
  f.measured = weld.length - l.lack.length;
  f.limit = weld.length;
  f.margin = -l.lack.length;
  f.message =
      fmt::format("of the {} of weld between {} and {} ({}), {} lies where {} has no steel for a {} fillet",
                  say.say(weld.length), f.subjects[0].name, f.subjects[1].name, words_of(weld.line),
                  say.say(l.lack.length), lacks.name, say.say(weld.leg));
  if (alike > 1) f.message += fmt::format(" (the worst of {} such welds)", alike);
  const Vec3 reach = chief(l.lack.reach);
  if (norm(reach) <= same_place) {
    f.remedy = fmt::format("bring the {} of weld where both have steel, or leave it out and count on less",
                           say.say(l.lack.length));
    return f;
  }
  const std::string far = say.say(say.round_up(norm(reach)));
  f.remedy = "let ";
  add_name(f, lacks);
  f.remedy += fmt::format(" reach {} further {}, or bring ", far, way_of(reach));
  add_name(f, other);
  f.remedy += fmt::format(" {} {}", far, way_of(-reach));
  add_changes(scene, l, reach, f);
  return f;
}

}  // namespace

std::optional<SteelLack> steel_lack(const Scene& scene, const Weld& weld) {
  SteelLack lack;
  for (const WeldRun& run : weld.runs) {
    // Along an edge the fillet's leg is as high as the edge, which WELD-MOST asks about.
    const Vec3 up = weld.edge > 0 ? Vec3{} : weld.leg * run.on_a;
    const Under a = under(scene, weld.a, run, over_gap, up),
                b = under(scene, weld.b, run, on_face, weld.leg * run.on_b);
    const Mm length = run.length(), without = length * (1 - share(common(a.held, b.held)));
    if (without <= counts) continue;
    lack.length += without;
    const bool on_b = share(b.held) <= share(a.held);
    const Under& less = on_b ? b : a;
    if (lack.item >= 0 && norm(less.reach) <= norm(lack.reach)) continue;
    lack.item = on_b ? weld.b : weld.a;
    lack.reach = less.reach;
  }
  return lack.item < 0 ? std::nullopt : std::optional<SteelLack>(lack);
}

void check_weld_steel(const Scene& scene, std::vector<Finding>& findings) {
  std::map<Cause, std::vector<Lacking>> by_cause;
  for (const Weld& weld : scene.bed.welds) {
    const auto lack = weld.leg > 0 ? steel_lack(scene, weld) : std::nullopt;
    if (!lack) continue;
    if (const Lacking l{&weld, *lack}; !told_by_contact(scene, l)) by_cause[cause(scene, l)].push_back(l);
  }
  for (const auto& [way, all] : by_cause) {
    const auto worst = std::max_element(all.begin(), all.end(), [](const Lacking& p, const Lacking& q) {
      return norm(p.lack.reach) < norm(q.lack.reach);
    });
    findings.push_back(describe(scene, *worst, static_cast<int>(all.size())));
  }
}

}  // namespace bedwright
