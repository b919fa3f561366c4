// Orders that walk every key over its whole range: one key at a time, in pairs, and
// random sets of three to six. The order of a number is the same whenever it is made,
// however many are made, so the number (and the line that `told` prints) brings it back.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "sweep/keys.h"

namespace bedwright::sweep {

struct SweptOrder {
  std::string file;  // from the top of the tree
  std::vector<std::string> sets;

  // As typed to see it again.
  std::string told() const {
    std::string text = "./bedwright check " + file;
    for (const std::string& set : sets) {
      std::string quoted;
      for (const char c : set) quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
      text += " --set '" + quoted + "'";
    }
    return text;
  }
};

// Small and the same on every machine; the standard distributions differ between libraries.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15ULL + 0x1234567ULL) {}
  std::uint64_t next() {
    std::uint64_t z = (state_ += 0x9E3779B97F4A7C15ULL);
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
  }
  std::size_t below(std::size_t count) { return count == 0 ? 0 : next() % count; }
  double from(double low, double high) {
    return low + (high - low) * static_cast<double>(next() >> 11) / 9007199254740992.0;
  }
  template <class T>
  const T& one_of(const std::vector<T>& all) {
    return all.at(below(all.size()));
  }

 private:
  std::uint64_t state_;
};

// An order to start from, and its keys.
struct Family {
  std::string file;
  std::vector<Key> keys;
  std::vector<std::string> sections, bolts, species, near_kits, near_frames;
};

inline Family family_of(const std::string& top, const std::string& file) {
  auto loaded = load_job(top + "/" + file, {});
  if (auto* problems = std::get_if<std::vector<Problem>>(&loaded))
    throw std::runtime_error(to_line(problems->at(0)));
  const Job& job = std::get<Job>(loaded);
  Family family{file, keys_of(job), {}, {}, {}, {}, {}};
  for (const Section& s : job.catalog.sections) family.sections.push_back(s.name);
  for (const BoltSize& b : job.catalog.bolts) family.bolts.push_back(b.name);
  for (const Species& s : job.catalog.species) family.species.push_back(s.name);
  const auto folder = [](const std::string& path) { return path.substr(0, path.rfind('/') + 1); };
  for (const char* kit : {"tansy_t49", "tansy_t49_long", "tansy_m1250"})
    family.near_kits.push_back(folder(job.order.kit) + kit + ".yaml");
  for (const char* frame : {"six_inch_plate", "six_inch_clip", "metric_clip", "lot_frame_7"})
    family.near_frames.push_back(folder(job.order.frame) + frame + ".yaml");
  return family;
}

// A value for a key, as --set takes it.
class ValueMaker {
 public:
  ValueMaker(const Family& family, Dice& dice) : family_(family), dice_(dice) {}

  std::string value(const Key& key) {
    switch (key.form) {
      case KeyForm::text:
        return text();
      case KeyForm::name:
        return name(key);
      case KeyForm::path:
        return dice_.one_of(key.leaf() == "kit" ? family_.near_kits : family_.near_frames);
      case KeyForm::paths: {
        std::vector<std::string> some = key.words;
        if (!some.empty()) some.erase(some.begin() + static_cast<long>(dice_.below(some.size())));
        return listed(some);
      }
      case KeyForm::flag:
      case KeyForm::choice:
        return dice_.one_of(key.words);
      case KeyForm::number:
        return fmt::format("{}", figure(key, now(key)));
      case KeyForm::count:
        return fmt::format("{}", whole(key, now(key)));
      case KeyForm::quantity:
        return fmt::format("{}{}", figure(key, now(key)), key.unit);
      case KeyForm::counts:
      case KeyForm::quantities:
        return figures(key);
      case KeyForm::map:
      case KeyForm::entry:
        return map(key);
    }
    throw std::logic_error("a form of key has no values");
  }

