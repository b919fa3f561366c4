// Gathers the steps from the frame's file, side by side, and from the bed's bolts.
#include "sheets/frame/changes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "bed/names.h"
#include "rules/fit/standing_work.h"
#include "rules/height/height.h"
#include "units/tape.h"

namespace bedwright {
namespace {

bool is_same(Mm a, Mm b) { return std::abs(a - b) < same_place; }

class Steps {
 public:
  Steps(const Job& job, const Bed& bed) : job_(job), bed_(bed), frame_(job.frame) {}

  std::vector<FrameChange> all() {
    cut_off();
    filed();
    jacks();
    added();
    shims();
    std::stable_sort(all_.begin(), all_.end(), [](const FrameChange& a, const FrameChange& b) {
      if (a.kind != b.kind) return a.kind < b.kind;
      if (std::abs(a.at - b.at) > same_place) return a.at < b.at;
      return a.down.value_or(0) < b.down.value_or(0) - same_place;
    });
    return std::move(all_);
  }

 private:
  // Beside the other side's where that wants the same at the same place.
  void put(FrameChange step) {
    for (FrameChange& s : all_)
      if (s.kind == step.kind && is_same(s.at, step.at) && is_same(s.size, step.size) &&
          is_same(s.down.value_or(0), step.down.value_or(0)) &&
          is_same(s.from.value_or(0), step.from.value_or(0)) && is_same(s.bolt_length, step.bolt_length)) {
        // Asked for twice (cut off, and replaced) it is done once.
        for (const Identity& id : step.items)
          if (std::find(s.items.begin(), s.items.end(), id) == s.items.end()) s.items.push_back(id);
        return;
      }
    all_.push_back(std::move(step));
  }

  static int number_at(const OneSideTabs& tabs, Mm at) {
    for (std::size_t i = 0; i < tabs.existing.size(); ++i)
      if (is_same(tabs.existing[i], at)) return static_cast<int>(i) + 1;
    throw std::logic_error("a change of a tab that does not stand");
  }

  void cut_off() {
    for (const Side side : both_sides) {
      const OneSideTabs tabs = tabs_on(frame_.tabs, side);
      std::vector<Mm> off = tabs.to_cut_off;
      for (const TabReplaced& r : tabs.to_replace) off.push_back(r.at);
      for (const Mm at : off) put({ChangeKind::cut_off, {{Kind::tab, side, number_at(tabs, at)}}, at});
    }
  }

  void filed() {
    for (const Side side : both_sides) {
      const OneSideTabs tabs = tabs_on(frame_.tabs, side);
      for (const TabFiled& f : tabs.to_file) {
        Mm now = frame_.tabs.slot_length;
        for (const TabFiled& done : tabs.filed)
          if (is_same(done.at, f.at)) now = done.slot_length;
        FrameChange step{ChangeKind::file, {{Kind::tab, side, number_at(tabs, f.at)}}, f.at};
        step.size = f.slot_length;
        step.from = now;
        put(std::move(step));
      }
    }
  }

  void jacks() {
    const FrameJack& j = frame_.jack;
    const auto pair = [](std::size_t index) {
      const int number = static_cast<int>(index) + 1;
      return std::vector<Identity>{{Kind::jack, Side::left, number}, {Kind::jack, Side::right, number}};
    };
    for (const JackMoved& m : j.to_move) all_.push_back({ChangeKind::unbolt_jack, {}, m.from});
    const Member& main = std::get<Member>(bed_.part_of(bed_.item({Kind::main, Side::left})).form);
    for (const FaceHole& h : main.holes) {
      if (h.hole.process != Process::on_site) continue;
      FrameChange step{ChangeKind::drill, {{Kind::main, Side::left}, {Kind::main, Side::right}}, h.hole.at.x};
      step.down = main.section.depth / 2 - h.hole.at.y;
      step.size = h.hole.diameter;
      all_.push_back(std::move(step));
    }
    const std::vector<Mm>& places = job_.order.jacks;
    for (std::size_t i = 0; i < places.size(); ++i)
      if (const Mm at = places[i] + frame_.main.front_overhang; is_new_place(j, at))
        all_.push_back({ChangeKind::bolt_jack, pair(i), at});
  }

