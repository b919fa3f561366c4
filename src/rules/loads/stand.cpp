// Rules about the bed at work: log, tipping, sag, bending, jacks, push.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "loads/steel.h"
#include "rules/loads/judge.h"

namespace bedwright {
namespace {

// As good as the bed needs to be in what the rules here stop for.
bool stands(const Stand& s) { return s.jacks_enough && !s.tips && s.log_lies; }
bool bends_little(const Stand& s) {
  return stands(s) && s.main_stress <= s.main_allowed && s.web_stress <= s.web_allowed &&
         s.rail_stress <= s.kit_allowed && s.bunk_stress <= s.kit_allowed;
}
bool sags_little(const Stand& s) { return stands(s) && s.sag <= s.sag_limit; }
StandsWell loads_jacks_little(Kg rating) {
  return [rating](const Stand& s) {
    return stands(s) && std::all_of(s.jacks.begin(), s.jacks.end(),
                                    [&](const JackLoad& k) { return k.most <= rating * gravity; });
  };
}

std::vector<Change> one(const std::optional<Change>& change) {
  return change ? std::vector<Change>{*change} : std::vector<Change>{};
}

std::vector<Change> mains(const std::vector<const Section*>& channels) {
  std::vector<Change> all;
  for (const Section* s : channels) all.push_back({"frame.main.section", s->name});
  return all;
}

// A log has to lie on two bunks, its middle between them.
void judge_log(const LoadJudge& j) {
  if (!j.job.order.work.log) {
    Finding& f =
        j.add("STAND-LOG", Severity::warn, Identity{Kind::log}, {j.bed.track.total_length / 2, 0, 0});
    f.measured = 0, f.limit = 1, f.margin = -1, f.unit = "logs";
    f.message = "no log is named, so rails, bunks, mains and jacks are worked with the head alone";
    f.remedy = "name the heaviest log it is to work on, under work: log: {diameter, length, species}";
    return;
  }
  if (j.loads.stand.log_lies) return;
  const LogOrder& log = *j.job.order.work.log;
  const std::vector<BunkPlace>& bunks = j.bed.track.bunks;
  const Mm pitch = j.bed.track.bunk_spacing();
  Finding& f = j.add("STAND-LOG", Severity::stop, Identity{Kind::log},
                     {log.position.value_or(j.bed.track.total_length / 2), 0, 0});
  if (log.length < pitch || !log.position || bunks.size() < 2) {
    f.measured = log.length, f.limit = pitch, f.margin = log.length - pitch, f.unit = "mm";
    f.message = fmt::format("a log {} long does not reach from bunk to bunk, {} apart",
                            j.figures.place(log.length), j.figures.place(pitch));
    f.remedy = fmt::format("logs of {} and longer", j.figures.place(pitch));
    f.changes = {{"work.log.length", j.figures.set(j.figures.round_up(pitch))}};
    return;
  }
  // The nearest place where it lies whole on the bunks; in their middle when it is the longer.
  const Mm grid = j.figures.place_step(), at = *log.position, first = bunks.front().x, last = bunks.back().x,
           half = std::min(log.length, last - first) / 2;
  const Mm to = std::round(std::clamp(at, first + half, last - half) / grid) * grid;
  f.measured = at, f.limit = to, f.margin = -std::abs(to - at), f.unit = "mm";
  f.message =
      fmt::format("a log whose middle is at {} does not lie on two bunks with its weight between them",
                  j.figures.place(at));
  f.remedy = fmt::format("place its middle at {}", j.figures.place(to));
  f.changes = {{"work.log.position", j.figures.set(to)}};
}

void judge_tipping(const LoadJudge& j) {
  const Stand& s = j.loads.stand;
  if (s.jacks_enough && !s.tips) return;
  const Mm at = s.jacks_enough ? s.tips_at : j.bed.track.total_length / 2;
  Finding& f = j.add("STAND-TIP", Severity::stop, Identity{Kind::jacks}, {at, 0, 0});
  f.measured = static_cast<double>(j.job.order.jacks.size());
  f.limit = 2;
  f.margin = -1;
  f.unit = s.jacks_enough ? "" : "pairs";
  f.message = s.jacks_enough
                  ? fmt::format("with the head at {} the bed tips over its outermost jacks",
                                j.figures.place(s.tips_at))
                  : fmt::format("a bed at work stands on two pairs of jacks at least, and {} is listed",
                                j.job.order.jacks.size());
  // Where the bed then is as it should be in all, before where it only stands.
  const StandsWell holds = loads_jacks_little(j.job.frame.jack.rating);
  const StandsWell well = [&](const Stand& other) {
    return sags_little(other) && bends_little(other) && holds(other);
  };
  for (const StandsWell& enough : {well, StandsWell(stands)})
    for (const auto& jacks : {further_jacks, jacks_near_ends})
      if (f.changes.empty()) f.changes = jacks(j, enough);
  f.remedy = f.changes.empty() ? fmt::format("two pairs, nearer the ends than {}",
                                             j.figures.place(j.bed.track.total_length / 10))
                               : told(f.changes);
}

void judge_sag(const LoadJudge& j) {
  const Stand& s = j.loads.stand;
  Finding* f = j.over("STAND-SAG", Identity{Kind::main, s.side}, {s.sag_x, 0, 0}, s.sag, s.sag_limit, "mm");
  if (!f) return;
  f->message = fmt::format(
      "the rails sag {} at {} with the head at {}{} (main {}, rail between tabs {}), and {} is allowed",
      j.figures.small(s.sag), j.figures.place(s.sag_x), j.figures.place(s.head_x),
      s.log_mass > 0 ? fmt::format(" and a log of {} on", j.figures.mass(s.log_mass)) : "",
      j.figures.small(s.main_sag), j.figures.small(s.rail_sag), j.figures.say(s.sag_limit));
  const Section& main = *j.job.catalog.section(j.job.frame.main.section.text);
  const Bending now = bending_of(main);
  const double stiffer = s.sag_limit > s.rail_sag ? s.main_sag / (s.sag_limit - s.rail_sag)
                                                  : std::numeric_limits<double>::infinity();
  f->changes = interleaved({further_jacks(j, sags_little),
                            mains(stronger_channels(j.job, main, now.modulus, now.inertia * stiffer)),
                            one(smaller_log(j, sags_little))});
  if (!f->changes.empty())
    f->remedy = told(f->changes);
  else if (s.rail_sag < s.sag_limit)
    f->remedy = fmt::format("mains of {:.1f} times the inertia, or more than one further pair of jacks",
                            s.main_sag / (s.sag_limit - s.rail_sag));
  else
    f->remedy =
        fmt::format("the rail alone sags {} at {}: a tab under every mounting hole, or holes closer together",
                    j.figures.small(s.rail_sag), j.figures.place(s.rail_sag_x));
}

void judge_bending(const LoadJudge& j) {
  const Stand& s = j.loads.stand;
  if (Finding* f = j.over("STAND-BEND", Identity{Kind::main}, {s.main_moment_x, 0, 0}, s.main_stress,
                          s.main_allowed, "MPa")) {
    f->message = fmt::format("a main is bent to {} at {}, and {}", j.figures.stress(s.main_stress),
                             j.figures.place(s.main_moment_x), j.allowed(s.main_stress, s.main_allowed));
    const Section& main = *j.job.catalog.section(j.job.frame.main.section.text);
    if (closer_cross_members(j, s.main_stress * j.job.order.work.safety_factor))
      f->message += fmt::format(", for it is held sideways only every {}", j.figures.place(s.main_unbraced));
    f->changes = interleaved(
        {further_jacks(j, bends_little),
         one(closer_cross_members(j, s.main_stress * j.job.order.work.safety_factor)),
         mains(stronger_channels(j.job, main, bending_of(main).modulus * s.main_stress / s.main_allowed, 0)),
         one(smaller_log(j, bends_little))});
    f->remedy = f->changes.empty()
                    ? fmt::format("mains of {:.1f} times the section modulus", s.main_stress / s.main_allowed)
                    : told(f->changes);
  }
  const auto kit = [&](Kind what, Mpa stress) {
    Finding* f = j.over("STAND-BEND", Identity{what}, {s.rail_sag_x, 0, j.bed.track.standoff}, stress,
                        s.kit_allowed, "MPa");
    if (!f) return;
    f->message = fmt::format("a {} is bent to {}, and {}", word(what), j.figures.stress(stress),
                             j.allowed(stress, s.kit_allowed));
    f->changes = one(smaller_log(j, bends_little));
    f->remedy = f->changes.empty()
                    ? fmt::format("a lighter head or log by {:.0f} %", 100 * (1 - s.kit_allowed / stress))
                    : told(f->changes);
  };
  kit(Kind::rail, s.rail_stress);
  kit(Kind::bunk, s.bunk_stress);
  if (Finding* f = j.over("STAND-BEND", Identity{Kind::main_web}, {s.sag_x, 0, 0}, s.web_stress,
                          s.web_allowed, "MPa")) {
    f->message = fmt::format("beside a jack a main's web is sheared to {}, and {}",
                             j.figures.stress(s.web_stress), j.allowed(s.web_stress, s.web_allowed));
    f->changes = interleaved({further_jacks(j, bends_little), one(smaller_log(j, bends_little))});
    f->remedy = f->changes.empty() ? fmt::format("a web {:.2f} times as thick", s.web_stress / s.web_allowed)
                                   : told(f->changes);
  }
  const TabLoads& t = j.loads.tabs;
  if (Finding* f = j.over("TAB-WORK", Identity{Kind::tab}, {s.rail_sag_x, 0, j.bed.track.standoff},
                          t.tab_stress_at_work, t.tab_allowed, "MPa")) {
    f->message = fmt::format(
        "as a log lands a tab is bent to {} by {} on its hole and the wheels, {} of that, further out; {}",
        j.figures.stress(t.tab_stress_at_work), j.figures.force(s.tab_push.load),
        j.figures.force(s.tab_push.wheels), j.allowed(t.tab_stress_at_work, t.tab_allowed));
    if (const auto length = longer_tabs(j)) {
      f->changes = {{"frame.tabs.length", j.figures.set(*length)}};
      f->remedy = fmt::format("tabs {} long, or thicker", j.figures.say(*length));
    } else {
      f->remedy = fmt::format("tabs {:.1f} times as thick", std::sqrt(t.tab_stress_at_work / t.tab_allowed));
    }
  }
  if (Finding* f = j.over("TAB-WORK", Identity{Kind::tab_weld}, {s.rail_sag_x, 0, j.bed.track.standoff},
                          t.weld_at_work, t.weld_at_work_allowed, "N/mm")) {
    f->message =
        fmt::format("as a log lands a tab's weld carries {}, and {} is allowed",
                    j.figures.along_weld(t.weld_at_work), j.figures.along_weld(t.weld_at_work_allowed));
    const Mm step = j.figures.shop_step(),
             leg =
                 std::ceil(j.job.frame.tabs.weld_leg * t.weld_at_work / t.weld_at_work_allowed / step) * step;
    f->changes = {{"frame.tabs.weld_leg", j.figures.set(leg)}};
    f->remedy = fmt::format("fillets of {}, or longer lines of weld", j.figures.say(leg));
  }
}

void judge_jacks(const LoadJudge& j) {
  const Stand& s = j.loads.stand;
  const Kg rating = j.job.frame.jack.rating;
  for (const JackLoad& jack : s.jacks) {
    const Vec3 at{jack.x, 0, 0};
    if (Finding* f = j.over("JACK-LOAD", jack.id, at, jack.most / gravity, rating, "kg")) {
      f->message = fmt::format("{}it carries {}, and is rated {}", s.log_mass > 0 ? "as a log lands " : "",
                               j.figures.mass(jack.most / gravity), j.figures.mass(rating));
      const Kg step = j.figures.jack_step();
      const Kg next = std::ceil(jack.most / gravity / step) * step;
      const Change stronger{"frame.jack.rating", j.figures.rating(next)};
      f->changes = interleaved({further_jacks(j, loads_jacks_little(rating)),
                                one(smaller_log(j, loads_jacks_little(rating))),
                                {stronger}});
      f->remedy = told(f->changes);
    }
    if (jack.lifts <= 0) continue;
    Finding& f = j.add("JACK-LIFT", Severity::warn, jack.id, at);
    f.measured = jack.lifts;
    f.margin = -jack.lifts;
    f.unit = "mm";
    f.message = fmt::format("with the head at {} the main stands {} clear of it",
                            j.figures.place(jack.lifts_at), j.figures.small(jack.lifts));
    f.remedy = fmt::format(
        "it carries nothing there: move it from {} toward its neighbours, or raise it by that much",
        j.figures.place(jack.x));
  }
}

void judge_push(const LoadJudge& j) {
  constexpr double wanted = 1.5;
  const Stand& s = j.loads.stand;
  if (s.log_mass <= 0) return;
  const auto say = [&](double factor, const std::string& message) {
    if (factor >= wanted) return;
    Finding& f = j.add("STAND-PUSH", Severity::warn, Identity{Kind::bed}, {0, s.foot_y, 0});
    f.measured = factor;
    f.limit = wanted;
    f.margin = factor - wanted;
    f.unit = "times";
    f.message = message;
    f.remedy = fmt::format(
        "chock and stake the bed, roll logs on gently from ramps that carry them, or keep logs under {}",
        j.figures.mass(s.log_mass * std::max(0.0, factor) / wanted));
  };
  say(s.push_factor,
      fmt::format("a log of {} rolled against its stops pushes {} at {} above the ground; what holds the bed "
                  "is {:.1f} times what tips it",
                  j.figures.mass(s.log_mass), j.figures.force(s.push), j.figures.say(s.push_height),
                  s.push_factor));
  say(s.roll_on_factor, fmt::format("a log of {} on the bunks' ends, outside the jacks' feet: what holds the "
                                    "bed is {:.1f} times what tips it",
                                    j.figures.mass(s.log_mass), s.roll_on_factor));
}

}  // namespace

void judge_stand(const LoadJudge& j) {
  judge_log(j);
  judge_tipping(j);
  if (!stands(j.loads.stand)) return;
  judge_sag(j);
  judge_bending(j);
  judge_jacks(j);
  judge_jack_welds(j);
  judge_push(j);
}

std::vector<Finding> load_findings(const Job& job, const Bed& bed, const LoadsResult& result,
                                   const Figures& figures, bool remedies) {
  std::vector<Finding> findings;
  const LoadJudge judge{job, bed, result, figures, findings, remedies};
  judge_tow(judge);
  judge_stand(judge);
  judge_details(judge);
  sort_findings(findings, all_rules());
  return findings;
}

}  // namespace bedwright
