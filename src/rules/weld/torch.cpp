// TORCH: whether a torch reaches the welds at each tab's ends.
#include <fmt/format.h>

#include <algorithm>

#include "rules/fit/standing_work.h"
#include "rules/fit/tool_room.h"
#include "rules/rule_list.h"
#include "rules/weld/weld.h"

namespace bedwright {
namespace {

// Common practice, no published source: the nozzle's end stands about half an inch
// off the root, leaned between 30 and 60 degrees to the two faces; behind its end a
// hand's breadth is nozzle.
constexpr Mm stick_out = 0.5 * inch;
constexpr Mm nozzle = 4 * inch;
constexpr Radians angles[] = {45 * degree, 60 * degree, 30 * degree};

struct Line {
  Vec3 at[3];      // ends and middle
  Vec3 out, base;  // away from the tab's end; away from the main's face
};

Line line_of(const Scene& scene, const TabWeld& t, double end) {
  const Bed& bed = scene.bed;
  const Box3& tab = scene.boxes[bed.welds[t.weld].a];
  const Vec3 along = t.flat ? Vec3{0, 1, 0} : Vec3{0, 0, 1};
  const double outward = bed.bolts[t.bolt].seat.y < t.middle.y ? -1 : 1;
  Line line;
  line.out = {end, 0, 0};
  line.base = t.flat ? Vec3{0, 0, 1} : Vec3{0, outward, 0};
  const Vec3 middle{end > 0 ? tab.high.x : tab.low.x, t.middle.y, t.middle.z};
  for (int i = 0; i < 3; ++i) line.at[i] = middle + ((i - 1) * t.line / 2) * along;
  return line;
}

// The nozzle at one point and lean, and what it meets there (-1: nothing).
struct Try {
  const Obstacles& obstacles;
  Vec3 root;
  const Line& line;