  // Numbered as the layout numbers them, behind the last that stands.
  void added() {
    for (const Side side : both_sides) {
      const OneSideTabs tabs = tabs_on(frame_.tabs, side);
      std::vector<Mm> fresh = tabs.to_add;
      for (const TabReplaced& r : tabs.to_replace) fresh.push_back(r.with);
      int number = static_cast<int>(tabs.existing.size());
      for (const Mm at : fresh) {
        FrameChange step{ChangeKind::add_tab, {{Kind::tab, side, ++number}}, at};
        step.size = frame_.tabs.weld_leg;
        put(std::move(step));
      }
    }
  }

  void shims() {
    const Mm thinnest = job_.order.order.figures().shim_step();
    for (const Bolt& bolt : bed_.bolts) {
      if (!bolt.in_place || bolt.shim.value_or(0) < same_place) continue;
      FrameChange step{ChangeKind::shim,
                       {bed_.items[static_cast<std::size_t>(bolt.plies.back().item)].id},
                       tidy(hole_in_world(bed_, bolt.plies.back()).centre.x + frame_.main.front_overhang)};
      step.size = *bolt.shim;
      step.shims = shims_of(*bolt.shim, thinnest);
      step.bolt_length = bolt.length;
      put(std::move(step));
    }
  }

  const Job& job_;
  const Bed& bed_;
  const FrameFile& frame_;
  std::vector<FrameChange> all_;
};

}  // namespace

std::vector<FrameChange> frame_changes(const Job& job, const Bed& bed) {
  if (!stands(job.frame)) return {};
  return Steps(job, bed).all();
}

WorkCount work_of(const std::vector<FrameChange>& changes) {
  WorkCount work;
  for (const FrameChange& c : changes) {
    const int count = static_cast<int>(c.items.size());
    switch (c.kind) {
      case ChangeKind::cut_off:
        work.cut_off += count;
        break;
      case ChangeKind::file:
        work.file += count;
        break;
      case ChangeKind::unbolt_jack:
        break;  // counted where they are bolted up
      case ChangeKind::drill:
        work.holes += count;
        break;
      case ChangeKind::bolt_jack:
        work.jacks += count;
        break;
      case ChangeKind::add_tab:
        work.add += count;
        break;
      case ChangeKind::shim:
        work.shims += count;
        break;
    }
  }
  return work;
}

std::optional<double> minutes_of(const WorkCount& work, const TaskTimes& t) {
  double sum = 0;
  for (const auto& [count, each] : {std::pair(work.cut_off, t.cut_off_tab), std::pair(work.file, t.file_tab),
                                    std::pair(work.add, t.add_tab), std::pair(work.holes, t.drill_hole),
                                    std::pair(work.jacks, t.move_jack), std::pair(work.shims, t.shim_tab)}) {
    if (count > 0 && each <= 0) return std::nullopt;
    sum += count * each;
  }
  return sum;
}

std::string verb_of(ChangeKind kind) {
  switch (kind) {
    case ChangeKind::cut_off:
      return "CUT OFF";
    case ChangeKind::file:
      return "FILE";
    case ChangeKind::unbolt_jack:
      return "UNBOLT";
    case ChangeKind::drill:
      return "DRILL";
    case ChangeKind::bolt_jack:
      return "BOLT UP";
    case ChangeKind::add_tab:
      return "WELD ON";
    case ChangeKind::shim:
      return "SHIM";
  }
  throw std::logic_error("a change of no known kind");
}

std::string items_of(const FrameChange& c) {
  if (c.items.empty()) return "both jacks";
  if (c.items.front().kind == Kind::main) return "both mains' webs";
  std::string marks;
  for (const Identity& id : c.items) marks += (marks.empty() ? "" : ", ") + mark(id);
  const std::string& one = word(c.items.front().kind);
  return fmt::format("{}{}{} {}", c.kind == ChangeKind::add_tab ? "new " : "", one,
                     c.items.size() > 1 ? "s" : "", marks);
}

}  // namespace bedwright
