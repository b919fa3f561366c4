// Matches the parts of two beds, first by form, then by identity.
#include "compare/compare.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "bed/names.h"

namespace bedwright {
namespace {

bool is_hardware(const Part& part) { return std::holds_alternative<Hardware>(part.form); }

// A part that stands, as it would be made or bought: where it is now is no difference of form.
Part as_new(Part part) {
  if (part.origin != Origin::standing) return part;
  part.origin = std::holds_alternative<Bought>(part.form) ? Origin::bought : Origin::made;
  return part;
}

// The form without how its holes come about.
Form shape_of(Form form) {
  if (Plate* plate = std::get_if<Plate>(&form))
    for (Hole& hole : plate->holes) hole.process = Process::as_bought;
  if (Member* member = std::get_if<Member>(&form))
    for (FaceHole& hole : member->holes) hole.hole.process = Process::as_bought;
  return form;
}

bool is_equal(const Part& a, const Part& b) {
  const bool one_stands = (a.origin == Origin::standing) != (b.origin == Origin::standing);
  return as_new(a).origin == as_new(b).origin && a.material == b.material &&
         (one_stands ? shape_of(a.form) == shape_of(b.form) : a.form == b.form);
}

// Parts that have shown items, hardware apart, by index.
std::vector<int> used_parts(const Bed& bed) {
  std::vector<int> used;
  for (int i = 0; i < static_cast<int>(bed.parts.size()); ++i)
    if (!is_hardware(bed.parts[i]) && bed.count(i) > 0) used.push_back(i);
  return used;
}

// Parts one of which is welded to something, by index.
std::set<int> welded_parts(const Bed& bed) {
  std::set<int> welded;
  for (const Weld& weld : bed.welds) welded.insert({bed.items[weld.a].part, bed.items[weld.b].part});
  return welded;
}

class Matching {
 public:
  Matching(const Compared& a, const Compared& b, const Figures& figures)
      : a_(a.bed), b_(b.bed), figures_(figures), left_a_(used_parts(a.bed)), left_b_(used_parts(b.bed)) {
    if (frame_stands(a.job)) welded_a_ = welded_parts(a.bed);
    if (frame_stands(b.job)) welded_b_ = welded_parts(b.bed);
  }

  std::vector<PartChange> all() {
    match(Fate::same, is_equal);
    // Of one identity; a clip is no plate changed, though both are tabs.
    match(Fate::changed,
          [](const Part& p, const Part& q) { return p.id == q.id && p.form.index() == q.form.index(); });
    for (const int i : left_a_) add(Fate::only_a, i, -1);
    for (const int i : left_b_) add(Fate::only_b, -1, i);
    const auto rank = [](const PartChange& c) {
      return c.origin == Origin::made ? 0 : c.origin == Origin::kit ? 1 : 2;
    };
    std::stable_sort(changes_.begin(), changes_.end(),
                     [&](const PartChange& p, const PartChange& q) { return rank(p) < rank(q); });
    return std::move(changes_);
  }

 private:
  template <class Alike>
  void match(Fate fate, Alike alike) {
    std::erase_if(left_a_, [&](int i) {
      const auto found = std::find_if(left_b_.begin(), left_b_.end(),
                                      [&](int j) { return alike(a_.parts[i], b_.parts[j]); });
      if (found == left_b_.end()) return false;
      add(fate, i, *found);
      left_b_.erase(found);
      return true;
    });
  }

  void add(Fate fate, int i, int j) {
    PartChange change;
    const Part part = as_new(i >= 0 ? a_.parts[i] : b_.parts[j]);
    change.name = name(part);
    if (j >= 0) change.name_b = name(b_.parts[j]);
    change.renamed = i >= 0 && j >= 0 && a_.parts[i].id != b_.parts[j].id;
    change.welded_in = part.origin == Origin::made && (welded_a_.contains(i) || welded_b_.contains(j));
    change.origin = part.origin;
    change.fate = fate;
    if (i >= 0) change.in_a = a_.count(i);
    if (j >= 0) change.in_b = b_.count(j);
    if (fate == Fate::changed) {
      const Part other = as_new(b_.parts[j]);
      FormChange form = form_change(part.form, other.form, figures_);
      change.how = std::move(form.how);
      change.rework = std::move(form.rework);
      if (part.material != other.material) {
        change.how.push_back(fmt::format("material {} becomes {}", part.material, other.material));
        change.rework.clear();
      }
      if (part.origin != other.origin) change.how.push_back("comes from elsewhere");
    }
    if (change.welded_in) change.rework.clear();
    changes_.push_back(std::move(change));
  }

