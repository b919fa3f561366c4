// Each rail section on its tabs under every load, and the bunk that bends most.
#include "loads/rail.h"

#include <algorithm>
#include <cmath>

#include "loads/beam.h"
#include "loads/log.h"
#include "loads/steel.h"

namespace bedwright {
namespace {

constexpr int stations_a_section = 25, head_places = 17;

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

// What a section carries at rest: itself and, on every bunk, the most of the log
// any bunk carries.
std::vector<BeamLoad> resting(const Bed& bed, const SectionOfRail& rail, const Stand& stand, Mm gauge) {
  const double part = 0.5 + outward(rail.side) * stand.log_y / gauge;
  std::vector<BeamLoad> loads{{rail.from, rail.to, mass(bed.part_of(rail.item)) * gravity}};
  for (const BunkPlace& bunk : bed.track.bunks)
    if (bunk.x >= rail.from && bunk.x <= rail.to) loads.push_back({bunk.x, bunk.x, stand.bunk_load * part});
  return loads;
}

void bend(const Job& job, const Bed& bed, const SectionOfRail& rail, const Stand& stand,
          const Bending& section, RailBending& out) {
  std::vector<Mm> stations;
  for (const BeamSupport& tab : rail.tabs) stations.push_back(tab.x);
  for (int i = 0; i < stations_a_section; ++i)
    stations.push_back(rail.from + i * (rail.to - rail.from) / (stations_a_section - 1));
  std::sort(stations.begin(), stations.end());
  stations.erase(std::unique(stations.begin(), stations.end(), [](Mm a, Mm b) { return b - a < 0.1; }),
                 stations.end());
  const Beam beam(rail.tabs, stations, steel_modulus * section.inertia);
  const Mm gauge = job.kit.gauge;
  const LoadField still = beam.field(resting(bed, rail, stand, gauge));
  const Mm half = job.kit.head.wheel_base / 2;
  const Mm from = std::max(rail.from - half, bed.track.head_from),
           to = std::min(rail.to + half, bed.track.head_to);
  BeamCurves bent;
  for (int i = 0; i < head_places && from <= to; ++i) {
    const std::vector<BeamLoad> wheels = wheels_on(job, rail, from + i * (to - from) / (head_places - 1));
    const LoadField all = still + beam.field(wheels);
    const BeamState state = *beam.solve(all);  // bolted down: it cannot tip
    beam.bend(all, state, bent);
    for (Eigen::Index k = 0; k < bent.down.size(); ++k) {
      if (std::abs(bent.down[k]) > out.sag) {
        out.sag = std::abs(bent.down[k]);
        out.sag_x = beam.stations()[k];
      }
      out.moment = std::max(out.moment, std::abs(bent.moment[k]));
    }
    for (const BeamLoad& wheel : wheels)
      out.moment = std::max(out.moment, std::abs(beam.bending_at(wheel.from, still, wheels, state)));
    for (Newton r : state.reactions) out.tab_load = std::max(out.tab_load, r);
  }
}

// A bunk as a simple beam between its bolts, the log's load at one point.
Mpa bend_bunk(const Job& job, const Bed& bed, const Stand& stand) {
  if (stand.bunk_load <= 0) return 0;
  const Member& bunk = std::get<Member>(bed.part_of(bed.item({Kind::bunk, Side::middle, 1})).form);
  const Mm half = job.kit.gauge / 2 - job.kit.bunk.line, y = std::clamp(stand.log_y, -half, half);
  return stand.bunk_load * (half - y) * (half + y) / (2 * half) / bending_of(bunk.section).modulus;
}

}  // namespace

RailBending bend_rails(const Job& job, const Bed& bed, const Stand& stand) {
  RailBending out;
  const std::vector<SectionOfRail> rails = sections(bed);
  if (rails.empty()) return out;
  const Bending section = bending_of(std::get<Member>(bed.part_of(rails.front().item).form).section);
  for (const SectionOfRail& rail : rails) bend(job, bed, rail, stand, section, out);
  out.stress = out.moment / section.modulus;
  out.bunk_stress = bend_bunk(job, bed, stand);
  return out;
}

Newton tab_load_locked(const Job& job, const Bed& bed) {
  Newton most = 0;
  for (const SectionOfRail& rail : sections(bed)) {
    const Bending section = bending_of(std::get<Member>(bed.part_of(rail.item).form).section);
    const Beam beam(rail.tabs, {}, steel_modulus * section.inertia);
    std::vector<BeamLoad> loads = wheels_on(job, rail, bed.track.head_lock);
    loads.push_back({rail.from, rail.to, mass(bed.part_of(rail.item)) * gravity});
    const BeamState state = beam.solve(beam.field(loads)).value();  // bolted down: it cannot tip
    for (Newton r : state.reactions) most = std::max(most, r);
  }
  return most;
}

}  // namespace bedwright
