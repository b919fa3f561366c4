// Checks between the keys of an order's files that the description of a single
// key cannot state. Each looks only at keys that were read without a fault, so
// that one slip makes one message.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <vector>

#include "params/job.h"
#include "yaml/document.h"

namespace bedwright {

class CrossCheck {
 public:
  // `problems` holds what reading found; further problems are added to it.
  CrossCheck(const Job& job, const Document& order, const Document& kit, const Document& frame,
             bool catalog_is_whole, std::vector<Problem>& problems);

  void run();

 private:
  // cross_order.cpp
  void check_heading();
  void check_revision();
  void check_tape();
  void check_track();
  void check_tabs_found();
  void check_bolt_lengths();
  void check_road_and_work();
  void check_places();
  void check_overrides();
  void check_free();
  // cross_kit.cpp
  void check_rail_and_bunk();
  void check_mounting();
  void check_positions();
  void check_kit_fittings();
  void check_head();
  // cross_frame.cpp
  void check_frame_names();
  void check_tabs();
  void check_bought();
  // cross_standing.cpp
  struct SideOfTabs {
    const char* name = "";
    std::vector<Mm> places;  // of its tabs' holes
  };
  void check_existing();
  void check_changes();
  void check_work(const std::string& where, const TabWork& work, const std::vector<SideOfTabs>& sides);
  void check_heights();
  void check_jacks();
  void on_the_mains(const std::string& list, const std::vector<Mm>& places);

  // cross_check.cpp
  void check_hole(const Document& document, const std::string& key, const BoltHole& hole);
  void check_bolt(const Name& bolt);
  void check_section(const Name& section, const std::vector<Shape>& shapes);
  void check_closed();
  void check_jack_on_mains(bool tubes);
  void check_rail_lengths();
  void check_bunk_holes();
  void check_turned();
  void check_ascending(const Document& document, const std::string& key, const std::vector<Mm>& values);
  // `small_key` must not be more (or, strictly, not be as much) than `large_key`.
  void check_order(const Document& document, const std::string& small_key, Mm small_value,
                   const std::string& large_key, Mm large_value, bool strictly = false);
  // Whether these keys, and all within and above them, were read without a fault.
  bool sound(const Document& document, std::initializer_list<std::string> keys) const;
  bool given(const Document& document, const std::string& key) const;
  void problem(const Document& document, const std::string& key, std::string what, std::string would_do);

  const Job& job_;
  const Document &order_, &kit_, &frame_;
  bool catalog_is_whole_;
  std::vector<Problem>& problems_;
  std::vector<Problem> found_in_reading_;
};

// Whether a text is a date of the calendar, written year-month-day with four, two and two digits.
bool is_calendar_date(const std::string& text);

// What keeps a text from naming a folder on any common system; empty when nothing does.
std::string folder_name_fault(const std::string& text);

// What keeps a text from being a revision's: it names the folder of a release, beside those of
// trials and of what was withdrawn. Empty when nothing does.
std::string revision_fault(const std::string& text);

// An entry of the revision table to write over.
std::string revision_example(const std::string& revision, const std::string& date);

// All rail sections end to end, with the gaps between them.
Mm track_length(const Order& order, const Kit& kit);

inline constexpr Mm longest_track = 25'000;

}  // namespace bedwright
