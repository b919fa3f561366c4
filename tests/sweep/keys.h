// Every key an order, its kit and its frame may have, with what it may be and what it
// is now: read from the structs' own describe() (yaml/describe.h), so that a key added
// there is swept without a word here.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "params/job.h"
#include "units/units.h"
#include "yaml/need.h"

namespace bedwright::sweep {

enum class KeyForm {
  text,
  name,
  path,
  paths,
  flag,
  number,
  count,
  choice,
  quantity,
  counts,
  quantities,
  map,
  entry
};

struct Key {
  std::string path;  // as for --set: "frame.tabs.slot_length"
  KeyForm form = KeyForm::text;
  bool required = true;
  const char* unit = "";           // written behind a quantity
  double low = 0, high = 0;        // in that unit
  std::vector<double> now;         // figures it has, in that unit
  std::vector<std::string> words;  // a choice's; or the text it has now
  std::size_t most = 1;            // of a list, its entries
  std::vector<Key> inner;          // of a map or a list's entry, paths from it

  std::string leaf() const { return path.substr(path.rfind('.') + 1); }
};

// A third visitor: a line for each key.
class KeyReader {
 public:
  static constexpr OptionalKey optional{};
  KeyReader(std::vector<Key>& keys, std::string before) : keys_(keys), before_(std::move(before)) {}

  void text(const char* key, std::string& value, const char*, Need need = {}) {
    add(key, KeyForm::text, need).words = {value};
  }
  void name(const char* key, Name& value, const char*, Need need = {}) {
    add(key, KeyForm::name, need).words = {value.text};
  }
  void path(const char* key, std::string& value, const char*, Need need = {}) {
    add(key, KeyForm::path, need).words = {value};
  }
  void paths(const char* key, std::vector<std::string>& values, std::size_t most, const char*,
             Need need = {}) {
    Key& k = add(key, KeyForm::paths, need);
    k.words = values;
    k.most = most;
  }
  void flag(const char* key, bool&, const char*, Need need = {}) {
    add(key, KeyForm::flag, need).words = {"true", "false"};
  }
  void flag(const char* key, std::optional<bool>&, const char*, Need need = {}) {
    add(key, KeyForm::flag, need).words = {"true", "false"};
  }
  void number(const char* key, double& value, Range range, const char*, Need need = {}) {
    figure(key, KeyForm::number, "", range, 1, &value, need);
  }
  void count(const char* key, int& value, int low, int high, const char*, Need need = {}) {
    const double now = value;
    figure(key, KeyForm::count, "", {double(low), double(high)}, 1, &now, need);
  }
  void counts(const char* key, std::vector<int>& values, int low, int high, std::size_t most, const char*,
              Need need = {}) {
    Key& k = figure(key, KeyForm::counts, "", {double(low), double(high)}, 1, nullptr, need);
    k.now.assign(values.begin(), values.end());
    k.most = most;
  }
  void length(const char* key, Mm& value, Range range, const char*, Need need = {}) {
    figure(key, KeyForm::quantity, " mm", range, 1, &value, need);
  }
  void length(const char* key, std::optional<Mm>& value, Range range, const char*, Need need = {}) {
    figure(key, KeyForm::quantity, " mm", range, 1, value ? &*value : nullptr, need);
  }
  void lengths(const char* key, std::vector<Mm>& values, Range range, std::size_t most, const char*,
               Need need = {}) {
    Key& k = figure(key, KeyForm::quantities, " mm", range, 1, nullptr, need);
    k.now = values;
    k.most = most;
  }
  void mass(const char* key, Kg& value, Range range, const char*, Need need = {}) {
    figure(key, KeyForm::quantity, " kg", range, 1, &value, need);
  }
  void stress(const char* key, Mpa& value, Range range, const char*, Need need = {}) {
    figure(key, KeyForm::quantity, " MPa", range, 1, &value, need);
  }
  void angle(const char* key, Radians& value, Range range, const char*, Need need = {}) {
    figure(key, KeyForm::quantity, " deg", range, degree, &value, need);
  }
  template <class Enum>
  void choice(const char* key, Enum&,
              std::initializer_list<std::pair<const char*, std::type_identity_t<Enum>>> words, const char*,
              Need need = {}) {
    Key& k = add(key, KeyForm::choice, need);
    for (const auto& word : words) k.words.emplace_back(word.first);
  }
  template <class S>
  void object(const char* key, S& value, const char*, Need = {}) {
    KeyReader inner(keys_, below(key));
    describe(inner, value);
  }
  // One that is not there is swept as a whole, in words of its own.
  template <class S>
  void object(const char* key, std::optional<S>& value, const char* doc, Need need = {}) {
    if (value) return object(key, *value, doc, need);
    whole<S>(add(key, KeyForm::map, need));
  }
  template <class S>
  void list(const char* key, std::vector<S>& values, std::size_t most, const char*, Need need = {}) {
    for (std::size_t i = 0; i < values.size(); ++i) {
      KeyReader inner(keys_, below(key + ("[" + std::to_string(i + 1) + "]")));
      describe(inner, values[i]);
    }
    Key& k = add(key + ("[" + std::to_string(values.size() + 1) + "]"), KeyForm::entry, need);
    k.most = most;
    whole<S>(k);
  }

 private:
  std::string below(const std::string& key) const { return before_.empty() ? key : before_ + "." + key; }
  Key& add(const std::string& key, KeyForm form, const Need& need) {
    Key& k = keys_.emplace_back();
    k.path = below(key);
    k.form = form;
    k.required = need.required;
    return k;
  }
  Key& figure(const char* key, KeyForm form, const char* unit, Range range, double one, const double* now,
              Need need) {
    Key& k = add(key, form, need);
    k.unit = unit;
    k.low = range.low;
    k.high = range.high;
    if (now) k.now = {*now / one};
    return k;
  }
  template <class S>
  static void whole(Key& k) {
    S value;
    KeyReader inner(k.inner, "");
    describe(inner, value);
  }

  std::vector<Key>& keys_;
  std::string before_;
};

// Every key of an order that is read, as it is set now.
inline std::vector<Key> keys_of(Job job) {
  std::vector<Key> keys;
  KeyReader order(keys, ""), kit(keys, "kit"), frame(keys, "frame");
  describe(order, job.order);
  describe(kit, job.kit);
  describe(frame, job.frame);
  return keys;
}

}  // namespace bedwright::sweep
