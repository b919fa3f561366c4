// A small bed laid out by hand: what the exports are tried on.
#pragma once

#include <numbers>
#include <random>

#include "bed/bed.h"
#include "params/order.h"

namespace bedwright::sample {

inline Heading heading(Printing printing = Printing::inches) {
  Heading h;
  h.number = "1042";
  h.customer = "A. Customer";
  h.shop = "The shop";
  h.date = "2024-05-01";
  h.revision = "B";
  h.printing = printing;
  h.tape = printing == Printing::inches ? inch / 16 : 1;
  return h;
}

// C6x8.2: depth 6 in, flange 1.92 in, web 0.2 in, mean flange thickness 0.343 in (from memory).
inline Section channel() {
  Section s;
  s.name = "C6x8.2";
  s.shape = Shape::channel;
  s.depth = 6 * inch;
  s.flange = 1.92 * inch;
  s.web = 0.2 * inch;
  s.flange_thickness = 0.343 * inch;
  s.root_radius = 0.3 * inch;
  s.toe_radius = 0.1 * inch;
  return s;
}

inline Section angle(Mm leg = 3 * inch, Mm thickness = inch / 4) {
  Section s;
  s.name = "L3x3x1/4";
  s.shape = Shape::angle;
  s.depth = s.flange = leg;
  s.web = thickness;
  return s;
}

inline Hole hole(Vec2 at, Mm diameter, Mm length = 0, Process process = Process::cut, Radians turned = 0,
                 Kind purpose = Kind::track_bolt) {
  return {at, diameter, length > 0 ? length : diameter, turned, process, purpose};
}

inline Part plate(Kind kind, Outline outline, Mm thickness, std::vector<Hole> holes) {
  return {{kind}, "A36", Origin::made, Plate{std::move(outline), thickness, std::move(holes)}};
}

// A tab with a slot, its corners rounded; below the origin on purpose.
inline Part tab() {
  Outline o = rectangle({-60, -40}, {60, 62});
  for (const std::size_t i : {3U, 2U, 1U, 0U}) round_corner(o, i, 10);
  return plate(Kind::tab, o, 9.525, {hole({5, 20}, 14.3, 31.75, Process::cut, 0)});
}

// A ring-shaped flange: an outline of two half circles, one big hole, four drilled.
inline Part flange() {
  std::vector<Hole> holes{hole({200, 100}, 60)};
  for (int i = 0; i < 4; ++i) {
    const double a = std::numbers::pi / 4 + i * std::numbers::pi / 2;
    holes.push_back(hole({200 + 50 * std::cos(a), 100 + 50 * std::sin(a)}, 11, 0, Process::drilled));
  }
  return plate(Kind::tongue_plate, hole_outline({200, 100}, 140, 140, 0), 12.7, holes);
}

inline Part gusset() {
  return plate(Kind::corner_gusset, polygon({{0, 0}, {250, 0}, {250, 30}, {30, 250}, {0, 250}}), 6.35,
               {hole({40, 40}, 17.5), hole({120, 50}, 14, 40, Process::cut, std::numbers::pi / 4)});
}

// Too small for letters.
inline Part pad() { return plate(Kind::tab_pad, rectangle({0, 0}, {30, 22}), 3.175, {hole({15, 11}, 12)}); }

inline std::vector<Part> plates() { return {tab(), flange(), gusset(), pad()}; }

// A main with jack holes in the web, a few more on the top flange.
inline Part main_member(Side side = Side::right) {
  Member m{channel(), 6019.8, 0, 0, {}};
  for (const Mm jack : {400.0, 3000.0, 5600.0}) {
    for (const double dx : {-50.8, 50.8}) {
      for (const double dz : {-38.1, 38.1}) {
        m.holes.push_back(
            {Face::web, hole({jack + dx, dz}, 14.2875, 0, Process::drilled, 0, Kind::jack_bolt)});
      }
    }
  }
  for (int i = 0; i < 9; ++i) {
    m.holes.push_back(
        {Face::top_flange, hole({203.2 + i * 700.3, 28}, 10.3, 0, Process::drilled, 0, Kind::gusset_bolt)});
  }
  m.holes.push_back({Face::web, hole({1500, 0}, 25.4, 0, Process::drilled, 0, Kind::jack_tube)});
  m.holes.push_back({Face::web, hole({1530, 20}, 14.2875, 50.8, Process::drilled, 0, Kind::stop_bolt)});
  return {{Kind::main, side}, "A36", Origin::made, m};
}

inline Part tongue(Side side = Side::left) {
  Member m{channel(), 1800, 0.35, -0.35, {}};
  m.holes.push_back({Face::bottom_flange, hole({300, 30}, 14.2875, 0, Process::drilled, 0, Kind::jack_bolt)});
  m.holes.push_back(
      {Face::bottom_flange, hole({360, 30}, 14.2875, 40, Process::drilled, 0.35, Kind::jack_bolt)});
  m.holes.push_back({Face::web, hole({900, -20}, 20.6, 0, Process::drilled, 0, Kind::tongue_jack_bolt)});
  return {{Kind::tongue, side}, "A36", Origin::made, m};
}

inline Part clip() {
  Member m{angle(), 101.6, 0, 0, {}};
  m.holes.push_back(
      {Face::flat_leg, hole({50.8, 44.45}, 14.2875, 31.75, Process::drilled, 0, Kind::track_bolt)});
  return {{Kind::tab, Side::left}, "A36", Origin::made, m};
}

inline BoltSize half_inch() {
  BoltSize b;
  b.name = "1/2 in";
  b.diameter = 12.7;
  b.pitch = 25.4 / 13;
  b.head_flats = b.nut_flats = 19.05;
  b.head_height = 8;
  b.nut_height = 11;
  b.flat = {13.5, 34.9, 2.4};
  b.lock = {12.9, 22, 3.2};
  return b;
}

inline Bed bed() {
  Bed b;
  for (Part p : plates()) b.parts.push_back(std::move(p));
  b.parts.push_back(main_member());
  b.parts.push_back(tongue());
  b.parts.push_back(clip());
  b.parts.push_back({{Kind::hardware}, "", Origin::bought, Hardware{HardwareKind::bolt, half_inch(), 38.1}});
  b.parts.push_back({{Kind::hardware}, "", Origin::bought, Hardware{HardwareKind::nut, half_inch(), 0}});
  const auto put = [&](int part, const Identity& id, int bolt = -1, Vec3 x = {1, 0, 0}) {
    Item item;
    item.part = part;
    item.id = id;
    item.bolt = bolt;
    item.placement.x_axis = x;
    if (x.y != 0) item.placement.y_axis = {-x.y, 0, 0};
    b.items.push_back(item);
  };
  put(0, {Kind::tab, Side::right, 1});
  put(0, {Kind::tab, Side::right, 2});
  put(1, {Kind::tongue_plate});
  put(2, {Kind::corner_gusset, Side::left});
  put(3, {Kind::tab_pad, Side::right, 1});
  put(4, {Kind::main, Side::right});
  put(5, {Kind::tongue, Side::left});
  put(6, {Kind::tab, Side::left, 1}, -1, {0, 1, 0});
  for (const Identity& id :
       {Identity{Kind::track_bolt, Side::right, 1}, Identity{Kind::jack_bolt, Side::right, 1, 1}}) {
    Bolt bolt;
    bolt.id = id;
    b.bolts.push_back(bolt);
    Identity nut = id;
    nut.piece = Piece::nut;
    const int index = static_cast<int>(b.bolts.size()) - 1;
    put(7, id, index);
    put(8, nut, index);
  }
  return b;
}

// Holes are kept two diameters apart and one from the edges, as a shop would.
inline Member random_member(std::mt19937& random) {
  const auto from = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  const bool is_channel = from(0, 1) < 0.6;
  Member m{is_channel ? channel() : angle(from(40, 100), 6), from(100, 7000), 0, 0, {}};
  if (from(0, 1) < 0.3) m.start_mitre = from(-0.7, 0.7);
  if (from(0, 1) < 0.3) m.end_mitre = from(-0.7, 0.7);
  const std::vector<Face> faces = is_channel
                                      ? std::vector<Face>{Face::web, Face::top_flange, Face::bottom_flange}
                                      : std::vector<Face>{Face::flat_leg, Face::standing_leg};
  for (const Face face : faces) {
    if (from(0, 1) < 0.3 && !m.holes.empty()) continue;
    const Mm low = face == Face::web ? -m.section.depth / 2 : 0,
             high = face == Face::web ? -low : m.section.flange;
    const int tries = static_cast<int>(from(1, 24));
    const bool gang = from(0, 1) < 0.5;
    for (int i = 0; i < tries; ++i) {
      const Mm diameter = 8 + 2 * std::floor(from(0, 6)),
               length = from(0, 1) < 0.3 ? diameter * 2.25 : diameter;
      Vec2 at{from(80 + length, std::max(81 + length, m.length - 80 - length)),
              from(low + 1.2 * diameter, high - 1.2 * diameter)};
      if (gang) at = {std::round(at.x / 40) * 40, (low + high) / 2};
      bool clear = at.x > 40 + length && at.x < m.length - 40 - length;
      for (const FaceHole& h : m.holes) {
        clear = clear && (h.face != face || norm(h.hole.at - at) > h.hole.length / 2 + length / 2 + diameter);
      }
      if (clear) m.holes.push_back({face, hole(at, diameter, length, Process::drilled, 0, Kind::track_bolt)});
    }
  }
  if (m.holes.empty())
    m.holes.push_back({faces[0], hole({m.length / 2, is_channel ? 0 : m.section.flange / 2}, 10)});
  return m;
}

}  // namespace bedwright::sample
