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

}  // namespace

bool can_be_done(const FrameFile& frame, const std::string& code, const Change& change) {
  if (!stands(frame)) return true;
  if (is_within(change.key, "frame")) return is_work_on_what_stands(change.key);
  return code == "STANDING" || !is_where_it_stands(change.key);
}

void keep_to_what_stands(const Job& job, std::vector<Finding>& findings) {
  if (!stands(job.frame)) return;
  for (Finding& f : findings) {
    if (std::erase_if(f.changes, [&](const Change& c) { return !can_be_done(job.frame, f.code, c); }) == 0)
      continue;
    f.names_in_remedy.clear();
    f.remedy.clear();
    for (const Change& c : f.changes) f.remedy += (f.remedy.empty() ? "" : "; or ") + in_words(c);
    f.remedy = f.remedy.empty() ? "nothing that can be done to this frame, which stands, clears it: another "
                                  "track or log on it, or another frame"
                                : f.remedy + "; or another frame: this one stands";
  }
}

}  // namespace bedwright
