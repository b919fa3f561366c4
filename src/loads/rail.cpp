// Each rail section on its tabs under every load, and how it rolls on them.
#include "loads/rail.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "loads/beam.h"
#include "loads/log.h"
#include "loads/steel.h"

namespace bedwright {
namespace {

constexpr int stations_a_section = 25, head_places = 17, log_places = 9;

struct SectionOfRail {
  int item = -1;
  Mm from = 0, to = 0;
  Side side = Side::right;
  std::vector<BeamSupport> tabs;
};

// Rail sections with the tabs that a bolt holds them to.
std::vector<SectionOfRail> sections(const Bed& bed) {
  std::vector<SectionOfRail> all;
  for (const Bolt& bolt : bed.bolts) {
    if (bolt.id.kind != Kind::track_bolt || !bolt.in_place || bolt.plies.empty()) continue;
    const int item = bolt.plies.front().item;
    auto at = std::find_if(all.begin(), all.end(), [&](const SectionOfRail& r) { return r.item == item; });
    if (at == all.end()) {
      const Box3 box = bounds(bed, item);
      all.push_back({item, box.low.x, box.high.x, bolt.id.side, {}});
      at = all.end() - 1;
    }
    at->tabs.push_back({bolt.seat.x, true});
  }
  for (SectionOfRail& r : all)
    std::sort(r.tabs.begin(), r.tabs.end(),
              [](const BeamSupport& a, const BeamSupport& b) { return a.x < b.x; });
  std::erase_if(all, [](const SectionOfRail& r) { return r.tabs.size() < 2; });
  return all;
}

// The head's wheels on one side, those over this section.
std::vector<BeamLoad> wheels_on(const Job& job, const SectionOfRail& rail, Mm head) {
  const double part = 0.5 + outward(rail.side) * job.kit.head.mass_y / job.kit.gauge;
  std::vector<BeamLoad> wheels = head_wheels(job, head, part * job.kit.head.mass * gravity);
  std::erase_if(wheels, [&](const BeamLoad& w) { return w.from < rail.from || w.from > rail.to; });
  return wheels;
}

struct Answer {
  BeamCurves curves;
  BeamState state;
  LoadField field;
};
Answer answer(const Beam& beam, const std::vector<BeamLoad>& loads) {
  Answer a;
  a.field = beam.field(loads);
  a.state = beam.solve(a.field).value();  // bolted down: it cannot tip
  beam.bend(a.field, a.state, a.curves);
  return a;
}

// Least and most at stations or tabs, over all ways the log lies.
struct Range {
  Eigen::VectorXd least, most;
  void take(const Eigen::VectorXd& values) {
    if (least.size() == 0) least = most = values;
    least = least.cwiseMin(values);
    most = most.cwiseMax(values);
  }
};

std::vector<Mm> stations_of(const Bed& bed, const SectionOfRail& rail) {
  std::vector<Mm> all;
  for (const BeamSupport& tab : rail.tabs) all.push_back(tab.x);
  for (const BunkPlace& bunk : bed.track.bunks)
    if (bunk.x >= rail.from && bunk.x <= rail.to) all.push_back(bunk.x);
  for (int i = 0; i < stations_a_section; ++i)
    all.push_back(rail.from + i * (rail.to - rail.from) / (stations_a_section - 1));
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end(), [](Mm a, Mm b) { return b - a < 0.1; }), all.end());
  return all;
}

// Against roll at `x`, N mm per radian: to the nearest bunk each way the rail twists; a bunk
// bolted to both rails, which roll outward alike, bends evenly. `most`: the stiffer way alone.
struct Hold {
  double all = 0, most = 0;
};
Hold hold_at(const Job& job, const Bed& bed, const SectionOfRail& rail, Mm x) {
  if (bed.track.bunks.empty()) return {};
  const double twist = shear_modulus * torsion_of(std::get<Member>(bed.part_of(rail.item).form).section);
  const int item = bed.item({Kind::bunk, Side::middle, 1});
  const double bunk = 2 * steel_modulus *
                      bending_of(std::get<Member>(bed.part_of(item).form).section).inertia /
                      (job.kit.gauge - 2 * job.kit.bunk.line);
  Hold hold;
  for (double way : {-1.0, 1.0}) {
    Mm nearest = std::numeric_limits<double>::infinity();
    for (const BunkPlace& b : bed.track.bunks)
      if (b.x >= rail.from && b.x <= rail.to && way * (b.x - x) >= 0)
        nearest = std::min(nearest, way * (b.x - x));
    if (!std::isfinite(nearest)) continue;
    const double stiffness = 1 / (nearest / twist + 1 / bunk);
    hold.all += stiffness;
    hold.most = std::max(hold.most, stiffness);
  }
  return hold;
}

