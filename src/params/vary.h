// A parameter with the values it is to be tried at, as a person writes it:
//
//     track.rail_length=72..96in/1in        from, to, step; the unit of the end will do for the start
//     track.extension_count=0..3            whole numbers, one apart unless a step is given
//     track.bunk_pitch=20in,24in            one after another
//     frame.tabs.slot_length=1 in..1-1/2 in/1/16 in
//     jacks=[17 in, 223 in],[20 in, 220 in] whole lists, as behind --set
//
// Both forms may be mixed, separated by commas outside brackets. Spaces do not
// matter. Values are kept as texts, as a --set takes them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace bedwright {

struct Varied {
  std::string key;
  std::vector<std::string> values;  // at least one, in the order given, none twice
};

// What is wrong with the text, and what would do instead.
struct VaryFault {
  std::string what, would_do;
};

inline constexpr std::size_t most_values = 10'000;  // of one parameter

// The part behind the '='.
std::variant<std::vector<std::string>, VaryFault> parse_values(std::string_view text);

// KEY=VALUES.
std::variant<Varied, VaryFault> parse_varied(std::string_view text);

}  // namespace bedwright
