// Rules about details: how rails, jacks and tongue sit on the frame, the ground under a foot,
// a life on the road, and the head tied down.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "loads/rail.h"
#include "loads/steel.h"
#include "rules/loads/judge.h"

namespace bedwright {
namespace {

void judge_rail_roll(const LoadJudge& j) {
  const TabLoads& t = j.loads.tabs;
  if (t.section_bolts < 2) return;  // holes without tabs: HOLE-NO-TAB says so
  const BoltSize& size = *j.job.catalog.bolt(j.job.kit.bunk.hole.bolt.text);
  const Mpa pulled = t.bunk_bolt / (std::numbers::pi / 4 * size.diameter * size.diameter);
  if (Finding* f =
          j.over("RAIL-ROLL", Identity{Kind::bunk_bolt}, {j.bed.track.head_lock, 0, j.bed.track.standoff},
                 pulled, bolt_tension / bolt_safety, "MPa")) {
    f->message = fmt::format(
        "a wheel stands {} outside the track bolts; keeping the rail from rolling pulls a bunk's bolt to {}, "
        "and {}",
        j.figures.say(t.wheel_off), j.figures.stress(pulled), j.allowed(pulled, bolt_tension / bolt_safety));
    f->remedy = fmt::format("bunk bolts of {:.2f} times the area", pulled / (bolt_tension / bolt_safety));
  }
  if (Finding* f = j.over("RAIL-ROLL", Identity{Kind::rail}, {j.bed.track.head_lock, 0, j.bed.track.standoff},
                          t.rail_torsion, t.rail_torsion_allowed, "MPa")) {
    f->message = fmt::format(
        "a wheel stands {} outside the track bolts; between tab and bunk the rail is twisted to {}, and {}",
        j.figures.say(t.wheel_off), j.figures.stress(t.rail_torsion),
        j.allowed(t.rail_torsion, t.rail_torsion_allowed));
    f->remedy = fmt::format("a head lighter by {:.0f} %, or a bunk beside each tab",
                            100 * (1 - t.rail_torsion_allowed / t.rail_torsion));
  }
}

void judge_jack_seat(const LoadJudge& j) {
  if (!j.loads.jack_seat) return;
  const JackSeat& s = *j.loads.jack_seat;
  const bool sheared =
      s.bolt_shear / s.bolt_shear_allowed >= s.bolt_tension / std::max(1e-9, s.bolt_tension_allowed);
  const Mpa measured = sheared ? s.bolt_shear : s.bolt_tension,
            allowed = sheared ? s.bolt_shear_allowed : s.bolt_tension_allowed;
  Mm x = 0;
  for (const JackLoad& jack : j.loads.stand.jacks)
    if (jack.id == s.jack) x = jack.x;
  if (Finding* f = j.over("JACK-SEAT", s.jack, {x, 0, 0}, measured, allowed, "MPa")) {
    f->message = fmt::format("{} on its jack, {} out from the web, {} the plate's bolts to {}, and {}",
                             j.figures.force(s.load), j.figures.say(s.arm), sheared ? "shears" : "pulls",
                             j.figures.stress(measured), j.allowed(measured, allowed));
    const double times = measured / std::max(1e-9, allowed);
    f->remedy = fmt::format("bolts of {:.2f} times the area", times);
    if (!sheared) {
      const Mm apart = j.figures.round_up(j.job.frame.jack.bolt_z * times);
      f->remedy += fmt::format(", or {} apart up and down", j.figures.say(apart));
    }
  }
  if (Finding* f = j.over("JACK-SEAT", Identity{Kind::cross_member}, {x, 0, 0}, s.cross_member,
                          s.cross_member_allowed, "MPa")) {
    f->message =
        fmt::format("a jack beside its main twists that, and bends a cross member to {}, and {}",
                    j.figures.stress(s.cross_member), j.allowed(s.cross_member, s.cross_member_allowed));
    const Section& cross = *j.job.catalog.section(j.job.frame.cross_member.section.text);
    for (const Section* stronger : stronger_channels(
             j.job, cross, bending_of(cross).modulus * s.cross_member / s.cross_member_allowed, 0))
      f->changes.push_back({"frame.cross_member.section", stronger->name});
    f->remedy = f->changes.empty() ? fmt::format("cross members of {:.1f} times the section modulus",
                                                 s.cross_member / s.cross_member_allowed)
                                   : "cross members of " + f->changes.front().value;
  }
}

void judge_tongue_seat(const LoadJudge& j) {
  const TongueSeat& s = j.loads.tongue_seat;
  Finding* f = j.over("TONGUE-SEAT", Identity{Kind::front_member}, {main_start(j.job), 0, 0},
                      s.front / gravity, s.allowed / gravity, "kg");
  if (!f) return;
  f->message = fmt::format("a tongue channel levers on the front member's flange with {}, and {} is allowed",
                           j.figures.force(s.front), j.figures.force(s.allowed));
  // front = P (arm + lap) / lap.
  const Newton down = s.front * s.lap / (s.arm + s.lap);
  const Mm step = j.figures.tongue_step();
  if (s.allowed > down) {
    const Mm lap = std::ceil(down * s.arm / (s.allowed - down) / step) * step;
    f->changes.push_back({"frame.tongue.back", j.figures.set(lap)});
    f->remedy = fmt::format("run the tongue {} back under the mains", j.figures.say(lap));
  } else {
    f->remedy =
        fmt::format("a front member whose flange is {:.1f} times as thick", std::sqrt(s.front / s.allowed));
  }
}

void judge_foot(const LoadJudge& j) {
  if (!j.loads.jack_foot) return;
  const JackFoot& foot = *j.loads.jack_foot;
  if (foot.side >= foot.pad) return;
  Finding& f = j.add("JACK-FOOT", Severity::note, Identity{Kind::jacks}, {0, 0, 0});
  f.measured = foot.side;
  f.limit = foot.pad;
  f.margin = foot.side - foot.pad;
  f.unit = "mm";
  f.message =
      fmt::format("{} on {} of {} presses {} on the ground; soft ground bears {}", j.figures.force(foot.load),
                  foot.stated ? "a foot" : "a post's end, no foot being stated,", j.figures.say(foot.side),
                  j.figures.ground(foot.pressure), j.figures.ground(soft_ground));
  const Mm step = j.figures.place_step(), side = std::ceil(foot.pad / step - 1e-9) * step;
  f.remedy =
      fmt::format("timber of {} by {} and 2 in (50 mm) thick or more under each foot, on ground dug level",
                  j.figures.say(side), j.figures.say(side));
}

void judge_fatigue(const LoadJudge& j) {
  const Fatigue& life = j.loads.fatigue;
  for (const FatigueDetail& d : life.details) {
    Subject subject(d.where);
    subject.id.number = d.category == 'F' ? 2 : 1;
    Finding* f = j.over("FATIGUE", subject, {main_start(j.job), 0, 0}, d.range, d.allowed, "MPa");
    if (!f) continue;
    f->message = fmt::format(
        "{}: the road works it through {} some {:.1f} million times, and category {} bears {}", d.what,
        j.figures.stress(d.range), life.cycles / 1e6, d.category, j.figures.stress(d.allowed));
    const double times = d.range / d.allowed;
    const auto channels = [&](const char* key, const std::string& now) {
      const Section& s = *j.job.catalog.section(now);
      for (const Section* stronger : stronger_channels(j.job, s, bending_of(s).modulus * times, 0))
        f->changes.push_back({key, stronger->name});
      f->remedy = f->changes.empty() ? fmt::format("a channel of {:.2f} times the section modulus", times)
                                     : "channels of " + f->changes.front().value;
    };
    const Mm step = j.figures.shop_step();
    if (d.where.kind == Kind::main) {
      channels("frame.main.section", j.job.frame.main.section.text);
    } else if (d.where.kind == Kind::tongue && d.category == 'E') {
      channels("frame.tongue.section", j.job.frame.tongue.section.text);
    } else if (d.where.kind == Kind::tab) {
      const Mm length =
          j.figures.round_up(j.job.frame.tabs.length * times * times);  // it takes more as it stiffens
      f->changes = {{"frame.tabs.length", j.figures.set(length)}};
      f->remedy = fmt::format("tabs {} long", j.figures.say(length));
    } else if (d.where.kind == Kind::tab_weld) {
      const Mm leg = std::ceil(j.job.frame.tabs.weld_leg * times / step) * step;
      f->changes = {{"frame.tabs.weld_leg", j.figures.set(leg)}};
      f->remedy = fmt::format("fillets of {}", j.figures.say(leg));
    } else {
      const Mm back =
          std::ceil(j.job.frame.tongue.back * times / j.figures.tongue_step()) * j.figures.tongue_step();
      f->changes = {{"frame.tongue.back", j.figures.set(back)}};
      f->remedy = fmt::format("run the tongue {} back under the mains", j.figures.say(back));
    }
  }
}

// 49 CFR 393.102 (forces), 393.106(d) (half the weight) and 393.110 (how many), from memory.
void judge_lashing(const LoadJudge& j) {
  const Kg head = j.loads.weights.head.mass;
  const std::vector<TravelCase> judged = judged_travels(j.job.order);
  if (head <= 0 ||
      std::none_of(judged.begin(), judged.end(), [](const TravelCase& t) { return t.head != HeadAt::off; }))
    return;
  constexpr Kg one_is_enough = 1100 * pound;
  const int straps = head > one_is_enough ? 2 : 1;
  Finding& f = j.add("HEAD-LASH", Severity::note, Identity{Kind::head}, {j.bed.track.head_lock, 0, 0});
  j.fill(f, head, one_is_enough, "kg");
  const RoadOrder& road = j.job.order.road;
  f.message = fmt::format(
      "on the road the head pulls forward with {}, back and to each side with {} and up with {}; how much "
      "its "
      "lock holds, the kit does not state",
      j.figures.force(road.braking * head * gravity), j.figures.force(road.cornering * head * gravity),
      j.figures.force(road.rebound * head * gravity));
  f.remedy = fmt::format(
      "beside its lock {} whose working load limits add up to {} or more, over the head to the frame",
      straps == 1 ? "one strap or more" : "two straps or more", j.figures.mass(head / 2));
}

}  // namespace

void judge_details(const LoadJudge& j) {
  judge_rail_roll(j);
  judge_jack_seat(j);
  judge_tongue_seat(j);
  judge_foot(j);
  judge_fatigue(j);
  judge_lashing(j);
}

}  // namespace bedwright
