// The keys of two orders whose values differ.
#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <initializer_list>
#include <optional>
#include <type_traits>
#include <utility>

#include "compare/compare.h"
#include "units/print.h"
#include "yaml/describe.h"
#include "yaml/need.h"

namespace bedwright {
namespace {

// A visitor of parameter structs (yaml/describe.h) that writes each value down as text.
// A list is one value, so that one more entry does not shift all that follow it. Values
// written exactly are compared; those written for reading are printed.
enum class Writing { exactly, for_reading };

class KeyWriter {
 public:
  static constexpr OptionalKey optional{};

  KeyWriter(const Figures& figures, Writing writing, std::string prefix = {})
      : figures_(figures), writing_(writing), prefix_(std::move(prefix)) {}

  std::vector<std::pair<std::string, std::string>> values;

  void text(const char* key, const std::string& value, const char*, Need = {}) {
    add(key, value.empty() ? "none" : value);
  }
  void name(const char* key, const Name& value, const char* doc, Need = {}) { text(key, value.text, doc); }
  void path(const char* key, const std::string& value, const char* doc, Need = {}) { text(key, value, doc); }
  void paths(const char* key, const std::vector<std::string>& all, std::size_t, const char*, Need = {}) {
    add(key, joined(all));
  }
  void flag(const char* key, bool value, const char*, Need = {}) { add(key, value ? "true" : "false"); }
  void number(const char* key, double value, Range, const char*, Need = {}) { add(key, plain_figure(value)); }
  void count(const char* key, int value, int, int, const char*, Need = {}) {
    add(key, std::to_string(value));
  }
  void counts(const char* key, const std::vector<int>& all, int, int, std::size_t, const char*, Need = {}) {
    add(key, joined(all, [](int value) { return std::to_string(value); }));
  }
  void length(const char* key, const std::optional<Mm>& value, Range, const char*, Need = {}) {
    add(key, value ? length_text(*value) : "none");
  }
  void lengths(const char* key, const std::vector<Mm>& all, Range, std::size_t, const char*, Need = {}) {
    add(key, joined(all, [&](Mm value) { return length_text(value); }));
  }
  void mass(const char* key, Kg value, Range, const char*, Need = {}) {
    add(key, writing_ == Writing::exactly ? as_written(Dimension::mass, value) : figures_.fine_mass(value));
  }
  void stress(const char* key, Mpa value, Range, const char*, Need = {}) {
    add(key, as_written(Dimension::stress, value));
  }
  void angle(const char* key, Radians value, Range, const char*, Need = {}) {
    add(key, as_written(Dimension::angle, value));
  }

  template <class Enum>
  void choice(const char* key, Enum value,
              std::initializer_list<std::pair<const char*, std::type_identity_t<Enum>>> words, const char*,
              Need = {}) {
    const auto found =
        std::find_if(words.begin(), words.end(), [&](const auto& word) { return word.second == value; });
    add(key, found == words.end() ? "" : found->first);
  }

  template <class S>
  void object(const char* key, const S& value, const char*, Need = {}) {
    KeyWriter inner(figures_, writing_, prefix_ + key + ".");
    S copy = value;
    describe(inner, copy);
    values.insert(values.end(), inner.values.begin(), inner.values.end());
  }
  // An object that may be left out is one value, as a list's entry is.
  template <class S>
  void object(const char* key, const std::optional<S>& value, const char*, Need = {}) {
    add(key, value ? entry(*value) : "none");
  }
  template <class S>
  void list(const char* key, const std::vector<S>& all, std::size_t, const char*, Need = {}) {
    add(key, joined(all, [&](const S& value) { return entry(value); }));
  }

 private:
  void add(const char* key, std::string value) { values.emplace_back(prefix_ + key, std::move(value)); }

  std::string length_text(Mm value) const {
    return writing_ == Writing::exactly ? plain_figure(value) + " mm" : figures_.brief(value);
  }

  template <class T, class Text = std::identity>
  static std::string joined(const std::vector<T>& all, Text text_of = {}) {
    std::string text;
    for (const T& value : all) text += (text.empty() ? "" : ", ") + text_of(value);
    return text.empty() ? "none" : text;
  }

  template <class S>
  std::string entry(S value) const {
    KeyWriter inner(figures_, writing_);
    describe(inner, value);
    std::string text;
    for (const auto& [key, written] : inner.values)
      if (written != "none") text += fmt::format("{}{}: {}", text.empty() ? "" : ", ", key, written);
    return "{" + text + "}";
  }

  const Figures& figures_;
  Writing writing_;
  std::string prefix_;
};

// Whose bed it is, which differs in every order; and the files named, which are
// told apart by what they say (below).
bool is_told_elsewhere(const std::string& key) {
  static const char* const keys[] = {"order.number",   "order.customer", "order.date",
                                     "order.revision", "revisions",      "kit",
                                     "frame",          "catalog"};
  return std::find(std::begin(keys), std::end(keys), key) != std::end(keys);
}

// The kit, the frame and the catalogue by what stands in them, wherever they stand.
void named_files(const Job& a, const Job& b, std::vector<HeadLine>& lines) {
  const auto named = [](const Job& job, std::size_t from, std::size_t to) {
    std::string content, names;
    for (std::size_t i = from; i < std::min(to, job.inputs.size()); ++i) {
      const std::string& path = job.inputs[i].path;
      content += job.inputs[i].content;
      names += (names.empty() ? "" : ", ") + path.substr(path.find_last_of('/') + 1);
    }
    return std::pair(content, names);
  };
  const std::size_t catalog_ends[] = {3 + a.order.catalog.size(), 3 + b.order.catalog.size()};
  const auto line = [&](const char* key, std::size_t from, std::size_t to_a, std::size_t to_b) {
    const auto [content_a, names_a] = named(a, from, to_a);
    const auto [content_b, names_b] = named(b, from, to_b);
    if (content_a == content_b) return;
    lines.push_back({key, names_a, names_a == names_b ? names_b + ", which says otherwise" : names_b});
  };
  line("kit", 1, 2, 2);
  line("frame", 2, 3, 3);
  line("catalog", 3, catalog_ends[0], catalog_ends[1]);
}

}  // namespace

std::vector<HeadLine> ordered_differently(const Job& a, const Job& b, const Figures& figures) {
  std::vector<HeadLine> lines;
  named_files(a, b, lines);
  const auto written = [&](const Job& job, Writing writing) {
    KeyWriter writer(figures, writing);
    Order order = job.order;
    order.jacks.resize(jacks_listed(order));  // those worked out follow from other keys
    describe(writer, order);
    return writer.values;
  };
  const auto exact_a = written(a, Writing::exactly), exact_b = written(b, Writing::exactly);
  const auto read_a = written(a, Writing::for_reading), read_b = written(b, Writing::for_reading);
  // Each has every key, in the order they are described in.
  for (std::size_t i = 0; i < exact_a.size(); ++i) {
    if (exact_a[i] == exact_b[i] || is_told_elsewhere(exact_a[i].first)) continue;
    const bool shows = read_a[i] != read_b[i];
    lines.push_back(
        {exact_a[i].first, (shows ? read_a : exact_a)[i].second, (shows ? read_b : exact_b)[i].second});
  }
  return lines;
}

}  // namespace bedwright