 private:
  static std::optional<double> now(const Key& key) {
    return key.now.empty() ? std::nullopt : std::optional(key.now.front());
  }

  // Near what it is now by a mark or a little, further off, anywhere, or at an end: most
  // beds that go together are near, most that crash a program are at an end.
  double figure(const Key& key, std::optional<double> now) {
    const std::size_t way = dice_.below(20);
    double value = 0;
    if (way < 2) return dice_.below(2) ? key.low : key.high;
    if (way < 5 || !now) {
      // Evenly over the range, or over its logarithm where it spans many sizes.
      const double low = std::max(key.low, key.high / 1000);
      value = dice_.below(2) || low <= 0 ? dice_.from(key.low, key.high)
                                         : std::exp(dice_.from(std::log(low), std::log(key.high)));
    } else if (way < 11) {
      const double mark = *key.unit == ' ' && key.unit[1] == 'm' ? inch / 16 : std::abs(*now) / 40 + 1e-3;
      value = *now + mark * std::round(dice_.from(-12, 12));
    } else if (way < 16) {
      value = *now * dice_.from(0.7, 1.3) + (*now == 0 ? dice_.from(-0.02, 0.02) * (key.high - key.low) : 0);
    } else {
      value = *now * dice_.from(0.2, 3) + (*now == 0 ? dice_.from(-0.2, 0.2) * (key.high - key.low) : 0);
    }
    value = std::clamp(value, key.low, key.high);
    const double marks = dice_.below(4) ? inch / 16 : 0.001;
    const double rounded = std::round(value / marks) * marks;
    return std::round(std::clamp(rounded, key.low, key.high) * 1e4) / 1e4;
  }

  long whole(const Key& key, std::optional<double> now) {
    if (now && dice_.below(3)) {
      const double near = *now + std::round(dice_.from(-3, 3));
      return std::lround(std::clamp(near, key.low, key.high));
    }
    return std::lround(dice_.below(6) ? dice_.from(key.low, std::min(key.high, key.low + 20))
                                      : (dice_.below(2) ? key.low : key.high));
  }

  std::string one(const Key& key, std::optional<double> now) {
    return key.form == KeyForm::counts ? fmt::format("{}", whole(key, now))
                                       : fmt::format("{}{}", figure(key, now), key.unit);
  }

  // One changed, one more, one less, none, all alike, or many.
  std::string figures(const Key& key) {
    std::vector<std::string> all;
    for (const double now : key.now)
      all.push_back(key.form == KeyForm::counts ? fmt::format("{}", std::lround(now))
                                                : fmt::format("{}{}", std::round(now * 1e4) / 1e4, key.unit));
    const std::size_t at = dice_.below(all.size());
    const std::optional<double> near = key.now.empty() ? std::nullopt : std::optional(key.now[at]);
    switch (dice_.below(8)) {
      case 0:
        all.push_back(one(key, near));
        break;
      case 1:
        if (!all.empty()) all.erase(all.begin() + static_cast<long>(at));
        break;
      case 2:
        if (dice_.below(4) == 0)
          all.clear();
        else if (!all.empty())
          all.push_back(all[at]);
        break;
      case 3: {
        all.clear();
        const std::size_t count = 1 + dice_.below(std::min<std::size_t>(key.most, 24));
        for (std::size_t i = 0; i < count; ++i) all.push_back(one(key, std::nullopt));
        break;
      }
      default:
        if (all.empty())
          all.push_back(one(key, near));
        else
          all[at] = one(key, near);
    }
    return listed(all);
  }

  std::string map(const Key& key) {
    std::string text;
    for (const Key& inner : key.inner) {
      if (!inner.required && dice_.below(3)) continue;
      // A map that may be left out within one that may be.
      text += fmt::format("{}{}: {}", text.empty() ? "" : ", ", inner.path,
                          ValueMaker(family_, dice_).value(inner));
    }
    return "{" + text + "}";
  }

