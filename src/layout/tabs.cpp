// Mounting tabs and the track bolts through them.
//
// A tab is laid out where the tape has a mark, so the tape's rounding is a real offset
// between rail hole and tab hole. Errors of section length and joint gaps add up from
// the place where the track is pinned (params/datum.h). Each bolt carries both.
#include <fmt/format.h>

#include <cmath>
#include <map>

#include "bed/names.h"
#include "bed/rail_gaps.h"
#include "bed/stack_up.h"
#include "layout/builder.h"
#include "params/datum.h"

namespace bedwright {
namespace {

// A track hole further than this from every tab of an existing frame has none:
// no slot a shop cuts reaches so far.
constexpr Mm tab_reach = 2 * inch;

struct TabParts {
  int tab = -1;
  int pad = -1;
};

// Distance from the web's back out to the hole line: where it was measured on a frame that
// exists, else under the track's holes.
Mm hole_from_web(const Builder& b) {
  if (b.frame.tabs.existing_line) return *b.frame.tabs.existing_line;
  return tidy(b.kit.gauge / 2 - b.kit.mounting.line - b.frame.main.spacing / 2);
}

// A tab as it is to be when the track goes on.
struct Planned {
  Mm x = 0;  // its hole, world
  int number = 0;
  Mm slot_length = 0;
  bool fresh = false;             // made for a frame that stands
  std::optional<Mm> height = {};  // its top, where it was measured
  std::optional<Mm> shim = {};    // under the rail there, where all were measured
};

// Parts of one kind of tab: all alike but for slots that were filed and tabs that are new.
class PartsOfTabs {
 public:
  explicit PartsOfTabs(Builder& b) : b_(b) {}
  TabParts of(const Planned& tab);

