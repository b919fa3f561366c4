// Work on the tabs of a frame that stands, gathered side by side: what both sides want at one
// place is one entry for both, the rest one for its side alone.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "bed/identity.h"
#include "params/frame_tabs.h"
#include "rules/finding.h"
#include "units/figures.h"

namespace bedwright {

inline Mm place_of(Mm at) { return at; }
inline Mm place_of(const TabFiled& t) { return t.at; }
inline Mm place_of(const TabReplaced& t) { return t.at; }

inline std::string as_entry(const Figures& say, Mm at) { return say.set(at); }
inline std::string as_entry(const Figures& say, const TabFiled& t) {
  return fmt::format("{{at: {}, slot_length: {}}}", say.set(t.at), say.set(t.slot_length));
}
inline std::string as_entry(const Figures& say, const TabReplaced& t) {
  return fmt::format("{{at: {}, with: {}}}", say.set(t.at), say.set(t.with));
}

// Entries of one key of TabWork: those the frame's file asks for already, and new ones.
template <class T>
class SidedWork {
 public:
  SidedWork(const char* key, std::vector<T> TabWork::*list, const FrameTabs& tabs)
      : key_(key), both_(tabs.*list) {
    if (tabs.left) left_ = (*tabs.left).*list;
    if (tabs.right) right_ = (*tabs.right).*list;
  }

  // The entry at that place for that side, if there is one.
  const T* find(Side side, Mm at) const {
    for (const std::vector<T>* list : {&both_, &own(side), &fresh(side)})
      for (const T& t : *list)
        if (std::abs(place_of(t) - at) < same_place) return &t;
    return nullptr;
  }
  void want(Side side, const T& entry) {
    if (!find(side, place_of(entry))) fresh(side).push_back(entry);
  }
  void want_instead(Side side, const T& entry) {
    for (std::vector<T>* list : {&both_, &own(side), &fresh(side)})
      for (T& t : *list)
        if (std::abs(place_of(t) - place_of(entry)) < same_place) {
          t = entry;
          return;
        }
    fresh(side).push_back(entry);
  }
  void drop(Side side, Mm at) {
    std::erase_if(fresh(side), [&](const T& t) { return std::abs(place_of(t) - at) < same_place; });
  }

  bool is_for_both(Mm at) const {
    return has(both_, at) || (has(fresh(Side::left), at) && has(fresh(Side::right), at));
  }
  // All that its key then lists, with the entry at that place among it.
  Change change(const Figures& say, Side side, Mm at) const {
    const bool both = is_for_both(at);
    std::vector<T> all = both ? both_ : own(side);
    for (const T& t : fresh(side))
      if (is_for_both(place_of(t)) == both) all.push_back(t);
    std::sort(all.begin(), all.end(), [](const T& a, const T& b) { return place_of(a) < place_of(b); });
    std::string text;
    for (const T& t : all) text += (text.empty() ? "" : ", ") + as_entry(say, t);
    const char* where = both ? "" : side == Side::left ? "left." : "right.";
    return {fmt::format("frame.tabs.{}{}", where, key_), "[" + text + "]"};
  }

 private:
  static bool has(const std::vector<T>& list, Mm at) {
    return std::any_of(list.begin(), list.end(),
                       [&](const T& t) { return std::abs(place_of(t) - at) < same_place; });
  }
  const std::vector<T>& own(Side side) const { return side == Side::left ? left_ : right_; }
  std::vector<T>& own(Side side) { return side == Side::left ? left_ : right_; }
  const std::vector<T>& fresh(Side side) const { return side == Side::left ? fresh_left_ : fresh_right_; }
  std::vector<T>& fresh(Side side) { return side == Side::left ? fresh_left_ : fresh_right_; }

  const char* key_;
  std::vector<T> both_, left_, right_, fresh_left_, fresh_right_;
};

}  // namespace bedwright
