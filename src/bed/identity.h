// Which thing is meant: its kind, side and number, never its printed name.
//
// Items, parts, bolts and the subjects of findings carry an Identity; what is
// printed is worked out from it (bed/names.h) and compared with nothing. Two
// identities are equal when they mean the same thing.
#pragma once

#include <compare>
#include <cstdint>

namespace bedwright {

enum class Side : std::int8_t { left = -1, middle = 0, right = +1 };
inline constexpr Side both_sides[] = {Side::left, Side::right};
inline constexpr double outward(Side side) { return static_cast<double>(side); }

enum class Kind : std::uint8_t {
  none,
  // What the shop makes. An end member is a part that serves front and rear.
  main,
  cross_member,
  front_member,
  rear_member,
  end_member,
  tongue,
  tongue_plate,
  corner_gusset,
  tab,
  tab_pad,
  jack_plate,
  // The track.
  rail,
  bunk,
  joint_gusset,
  track_stop,
  log_stop,
  clamp,
  head,
  // Bought for the frame.
  axle,
  wheel,
  jack,
  coupler,
  tongue_jack,
  // Bolts, and the holes made for them; the hole for the tongue jack's tube.
  track_bolt,
  bunk_bolt,
  gusset_bolt,
  stop_bolt,
  jack_bolt,
  tongue_jack_bolt,
  jack_tube,
  drain,     // a hole only: out of a closed member
  hardware,  // a part only: bolt, nut or washer of one size
  // What findings speak of that is not a single item.
  joint,
  joints,
  track,
  log,
  jacks,
  main_web,
  tab_weld,
  bed,
  tongue_load,
  overall_width,
  overall_size,
  law,
  bolt_size,
};
inline constexpr int kind_count = static_cast<int>(Kind::bolt_size) + 1;

enum class End : std::uint8_t { none, front, rear };

// The state of a thing that moves, where one is shown by itself.
enum class Pose : std::uint8_t {
  none,
  locked,
  running,    // the head
  full_bump,  // axles and wheels
  run_down,
  handle_turn,  // jacks
  in_outer,
  in_inner,
  out_outer,
  out_inner,
  between  // clamps: leaning in or out, at the outer or inner end; everywhere
};
inline constexpr int pose_count = static_cast<int>(Pose::between) + 1;

// Of a bolt in place.
enum class Piece : std::uint8_t { whole, head_washer, lower_washer, lock_washer, nut };
inline constexpr int piece_count = static_cast<int>(Piece::nut) + 1;

struct Identity {
  Kind kind = Kind::none;
  Side side = Side::middle;
  int number = 0;  // from 1 at the front; 0 where there is but one
  int of = 0;      // which of several at that number (a jack's four bolts), from 1
  End end = End::none;
  int bunk = 0;  // the bunk it is clamped to, from 1
  Pose pose = Pose::none;
  Piece piece = Piece::whole;
  friend auto operator<=>(const Identity&, const Identity&) = default;
};

// Several items are one thing: the states of what moves, a bolt with its washers and nut.
inline constexpr Identity whole_thing(Identity id) {
  id.pose = Pose::none;
  id.piece = Piece::whole;
  return id;
}
inline constexpr bool is_same_thing(const Identity& a, const Identity& b) {
  return whole_thing(a) == whole_thing(b);
}

// Every use bolts are put to.
inline constexpr Kind bolt_kinds[] = {Kind::track_bolt, Kind::bunk_bolt, Kind::gusset_bolt,
                                      Kind::stop_bolt,  Kind::jack_bolt, Kind::tongue_jack_bolt};
inline constexpr bool is_bolt(Kind kind) {
  return kind >= Kind::track_bolt && kind <= Kind::tongue_jack_bolt;
}

}  // namespace bedwright