 private:
  TabParts make(const Planned& tab, int filed);
  Builder& b_;
  struct Made {
    Mm slot_length = 0;
    bool fresh = false;
    TabParts parts;
  };
  std::vector<Made> made_;
  int filed_ = 0;
};

TabParts PartsOfTabs::of(const Planned& tab) {
  for (const Made& m : made_)
    if (m.fresh == tab.fresh && std::abs(m.slot_length - tab.slot_length) < same_place) return m.parts;
  const bool filed = std::abs(tab.slot_length - b_.frame.tabs.slot_length) > same_place;
  made_.push_back({tab.slot_length, tab.fresh, make(tab, filed ? ++filed_ : 0)});
  return made_.back().parts;
}

TabParts PartsOfTabs::make(const Planned& tab, int filed) {
  Builder& b = b_;
  const FrameTabs& t = b.frame.tabs;
  const Mm half = t.length / 2, hole = hole_from_web(b);
  const auto tab_hole = [&](Vec2 at, Process process) {
    return Hole{at, t.hole_diameter, tab.slot_length, 0, process, Kind::track_bolt};
  };
  const auto add = [&](Kind kind, Form form) {
    const Identity id{kind, Side::middle, filed, tab.fresh ? 1 : 0};
    return tab.fresh ? b.add_new(id, b.frame.grade, Origin::made, std::move(form))
                     : b.add(id, b.frame.grade, Origin::made, std::move(form));
  };
  TabParts parts;
  if (t.style == TabStyle::clip) {
    const Member clip{b.section(t.clip->section),
                      t.length,
                      0,
                      0,
                      {{Face::flat_leg, tab_hole({half, hole}, Process::drilled)}}};
    parts.tab = add(Kind::tab, clip);
    return parts;
  }
  const Plate plate{rectangle({-half, -t.plate->inboard}, {half, t.plate->outboard}),
                    t.plate->plate_thickness,
                    {tab_hole({0, hole}, Process::cut)}};
  parts.tab = add(Kind::tab, plate);
  if (t.plate->pad_thickness > same_place) {
    const Mm pad_half = t.plate->pad_width / 2;
    const Plate pad{rectangle({-half, -pad_half}, {half, pad_half}),
                    t.plate->pad_thickness,
                    {tab_hole({0, 0}, Process::cut)}};
    parts.pad = add(Kind::tab_pad, pad);
  }
  return parts;
}

struct Tab {
  Mm x = 0;  // of its hole, where it was meant to be
  int item = -1, pad = -1;
  bool fresh = false;
  std::optional<Mm> shim;
  bool used = false;
};

// Down the web's back at both ends of a clip, as far as it reaches below the main's top: of a
// tube, where its side is flat.
std::vector<WeldRun> clip_runs(const Builder& b, Side side, Mm x, Mm below) {
  std::vector<WeldRun> runs;
  const Mm from = outer_corner(b.main_section()), to = std::min(below, b.main_section().depth - from);
  if (to - from <= same_place) return runs;
  const Mm y = b.web_back(side);
  for (const double end : {-1.0, 1.0}) {
    const Mm at = x + end * b.frame.tabs.length / 2;
    runs.push_back({{at, y, -from}, {at, y, -to}, {0, outward(side), 0}, {end, 0, 0}});
  }
  return runs;
}

// Across the flange at both ends of a plate, as far as it reaches in from the web's back: of a
// tube, where its top is flat.
std::vector<WeldRun> flange_runs(const Builder& b, Side side, Vec3 moved, Mm inboard) {
  std::vector<WeldRun> runs;
  const Section& main = b.main_section();
  const Mm from = outer_corner(main), to = std::min(inboard, main.flange - from);
  if (to - from <= same_place) return runs;
  const Mm outer = b.web_back(side) + moved.y - outward(side) * from,
           inner = b.web_back(side) + moved.y - outward(side) * to;
  for (const double end : {-1.0, 1.0}) {
    const Mm at = moved.x + end * b.frame.tabs.length / 2;
    runs.push_back({{at, outer, 0}, {at, inner, 0}, {0, 0, 1}, {end, 0, 0}});
  }
  return runs;
}

// Along both sides of a pad, on the plate under it.
std::vector<WeldRun> pad_runs(const Builder& b, Vec3 at) {
  std::vector<WeldRun> runs;
  const Mm half = b.frame.tabs.length / 2;
  for (const double side : {-1.0, 1.0}) {
    const Mm y = at.y + side * b.frame.tabs.plate->pad_width / 2;
    runs.push_back({{at.x - half, y, at.z}, {at.x + half, y, at.z}, {0, 0, 1}, {0, side, 0}});
  }
  return runs;
}

// `found`: where it stands against where it was laid out.
Tab place_tab(Builder& b, const TabParts& parts, Side side, int number, Mm x, Vec2 found) {
  const FrameTabs& t = b.frame.tabs;
  const double out = outward(side);
  const Identity id{Kind::tab, side, number};
  const Vec3 moved{x + found.x, out * found.y, 0};
  Tab tab;
  tab.x = x;
  const int main = b.main(side);
  if (t.style == TabStyle::clip) {
    tab.item = b.place(
        parts.tab, id,
        {moved + Vec3{out * t.length / 2, b.web_back(side), t.clip->standoff}, {-out, 0, 0}, {0, out, 0}});
    const Section& clip = b.section(t.clip->section);
    b.weld(tab.item, main, t.weld_leg, WeldLine::clip_ends,
           {std::min(clip.web, b.main_section().web), clip.web},
           clip_runs(b, side, moved.x, clip.depth - t.clip->standoff));
    return tab;
  }
  tab.item = b.place(parts.tab, id, {moved + Vec3{0, b.web_back(side), 0}, {out, 0, 0}, {0, out, 0}});
  // The plate covers no more of the flange than it reaches inboard.
  const Section& section = b.main_section();
  b.weld(tab.item, main, t.weld_leg, WeldLine::across_flange,
         {std::min(t.plate->plate_thickness, flange_steel(section)), t.plate->plate_thickness},
         flange_runs(b, side, moved, t.plate->inboard));
  if (parts.pad >= 0) {
    tab.pad = b.place(parts.pad, {Kind::tab_pad, side, number},
                      {moved + Vec3{0, b.web_back(side) + out * hole_from_web(b), t.plate->plate_thickness},
                       {out, 0, 0},
                       {0, out, 0}});
    // Its ends are flush with the plate's and leave a fillet no ledge; its sides do not.
    b.weld(tab.pad, tab.item, t.weld_leg, WeldLine::pad_edges,
           {std::min(t.plate->pad_thickness, t.plate->plate_thickness), t.plate->pad_thickness},
           pad_runs(b, b.bed.items[tab.pad].placement.origin));
  }
  return tab;
}

// How far the rail's hole may be from the tab's: what the rails add up from the
// datum, what the tab's own making adds.
std::vector<Contribution> stack_up(const Builder& b, Side side, int section, Mm within, bool measured) {
  const bool from_rear_end = held_from_rear_end(b.kit.mounting, b.kit.rail.turned && side == Side::right,
                                                within, b.track().lengths[static_cast<std::size_t>(section)]);
  const Accumulated a = accumulated(b.order.track.datum, b.track().sections, section, from_rear_end);
  const KitRail& r = b.kit.rail;
  const Tolerances& t = b.order.tolerances;
  std::vector<Contribution> all =
      along_track({a.sections, a.joints, a.direction, r.length_tolerance, r.joint_gap_plus});
  const auto both = [&](const std::string& what, Mm x, Mm y) {
    if (x > 0 || y > 0) all.push_back({what, x, x, y, y, 0, 0});
  };
  both("hole in the rail", r.hole_tolerance, r.hole_tolerance);
  both("gauge", 0, t.gauge / 2);
  if (!measured) {
    both("tape reading", b.order.order.tape / 2, b.order.order.tape / 2);
    both("weld placement", t.weld_placement, t.weld_placement);
    both("hole in the tab", t.cut_position, t.cut_position);
  } else {
    both("measured tab", t.existing_tab, t.existing_tab);
  }
  return all;
}

// Where each tab was found that the order says was found elsewhere than laid out.
using Found = std::map<Identity, const TabFound*>;
Found found_tabs(const Builder& b) {
  Found found;
  for (const TabFound& f : b.order.tabs_found) found[tab_called(f.tab.text)] = &f;
  return found;
}

// A side's tabs that stand, as they are to be: those to be cut off left out, filed slots at
// their length, new ones numbered on behind the last.
std::vector<Planned> on_a_standing_frame(const Builder& b, Side side) {
  const FrameTabs& t = b.frame.tabs;
  const OneSideTabs tabs = one_side(t, side == Side::left ? t.left : t.right);
  std::vector<Mm> off = tabs.to_cut_off, on = tabs.to_add;
  for (const TabReplaced& r : tabs.to_replace) {
    off.push_back(r.at);
    on.push_back(r.with);
  }
  std::vector<Planned> all;
  int number = 0;
  const auto at = [](Mm x) { return [x](Mm y) { return std::abs(x - y) < same_place; }; };
  for (const Mm x : tabs.existing) {
    ++number;
    if (std::any_of(off.begin(), off.end(), at(x))) continue;
    Planned tab{tidy(b.main_start() + x), number, t.slot_length};
    for (const std::vector<TabFiled>* filed : {&tabs.filed, &tabs.to_file})
      for (const TabFiled& f : *filed)
        if (std::abs(f.at - x) < same_place) tab.slot_length = f.slot_length;
    for (const TabHeight& h : t.heights)
      if (std::abs(h.at - x) < same_place && (side == Side::left ? h.left : h.right))
        tab.height = side == Side::left ? h.left : h.right;
    all.push_back(tab);
  }
  for (const Mm x : on) all.push_back({tidy(b.main_start() + x), ++number, t.slot_length, true});
  return all;
}

// Where a side's tabs go: under every track hole to the nearest mark of the tape, front
// to rear, or where the existing frame has them.
std::vector<Planned> planned_tabs(const Builder& b, Side side) {
  if (!b.frame.tabs.existing.empty()) return on_a_standing_frame(b, side);
  std::vector<Planned> all;
  for (std::size_t s = 0; s < b.track().starts.size(); ++s)
    for (Mm within : b.track().holes[s].mounting(side))
      all.push_back({on_tape(b.track().starts[s] + within, b.order.order.tape),
                     static_cast<int>(all.size()) + 1, b.frame.tabs.slot_length});
  return all;
}

// Of the tabs that were measured and lie under the rails: the packs that lay these straight.
void plan_shims(const Builder& b, std::vector<Planned>& left, std::vector<Planned>& right) {
  const Mm half = b.frame.tabs.length / 2, thinnest = b.order.order.figures().shim_step();
  const auto under_rails = [&](std::vector<Planned>& planned) {
    std::vector<Planned*> tabs;
    for (Planned& tab : planned)
      if (tab.height && tab.x > -half && tab.x < b.track().total_length + half) tabs.push_back(&tab);
    return tabs;
  };
  const auto tops = [](const std::vector<Planned*>& tabs) {
    std::vector<TabTop> all;
    for (const Planned* tab : tabs) all.push_back({tab->x, *tab->height});
    return all;
  };
  const auto put = [&](const std::vector<Planned*>& tabs, const std::vector<Mm>& gaps) {
    for (std::size_t i = 0; i < tabs.size(); ++i) tabs[i]->shim = pack_for(gaps[i], thinnest);
  };
  const std::vector<Planned*> on_left = under_rails(left), on_right = under_rails(right);
  const RailGaps gaps = rail_gaps(tops(on_left), tops(on_right));
  put(on_left, gaps.left);
  put(on_right, gaps.right);
}

Tab* nearest_free(std::vector<Tab>& tabs, Mm x) {
  Tab* best = nullptr;
  for (Tab& tab : tabs)
    if (!tab.used && std::abs(tab.x - x) < (best ? std::abs(best->x - x) : tab_reach)) best = &tab;
  return best;
}

void lay_side(Builder& b, PartsOfTabs& parts, const std::vector<Planned>& planned, Side side, Found& found) {
  std::vector<Tab> tabs;
  for (const Planned& tab : planned) {
    const auto it = found.find({Kind::tab, side, tab.number});
    Vec2 off;
    if (it != found.end()) {
      off = {it->second->x, it->second->y};
      found.erase(it);
    }
    tabs.push_back(place_tab(b, parts.of(tab), side, tab.number, tab.x, off));
    tabs.back().fresh = tab.fresh;
    tabs.back().shim = tab.shim;
  }
  int number = 0;
  for (int s = 0; s < b.track().sections; ++s) {
    const std::vector<Mm>& mounting = b.track().holes[static_cast<std::size_t>(s)].mounting(side);
    for (std::size_t hole = 0; hole < mounting.size(); ++hole) {
      const Mm within = mounting[hole], x = b.track().starts[static_cast<std::size_t>(s)] + within;
      BoltPlan bolt;
      bolt.id = {Kind::track_bolt, side, ++number};
      for_hole(bolt, b.kit.mounting.hole);
      bolt.length = b.order.bolts.track;
      bolt.seat = {x, b.line(side, b.kit.mounting.line), b.rail_seat()};
      bolt.direction = {0, 0, -1};
      bolt.plies = {{b.bed.item({Kind::rail, side, s + 1}), b.rail_holes.of(side, s).mounting[hole]}};
      Tab* tab = nearest_free(tabs, x);
      bolt.stack_up = stack_up(b, side, s, within, stands(b.frame) && !(tab && tab->fresh));
      if (!tab) {
        b.missing_bolt(bolt);
        continue;
      }
      tab->used = true;
      bolt.shim = tab->shim;
      const Mm pad = b.order.tolerances.pad_placement;
      if (tab->pad >= 0) bolt.plies.push_back({tab->pad, 0, {either_way("pad on its plate", pad, pad)}});
      bolt.plies.push_back({tab->item, 0});
      b.bolt(bolt);
    }
  }
}

}  // namespace

void lay_tabs(Builder& b) {
  PartsOfTabs parts(b);
  std::vector<Planned> left = planned_tabs(b, Side::left), right = planned_tabs(b, Side::right);
  plan_shims(b, left, right);
  auto found = found_tabs(b);
  lay_side(b, parts, left, Side::left, found);
  lay_side(b, parts, right, Side::right, found);
  const auto last = [](const std::vector<Planned>& tabs) { return tabs.empty() ? 0 : tabs.back().number; };
  for (const auto& [id, tab] : found)
    b.problems.push_back(
        {tab->tab.mark, "there is no tab " + tab->tab.text,
         fmt::format("tabs run L1 to L{} and R1 to R{}, from the front", last(left), last(right))});
}

}  // namespace bedwright
