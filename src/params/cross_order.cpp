// Checks between the keys of an order, and of the order against its kit.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>
#include <numeric>

#include "params/cross_check.h"
#include "units/print.h"
#include "yaml/key_path.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

constexpr std::size_t longest_folder_name = 64, longest_revision = 16;

// What a shop calls the first issue of an order: it needs no entry in the table.
bool is_first_revision(const std::string& text) {
  return text == "A" || text == "a" || text == "0" || text == "1" || text == "00" || text == "01";
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

int digits_value(const std::string& text, std::size_t from, std::size_t count) {
  int value = 0;
  for (std::size_t i = from; i < from + count; ++i) value = value * 10 + (text[i] - '0');
  return value;
}

// L or R and a number from 1 up to three digits.
bool is_tab_name(const std::string& text) {
  if (text.size() < 2 || text.size() > 4 || (text[0] != 'L' && text[0] != 'R') || text[1] == '0')
    return false;
  return std::all_of(text.begin() + 1, text.end(), is_digit);
}

}  // namespace

bool is_calendar_date(const std::string& text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (i != 4 && i != 7 && !is_digit(text[i])) return false;
  }
  const std::chrono::year_month_day date{std::chrono::year(digits_value(text, 0, 4)),
                                         std::chrono::month(static_cast<unsigned>(digits_value(text, 5, 2))),
                                         std::chrono::day(static_cast<unsigned>(digits_value(text, 8, 2)))};
  return date.ok();
}

std::string folder_name_fault(const std::string& text) {
  if (text.size() > longest_folder_name)
    return fmt::format("is longer than {} characters", longest_folder_name);
  if (text.starts_with('.')) return "starts with a point";
  const auto plain = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || is_digit(c) || c == '-' || c == '_' ||
           c == '.';
  };
  const auto odd = std::find_if_not(text.begin(), text.end(), plain);
  if (odd == text.end()) return {};
  if (*odd == ' ') return "has a space in it";
  if (static_cast<unsigned char>(*odd) >= 0x80) return "has a letter beyond a to z in it";
  return fmt::format("has {} in it", quoted(std::string(1, *odd)));
}

std::string revision_fault(const std::string& text) {
  if (text.size() > longest_revision) return fmt::format("is longer than {} characters", longest_revision);
  if (text.find('.') != std::string::npos) return "has a point in it";
  std::string plain;
  for (const char c : text) plain += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  for (const char* taken : {"trial", "extra"})
    if (plain == taken) return "is the name of the folder for what is no release";
  return folder_name_fault(text);
}

Mm track_length(const Order& order, const Kit& kit) {
  const int sections = kit.rail.base_sections + order.track.extension_count;
  Mm rails = sections * order.track.rail_length;
  if (!order.track.rail_lengths.empty())
    rails = std::accumulate(order.track.rail_lengths.begin(), order.track.rail_lengths.end(), 0.0);
  return rails + (sections - 1) * kit.rail.joint_gap;
}

// One for each section, rail_length among them.
void CrossCheck::check_rail_lengths() {
  const TrackOrder& track = job_.order.track;
  if (!given(order_, "track.rail_lengths") ||
      !sound(order_, {"track.rail_lengths", "track.rail_length", "track.extension_count"}) ||
      !sound(kit_, {"rail.base_sections"}))
    return;
  const int sections = job_.kit.rail.base_sections + track.extension_count;
  if (static_cast<int>(track.rail_lengths.size()) != sections)
    problem(
        order_, "track.rail_lengths",
        fmt::format("lists {} sections, and the kit's own {} with {} more are {}", track.rail_lengths.size(),
                    job_.kit.rail.base_sections, track.extension_count, sections),
        "list each section's length once, from the front, or correct track.extension_count");
  else if (std::none_of(track.rail_lengths.begin(), track.rail_lengths.end(),
                        [&](Mm length) { return std::abs(length - track.rail_length) < same_place; }))
    problem(order_, "track.rail_length",
            fmt::format("{} is the length of none of the sections listed as track.rail_lengths",
                        both_units(Dimension::length, track.rail_length)),
            "make it the length most of them have");
}

void CrossCheck::check_heading() {
  const Heading& heading = job_.order.order;
  if (sound(order_, {"order.number"})) {
    const std::string fault = folder_name_fault(heading.number);
    if (!fault.empty()) {
      problem(order_, "order.number",
              fmt::format("{} {}; it names the output folder", quoted(heading.number), fault),
              "use letters a to z, digits, - _ and . only, at most 64, not starting with a point");
    }
  }
  check_revision();
  if (sound(order_, {"order.date"}) && !is_calendar_date(heading.date)) {
    problem(order_, "order.date", fmt::format("{} is no day of the calendar", quoted(heading.date)),
            "write year-month-day, such as 2025-03-31");
  }
  if (sound(order_, {"catalog"}) && job_.order.catalog.empty()) {
    problem(order_, "catalog", "names no file", "name the catalogue files with the sections and bolts used");
  }
}

// From the second letter on the sheets' table must say what was changed, and by whom.
void CrossCheck::check_revision() {
  if (!sound(order_, {"order.revision"})) return;
  const Heading& heading = job_.order.order;
  if (const std::string fault = revision_fault(heading.revision); !fault.empty())
    return problem(order_, "order.revision",
                   fmt::format("{} {}; it names the folder of the release", quoted(heading.revision), fault),
                   "use letters a to z, digits, - and _ only, at most 16, such as B");
  if (is_first_revision(heading.revision) || !sound(order_, {"revisions"})) return;
  const std::vector<Revision>& all = job_.order.revisions;
  if (std::any_of(all.begin(), all.end(), [&](const Revision& r) { return r.revision == heading.revision; }))
    return;
  problem(order_, "order.revision",
          fmt::format("{} has no entry under revisions that says what it changes", heading.revision),
          all.empty()
              ? fmt::format("add at the order's end: revisions: [{}]",
                            revision_example(heading.revision, heading.date))
              : fmt::format("add to revisions: {}", revision_example(heading.revision, heading.date)));
}

