// Rules about the bed on the road: tongue share, ratings, sizes, bending, tabs.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "loads/steel.h"
#include "loads/travel_name.h"
#include "rules/loads/judge.h"
#include "rules/weld/weld.h"

namespace bedwright {
namespace {

// Steps bought items come in. Axles: common practice. Couplers: the classes of
// SAE J684 (from memory).
constexpr Kg axle_steps[] = {2000 * pound, 3500 * pound, 5200 * pound, 6000 * pound,
                             7000 * pound, 8000 * pound, 10000 * pound};
constexpr Kg coupler_steps[] = {2000 * pound, 3500 * pound, 5000 * pound, 10000 * pound};

// Jacks for a tongue, by what they lift: common practice.
constexpr Kg tongue_jack_steps[] = {500 * pound,  800 * pound,  1000 * pound, 1200 * pound,
                                    1500 * pound, 2000 * pound, 5000 * pound};

// The first step that is enough; else the next round rating.
template <std::size_t N>
Kg next_step(const LoadJudge& j, const Kg (&steps)[N], Kg needed) {
  for (Kg step : steps)
    if (step >= needed) return step;
  const Kg round = j.figures.rating_step();
  return std::ceil(needed / round) * round;
}

// The heaviest judged condition by one of its figures.
const TowCondition* worst(const Tow& tow, Kg TowCondition::*figure) {
  const TowCondition* most = nullptr;
  for (const TowCondition& c : tow.conditions)
    if (c.judged && (!most || c.*figure > most->*figure)) most = &c;
  return most;
}

// Of the catalogue, those that carry as much, the least first.
std::vector<Tyre> tyres_for(const LoadJudge& j, Kg load) {
  std::vector<Tyre> all;
  for (const Tyre& t : j.job.catalog.tyres)
    if (t.load >= load) all.push_back(t);
  std::stable_sort(all.begin(), all.end(), [](const Tyre& a, const Tyre& b) { return a.load < b.load; });
  return all;
}

// Whether a tyre called "ST205/75R15 C" is of the size the axle has: width in mm, height of
// its side in hundredths of that, wheel in inches. Within a fiftieth, as sizes are rounded.
bool fits_now(const FrameAxle& axle, const Tyre& tyre) {
  int width = 0, side = 0, rim = 0;
  if (std::sscanf(tyre.name.c_str(), "ST%d/%dR%d", &width, &side, &rim) != 3) return false;
  const Mm diameter = rim * inch + 2 * width * side / 100.0;
  return std::abs(diameter / axle.tyre_diameter - 1) < 0.02 && std::abs(width / axle.tyre_width - 1) < 0.02;
}

void judge_ratings(const LoadJudge& j) {
  const FrameFile& frame = j.job.frame;
  const Tow& tow = j.loads.tow;
  const auto text = [&](const char* what, const TowCondition& c, Kg carried, Kg rating) {
    return fmt::format("{} carries {}, {}, and is rated {}", what, j.figures.mass(carried), name(c.travel),
                       j.figures.mass(rating));
  };
  const TowCondition* c = worst(tow, &TowCondition::mass);
  if (Finding* f = j.over("TOW-COUPLER", Identity{Kind::coupler}, {tow.ball_x, 0, 0}, c->mass,
                          frame.coupler.rating, "kg")) {
    f->message = text("the coupler", *c, c->mass, frame.coupler.rating);
    const Kg next = next_step(j, coupler_steps, c->mass);
    f->remedy = fmt::format("a coupler rated {}", j.figures.rating(next));
    f->changes = {{"frame.coupler.rating", j.figures.rating(next)}};
  }
  c = worst(tow, &TowCondition::axle);
  if (Finding* f = j.over("TOW-AXLE", Identity{Kind::axle, Side::middle, 1}, {tow.axle_x, 0, 0}, c->axle,
                          frame.axle.axle_rating, "kg")) {
    f->message = text("each axle", *c, c->axle, frame.axle.axle_rating);
    const Kg next = next_step(j, axle_steps, c->axle);
    f->remedy = fmt::format("axles rated {}, or one axle more", j.figures.rating(next));
    f->changes = {{"frame.axle.axle_rating", j.figures.rating(next)}};
  }
  c = worst(tow, &TowCondition::tyre);
  if (Finding* f =
          j.over("TOW-TYRE", Identity{Kind::wheel, Side::right, 1},
                 {tow.axle_x, frame.axle.tyre_inside / 2, 0}, c->tyre, frame.axle.tyre_rating, "kg")) {
    f->message = text("the heaviest laden tyre", *c, c->tyre, frame.axle.tyre_rating);
    const std::vector<Tyre> enough = tyres_for(j, c->tyre);
    const auto same_size =
        std::find_if(enough.begin(), enough.end(), [&](const Tyre& t) { return fits_now(frame.axle, t); });
    if (same_size != enough.end()) {
      f->remedy = fmt::format("tyres rated {} of the size it has, such as {}, on wheels rated as much",
                              j.figures.rating(same_size->load), same_size->name);
      f->changes = {{"frame.axle.tyre_rating", j.figures.rating(same_size->load)}};
    } else {
      // Another size is another wheel, another width and another height: not one figure changed.
      f->remedy = fmt::format(
          "a second axle, or wheels and tyres of another size that carry {}{}: give their rating, diameter, "
          "width and inner faces under frame.axle",
          j.figures.rating(c->tyre), enough.empty() ? "" : ", such as " + enough.front().name);
    }
  }
  const Kg standing = j.loads.tongue.standing, jack = frame.tongue_jack.rating;
  if (jack <= 0) {
    Finding& f = j.add("TONGUE-JACK", Severity::warn, Identity{Kind::tongue_jack}, {tow.ball_x, 0, 0});
    j.fill(f, standing, jack, "kg");
    f.message = fmt::format("the tongue jack holds {}, uncoupled, and its rating is not stated",
                            j.figures.mass(standing));
    f.remedy = fmt::format("state frame.tongue_jack.rating; {} or more is enough",
                           j.figures.rating(next_step(j, tongue_jack_steps, standing)));
  } else if (Finding* f = j.over("TONGUE-JACK", Identity{Kind::tongue_jack}, {tow.ball_x, 0, 0}, standing,
                                 jack, "kg")) {
    f->message = fmt::format("the tongue jack holds {}, uncoupled, and is rated {}", j.figures.mass(standing),
                             j.figures.mass(jack));
    const Kg next = next_step(j, tongue_jack_steps, standing);
    f->remedy = fmt::format("a jack rated {}", j.figures.rating(next));
    f->changes = {{"frame.tongue_jack.rating", j.figures.rating(next)}};
  }
}

void judge_size(const LoadJudge& j) {
  const Tow& tow = j.loads.tow;
  const Mm limit = j.job.order.road.width_limit;
  if (Finding* f =
          j.over("TOW-WIDTH", Identity{Kind::overall_width}, {tow.axle_x, 0, 0}, tow.width, limit, "mm")) {
    f->severity = Severity::warn;
    f->message =
        fmt::format("it is {} wide, and {} is the most without a permit on the roads the limit is for",
                    j.figures.say(tow.width), j.figures.say(limit));
    f->remedy =
        fmt::format("bring each side in by {}, or ask for a permit", j.figures.say((tow.width - limit) / 2));
  }
  Finding& size = j.add("TOW-SIZE", Severity::note, Identity{Kind::overall_size}, {0, 0, 0});
  size.measured = tow.width;
  size.limit = limit;
  size.margin = limit - tow.width;
  size.unit = "mm";
  const Mm step = j.figures.overall_step();
  const auto say = [&](Mm length) { return j.figures.say(std::ceil(length / step - 1e-6) * step); };
  size.message = fmt::format("as towed it is {} wide, {} long and {} high on its tyres", say(tow.width),
                             say(tow.length), say(tow.height));
  size.remedy =
      "what is allowed differs by place (width 102 in by 23 CFR 658.15 on the National Network of the United "
      "States); check where it will run";
}

// Run further back under the mains, and, where the edges it runs along stand it, a larger fillet.
void take_tongue_weld(const LoadJudge& j, Finding& f) {
  const TongueLoads& t = j.loads.tongue;
  const Mm step = j.figures.tongue_step(), now = j.job.frame.tongue.back;
  Job other = j.job;
  Mm& back = other.frame.tongue.back;
  back = std::floor(now / step + 1) * step;
  while (back < now + 24 * step && tongue_loads(other, j.loads.tow).weld > weld_allowable) back += step;
  if (back < now + 24 * step) {
    f.changes.push_back({"frame.tongue.back", j.figures.set(back)});
    f.remedy = fmt::format("run the tongue {} back under the mains", j.figures.say(back));
  }
  const Mm fillet = j.figures.shop_step(),
           leg = std::ceil(t.weld_leg * t.weld / weld_allowable / fillet) * fillet;
  // A leg of the tongue's own, or that of all members.
  const bool own = j.job.frame.welds.tongue.has_value();
  const bool room = std::all_of(j.bed.welds.begin(), j.bed.welds.end(), [&](const Weld& w) {
    const Kind kind = j.bed.items[w.a].id.kind;
    return w.leg <= 0 || w.edge <= 0 || kind == Kind::tab || kind == Kind::tab_pad ||
           (own && kind != Kind::tongue) || leg <= largest_fillet(w.edge) + same_place;
  });
  if (room) f.changes.push_back({own ? "frame.welds.tongue" : "frame.welds.leg", j.figures.set(leg)});
  if (room || f.remedy.empty())
    f.remedy += fmt::format("{}fillets of {}", f.remedy.empty() ? "" : "; or ", j.figures.say(leg));
}

void judge_bending(const LoadJudge& j) {
  const FrameFile& frame = j.job.frame;
  const Section& main = *j.job.catalog.section(frame.main.section.text);
  const Mpa allowed = j.loads.stand.main_allowed;
  const TowCondition* worst_bent = nullptr;
  for (const TowCondition& c : j.loads.tow.conditions)
    if (c.judged && (!worst_bent || c.main_stress > worst_bent->main_stress)) worst_bent = &c;
  if (Finding* f = j.over("TOW-BEND", Identity{Kind::main}, {worst_bent->main_stress_x, 0, 0},
                          worst_bent->main_stress, allowed, "MPa")) {
    f->message =
        fmt::format("over a bump a main is bent to {} at {}, {}, and {}",
                    j.figures.stress(worst_bent->main_stress), j.figures.place(worst_bent->main_stress_x),
                    name(worst_bent->travel), j.allowed(worst_bent->main_stress, allowed));
    if (const auto closer =
            closer_cross_members(j, worst_bent->main_stress * j.job.order.work.safety_factor)) {
      f->changes.push_back(*closer);
      f->message += fmt::format(", for it is held sideways only every {}",
                                j.figures.place(j.loads.stand.main_unbraced));
    }
    for (const Section* s :
         stronger_channels(j.job, main, bending_of(main).modulus * worst_bent->main_stress / allowed, 0))
      f->changes.push_back({"frame.main.section", s->name});
    f->remedy = f->changes.empty()
                    ? fmt::format("a main of {:.2f} times the section modulus; the catalogue has none",
                                  worst_bent->main_stress / allowed)
                    : told(f->changes);
  }
  const TongueLoads& t = j.loads.tongue;
  const Vec3 nose{main_start(j.job), 0, -main.depth};
  const Section& tongue = *j.job.catalog.section(frame.tongue.section.text);
  if (Finding* f = j.over("TONGUE-BEND", Identity{Kind::tongue}, nose, t.stress, t.allowed, "MPa")) {
    f->message = fmt::format("{} the tongue is bent to {} at the front member, and {}",
                             t.braked ? "braking hard" : "over a bump", j.figures.stress(t.stress),
                             j.allowed(t.stress, t.allowed));
    for (const Section* s :
         stronger_channels(j.job, tongue, bending_of(tongue).modulus * t.stress / t.allowed, 0))
      f->changes.push_back({"frame.tongue.section", s->name});
    f->remedy = f->changes.empty()
                    ? fmt::format("a tongue {} shorter", j.figures.place(t.arm * (1 - t.allowed / t.stress)))
                    : fmt::format("tongue channels of {}", f->changes.front().value);
  }
  if (Finding* f = j.over("TONGUE-WELD", Identity{Kind::tongue}, nose, t.weld, weld_allowable, "MPa")) {
    f->message = fmt::format("{} the tongue's welds carry {} on the throat, and {}",
                             t.braking_weld > t.bump_weld ? "braking hard" : "over a bump",
                             j.figures.stress(t.weld), j.allowed(t.weld, weld_allowable));
    take_tongue_weld(j, *f);
  }
}

void judge_tabs(const LoadJudge& j) {
  const TabLoads& t = j.loads.tabs;
  const Vec3 at{j.bed.track.head_lock, 0, j.bed.track.standoff};
  if (t.section_bolts < 2) return;  // holes without tabs: HOLE-NO-TAB says so
  const bool sheared =
      t.bolt_shear / t.bolt_shear_allowed > t.bolt_tension / std::max(t.bolt_tension_allowed, 1e-9);
  const Mpa measured = sheared ? t.bolt_shear : t.bolt_tension,
            allowed = sheared ? t.bolt_shear_allowed : t.bolt_tension_allowed;
  if (Finding* f = j.over("TRACK-BOLT", Identity{Kind::track_bolt}, at, measured, allowed, "MPa")) {
    f->message = fmt::format("on the road a track bolt carries {} sideways and {} along it, {}, and {}",
                             j.figures.force(t.shear), j.figures.force(t.tension), j.figures.stress(measured),
                             j.allowed(measured, allowed));
    f->remedy = fmt::format("bolts of {:.2f} times the area, or so many more in each rail section",
                            measured / std::max(allowed, 1e-9));
  }
  const FrameTabs& tabs = j.job.frame.tabs;
  const bool clip = tabs.style == TabStyle::clip;
  if (Finding* f = j.over("TAB-ROAD", Identity{Kind::tab}, at, t.tab_stress, t.tab_allowed, "MPa")) {
    f->message = fmt::format("over a bump a tab is bent to {} by {} on its hole, and {}",
                             j.figures.stress(t.tab_stress), j.figures.force(t.vertical),
                             j.allowed(t.tab_stress, t.tab_allowed));
    const Mm step = j.figures.step();
    const auto length = longer_tabs(j);
    const Mm thickness =
        std::ceil((clip ? 0 : tabs.plate->plate_thickness) * std::sqrt(t.tab_stress / t.tab_allowed) / step) *
        step;
    f->remedy = clip ? "a thicker angle" : fmt::format("plates {} thick", j.figures.say(thickness));
    if (length) {
      f->remedy = fmt::format("tabs {} long, or {}", j.figures.say(*length), f->remedy);
      f->changes = {{"frame.tabs.length", j.figures.set(*length)}};
    }
  }
  if (Finding* f = j.over("TAB-ROAD", Identity{Kind::tab_weld}, at, t.weld, t.weld_allowed, "N/mm")) {
    f->message = fmt::format("on the road a tab's weld carries {}, and {} is allowed",
                             j.figures.along_weld(t.weld), j.figures.along_weld(t.weld_allowed));
    const Mm step = j.figures.shop_step(),
             leg = std::ceil(tabs.weld_leg * t.weld / t.weld_allowed / step) * step;
    f->remedy = fmt::format("fillets of {}, or longer lines of weld", j.figures.say(leg));
    f->changes = {{"frame.tabs.weld_leg", j.figures.set(leg)}};
  }
}

}  // namespace

void judge_tow(const LoadJudge& j) {
  judge_balance(j);
  judge_roll(j);
  judge_ratings(j);
  judge_bending(j);
  judge_tabs(j);
  judge_size(j);
  judge_asked(j);
}

}  // namespace bedwright