// The push on this tab, where the rail's reaction is `load`, `wheels` of it from the wheels.
TabPush push_on(const TabArm& arm, const Hold& hold, Newton load, Newton wheels) {
  const Mm turning = turning_arm(arm, hold.all);
  const double held =
      hold.all > 0 ? std::max(0.0, wheels) * (arm.wheel_off - turning) * hold.most / hold.all : 0;
  return {load, wheels, std::max(0.0, wheels) * turning, held};
}

double bends(const TabArm& arm, const TabPush& push) { return push.load * arm.arm + push.turning; }

void bend(const Job& job, const Bed& bed, const SectionOfRail& rail, const LogOnBunks& log,
          const std::vector<std::vector<BeamLoad>>& lying, const std::vector<std::vector<BeamLoad>>& landing,
          const Bending& section, RailBending& out) {
  const Beam beam(rail.tabs, stations_of(bed, rail), steel_modulus * section.inertia);
  const Answer itself = answer(beam, {{rail.from, rail.to, mass(bed.part_of(rail.item)) * gravity}});
  // Bolted down, answers add up: one for each bunk under 1 N serves for every way the log lies.
  const double part = 0.5 + outward(rail.side) * log.y() / job.kit.gauge;
  std::vector<std::pair<Mm, Answer>> bunks;
  for (const BunkPlace& bunk : bed.track.bunks)
    if (bunk.x >= rail.from && bunk.x <= rail.to)
      bunks.emplace_back(bunk.x, answer(beam, {{bunk.x, bunk.x, 1}}));
  const Eigen::Index tabs = static_cast<Eigen::Index>(rail.tabs.size());
  const auto under = [&](const std::vector<BeamLoad>& place, const auto& figure, Eigen::Index size) {
    Eigen::VectorXd all = Eigen::VectorXd::Zero(size);
    for (const BeamLoad& load : place)
      for (const auto& [x, unit] : bunks)
        if (std::abs(x - load.from) < same_place) all += load.force * part * figure(unit);
    return all;
  };
  const Eigen::Index n = static_cast<Eigen::Index>(beam.stations().size());
  Range down, moment, push;
  for (const auto& place : lying)
    down.take(under(
        place, [](const Answer& a) -> const Eigen::VectorXd& { return a.curves.down; }, n));
  for (const auto& place : landing) {
    moment.take(under(
        place, [](const Answer& a) -> const Eigen::VectorXd& { return a.curves.moment; }, n));
    push.take(under(
        place,
        [](const Answer& a) {
          return Eigen::Map<const Eigen::VectorXd>(a.state.reactions.data(),
                                                   static_cast<Eigen::Index>(a.state.reactions.size()));
        },
        tabs));
  }
  const TabArm arm = tab_arm(job);
  std::vector<Hold> holds;
  for (const BeamSupport& tab : rail.tabs) holds.push_back(hold_at(job, bed, rail, tab.x));
  const auto at_place = [&](const Eigen::VectorXd& values, Mm x) {
    const auto right = std::clamp<std::ptrdiff_t>(
        std::upper_bound(beam.stations().begin(), beam.stations().end(), x) - beam.stations().begin(), 1,
        n - 1);
    const double between =
        (x - beam.stations()[right - 1]) / (beam.stations()[right] - beam.stations()[right - 1]);
    return (1 - between) * values[right - 1] + between * values[right];
  };
  const Mm half = job.kit.head.wheel_base / 2;
  const Mm from = std::max(rail.from - half, bed.track.head_from),
           to = std::min(rail.to + half, bed.track.head_to);
  for (int i = 0; i < head_places && from <= to; ++i) {
    const std::vector<BeamLoad> wheels = wheels_on(job, rail, from + i * (to - from) / (head_places - 1));
    const Answer head = answer(beam, wheels);
    for (const Eigen::VectorXd* log_down : {&down.least, &down.most}) {
      Eigen::Index at = 0;
      const Mm sag = (itself.curves.down + head.curves.down + *log_down).cwiseAbs().maxCoeff(&at);
      if (sag > out.sag) out.sag = sag, out.sag_x = beam.stations()[at];
    }
    for (const Eigen::VectorXd* log_moment : {&moment.least, &moment.most}) {
      out.moment = std::max(
          out.moment, (itself.curves.moment + head.curves.moment + *log_moment).lpNorm<Eigen::Infinity>());
      for (const BeamLoad& wheel : wheels)
        out.moment =
            std::max(out.moment, std::abs(at_place(itself.curves.moment, wheel.from) +
                                          beam.bending_at(wheel.from, beam.field({}), wheels, head.state) +
                                          at_place(*log_moment, wheel.from)));
    }
    for (Eigen::Index k = 0; k < tabs; ++k) {
      const Newton of_wheels = head.state.reactions[k];
      const TabPush p =
          push_on(arm, holds[k], itself.state.reactions[k] + of_wheels + push.most[k], of_wheels);
      out.tab_load = std::max(out.tab_load, p.load);
      if (bends(arm, p) > bends(arm, out.tab)) out.tab = p;
    }
  }
}

}  // namespace