  const Bed &a_, &b_;
  const Figures& figures_;
  std::vector<int> left_a_, left_b_;
  std::set<int> welded_a_, welded_b_;  // parts of a frame that stands
  std::vector<PartChange> changes_;
};

// A bolt by its length as it is bought: "bolt 1/2 in x 1-1/4 in".
std::string trade_name(const Part& part) {
  const Hardware& h = std::get<Hardware>(part.form);
  return h.kind == HardwareKind::bolt
             ? fmt::format("bolt {} x {}", h.size.name, bolt_length_text(h.size, h.length))
             : name(part);
}

// What is bought under one name, whatever else either catalogue says of it.
bool is_bought_as(const Hardware& a, const Hardware& b) {
  return a.kind == b.kind && a.size.name == b.size.name && std::abs(a.length - b.length) < same_place;
}

std::vector<HardwareChange> hardware_changes(const Bed& a, const Bed& b) {
  std::vector<std::pair<const Part*, HardwareChange>> all;
  const auto count = [&](const Bed& bed, int HardwareChange::*in) {
    for (int i = 0; i < static_cast<int>(bed.parts.size()); ++i) {
      const auto* hardware = std::get_if<Hardware>(&bed.parts[i].form);
      if (hardware == nullptr) continue;
      auto found = std::find_if(all.begin(), all.end(), [&](const auto& one) {
        return is_bought_as(std::get<Hardware>(one.first->form), *hardware);
      });
      if (found == all.end()) found = all.insert(found, {&bed.parts[i], {trade_name(bed.parts[i])}});
      found->second.*in += bed.count(i);
    }
  };
  count(a, &HardwareChange::in_a);
  count(b, &HardwareChange::in_b);
  std::vector<HardwareChange> list;
  for (auto& [part, change] : all) list.push_back(std::move(change));
  // For lookups.
  std::sort(list.begin(), list.end(),
            [](const HardwareChange& p, const HardwareChange& q) { return p.name < q.name; });
  return list;
}

const char* word(Datum d) { return d == Datum::front ? "front" : d == Datum::middle ? "middle" : "rear"; }

std::string places(const Figures& figures, std::vector<Mm> all) {
  std::sort(all.begin(), all.end());
  std::string text;
  for (const Mm x : all) text += (text.empty() ? "" : ", ") + figures.brief(x);
  return text;
}

// A frame that stands is not made again.
Kg made_mass(const Compared& side) {
  const Bed& bed = side.bed;
  Kg sum = 0;
  for (int i = 0; i < static_cast<int>(bed.parts.size()); ++i)
    if (bed.parts[i].origin == Origin::made) sum += bed.count(i) * mass(bed.parts[i]);
  return sum;
}

std::vector<HeadLine> headlines(const Compared& a, const Compared& b, const Figures& figures) {
  std::vector<HeadLine> lines;
  const auto line = [&](const char* what, const std::string& in_a, const std::string& in_b) {
    if (in_a != in_b) lines.push_back({what, in_a, in_b});
  };
  const auto both = [&](const char* what, auto value) { line(what, value(a), value(b)); };
  both("track kit", [](const Compared& s) { return s.job.kit.name; });
  both("frame", [](const Compared& s) { return s.job.frame.name; });
  both("rail sections", [](const Compared& s) { return std::to_string(s.bed.track.sections); });
  both("rail length",
       [&](const Compared& s) { return rail_lengths(s.bed.track, [&](Mm x) { return figures.say(x); }); });
  both("track over all", [&](const Compared& s) { return figures.say(s.bed.track.total_length); });
  both("bunk pitch", [&](const Compared& s) { return figures.say(s.bed.track.bunk_spacing()); });
  both("bunks", [](const Compared& s) { return std::to_string(s.bed.track.bunk_count()); });
  both("clamps", [](const Compared& s) { return std::to_string(s.job.order.track.clamps.size()); });
  both("log stops", [](const Compared& s) { return std::to_string(s.job.order.track.log_stops.size()); });
  both("standoff", [&](const Compared& s) { return figures.say(s.bed.track.standoff); });
  both("track pinned at", [](const Compared& s) { return std::string(word(s.job.order.track.datum)); });
  both("axles", [](const Compared& s) { return std::to_string(s.job.frame.axle.count); });
  both("axle group at", [&](const Compared& s) { return figures.say(s.job.order.axle.position); });
  both("jacks at", [&](const Compared& s) { return places(figures, s.job.order.jacks); });
  both("steel the shop makes", [&](const Compared& s) { return figures.in_one_unit().mass(made_mass(s)); });
  return lines;
}

}  // namespace

bool frame_stands(const Job& job) { return stands(job.frame); }

Comparison compare(const Compared& a, const Compared& b, const Figures& figures) {
  return {headlines(a, b, figures),      ordered_differently(a.job, b.job, figures),
          frame_stands(a.job),           frame_stands(b.job),
          Matching(a, b, figures).all(), hardware_changes(a.bed, b.bed)};
}

}  // namespace bedwright
