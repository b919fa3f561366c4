// BUNK-ON-RAIL and ON-BUNK: each bunk lies whole on one rail section, and what sits on a
// bunk stays on it.
#include <fmt/format.h>

#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// What a bunk is on: its section's ends along the bed.
struct OnSection {
  Mm from = 0, to = 0;
};

void check_bunk(const Scene& scene, int number, const OnSection& section, std::vector<Finding>& findings) {
  const Bed& bed = scene.bed;
  const Figures& say = scene.figures;
  const Item& item = bed.items[bed.item({Kind::bunk, Side::middle, number})];
  const Box3 bunk = bounds(bed, bed.item(item.id));
  const Mm ahead = bunk.low.x - section.from, behind = section.to - bunk.high.x;
  const Mm least = std::min(ahead, behind);
  // The bunk may sit to one side by what its holes and the rail's are out.
  const Job* job = scene.input.job;
  const Mm limit = job ? 2 * job->kit.rail.hole_tolerance : 0;
  if (least >= limit - same_place) return;
  const Mm end = ahead < behind ? section.from : section.to;
  const bool joint = end > same_place && end < bed.track.total_length - same_place;
  Finding f = finding_of("BUNK-ON-RAIL", Severity::stop, item, {end, 0, bunk.low.z});
  f.measured = least;
  f.limit = limit;
  f.margin = least - limit;
  const char* what = joint ? "the rail joint" : "the rails' end";
  f.message = least < 0 ? fmt::format("{} lies {} over {} at {}", f.subjects[0].name, say.say(-least), what,
                                      say.say(end))
                        : fmt::format("{} is {} from {} at {}, and its holes may be {} out",
                                      f.subjects[0].name, say.say(least), what, say.say(end), say.say(limit));
  const Mm more = say.round_up(limit - least);
  f.remedy =
      fmt::format("a bunk's holes {} further from the section's end, or a narrower bunk", say.say(more));
  if (job) {
    const KitBunk& k = job->kit.bunk;
    const BunkPlace& place = bed.track.bunks[static_cast<std::size_t>(number - 1)];
    const Mm from_end =
        std::min(place.within, bed.track.lengths[static_cast<std::size_t>(place.section)] - place.within);
    if (!k.positions.empty())
      f.remedy = fmt::format(
          "a kit whose bunk holes are {} further from the section's end, or a narrower bunk", say.say(more));
    else if (std::abs(from_end - k.outer_set) < 2 * same_place)
      f.changes.push_back({"kit.bunk.outer_set", say.set(k.outer_set + more)});
    else if (std::abs(from_end - k.inner_set) < 2 * same_place)
      f.changes.push_back({"kit.bunk.inner_set", say.set(k.inner_set + more)});
  }
  findings.push_back(std::move(f));
}

Finding off_bunk(const Scene& scene, const Item& item, int bunk, Mm short_by, const char* where) {
  const Figures& say = scene.figures;
  Finding f = finding_of("ON-BUNK", Severity::stop, whole_thing(item.id), item.placement.origin);
  f.subjects.emplace_back(scene.bed.items[bunk]);
  f.measured = f.margin = -short_by;
  f.message =
      fmt::format("{} stands {} {} {}", f.subjects[0].name, say.say(short_by), where, f.subjects[1].name);
  return f;
}

int bunk_of(const Bed& bed, const Item& item) { return bed.item({Kind::bunk, Side::middle, item.id.bunk}); }

void check_log_stop(const Scene& scene, int index, std::vector<Finding>& findings) {
  const Bed& bed = scene.bed;
  const Figures& say = scene.figures;
  const Item& item = bed.items[index];
  const int bunk = bunk_of(bed, item);
  const Section& angle = std::get<Member>(bed.part_of(bunk).form).section;
  const Box3 post = bounds(bed, index), under = bounds(bed, bunk);
  const Job* job = scene.input.job;
  const Mm beyond = std::max(under.low.y - post.low.y, post.high.y - under.high.y);
  if (beyond > same_place) {
    Finding f = off_bunk(scene, item, bunk, beyond, "beyond the end of");
    f.remedy = fmt::format("log stops {} nearer the middle of the bunk", say.say(say.round_up(beyond)));
    if (job) {
      const Mm now = job->kit.log_stop.from_centre;
      if (now > say.round_up(beyond))
        f.changes.push_back({"kit.log_stop.from_centre", say.set(now - say.round_up(beyond))});
    }
    findings.push_back(std::move(f));
  }
  // Between the flat leg's toe and the fillet at the standing leg.
  const Mm seat = under.high.x - angle.web - angle.root_radius;
  const Mm off = std::max(under.low.x - post.low.x, post.high.x - seat);
  if (off > same_place) {
    Finding f = off_bunk(scene, item, bunk, off, "off the flat leg of");
    const Mm room = seat - under.low.x;
    f.remedy = fmt::format("log stops at most {} thick along the bed", say.say(room));
    if (room > 0) f.changes.push_back({"kit.log_stop.thickness", say.set_at_most(room)});
    findings.push_back(std::move(f));
  }
}

// The foot of a clamp everywhere along its slide.
void check_clamp(const Scene& scene, int index, std::vector<Finding>& findings) {
  const Bed& bed = scene.bed;
  const Figures& say = scene.figures;
  const Item& item = bed.items[index];
  const int bunk = bunk_of(bed, item);
  const Box3 foot = block_bounds(bed, index).at(0), under = bounds(bed, bunk);
  const Mm inner = under.low.y - foot.low.y, outer = foot.high.y - under.high.y;
  const Mm beyond = std::max(inner, outer);
  if (beyond <= same_place) return;
  Finding f = off_bunk(scene, item, bunk, beyond, "beyond the end of");
  const Mm by = say.round_up(beyond);
  f.remedy = fmt::format("stop the clamp's slide {} sooner", say.say(by));
  if (const Job* job = scene.input.job) {
    const KitClamp& k = job->kit.clamp;
    f.changes.push_back(outer > inner ? Change{"kit.clamp.travel_to", say.set(k.travel_to - by)}
                                      : Change{"kit.clamp.travel_from", say.set(k.travel_from + by)});
  }
  findings.push_back(std::move(f));
}

}  // namespace

void check_bunk_on_rail(const Scene& scene, std::vector<Finding>& findings) {
  const Track& track = scene.bed.track;
  int number = 0;
  for (const BunkPlace& place : track.bunks) {
    const Mm start = track.starts.at(static_cast<std::size_t>(place.section));
    check_bunk(scene, ++number, {start, start + track.lengths[static_cast<std::size_t>(place.section)]},
               findings);
  }
}

void check_on_bunk(const Scene& scene, std::vector<Finding>& findings) {
  if (scene.bed.track.bunks.empty()) return;  // nothing to sit on was laid out
  for (const int stop : scene.bed.items_of(Kind::log_stop)) check_log_stop(scene, stop, findings);
  for (const int clamp : scene.bed.items_of(Kind::clamp))
    if (scene.bed.items[clamp].id.pose == Pose::between) check_clamp(scene, clamp, findings);
}

}  // namespace bedwright
