// Fills findings about loads, and works out the changes they propose by trying.
#include "rules/loads/judge.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "loads/steel.h"
#include "loads/travel_name.h"
#include "rules/scene.h"

namespace bedwright {

Finding& LoadJudge::add(const char* code, Severity severity, Subject subject, Vec3 at) const {
  return findings.emplace_back(finding_of(code, severity, std::move(subject), at));
}

// An order in inches prints pounds and ksi; lengths stay millimetres in every finding.
void LoadJudge::fill(Finding& f, double measured, double most, const std::string& unit) const {
  const PrintedUnit printed = unit == "mm" ? PrintedUnit{1, unit} : figures.printed(unit);
  f.measured = measured / printed.one;
  f.limit = most / printed.one;
  f.margin = (most - measured) / printed.one;
  f.unit = printed.name;
}

Finding* LoadJudge::over(const char* code, Subject subject, Vec3 at, double measured, double most,
                         const char* unit) const {
  if (measured <= most) return nullptr;
  Finding& f = add(code, Severity::stop, std::move(subject), at);
  fill(f, measured, most, unit);
  return &f;
}

std::string LoadJudge::allowed(Mpa measured, Mpa most) const {
  std::string text = figures.stress(most) + " is allowed";
  if (figures.stress(measured) != figures.stress(most)) return text;
  return text + fmt::format(", which that passes by {:.2g} %", 100 * (measured / most - 1));
}

std::vector<const Section*> stronger_channels(const Job& job, const Section& now, double modulus,
                                              Mm4 inertia) {
  std::vector<const Section*> found;
  for (const Section& s : job.catalog.sections) {
    if (s.shape != now.shape || !s.published || s.name == now.name) continue;
    const Bending b = bending_of(s);
    if (b.modulus >= modulus && b.inertia >= inertia) found.push_back(&s);
  }
  // One of the same depth first: what is cut, bolted and welded to it then still fits.
  const auto order = [&](const Section* s) {
    return std::pair(std::abs(s->depth - now.depth) > same_place, s->published->kg_per_m);
  };
  std::stable_sort(found.begin(), found.end(),
                   [&](const Section* a, const Section* b) { return order(a) < order(b); });
  found.erase(std::unique(found.begin(), found.end(),
                          [](const Section* a, const Section* b) { return a->name == b->name; }),
              found.end());
  if (found.size() > 3) found.resize(3);
  return found;
}

Subject in_travel(Kind what, const TravelCase& travel) {
  const int number = travel.bare ? 7 : 1 + 2 * static_cast<int>(travel.head) + (travel.cargo ? 1 : 0);
  return {{what, Side::middle, number}, word(what) + ", " + name(travel)};
}

std::optional<Mm> longer_tabs(const LoadJudge& judge) {
  if (!judge.remedies) return std::nullopt;
  const TabLoads& now = judge.loads.tabs;
  const Mm step = judge.figures.step(), length = judge.job.frame.tabs.length;
  const double over = std::max(now.tab_stress, now.tab_stress_at_work) / now.tab_allowed;
  Job other = judge.job;
  const Mm first = std::ceil(length * over / step) * step;
  const auto at = [&](int i) { return first + i * 2 * step; };
  const auto holds = [&](int i) {
    other.frame.tabs.length = at(i);
    const TabLoads t =
        tab_loads(other, judge.bed, judge.loads.weights, stand_loads(other, judge.bed, judge.loads.weights));
    return std::max(t.tab_stress, t.tab_stress_at_work) <= t.tab_allowed;
  };
  // A stiffer tab draws more of the load, so the first may not do: halved between it and twice
  // as long, for each try bends the whole bed.
  if (holds(0)) return at(0);
  int fails = 0, does = static_cast<int>(std::floor((2 * over * length - first) / (2 * step)));
  if (does <= 0 || !holds(does)) return std::nullopt;
  while (does - fails > 1) {
    const int middle = (fails + does) / 2;
    (holds(middle) ? does : fails) = middle;
  }
  return at(does);
}

std::optional<Change> closer_cross_members(const LoadJudge& judge, Mpa strength) {
  const FrameFile& frame = judge.job.frame;
  const Mpa yield = frame_yield(frame);
  const Section& main = *judge.job.catalog.section(frame.main.section.text);
  const Mm now = judge.loads.stand.main_unbraced, step = judge.figures.place_step();
  if (strength > yield || channel_strength(main, now, yield) >= strength) return std::nullopt;
  // One member more, and another, until the bays between them are short enough.
  const Mm length = main_end(judge.job, judge.bed) - main_start(judge.job);
  for (double bays = std::round(length / now) + 1; length / bays > step; ++bays) {
    const Mm apart = std::ceil(length / bays / step) * step;
    if (channel_strength(main, apart, yield) >= strength)
      return Change{"frame.cross_member.max_spacing", judge.figures.set(apart)};
  }
  return std::nullopt;
}

// "jacks at [17 in, 120 in, 223 in]; or mains of C7x9.8; or a log of 18 in"
std::string told(const std::vector<Change>& changes) {
  std::string text;
  bool jacks = false, channel = false, log = false;
  const auto add = [&](const std::string& more) { text += (text.empty() ? "" : "; or ") + more; };
  for (const Change& c : changes) {
    if (c.key == "jacks" && !jacks) add("jacks at " + c.value), jacks = true;
    if (c.key == "frame.main.section" && !channel) add("mains of " + c.value), channel = true;
    if (c.key == "work.log.diameter" && !log) add("no log over " + c.value), log = true;
    if (c.key == "frame.cross_member.max_spacing") add("cross members no more than " + c.value + " apart");
    if (c.key == "frame.jack.rating") add("jacks rated " + c.value);
  }
  return text;
}

namespace {

constexpr std::size_t most_jack_changes = 4;

// Pairs the order lists from the front; those from the rear follow them in the job.
std::vector<Mm> listed_jacks(const Order& order) {
  std::vector<Mm> jacks = order.jacks;
  jacks.resize(jacks_listed(order));
  return jacks;
}

std::string list_of(const Figures& figures, std::vector<Mm> jacks) {
  std::sort(jacks.begin(), jacks.end());
  std::string text;
  for (Mm x : jacks) text += (text.empty() ? "" : ", ") + figures.set(x);
  return "[" + text + "]";
}

// Free of tabs' plates and of the plates of these other jacks.
bool free_for_jack(const LoadJudge& judge, Mm x, const std::vector<Mm>& others) {
  const FrameFile& frame = judge.job.frame;
  const Mm half = frame.jack.plate_length / 2;
  for (Mm other : others)
    if (std::abs(other - x) < 2 * half + inch) return false;
  for (const Bolt& bolt : judge.bed.bolts)
    if (bolt.id.kind == Kind::track_bolt &&
        std::abs(bolt.seat.x - x) < half + frame.tabs.length / 2 + inch / 4)
      return false;
  return x - half > main_start(judge.job) && x + half < main_end(judge.job, judge.bed);
}

// Middle of the longest stretch of main without a jack, ends counted as long as a span twice as long.
Mm weakest_place(const LoadJudge& judge) {
  std::vector<Mm> jacks = judge.job.order.jacks;
  std::sort(jacks.begin(), jacks.end());
  const Mm start = 0, end = judge.bed.track.total_length;
  if (jacks.empty()) return (start + end) / 2;
  Mm best = start + (jacks.front() - start) / 2, longest = 2 * (jacks.front() - start);
  const auto offer = [&](Mm length, Mm middle) {
    if (length <= longest) return;
    longest = length;
    best = middle;
  };
  for (std::size_t i = 1; i < jacks.size(); ++i)
    offer(jacks[i] - jacks[i - 1], (jacks[i] + jacks[i - 1]) / 2);
  offer(2 * (end - jacks.back()), end - (end - jacks.back()) / 2);
  return best;
}

}  // namespace

std::vector<Change> further_jacks(const LoadJudge& judge, const StandsWell& well) {
  if (!judge.remedies) return {};
  const Mm grid = judge.figures.place_step();
  const Mm middle = std::round(weakest_place(judge) / grid) * grid;
  std::vector<Change> changes;
  for (int step = 0; step < 24 && changes.size() < most_jack_changes; ++step)
    for (int way : {1, -1}) {
      if (step == 0 && way < 0) continue;
      const Mm x = middle + way * step * grid;
      if (x < 0 || !free_for_jack(judge, x, judge.job.order.jacks)) continue;
      Job other = judge.job;
      other.order.jacks.push_back(x);
      if (!well(stand_loads(other, judge.bed, judge.loads.weights))) continue;
      std::vector<Mm> listed = listed_jacks(judge.job.order);
      listed.push_back(x);
      changes.push_back({"jacks", list_of(judge.figures, listed)});
      if (changes.size() == most_jack_changes) break;
    }
  return changes;
}

std::vector<Change> jacks_near_ends(const LoadJudge& judge, const StandsWell& well) {
  if (!judge.remedies) return {};
  const Mm grid = judge.figures.place_step(), end = judge.bed.track.total_length;
  const auto& all = judge.job.order.jacks;
  const std::vector<Mm> listed = listed_jacks(judge.job.order);
  // Those worked out from the rear or between stay as the order has them.
  const std::vector<Mm> worked_out(all.begin() + static_cast<std::ptrdiff_t>(listed.size()), all.end());
  std::vector<Change> changes;
  // Each try bends the whole bed: a long track is looked over in coarser steps.
  constexpr double most_tries = 160;
  const Mm step = grid * std::max(1.0, std::ceil(end / 4 / grid / most_tries));
  for (const std::vector<Mm>& beside : {listed, std::vector<Mm>{}})
    for (Mm in = std::floor(end / 4 / grid) * grid; in >= grid && changes.size() < 2; in -= step) {
      const Mm rear = std::round((end - in) / grid) * grid;
      Job other = judge.job;
      other.order.jacks = worked_out;
      other.order.jacks.insert(other.order.jacks.end(), beside.begin(), beside.end());
      if (!free_for_jack(judge, in, other.order.jacks) || !free_for_jack(judge, rear, other.order.jacks))
        continue;
      std::vector<Mm> list = beside;
      for (std::vector<Mm>* to : {&list, &other.order.jacks}) to->insert(to->end(), {in, rear});
      if (well(stand_loads(other, judge.bed, judge.loads.weights)))
        changes.push_back({"jacks", list_of(judge.figures, list)});
    }
  return changes;
}

std::vector<Change> interleaved(const std::vector<std::vector<Change>>& kinds) {
  std::vector<Change> all;
  for (std::size_t i = 0, more = 1; more; ++i) {
    more = 0;
    for (const std::vector<Change>& kind : kinds)
      if (i < kind.size()) all.push_back(kind[i]), more = 1;
  }
  return all;
}

std::optional<Change> smaller_log(const LoadJudge& judge, const StandsWell& well) {
  if (!judge.remedies || !judge.job.order.work.log) return std::nullopt;
  const Mm grid = judge.figures.coarse_step();
  Job other = judge.job;
  Mm& diameter = other.order.work.log->diameter;
  for (diameter = std::ceil(diameter / grid - 1) * grid; diameter >= 4 * inch; diameter -= grid)
    if (well(stand_loads(other, judge.bed, judge.loads.weights)))
      return Change{"work.log.diameter", judge.figures.set(diameter)};
  return std::nullopt;
}

}  // namespace bedwright
