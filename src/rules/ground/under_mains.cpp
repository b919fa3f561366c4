// SPRING-SEAT and TONGUE-END: what is welded under the mains has main over it.
#include <fmt/format.h>

#include <cmath>

#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// A channel's end past the main above it has nothing over it and catches a leg or a
// strap; this much is a saw's error: common practice, no published source.
constexpr Mm most_out = 1;
// Of main beyond a hanger, for its weld: common practice, no published source.
constexpr Mm hanger_room = inch;

const Section& section_of(const Bed& bed, int item) {
  return std::get<Member>(bed.part_of(item).form).section;
}

// Of the springs of one axle along the bed, and the mains they hang from.
void check_hangers(const Scene& scene, int axle, std::vector<Finding>& findings) {
  const Bed& bed = scene.bed;
  const Figures& say = scene.figures;
  const Job& job = *scene.input.job;
  const Mm x = bed.items[axle].placement.origin.x, half = job.frame.axle.spring_length / 2;
  const Box3 main = bounds(bed, bed.item({Kind::main, Side::right}));
  const Mm ahead = x - half - main.low.x, behind = main.high.x - x - half;
  const Mm least = std::min(ahead, behind);
  if (least >= hanger_room - same_place) return;
  Finding f = finding_of("SPRING-SEAT", Severity::stop, bed.items[axle], {x, 0, main.low.z});
  f.subjects.emplace_back(Identity{Kind::main, Side::right});
  f.measured = least;
  f.limit = hanger_room;
  f.margin = least - hanger_room;
  const char* end = ahead < behind ? "front" : "rear";
  f.message = least < 0 ? fmt::format("the {} hangers of {} hang {} off the mains' ends", end,
                                      f.subjects[0].name, say.say(-least))
                        : fmt::format("the {} hangers of {} are {} from the mains' ends; their weld wants {}",
                                      end, f.subjects[0].name, say.say(least), say.say(hanger_room));
  const Mm by = say.round_up(hanger_room - least) * (ahead < behind ? 1 : -1);
  f.remedy = fmt::format("move the axle {} {}", say.say(std::abs(by)), by > 0 ? "rearward" : "forward");
  if (job.order.axle.fraction <= 0)
    f.changes.push_back({"axle.position", say.set(job.order.axle.position + by)});
  findings.push_back(std::move(f));
}

}  // namespace

void check_spring_seat(const Scene& scene, std::vector<Finding>& findings) {
  const Bed& bed = scene.bed;
  const Job* job = scene.input.job;
  const std::vector<int> axles = bed.items_of(Kind::axle);
  if (axles.empty() || !job) return;
  const Figures& say = scene.figures;
  const Section& main = section_of(bed, bed.item({Kind::main, Side::right}));
  const Mm wide = job->frame.axle.spring_width, flat = main.flange - 2 * outer_corner(main);
  if (wide > flat + same_place) {
    Finding f = finding_of("SPRING-SEAT", Severity::stop, bed.items[axles.front()],
                           bed.items[axles.front()].placement.origin);
    f.subjects.emplace_back(Identity{Kind::main, Side::right});
    f.measured = wide;
    f.limit = flat;
    f.margin = flat - wide;
    f.message = fmt::format("the springs are {} wide and the mains' {} they hang from is {}", say.say(wide),
                            is_closed(main) ? "flat underside" : "flange", say.say(flat));
    f.remedy = fmt::format("springs at most {} wide, or a wider main", say.say(flat));
    f.changes.push_back({"frame.axle.spring_width", say.set_at_most(flat)});
    for (const Section& s : job->catalog.sections)
      if (s.shape == main.shape && s.flange - 2 * outer_corner(s) >= wide &&
          s.depth > main.depth - same_place) {
        f.changes.push_back({"frame.main.section", s.name});
        break;
      }
    findings.push_back(std::move(f));
  }
  for (const int axle : axles)
    if (bed.items[axle].shown) check_hangers(scene, axle, findings);
}

void check_tongue_end(const Scene& scene, std::vector<Finding>& findings) {
  const Bed& bed = scene.bed;
  const Figures& say = scene.figures;
  for (const Side side : both_sides) {
    const auto tongue = bed.find_item({Kind::tongue, side});
    if (!tongue) continue;
    const Placement& at = bed.items[*tongue].placement;
    const Member& channel = std::get<Member>(bed.part_of(*tongue).form);
    const Mm rear_web = std::abs(at.point({channel.length, 0, 0}).y),
             main_web = std::abs(bed.items[bed.item({Kind::main, side})].placement.origin.y);
    const Mm out = rear_web - main_web;
    if (out <= most_out + same_place) continue;
    Finding f =
        finding_of("TONGUE-END", Severity::stop, bed.items[*tongue], at.point({channel.length, 0, 0}));
    f.subjects.emplace_back(Identity{Kind::main, side});
    f.measured = out;
    f.limit = most_out;
    f.margin = most_out - out;
    f.message = fmt::format("the rear end of {} stands {} out past {}; {} is the most", f.subjects[0].name,
                            say.say(out), f.subjects[1].name, say.say(most_out));
    const Job* job = scene.input.job;
    if (job && stands(job->frame)) {
      // What stands is not made again.
      f.remedy =
          "measure the tongue of the frame that stands, and give its length, back and angle as they are";
      findings.push_back(std::move(f));
      continue;
    }
    if (job) {
      const FrameTongue& t = job->frame.tongue;
      const Mm less = (out - most_out) / std::tan(t.angle);
      const Mm back = std::floor((t.back - less) / say.step() + 1e-6) * say.step();
      const double run = t.length + t.back;
      const double angle = std::atan(std::tan(t.angle) - (out - most_out) / run) / degree;
      if (back > 0) f.changes.push_back({"frame.tongue.back", say.set(back)});
      if (t.length - less > 0)
        f.changes.push_back(
            {"frame.tongue.length", say.set(std::floor((t.length - less) / say.step()) * say.step())});
      f.changes.push_back({"frame.tongue.angle", fmt::format("{:.1f} deg", std::floor(angle * 10) / 10)});
    }
    f.remedy = fmt::format("a tongue that is {} less wide there: shorter, or at a smaller angle",
                           say.say(say.round_up(out - most_out)));
    findings.push_back(std::move(f));
  }
}

}  // namespace bedwright
