// JACK-WELD: whether the plate that hangs a jack on a tube, and its weld, carry the jack.
#include <fmt/format.h>

#include <cmath>

#include "loads/steel.h"
#include "rules/loads/judge.h"

namespace bedwright {
namespace {

// The most a millimetre of either line carries (N/mm): the two upright lines at the plate's
// ends, each L long, under a push up the jack's post `off` from the main's side. Direct shear
// P / (2 L) and, square to it, bending P off / (L^2 / 3). (Elastic method, AISC Manual, part 8.)
double line_load(Mm line, Newton push, Mm off) {
  return std::hypot(push / (2 * line), push * off / (line * line / 3));
}

const JackLoad* load_of(const LoadJudge& j, const Identity& plate) {
  for (const JackLoad& jack : j.loads.stand.jacks)
    if (jack.id.side == plate.side && jack.id.number == plate.number) return &jack;
  return nullptr;
}

}  // namespace

namespace {

// A jack's post pushes up beside the plate, which is held at the main's side: it bends about a
// level line under the main.
void judge_plate(const LoadJudge& j, const Identity& plate, Newton push, Mm off) {
  const FrameJack& jack = j.job.frame.jack;
  const Mm t = jack.plate_thickness;
  const Mpa stress = push * off / (jack.plate_length * t * t / 6),
            allowed = frame_yield(j.job.frame) / j.job.order.work.safety_factor;
  Finding* f =
      j.over("JACK-WELD", plate, {j.bed.items[j.bed.item(plate)].placement.origin}, stress, allowed, "MPa");
  if (!f) return;
  f->message = fmt::format("the jack's push of {}, {} out from the main, bends its plate to {}, and {}",
                           j.figures.force(push), j.figures.say(off), j.figures.stress(stress),
                           j.allowed(stress, allowed));
  const Mm thick = j.figures.round_up(t * std::sqrt(stress / allowed));
  f->remedy = fmt::format("make the plate {} thick", j.figures.say(thick));
  f->changes.push_back({"frame.jack.plate_thickness", j.figures.set(thick)});
}

}  // namespace

void judge_jack_welds(const LoadJudge& j) {
  const FrameJack& jack = j.job.frame.jack;
  const Mm off = jack.plate_thickness + jack.flange_thickness + jack.post_width / 2;
  const Weld* worst = nullptr;
  double most = 0, may = 0;
  Newton push = 0;
  for (const Weld& weld : j.bed.welds) {
    if (weld.line != WeldLine::plate_ends || weld.length <= same_place) continue;
    const JackLoad* load = load_of(j, j.bed.items[weld.a].id);
    if (!load) continue;
    const double carried = line_load(weld.length / 2, load->most, off),
                 allowed = weld_line_allowable(weld.leg, weld.thinner);
    if (worst && carried / allowed <= most / may) continue;
    worst = &weld, most = carried, may = allowed, push = load->most;
  }
  if (!worst) return;
  judge_plate(j, j.bed.items[worst->a].id, push, off);
  const PrintedUnit unit = j.figures.line_load_unit();
  if (most <= may) return;
  Finding& f = j.add("JACK-WELD", Severity::stop, j.bed.items[worst->a], worst->runs.front().from);
  f.subjects.emplace_back(j.bed.items[worst->b]);
  f.measured = most / unit.one;
  f.limit = may / unit.one;
  f.margin = f.limit - f.measured;
  f.unit = unit.name;
  f.message = fmt::format(
      "the jack's push of {}, {} out from the main, puts {:.0f} {} on the {} fillet at the ends of {}; it "
      "may "
      "carry {:.0f}",
      j.figures.force(push), j.figures.say(off), f.measured, f.unit, j.figures.say(worst->leg),
      f.subjects[0].name, f.limit);
  // The fillet that would do, where the thinner steel beside it stands that.
  const Mm leg = j.figures.round_up(worst->leg * most / may);
  const bool steel_stands = weld_line_allowable(leg, worst->thinner) >= most;
  if (steel_stands) {
    f.remedy = fmt::format("make the fillet {}", j.figures.say(leg));
    f.changes.push_back({"frame.welds.jack_plate", j.figures.set(leg)});
  } else {
    f.remedy = fmt::format("a deeper main, whose side is flat over {} at least, or another pair of jacks",
                           j.figures.say(worst->length / 2 * std::sqrt(most / may)));
  }
}

}  // namespace bedwright