std::string revision_example(const std::string& revision, const std::string& date) {
  return fmt::format("{{revision: {}, date: {}, by: YOUR NAME, what: WHAT WAS CHANGED}}", revision, date);
}

// What is laid out falls on the tape's marks, and is printed in the order's unit: a
// mark that unit cannot print exactly would come out as another place.
void CrossCheck::check_tape() {
  if (!sound(order_, {"order.tape", "order.printing"})) return;
  const Heading& heading = job_.order.order;
  const bool metric = heading.printing == Printing::metric;
  const double in_marks = metric ? heading.tape / 0.1 : inch / heading.tape;
  if (std::abs(in_marks - std::round(in_marks)) < 1e-6) return;
  const std::string mark = both_units(Dimension::length, heading.tape);
  problem(
      order_, "order.tape",
      metric
          ? fmt::format("{} is no whole tenth of a millimetre, and the order is printed in millimetres", mark)
          : fmt::format("{} goes into an inch no whole number of times, and the order is printed in inches",
                        mark),
      metric ? "name a tape read in millimetres, such as 1 mm, or print in inches (printing: inch)"
             : "name a tape read in fractions of an inch, such as 1/16 in, or print in millimetres "
               "(printing: metric)");
}

void CrossCheck::check_track() {
  const TrackOrder& track = job_.order.track;
  check_order(order_, "track.bunk_pitch", track.bunk_pitch, "track.rail_length", track.rail_length);
  for (std::size_t i = 0; i < track.rail_lengths.size(); ++i)
    check_order(order_, "track.bunk_pitch", track.bunk_pitch, path_to("track.rail_lengths", i + 1),
                track.rail_lengths[i]);
  if (sound(order_, {"track.rail_length", "track.extension_count"}) &&
      sound(kit_, {"rail.base_sections", "rail.joint_gap"})) {
    const Mm total = track_length(job_.order, job_.kit);
    if (total > longest_track) {
      const int sections = job_.kit.rail.base_sections + track.extension_count;
      problem(
          order_, "track.rail_length",
          fmt::format("{} sections come to a track of {}", sections, both_units(Dimension::length, total)),
          fmt::format("keep the track within {}", both_units(Dimension::length, longest_track)));
    }
  }
  const auto once = [&](const std::string& key, int bunk, std::map<int, std::string>& seen) {
    const auto [first, fresh] = seen.emplace(bunk, key);
    if (!fresh) {
      problem(order_, key, fmt::format("bunk {} is already named by {}", bunk, first->second),
              "name each bunk once");
    }
  };
  std::map<int, std::string> clamped, stopped;
  if (sound(order_, {"track.clamps"})) {
    for (std::size_t i = 0; i < track.clamps.size(); ++i) {
      once(path_to("track.clamps", i + 1), track.clamps[i].bunk, clamped);
    }
  }
  if (sound(order_, {"track.log_stops"})) {
    for (std::size_t i = 0; i < track.log_stops.size(); ++i) {
      once(path_to("track.log_stops", i + 1), track.log_stops[i], stopped);
    }
  }
}

// A length is one the catalogue has in stock or one the maker packs; another is a
// slip of the pen.
void CrossCheck::check_bolt_lengths() {
  for (const NamedLength& named : named_lengths(job_)) {
    const BoltSize* size = job_.catalog.bolt(named.hole->bolt.text);
    if (!named.length || !size || size->lengths.empty() || !sound(order_, {named.key})) continue;
    const Mm wanted = *named.length;
    const auto is_it = [&](Mm length) { return std::abs(length - wanted) < 0.01; };
    const auto comes_with_the_kit = [&](const KitBox& k) {
      return k.bolt.text == size->name && is_it(k.length);
    };
    if (std::any_of(size->lengths.begin(), size->lengths.end(), is_it) ||
        std::any_of(job_.kit.box.begin(), job_.kit.box.end(), comes_with_the_kit))
      continue;
    const auto above = std::upper_bound(size->lengths.begin(), size->lengths.end(), wanted);
    std::string near = above == size->lengths.begin() ? "" : as_written(Dimension::length, *(above - 1));
    if (above != size->lengths.end())
      near += (near.empty() ? "" : " or ") + as_written(Dimension::length, *above);
    problem(order_, named.key,
            fmt::format("{} is no length the catalogue has of {} bolts",
                        as_written(Dimension::length, wanted), size->name),
            fmt::format("take {}, or add the length to the catalogue where it is stocked", near));
  }
}

void CrossCheck::check_tabs_found() {
  std::map<std::string, std::size_t> seen;
  for (std::size_t i = 0; i < job_.order.tabs_found.size(); ++i) {
    const std::string key = path_to("tabs_found", i + 1) + ".tab";
    const Name& tab = job_.order.tabs_found[i].tab;
    if (!sound(order_, {key})) continue;
    if (!is_tab_name(tab.text)) {
      problem(order_, key, fmt::format("{} is no tab's name", quoted(tab.text)),
              "write L or R and the tab's number from the front, such as R7");
    } else if (const auto [first, fresh] = seen.emplace(tab.text, i + 1); !fresh) {
      problem(order_, key, fmt::format("{} is already given by entry {}", tab.text, first->second),
              "give each tab once");
    }
  }
}

}  // namespace bedwright
