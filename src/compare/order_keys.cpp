// The keys of two orders whose values differ.
#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <initializer_list>
#include <optional>
#include <type_traits>
#include <utility>
#include <vector>

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

  struct Value {
    std::string key, text;
    bool whole = false;  // of an object that may be left out; its keys follow, each for itself
    friend bool operator==(const Value&, const Value&) = default;
  };
  std::vector<Value> values;

  void text(const char* key, const std::string& value, const char*, Need = {}) {
    add(key, value.empty() ? "none" : value);
  }
  void name(const char* key, const Name& value, const char* doc, Need = {}) { text(key, value.text, doc); }
  void path(const char* key, const std::string& value, const char* doc, Need = {}) { text(key, value, doc); }
  void paths(const char* key, const std::vector<std::string>& all, std::size_t, const char*, Need = {}) {
    add(key, joined(all));
  }
  void flag(const char* key, bool value, const char*, Need = {}) { add(key, value ? "true" : "false"); }
  void flag(const char* key, const std::optional<bool>& value, const char*, Need = {}) {
    add(key, !value ? "not said" : *value ? "true" : "false");
  }
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
    inner.in_an_entry_ = in_an_entry_;
    S copy = value;
    describe(inner, copy);
    values.insert(values.end(), inner.values.begin(), inner.values.end());
  }
  // An object that may be left out is one value, as a list's entry is; and where it is there, each
  // of its keys is one too.
  template <class S>
  void object(const char* key, const std::optional<S>& value, const char* doc, Need = {}) {
    add(key, value ? entry(*value) : "none");
    values.back().whole = value.has_value();
    if (value && !in_an_entry_) object(key, *value, doc);
  }
  template <class S>
  void list(const char* key, const std::vector<S>& all, std::size_t, const char*, Need = {}) {
    add(key, joined(all, [&](const S& value) { return entry(value); }));
  }

 private:
  void add(const char* key, std::string value) { values.push_back({prefix_ + key, std::move(value)}); }

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
    inner.in_an_entry_ = true;
    describe(inner, value);
    std::string text;
    for (const auto& [key, written, whole] : inner.values)
      if (written != "none") text += fmt::format("{}{}: {}", text.empty() ? "" : ", ", key, written);
    return "{" + text + "}";
  }

  const Figures& figures_;
  Writing writing_;
  std::string prefix_;
  bool in_an_entry_ = false;
};

// Whose bed it is, which differs in every order; the files named, which are told apart
// by what they say (below); and overrides, told by the keys of kit and frame they set.
bool is_told_elsewhere(const std::string& key) {
  static const char* const keys[] = {"order.number", "order.customer", "order.date", "order.revision",
                                     "revisions",    "overrides",      "kit",        "frame",
                                     "catalog"};
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

using KeyValues = std::vector<KeyWriter::Value>;

// A key that only one has is one of an object the other leaves out; the object itself is told.
template <class Written>
void differing(const Job& a, const Job& b, const Written& written, std::vector<HeadLine>& lines) {
  const KeyValues exact_a = written(a, Writing::exactly), exact_b = written(b, Writing::exactly);
  const KeyValues read_a = written(a, Writing::for_reading), read_b = written(b, Writing::for_reading);
  for (std::size_t i = 0; i < exact_a.size(); ++i) {
    const auto same_key = [&](const KeyWriter::Value& v) { return v.key == exact_a[i].key; };
    const auto found = std::find_if(exact_b.begin(), exact_b.end(), same_key);
    if (found == exact_b.end() || exact_a[i] == *found || is_told_elsewhere(exact_a[i].key)) continue;
    if (exact_a[i].whole && found->whole) continue;  // by its keys
    const std::string& read = read_b[static_cast<std::size_t>(found - exact_b.begin())].text;
    const bool shows = read_a[i].text != read;
    lines.push_back({exact_a[i].key, shows ? read_a[i].text : exact_a[i].text, shows ? read : found->text});
  }
}

}  // namespace

std::vector<HeadLine> ordered_differently(const Job& a, const Job& b, const Figures& figures) {
  std::vector<HeadLine> lines;
  named_files(a, b, lines);
  const auto order_keys = [&](const Job& job, Writing writing) {
    KeyWriter writer(figures, writing);
    Order order = job.order;
    order.jacks.resize(jacks_listed(order));  // those worked out follow from other keys
    describe(writer, order);
    return writer.values;
  };
  const auto kit_keys = [&](const Job& job, Writing writing) {
    KeyWriter writer(figures, writing, "kit.");
    Kit kit = job.kit;
    describe(writer, kit);
    return writer.values;
  };
  const auto frame_keys = [&](const Job& job, Writing writing) {
    KeyWriter writer(figures, writing, "frame.");
    FrameFile frame = job.frame;
    describe(writer, frame);
    return writer.values;
  };
  differing(a, b, order_keys, lines);
  differing(a, b, kit_keys, lines);
  differing(a, b, frame_keys, lines);
  return lines;
}

}  // namespace bedwright