TabArm tab_arm(const Job& job) {
  const FrameTabs& t = job.frame.tabs;
  const bool clip = t.style == TabStyle::clip;
  const Mm thick = clip ? job.catalog.section(t.clip->section.text)->web : t.plate->plate_thickness;
  TabArm a;
  a.arm = std::max(
      0.0, job.kit.gauge / 2 - job.kit.mounting.line - job.frame.main.spacing / 2 - (clip ? thick : 0));
  a.modulus = t.length * thick * thick / 6;
  a.stiffness = steel_modulus * t.length * thick * thick * thick / 12;
  a.wheel_off = std::max(0.0, job.kit.mounting.line - job.kit.rail.thickness / 2);
  return a;
}

Mm turning_arm(const TabArm& tab, double hold) {
  const double taken =
      hold * (tab.arm * tab.arm / 2 + tab.wheel_off * tab.arm) / (hold * tab.arm + tab.stiffness);
  return std::max(0.0, tab.wheel_off - taken);
}

RailBending bend_rails(const Job& job, const Bed& bed, const LogOnBunks& log) {
  RailBending out;
  const std::vector<SectionOfRail> rails = sections(bed);
  if (rails.empty()) return out;
  const Bending section = bending_of(std::get<Member>(bed.part_of(rails.front().item).form).section);
  std::vector<std::vector<BeamLoad>> lying = log.places(log_places),
                                     landing = log.places(log_places, job.order.work.landing);
  for (auto* places : {&lying, &landing})
    if (places->empty()) places->push_back({});  // it lies nowhere: STAND-LOG says so
  for (const SectionOfRail& rail : rails) bend(job, bed, rail, log, lying, landing, section, out);
  out.stress = out.moment / section.modulus;
  return out;
}

TabPush tab_push_locked(const Job& job, const Bed& bed) {
  const TabArm arm = tab_arm(job);
  TabPush most;
  for (const SectionOfRail& rail : sections(bed)) {
    const Bending section = bending_of(std::get<Member>(bed.part_of(rail.item).form).section);
    const Beam beam(rail.tabs, {}, steel_modulus * section.inertia);
    const BeamState itself =
                        beam.solve(beam.field({{rail.from, rail.to, mass(bed.part_of(rail.item)) * gravity}}))
                            .value(),
                    head = beam.solve(beam.field(wheels_on(job, rail, bed.track.head_lock))).value();
    for (std::size_t k = 0; k < rail.tabs.size(); ++k) {
      const TabPush p = push_on(arm, hold_at(job, bed, rail, rail.tabs[k].x),
                                itself.reactions[k] + head.reactions[k], head.reactions[k]);
      if (bends(arm, p) > bends(arm, most)) most = p;
    }
  }
  return most;
}

}  // namespace bedwright
