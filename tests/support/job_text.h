// A Job with all its figures to the last bit and all its names with their marks,
// as text: two jobs are one when their texts are.
#pragma once

#include <fmt/format.h>

#include <initializer_list>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include "params/frame.h"
#include "params/job.h"
#include "params/kit.h"
#include "params/order.h"
#include "yaml/need.h"

namespace bedwright::testing {

// A third visitor (yaml/describe.h): a line for every key.
class KeyWriter {
 public:
  static constexpr OptionalKey optional{};
  KeyWriter(std::string& out, std::string path) : out_(out), path_(std::move(path)) {}

  void text(const char* key, std::string& value, const char*, Need = {}) { line(key, value); }
  void path(const char* key, std::string& value, const char*, Need = {}) { line(key, value); }
  void name(const char* key, Name& value, const char*, Need = {}) {
    const Mark& m = value.mark;
    line(key, fmt::format("{} @ {}:{}:{}:{}", value.text, m.file, m.line, m.column, m.key));
  }
  void paths(const char* key, std::vector<std::string>& values, std::size_t, const char*, Need = {}) {
    all(key, values, [](const std::string& value) { return value; });
  }
  void flag(const char* key, bool& value, const char*, Need = {}) { line(key, value ? "yes" : "no"); }
  void flag(const char* key, std::optional<bool>& value, const char*, Need = {}) {
    line(key, !value ? "not said" : *value ? "yes" : "no");
  }
  void number(const char* key, double& value, Range, const char*, Need = {}) { line(key, exact(value)); }
  void count(const char* key, int& value, int, int, const char*, Need = {}) {
    line(key, fmt::to_string(value));
  }
  void counts(const char* key, std::vector<int>& values, int, int, std::size_t, const char*, Need = {}) {
    all(key, values, [](int value) { return fmt::to_string(value); });
  }
  void length(const char* key, Mm& value, Range, const char*, Need = {}) { line(key, exact(value)); }
  void length(const char* key, std::optional<Mm>& value, Range, const char*, Need = {}) {
    line(key, value ? exact(*value) : "none");
  }
  void lengths(const char* key, std::vector<Mm>& values, Range, std::size_t, const char*, Need = {}) {
    all(key, values, exact);
  }
  void mass(const char* key, Kg& value, Range, const char*, Need = {}) { line(key, exact(value)); }
  void stress(const char* key, Mpa& value, Range, const char*, Need = {}) { line(key, exact(value)); }
  void angle(const char* key, Radians& value, Range, const char*, Need = {}) { line(key, exact(value)); }

  template <class Enum>
  void choice(const char* key, Enum& value,
              std::initializer_list<std::pair<const char*, std::type_identity_t<Enum>>>, const char*,
              Need = {}) {
    line(key, fmt::to_string(static_cast<int>(value)));
  }
  template <class S>
  void object(const char* key, S& value, const char*, Need = {}) {
    inner(key, value);
  }
  template <class S>
  void object(const char* key, std::optional<S>& value, const char*, Need = {}) {
    if (value)
      inner(key, *value);
    else
      line(key, "none");
  }
  template <class S>
  void list(const char* key, std::vector<S>& values, std::size_t, const char*, Need = {}) {
    line(key, fmt::format("{} entries", values.size()));
    for (std::size_t i = 0; i < values.size(); ++i) inner(fmt::format("{}[{}]", key, i + 1), values[i]);
  }

  static std::string exact(double value) { return fmt::format("{:a}", value); }

 private:
  void line(const std::string& key, const std::string& value) {
    out_ += fmt::format("{}.{} = {}\n", path_, key, value);
  }
  template <class T, class Print>
  void all(const char* key, const std::vector<T>& values, Print print) {
    std::string text = fmt::format("{} entries", values.size());
    for (const T& value : values) text += fmt::format(", {}", print(value));
    line(key, text);
  }
  template <class S>
  void inner(const std::string& key, S& value) {
    KeyWriter writer(out_, path_ + "." + key);
    describe(writer, value);
  }

  std::string& out_;
  std::string path_;
};

inline void write_catalog(const Catalog& catalog, std::string& out) {
  const auto exact = KeyWriter::exact;
  for (const Section& s : catalog.sections) {
    out += fmt::format("section {} {}", s.name, static_cast<int>(s.shape));
    for (const double v : {s.depth, s.flange, s.web, s.flange_thickness, s.root_radius, s.toe_radius,
                           s.flange_slope, s.thickness_at})
      out += " " + exact(v);
    if (const auto& p = s.published) {
      for (const double v : {p->area, p->kg_per_m, p->ix, p->iy, p->x_bar, p->y_bar, p->wall})
        out += " " + exact(v);
      out += " " + p->source;
    }
    out += "\n";
  }
  for (const BoltSize& b : catalog.bolts) {
    out += "bolt " + b.name;
    for (const double v : {b.diameter,
                           b.pitch,
                           b.head_flats,
                           b.head_height,
                           b.nut_flats,
                           b.nut_height,
                           b.flat.inside,
                           b.flat.outside,
                           b.flat.thickness,
                           b.lock.inside,
                           b.lock.outside,
                           b.lock.thickness,
                           b.wrench,
                           b.standard_hole,
                           b.oversize_hole,
                           b.edge_minimum,
                           b.thread_length,
                           b.tools.socket_outside,
                           b.tools.socket_length,
                           b.tools.wrench_width,
                           b.tools.wrench_thickness,
                           b.tools.wrench_length})
      out += " " + exact(v);
    for (const LengthTolerance& t : b.tolerances)
      out += ", " + exact(t.up_to) + " " + exact(t.plus) + " " + exact(t.minus);
    for (const Mm v : b.lengths) out += ", " + exact(v);
    out += "\n";
  }
  for (const Species& s : catalog.species)
    out += fmt::format("species {} {} {}\n", s.name, exact(s.green_kg_per_m3), s.source);
  for (const Tyre& t : catalog.tyres) out += fmt::format("tyre {} {} {}\n", t.name, exact(t.load), t.source);
}

// The job; or its problems, one line each.
inline std::string job_text(std::variant<Job, std::vector<Problem>> loaded) {
  std::string out;
  if (const auto* problems = std::get_if<std::vector<Problem>>(&loaded)) {
    for (const Problem& problem : *problems) out += to_line(problem) + "\n";
    return out;
  }
  Job& job = std::get<Job>(loaded);
  for (const InputFile& input : job.inputs) out += fmt::format("input {}\n{}\n", input.path, input.content);
  for (const std::string& set : job.sets) out += fmt::format("set {}\n", set);
  KeyWriter order(out, "order"), kit(out, "kit"), frame(out, "frame");
  describe(order, job.order);
  describe(kit, job.kit);
  describe(frame, job.frame);
  write_catalog(job.catalog, out);
  return out;
}

}  // namespace bedwright::testing
