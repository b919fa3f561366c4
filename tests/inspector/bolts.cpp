// Every bolt: closed holes with steel around them that it goes through with room, heads,
// washers and nut on steel all round, thread where the nut is and past it.
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "drawing.h"
#include "packet.h"

namespace inspector {
namespace {

constexpr double in = 25.4;

// Steel wanted between a hole and an edge or the next hole. EN 1993-1-8 table 3.3 (from
// memory): centre 1.2 hole diameters from an edge, so 0.7 of steel; 10 mm do for a large one.
double steel_wanted(double width) { return std::min(0.7 * width, 10.0) - 0.05; }

// Beside the hole of a bought thing, whose maker answers for it.
constexpr double maker_s_steel = 3;

// Least a hole is larger than its bolt. ISO 273, fine series (from memory): 0.4 to M8, 0.5
// to M10, 1 from M12; 1/32 in for the inch bolts of that size (common practice, no
// published source).
double room_wanted(double diameter) {
  return (diameter < 8.5 ? 0.4 : diameter < 11.5 ? 0.5 : in / 32) - 0.02;
}

// ASME B1.1 UNC and ISO 261 coarse, from memory: nominal diameter, pitch.
double pitch_of(double d) {
  static const std::vector<std::array<double, 2>> threads{{in / 4, in / 20},
                                                          {5 * in / 16, in / 18},
                                                          {3 * in / 8, in / 16},
                                                          {7 * in / 16, in / 14},
                                                          {in / 2, in / 13},
                                                          {9 * in / 16, in / 12},
                                                          {5 * in / 8, in / 11},
                                                          {3 * in / 4, in / 10},
                                                          {7 * in / 8, in / 9},
                                                          {in, in / 8},
                                                          {5, 0.8},
                                                          {6, 1},
                                                          {8, 1.25},
                                                          {10, 1.5},
                                                          {12, 1.75},
                                                          {14, 2},
                                                          {16, 2},
                                                          {18, 2.5},
                                                          {20, 2.5},
                                                          {22, 2.5},
                                                          {24, 3}};
  for (const auto& t : threads)
    if (std::abs(t[0] - d) < 0.03) return t[1];
  throw std::runtime_error(fmt::format("no thread is known for a bolt of {:.2f} mm", d));
}

bool is_metric(double d) { return std::abs(d - std::round(d)) < 0.03; }

// ASME B18.2.1 and ISO 4014, from memory: length of thread.
double thread_length(double d, double length) {
  if (is_metric(d)) return 2 * d + (length <= 125 ? 6 : length <= 200 ? 12 : 25);
  return 2 * d + (length <= 6 * in ? in / 4 : in / 2);
}

Ring flat(const Rim& rim, Point origin, Point u, Point v) {
  Ring ring;
  for (const Point& p : rim.line) ring.push_back({dot(p - origin, u), dot(p - origin, v)});
  return ring;
}

// The hole of a bought thing is not in the model: is there steel all round where the list
// says it is?
void check_listed_hole(const Packet& packet, const Bolt& bolt, const Item& item, std::size_t row,
                       Faults& faults) {
  const double width = packet.stacks.number(row, "hole mm"),
               long_by = packet.stacks.number_or(row, "slot mm", width) - width;
  const auto [u, v] = square_to(bolt.direction);
  Point along = u;
  if (long_by > 0)
    along = {packet.stacks.number(row, "slot x"), packet.stacks.number(row, "slot y"),
             packet.stacks.number(row, "slot z")};
  const Point across = cross(bolt.direction, along);
  const Point middle =
      bolt.seat + (dot(Point{packet.stacks.number(row, "x mm"), packet.stacks.number(row, "y mm"),
                             packet.stacks.number(row, "z mm")} -
                           bolt.seat,
                       bolt.direction) +
                   0.5 * packet.stacks.number(row, "thickness mm")) *
                      bolt.direction;
  const double around = width / 2 + maker_s_steel;
  const Section cut(item.body, middle, along, across);
  int missing = 0;
  for (int i = 0; i < 72; ++i) {
    const double t = i * 5 * std::numbers::pi / 180, x = around * std::cos(t), y = around * std::sin(t);
    missing += !cut.holds(x + (x > 0 ? 0.5 : -0.5) * long_by, y);
  }
  if (missing > 0)
    faults.add(
        "{}: its hole in {} ({:.1f} mm wide, {:.1f} long) has less than {:.1f} mm of steel around it, {}",
        bolt.name, item.name, width, width + long_by, maker_s_steel, place(middle));
}

void check_hole(const Packet& packet, const Bolt& bolt, const Item& item, std::size_t row, Faults& faults) {
  const double width = packet.stacks.number(row, "hole mm");
  if (width - bolt.diameter < room_wanted(bolt.diameter))
    faults.add("{}: its hole in {} is {:.2f} mm wide for a bolt of {:.2f} mm, {:.2f} mm more is wanted",
               bolt.name, item.name, width, bolt.diameter,
               bolt.diameter + room_wanted(bolt.diameter) - width);
  if (packet.is_envelope(item)) return check_listed_hole(packet, bolt, item, row, faults);
  const auto [u, v] = square_to(bolt.direction);
  int rims = 0;
  double steel = -1e300;  // the better of its two faces: one may end at a fillet, which is no edge
  for (const Rim& rim : item.rims_along(bolt.direction)) {
    const Ring ring = flat(rim, bolt.seat, u, v);
    if (!holds(ring, {0, 0})) continue;
    ++rims;
    const double room = apart(ring, Flat{0, 0}) - bolt.diameter / 2;
    if (room < -2 * chord)
      faults.add("{}: meets the side of its hole in {}, {:.2f} mm too far over, {}", bolt.name, item.name,
                 -room, place(rim.centre));
    if (const double found = 2 * apart(ring, flat({rim.centre, {}, {rim.centre}, 0}, bolt.seat, u, v)[0]);
        std::abs(found - width) > 0.2)
      faults.add("{}: its hole in {} is {:.2f} mm wide in the model and {:.2f} in the list", bolt.name,
                 item.name, found, width);
    steel = std::max(steel, rim.steel);
  }
  if (rims > 0 && steel < steel_wanted(width))
    faults.add("{}: {:.1f} mm of steel beside its hole in {}, {:.1f} mm are wanted, {}", bolt.name, steel,
               item.name, steel_wanted(width), place(bolt.seat));
  if (rims < 2) faults.add("{}: {} has no whole hole for it, {}", bolt.name, item.name, place(bolt.seat));
}

// Of a ring of steel: how much of its outer edge, and of its face, lies on something.
struct Bearing {
  double edge = 0, face = 0;
};

Bearing bearing_of(const Packet& packet, const Bolt& bolt, const Face& face) {
  constexpr double beyond = 0.2;  // past the face, so that paint and rounding are no gap
  constexpr int steps = 72, rings = 6;
  const Point at = bolt.seat + (face.at + face.toward * beyond) * bolt.direction;
  const auto [u, v] = square_to(bolt.direction);
  Box box;
  for (const double a : {-1.0, 1.0})
    for (const double b : {-1.0, 1.0}) box.add(at + a * face.outer * u + b * face.outer * v);
  std::vector<Section> under;
  for (const Item& item : packet.model.items) {
    if (!item.box.meets(box)) continue;
    const bool own =
        std::any_of(bolt.pieces.begin(), bolt.pieces.end(), [&](const Piece& p) { return p.item == &item; });
    if (!own) under.emplace_back(item.body, at, u, v);
  }
  const auto steel = [&](double r, int i) {
    const double t = (i + 0.31) * 2 * std::numbers::pi / steps;
    return std::any_of(under.begin(), under.end(),
                       [&](const Section& s) { return s.holds(r * std::cos(t), r * std::sin(t)); });
  };
  int edge = 0;
  double found = 0, whole = 0;
  for (int i = 0; i < steps; ++i) {
    edge += steel(face.outer - chord, i);
    for (int k = 0; k < rings; ++k) {
      const double r = face.inner + (k + 0.5) / rings * (face.outer - face.inner);
      whole += r;
      found += steel(r, i) ? r : 0;
    }
  }
  return {static_cast<double>(edge) / steps, found / whole};
}

// The face of another piece that this one lies on.
const Face* opposite(const Bolt& bolt, const Piece& piece, const Face& face) {
  for (const Piece& other : bolt.pieces)
    for (const Face& f : other.faces)
      if (&other != &piece && f.toward == -face.toward && std::abs(f.at - face.at) < 0.05) return &f;
  return nullptr;
}

void check_bearing(const Packet& packet, const Bolt& bolt, Faults& faults) {
  for (const Piece& piece : bolt.pieces) {
    const bool is_nut = &piece == bolt.nut;
    for (const Face& face : piece.faces) {
      if (is_nut && face.toward > 0) continue;
      if (const Face* other = opposite(bolt, piece, face)) {
        const double ring = std::min(face.outer, other->outer) - std::max(face.inner, other->inner);
        if (ring < 1)
          faults.add("{}: bears on the next piece by a ring of {:.1f} mm only", piece.item->name, ring);
        continue;
      }
      const Bearing b = bearing_of(packet, bolt, face);
      const Point at = bolt.seat + face.at * bolt.direction;
      // Half of its face: common practice, no published source.
      if (b.edge < 1)
        faults.add("{}: has steel under {:.0f} % of its edge (radius {:.1f} mm) only, {}", piece.item->name,
                   100 * b.edge, face.outer, place(at));
      else if (b.face < 0.5)
        faults.add("{}: bears on {:.0f} % of its face only, {}", piece.item->name, 100 * b.face, place(at));
    }
  }
}

void check_thread(const Packet& packet, const Bolt& bolt, Faults& faults) {
  if (!bolt.nut) return faults.add("{}: has no nut", bolt.name);
  const double pitch = pitch_of(bolt.diameter), past = bolt.tip - bolt.nut->to;
  if (past < pitch - 0.05)
    faults.add("{}: stands {:.2f} mm past its nut, one thread is {:.2f} mm", bolt.name, past, pitch);
  const double plain = bolt.tip - thread_length(bolt.diameter, bolt.tip);
  if (bolt.nut->from < plain - 0.05)
    faults.add("{}: {:.1f} mm long, its thread ends {:.1f} mm before the nut is home", bolt.name, bolt.tip,
               plain - bolt.nut->from);
  const auto& inner = bolt.nut->faces;
  if (!inner.empty() && std::abs(2 * inner[0].inner - bolt.diameter) > 0.2)
    faults.add("{}: of {:.2f} mm goes through a nut for {:.2f} mm", bolt.name, bolt.diameter,
               2 * inner[0].inner);
  double steel = 0;
  for (const std::size_t r : bolt.rows) steel += packet.stacks.number(r, "thickness mm");
  double washers = 0;
  for (const Piece& p : bolt.pieces)
    if (&p != &bolt.pieces[0] && &p != bolt.nut) washers += p.to - p.from;
  if (std::abs(steel + washers - bolt.nut->from) > 0.3)
    faults.add(
        "{}: steel of {:.2f} mm and washers of {:.2f} mm lie between head and nut, which are {:.2f} mm apart",
        bolt.name, steel, washers, bolt.nut->from);
}

void check_listed(const Packet& packet, Faults& faults) {
  std::map<std::string, const Bolt*> named;
  for (const Bolt& bolt : packet.bolts) named[bolt.name] = &bolt;
  for (std::size_t r = 0; r < packet.bolt_list.rows(); ++r) {
    const std::string& name = packet.bolt_list.text(r, "hole");
    const auto it = named.find(name);
    if (it == named.end()) {
      faults.add("{}: stands on the bolt list and goes through nothing", name);
      continue;
    }
    const double listed = packet.bolt_list.number(r, "length mm");
    if (std::abs(listed - it->second->tip) > 0.05)
      faults.add("{}: {:.1f} mm long in the list and {:.1f} in the model", name, listed, it->second->tip);
  }
  // Two bolts in one hole.
  for (std::size_t i = 0; i < packet.bolts.size(); ++i)
    for (std::size_t j = i + 1; j < packet.bolts.size(); ++j)
      if (length(packet.bolts[i].seat - packet.bolts[j].seat) < packet.bolts[i].diameter / 2)
        faults.add("{} and {} go through one place, {}", packet.bolts[i].name, packet.bolts[j].name,
                   place(packet.bolts[i].seat));
}

}  // namespace

void check_bolts(const Packet& packet, Faults& faults) {
  for (const Bolt& bolt : packet.bolts) {
    if (bolt.plies.size() < 2) faults.add("{}: holds fewer than two parts together", bolt.name);
    for (std::size_t i = 0; i < bolt.plies.size(); ++i)
      check_hole(packet, bolt, *bolt.plies[i], bolt.rows[i], faults);
    check_bearing(packet, bolt, faults);
    check_thread(packet, bolt, faults);
  }
  check_listed(packet, faults);
}

}  // namespace inspector