  std::string name(const Key& key) {
    const std::string leaf = key.leaf();
    if (leaf == "section") return dice_.one_of(family_.sections);
    if (leaf == "bolt") return dice_.one_of(family_.bolts);
    if (leaf == "species") return dice_.one_of(family_.species);
    if (leaf == "tab") return fmt::format("{}{}", dice_.below(2) ? "L" : "R", 1 + dice_.below(14));
    if (leaf == "key") return dice_.one_of(family_.keys).path;
    if (leaf == "value") return "20 mm";
    if (leaf == "values") return dice_.below(2) ? "\"70..90 in/5 in\"" : "\"front, middle, rear\"";
    // One that is new here: any name there is.
    const std::size_t kind = dice_.below(4);
    return kind == 0   ? dice_.one_of(family_.sections)
           : kind == 1 ? dice_.one_of(family_.bolts)
           : kind == 2 ? dice_.one_of(family_.species)
                       : text();
  }

  std::string text() {
    static const std::vector<std::string> texts = {
        "A",
        "A36",
        "A572 grade 50",
        "no such thing",
        "\"\"",
        "\"Sch\xC3\xB6nmetzler & S\xC3\xB6hne\"",
        "\"\xE6\xA8\xB9\xE6\x9C\xA8\"",
        "\"../up/and/away\"",
        "\"%s %n {} {0}\"",
        "\"<b>&amp;\"",
        "2026-02-30",
        "\"a very long name that a shop types into the field because it has no other place for what it wants "
        "to say of the customer, the bed, the road to the farm, and the dog that is there\""};
    return dice_.one_of(texts);
  }

  static std::string listed(const std::vector<std::string>& all) {
    std::string text;
    for (const std::string& one : all) text += (text.empty() ? "" : ", ") + one;
    return "[" + text + "]";
  }

  const Family& family_;
  Dice& dice_;
};

class OrderSweep {
 public:
  OrderSweep(std::vector<Family> families, std::uint64_t seed)
      : families_(std::move(families)), seed_(seed) {}

  const std::vector<Family>& families() const { return families_; }

  // Of ten orders three have one key changed, each key in its turn; three have two, four
  // have three to six.
  SweptOrder order(std::uint64_t number) const {
    Dice dice(seed_ + number * 7919);
    const std::uint64_t tenth = number % 10;
    if (tenth < 3) {
      const std::uint64_t turn = number / 10 * 3 + tenth;
      const Family& family = families_[turn % families_.size()];
      const Key& key = family.keys[turn / families_.size() % family.keys.size()];
      return {family.file, {set(family, key, dice)}};
    }
    const Family& family = families_[dice.below(families_.size())];
    const std::size_t count = tenth < 6 ? 2 : 3 + dice.below(4);
    SweptOrder order{family.file, {}};
    std::vector<const Key*> taken;
    while (taken.size() < count) {
      const Key* key = &dice.one_of(family.keys);
      if (std::find(taken.begin(), taken.end(), key) != taken.end()) continue;
      taken.push_back(key);
      order.sets.push_back(set(family, *key, dice));
    }
    return order;
  }

 private:
  static std::string set(const Family& family, const Key& key, Dice& dice) {
    return key.path + "=" + ValueMaker(family, dice).value(key);
  }

  std::vector<Family> families_;
  std::uint64_t seed_;
};

inline const std::vector<std::string> swept_files = {
    "params/orders/base.yaml",      "params/orders/one_extension.yaml", "params/orders/metric.yaml",
    "params/orders/lot_frame.yaml", "tests/sweep/light_metric.yaml",    "tests/sweep/heavy_tandem.yaml"};

inline OrderSweep usual_sweep(const std::string& top, std::uint64_t seed) {
  std::vector<Family> families;
  for (const std::string& file : swept_files) families.push_back(family_of(top, file));
  return {std::move(families), seed};
}

}  // namespace bedwright::sweep
