// Strikes from remedies what would make good steel anew.
#include "rules/standing_remedies.h"

#include <fmt/format.h>

#include <algorithm>

#include "yaml/key_path.h"

namespace bedwright {
namespace {

bool is_work_on_what_stands(const std::string& key) {
  for (const char* of : {"frame.tabs.to_", "frame.tabs.left.to_", "frame.tabs.right.to_", "frame.jack.to_"})
    if (key.starts_with(of)) return true;
  return false;
}

// Places of what is bolted or welded to the mains, and where tabs were found.
bool is_where_it_stands(const std::string& key) {
  for (const char* of : {"jacks", "jacks_from_rear", "jacks_between", "axle", "tabs_found"})
    if (is_within(key, of)) return true;
  return false;
}

// "clamp 2 on bunk 5", "rails of 84 in": the order's own values in words.
std::string in_words(const Change& c) {
  struct Said {
    const char *of, *words;
  };
  static constexpr Said said[] = {
      {"track.rail_length", "rails of {}"},
      {"track.bunk_pitch", "bunks {} apart"},
      {"track.extension_count", "extensions: {}"},
      {"track.datum", "the track pinned at its {}"},
      {"track.end_bunks", "the end bunks on the {} holes"},
      {"track.head_lock", "the head locked at the {}"},
      {"work.log.diameter", "a log of {}"},
      {"work.log.length", "a log {} long"},
  };
  for (const Said& s : said)
    if (c.key == s.of) return fmt::format(fmt::runtime(s.words), c.value);
  if (c.key.starts_with("track.clamps["))
    return fmt::format("clamp {} on bunk {}", c.key.substr(13, 1), c.value);
  if (c.key.starts_with("track.log_stops["))
    return fmt::format("log stop {} on bunk {}", c.key.substr(16, 1), c.value);
  if (c.key.starts_with("bolts.")) return fmt::format("{} bolts {}", c.key.substr(6), c.value);
  return fmt::format("{}: {}", c.key, c.value);
}

// A bought part of another rating, which can be put on the frame before the order is drawn again;
// empty for what is no such part.
std::string bought_first(const Change& c) {
  struct Bought {
    const char *key, *words;
  };
  static constexpr Bought bought[] = {
      {"frame.jack.rating", "jacks"},        {"frame.tongue_jack.rating", "a tongue jack"},
      {"frame.coupler.rating", "a coupler"}, {"frame.axle.axle_rating", "an axle"},
      {"frame.axle.tyre_rating", "tyres"},
  };
  for (const Bought& b : bought)
    if (c.key == b.key)
      return fmt::format("put {} rated {} on this frame first, and write that down as {} in its file",
                         b.words, c.value, c.key.substr(sizeof "frame." - 1));
  return "";
}

// Rules that ask for steel to lie elsewhere: of what is welded already there is only the
// measuring to be done again.
bool asks_where_steel_lies(const std::string& code) {
  for (const char* of : {"WELD-CONTACT", "WELD-STEEL", "WELD-MOST", "CUT-WEB"})
    if (code == of) return true;
  return false;
}

}  // namespace

bool can_be_done(const FrameFile& frame, const std::string& code, const Change& change) {
  if (!stands(frame)) return true;
  if (is_within(change.key, "frame")) return is_work_on_what_stands(change.key);
  return code == "STANDING" || !is_where_it_stands(change.key);
}

void keep_to_what_stands(const Job& job, std::vector<Finding>& findings) {
  if (!stands(job.frame)) return;
  for (Finding& f : findings) {
    std::vector<Change> cannot;
    for (const Change& c : f.changes)
      if (!can_be_done(job.frame, f.code, c)) cannot.push_back(c);
    std::erase_if(f.changes, [&](const Change& c) { return !can_be_done(job.frame, f.code, c); });
    if (asks_where_steel_lies(f.code)) {
      f.names_in_remedy.clear();
      f.changes.clear();
      f.remedy =
          "measure there again what the frame's file says; where it is so, another track on this frame, or "
          "another frame: this one stands";
      continue;
    }
    if (cannot.empty()) continue;
    f.names_in_remedy.clear();
    f.remedy.clear();
    const auto say = [&](const std::string& words) {
      if (!words.empty()) f.remedy += (f.remedy.empty() ? "" : "; or ") + words;
    };
    for (const Change& c : f.changes) say(in_words(c));
    for (const Change& c : cannot) say(bought_first(c));
    f.remedy = f.remedy.empty() ? "nothing that can be done to this frame, which stands, clears it: another "
                                  "track or log on it, or another frame"
                                : f.remedy + "; or another frame: this one stands";
  }
}

}  // namespace bedwright
