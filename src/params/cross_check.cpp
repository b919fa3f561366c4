// Runs the checks, and holds what several of them use.
#include "params/cross_check.h"

#include <fmt/format.h>

#include <algorithm>

#include "units/print.h"
#include "yaml/key_path.h"
#include "yaml/nearest.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

std::string told(Mm length) { return both_units(Dimension::length, length); }

// Whether a problem of this document stands outside its file: in a --set, or in the
// order's overrides.
bool is_override(const Problem& problem, const Document& document) {
  if (problem.where.file == "--set") return true;
  return std::any_of(document.override_marks.begin(), document.override_marks.end(),
                     [&](const Mark& m) { return m.file == problem.where.file; });
}

// The key of a problem as its own document names it.
std::string_view own_key(const Problem& problem, const Document& document) {
  std::string_view key = problem.where.key;
  if (is_override(problem, document) && key.starts_with(document.key_prefix))
    key.remove_prefix(document.key_prefix.size());
  return key;
}

}  // namespace

CrossCheck::CrossCheck(const Job& job, const Document& order, const Document& kit, const Document& frame,
                       bool catalog_is_whole, std::vector<Problem>& problems)
    : job_(job),
      order_(order),
      kit_(kit),
      frame_(frame),
      catalog_is_whole_(catalog_is_whole),
      problems_(problems),
      found_in_reading_(problems) {}

void CrossCheck::run() {
  check_heading();
  check_tape();
  check_track();
  check_rail_lengths();
  check_tabs_found();
  check_bolt_lengths();
  check_road_and_work();
  check_places();
  check_overrides();
  check_free();
  check_rail_and_bunk();
  check_mounting();
  check_bunk_holes();
  check_positions();
  check_kit_fittings();
  check_head();
  check_frame_names();
  check_tabs();
  check_existing();
  check_bought();
}

bool CrossCheck::sound(const Document& document, std::initializer_list<std::string> keys) const {
  if (document.root.kind != NodeKind::map) return false;
  return std::none_of(found_in_reading_.begin(), found_in_reading_.end(), [&](const Problem& problem) {
    const bool here = problem.where.file == document.file ||
                      (is_override(problem, document) && problem.where.key.starts_with(document.key_prefix));
    if (!here || problem.where.key.empty()) return false;
    const std::string_view at = own_key(problem, document);
    return std::any_of(keys.begin(), keys.end(),
                       [&](const std::string& key) { return is_within(at, key) || is_within(key, at); });
  });
}

bool CrossCheck::given(const Document& document, const std::string& key) const {
  const Node* node = &document.root;
  for (const KeyStep& step : parse_key_path(key).value_or(std::vector<KeyStep>{})) {
    node = node->find(step.key);
    if (!node) return false;
  }
  return true;
}

void CrossCheck::problem(const Document& document, const std::string& key, std::string what,
                         std::string would_do) {
  problems_.push_back({mark_of(document, key), std::move(what), std::move(would_do)});
}

void CrossCheck::check_order(const Document& document, const std::string& small_key, Mm small_value,
                             const std::string& large_key, Mm large_value, bool strictly) {
  if (!sound(document, {small_key, large_key})) return;
  if (small_value < large_value || (!strictly && small_value <= large_value + same_place)) return;
  problem(document, small_key,
          fmt::format("{} is {} {}, {}", told(small_value), strictly ? "not less than" : "more than",
                      large_key, told(large_value)),
          fmt::format("make it {} {}", strictly ? "less than" : "at most", told(large_value)));
}

void CrossCheck::check_ascending(const Document& document, const std::string& key,
                                 const std::vector<Mm>& values) {
  if (!sound(document, {key})) return;
  for (std::size_t i = 1; i < values.size(); ++i) {
    if (values[i] > values[i - 1] + same_place) continue;
    problem(document, path_to(key, i + 1),
            fmt::format("{} does not lie behind the one before it, {}", told(values[i]), told(values[i - 1])),
            "list them from the front to the rear, each once");
  }
}

void CrossCheck::check_hole(const Document& document, const std::string& key, const BoltHole& hole) {
  check_bolt(hole.bolt);
  if (!hole.slot || !sound(document, {key + ".slot", key + ".diameter"})) return;
  if (*hole.slot + same_place >= hole.diameter) return;
  problem(document, key + ".slot",
          fmt::format("{} is shorter than the hole's diameter, {}", told(*hole.slot), told(hole.diameter)),
          "give the slot's length overall, or leave it out for a round hole");
}

void CrossCheck::check_bolt(const Name& bolt) {
  if (bolt.text.empty() || !catalog_is_whole_ || job_.catalog.bolt(bolt.text)) return;
  std::vector<std::string> names;
  for (const BoltSize& size : job_.catalog.bolts) names.push_back(size.name);
  problems_.push_back({bolt.mark, fmt::format("{} is no bolt size of the catalogue", quoted(bolt.text)),
                       names.empty() ? "add a catalogue file with bolts, such as fasteners_inch.yaml"
                                     : suggestion(bolt.text, names)});
}

void CrossCheck::check_section(const Name& section, const std::vector<Shape>& shapes) {
  if (section.text.empty() || !catalog_is_whole_) return;
  const auto is_one = [&](Shape shape) {
    return std::find(shapes.begin(), shapes.end(), shape) != shapes.end();
  };
  const char* wanted = shapes.size() > 1        ? "a channel or a tube"
                       : is_one(Shape::channel) ? "a channel"
                                                : "an angle";
  const Section* found = job_.catalog.section(section.text);
  if (found && is_one(found->shape)) return;
  std::vector<std::string> names;
  for (const Section& candidate : job_.catalog.sections) {
    if (is_one(candidate.shape)) names.push_back(candidate.name);
  }
  const std::string what =
      found ? fmt::format("{} is not of the shape wanted here, {}", quoted(section.text), wanted)
            : fmt::format("{} is no section of the catalogue", quoted(section.text));
  std::string would_do = suggestion(section.text, names);
  if (names.empty()) would_do = fmt::format("add a catalogue file that has {}", wanted);
  problems_.push_back({section.mark, what, would_do});
}

}  // namespace bedwright