  Placement frame(Radians angle) const {
    return frame_along(root, std::cos(angle) * line.out + std::sin(angle) * line.base, {0, 0, 1});
  }
  int meets(Mm radius, Radians angle) const {
    const Obstacles::Gap gap =
        obstacles.nearest(round_outline(radius), stick_out, stick_out + nozzle, frame(angle), same_place);
    return gap.distance < -same_place ? gap.item : -1;
  }
  bool gets_in(Mm radius) const {
    return std::any_of(std::begin(angles), std::end(angles), [&](Radians a) { return meets(radius, a) < 0; });
  }
};

// Where a nozzle does not get in: the largest that would, what is in the way, and
// how much further away along the bed it would have to be.
struct Shut {
  Mm largest = std::numeric_limits<Mm>::infinity();  // diameter
  int item = -1;
  Mm apart = 0;
  Vec3 at;
};

Shut shut_at(const Try& t, Mm radius) {
  Shut shut;
  shut.at = t.root;
  Mm in = 0, out = radius;
  while (out - in > 0.01) (t.gets_in((in + out) / 2) ? in : out) = (in + out) / 2;
  shut.largest = 2 * in;
  shut.apart = std::numeric_limits<Mm>::infinity();
  for (const Radians angle : angles) {
    const Mm apart = t.obstacles.way_out(round_outline(radius), stick_out, stick_out + nozzle, t.frame(angle),
                                         -t.line.out);
    if (apart >= shut.apart) continue;
    shut.apart = apart;
    shut.item = t.meets(radius, angle);
  }
  return shut;
}

// What is there when the tabs go on: the made parts of the weldment. Whatever is
// bolted comes later.
std::vector<bool> welded_items(const Bed& bed) {
  std::vector<bool> welded(bed.items.size(), false);
  for (const Weld& w : bed.welds)
    for (const int item : {w.a, w.b})
      if (w.leg > 0 && is_frame_steel(bed.part_of(item))) welded[item] = true;
  return welded;
}

// A box that holds the nozzle at every point and angle.
Box3 room_for(const Line& line, Mm radius) {
  const Mm far = stick_out + nozzle;
  Box3 box;
  for (const Vec3 root : line.at)
    for (const Radians angle : angles)
      for (const Mm along : {stick_out, far}) {
        const Vec3 p = root + along * (std::cos(angle) * line.out + std::sin(angle) * line.base);
        const Vec3 r = 1.1 * Vec3{radius, radius, radius};  // the prism's corners, and a little
        box.add(p - r);
        box.add(p + r);
      }
  return box;
}

Finding describe(const Scene& scene, const TabWeld& t, const Shut& shut) {
  const Bed& bed = scene.bed;
  const Figures& say = scene.figures;
  Finding f = finding_of("TORCH", Severity::stop, bed.items[bed.welds[t.weld].a], shut.at);
  f.subjects.push_back(bed.items[shut.item]);
  const Subject tab = f.subjects[0], other = f.subjects[1];
  f.limit = scene.limits.torch_diameter;
  f.measured = shut.largest;
  f.margin = f.measured - f.limit;
  f.message = fmt::format("{} leaves a nozzle of at most {} to the weld at the end of {}; the torch is {}",
                          other.name, say.say(f.measured), tab.name, say.say(f.limit));
  f.remedy = "move ";
  add_name(f, tab);
  f.remedy += " and ";
  add_name(f, other);
  f.remedy += fmt::format(" {} further apart", say.say(say.round_up(shut.apart)));
  return f;
}

// Shorter tabs open the gap to a neighbour tab at both its sides, to anything else
// at one: by half of what is taken off, the hole being in the tab's middle.
Mm shorter_by(const Bed& bed, const Shut& shut) {
  return (bed.items[shut.item].id.kind == Kind::tab ? 1 : 2) * shut.apart;
}

// The worst place along the weld at either end of a tab.
std::optional<Shut> worst_of(const Scene& scene, const TabWeld& t, const std::vector<bool>& welded) {
  const Weld& weld = scene.bed.welds[t.weld];
  const Mm radius = scene.limits.torch_diameter / 2, reach = stick_out + nozzle + radius;
  Box3 about = scene.boxes[weld.a];
  about.add(about.low - Vec3{reach, reach, reach});
  about.add(about.high + Vec3{reach, reach, reach});
  // Tab and main are what is being welded.
  const Obstacles obstacles(scene, about,
                            [&](int item) { return item != weld.a && item != weld.b && welded[item]; });
  std::optional<Shut> worst;
  for (const double end : {-1.0, 1.0}) {
    const Line line = line_of(scene, t, end);
    if (!obstacles.any_in(room_for(line, radius))) continue;
    for (const Vec3 root : line.at) {
      const Try nozzle_there{obstacles, root, line};
      if (nozzle_there.gets_in(radius)) continue;
      const Shut shut = shut_at(nozzle_there, radius);
      if (!worst || shut.apart > worst->apart) worst = shut;
    }
  }
  return worst;
}

}  // namespace

void check_torch(const Scene& scene, std::vector<Finding>& findings) {
  const Job* job = scene.input.job;
  const std::vector<bool> welded = welded_items(scene.bed);
  const std::size_t first = findings.size();
  Mm shorter = 0;  // one length for all tabs: what the worst place needs
  const bool standing = job && stands(job->frame);
  TabsInTheWay tabs(scene);
  std::vector<int> others;  // what shuts the torch out, by finding
  for (const TabWeld& t : tab_welds(scene)) {
    if (stands(scene.bed, scene.bed.welds[t.weld])) continue;  // welded already
    if (const auto shut = worst_of(scene, t, welded)) {
      findings.push_back(describe(scene, t, *shut));
      others.push_back(shut->item);
      tabs.add(shut->item);
      shorter = std::max(shorter, shorter_by(scene.bed, *shut));
    }
  }
  const Figures& say = scene.figures;
  shorter = say.round_up(shorter);
  if (standing) {
    // New tabs are where the track's holes are, and the others stay: the torch gives way, or a
    // tab that carries nothing.
    for (std::size_t i = first; i < findings.size(); ++i) {
      Finding& f = findings[i];
      f.names_in_remedy.clear();
      f.remedy =
          fmt::format("weld it with a nozzle of {} at most (limits.torch_diameter)", say.say(f.measured));
      if (tabs.add(others[i - first])) tabs.suggest(others[i - first], f);
    }
    return;
  }
  if (!job || job->frame.tabs.length <= shorter) return;
  for (std::size_t i = first; i < findings.size(); ++i) {
    findings[i].remedy +=
        fmt::format(", or make the tabs {} long", say.say(job->frame.tabs.length - shorter));
    findings[i].changes.push_back({"frame.tabs.length", say.set(job->frame.tabs.length - shorter)});
  }
}

}  // namespace bedwright
