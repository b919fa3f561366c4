// Puts a packet together and asks every question of it.
#include "packet.h"

#include <Standard_Failure.hxx>
#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace inspector {
namespace {

// The faces of a bolt, nut or washer that look along its axis and have a hole: where it
// bears. `steel` of a rim is the ring's width.
std::vector<Face> faces_of(const Item& item, Point seat, Point direction) {
  std::vector<Face> faces;
  for (const Rim& rim : item.rims_along(direction)) {
    const double inner = length(rim.line.front() - rim.centre);
    faces.push_back({dot(rim.centre - seat, direction), dot(rim.outward, direction) > 0 ? 1 : -1, inner,
                     inner + rim.steel});
  }
  return faces;
}

Piece piece_of(const Item& item, Point seat, Point direction) {
  Piece piece{&item, faces_of(item, seat, direction), 1e300, -1e300};
  for (const Solid& s : item.body)
    for (const Point& p : s.points()) {
      piece.from = std::min(piece.from, dot(p - seat, direction));
      piece.to = std::max(piece.to, dot(p - seat, direction));
    }
  return piece;
}

void read_bolts(Packet& packet) {
  std::map<std::string, std::vector<std::size_t>> rows;
  std::vector<std::string> order;
  for (std::size_t r = 0; r < packet.stacks.rows(); ++r) {
    const std::string& name = packet.stacks.text(r, "bolt");
    if (!rows.count(name)) order.push_back(name);
    rows[name].push_back(r);
  }
  for (const std::string& name : order) {
    const auto at = packet.model.by_name.find(name);
    if (at == packet.model.by_name.end()) {
      packet.broken.push_back(name + ": the list has a hole for it, the model has no such bolt");
      continue;
    }
    Bolt bolt;
    bolt.name = name;
    const Item& body = packet.model.items[at->second];
    if (body.part->rims.size() != 1) {
      packet.broken.push_back(name + ": has not one bearing face under its head");
      continue;
    }
    bolt.seat = body.world(body.part->rims[0].centre);
    bolt.direction = body.turned(body.part->rims[0].outward);
    bolt.pieces.push_back(piece_of(body, bolt.seat, bolt.direction));
    bolt.tip = bolt.pieces[0].to;
    bolt.diameter = 2 * bolt.pieces[0].faces.at(0).inner;
    for (const Item& item : packet.model.items)
      if (item.name.starts_with(name + " ") && packet.is_hardware(item))
        bolt.pieces.push_back(piece_of(item, bolt.seat, bolt.direction));
    std::sort(bolt.pieces.begin() + 1, bolt.pieces.end(),
              [](const Piece& a, const Piece& b) { return a.from < b.from; });
    bolt.rows = rows[name];
    for (const std::size_t r : bolt.rows) {
      const auto ply = packet.model.by_name.find(packet.stacks.text(r, "item"));
      if (ply == packet.model.by_name.end())
        packet.broken.push_back(name + ": goes through " + packet.stacks.text(r, "item") +
                                ", which is not in bed.step");
      else
        bolt.plies.push_back(&packet.model.items[ply->second]);
    }
    if (bolt.plies.size() < bolt.rows.size()) continue;
    packet.bolts.push_back(std::move(bolt));
  }
  for (Bolt& bolt : packet.bolts)
    for (const Piece& piece : bolt.pieces)
      if (packet.form_of(*piece.item).starts_with("nut")) bolt.nut = &piece;
}

}  // namespace

Packet::Packet(const std::filesystem::path& f)
    : folder(f),
      model(read_model(f / "bed.step")),
      parts(f / "lists/parts.csv"),
      bolt_list(f / "lists/bolts.csv"),
      stacks(f / "lists/stacks.csv"),
      welds(f / "lists/welds.csv"),
      moving(f / "lists/moving.csv"),
      cut_list(f / "lists/cut_list.csv"),
      drill_list(f / "lists/drill_list.csv"),
      welds_to_lay(welds) {
  // What stands has lists of its own.
  for (const auto& [table, name] :
       {std::pair(&welds, "welds"), std::pair(&stacks, "stacks"), std::pair(&parts, "parts")})
    if (const auto standing = f / "lists" / (std::string("standing_") + name + ".csv");
        std::filesystem::exists(standing))
      table->append(Table(standing));
  for (std::size_t r = 0; r < parts.rows(); ++r) {
    form[parts.text(r, "part")] = parts.text(r, "form");
    origin[parts.text(r, "part")] = parts.text(r, "origin");
  }
  std::map<const Part*, int> placed;
  for (const Item& item : model.items) ++placed[item.part];
  for (const auto& part : model.parts) {
    if (!part->sound) broken.push_back(part->name + ": its solid in bed.step is not sound");
    if (!form.count(part->name)) throw std::runtime_error("parts.csv has no " + part->name);
  }
  std::map<std::string, double> listed;
  for (std::size_t r = 0; r < parts.rows(); ++r) listed[parts.text(r, "part")] += parts.number(r, "quantity");
  for (const auto& part : model.parts)
    if (placed[part.get()] != listed[part->name])
      broken.push_back(fmt::format("{}: {} in bed.step, {} in parts.csv", part->name, placed[part.get()],
                                   listed[part->name]));
  read_bolts(*this);
}

const std::string& Packet::form_of(const Item& item) const { return form.at(item.part->name); }

bool Packet::is_hardware(const Item& item) const {
  const std::string& f = form_of(item);
  return f.starts_with("bolt ") || f.starts_with("nut ") || f.starts_with("flat washer ") ||
         f.starts_with("lock washer ");
}

bool Packet::is_envelope(const Item& item) const { return form_of(item) == "bought item"; }

std::string place(Point p) { return fmt::format("at x {:.1f}, y {:.1f}, z {:.1f}", p.x, p.y, p.z); }

std::vector<std::string> inspect(const std::filesystem::path& folder) {
  Faults faults;
  try {
    const Packet packet(folder);
    for (const std::string& line : packet.broken) faults.add("{}", line);
    for (const auto check : {check_bolts, check_cut_files, check_drill_list, check_welds, check_held,
                             check_clashes, check_moving, check_ground, check_standing}) {
      try {
        check(packet, faults);
      } catch (const std::exception& e) {
        faults.add("cannot be inspected: {}", e.what());
      }
    }
  } catch (const Standard_Failure& failure) {
    faults.add("cannot be inspected: {}", failure.GetMessageString());
  } catch (const std::exception& e) {
    faults.add("cannot be inspected: {}", e.what());
  }
  return faults.lines();
}

}  // namespace inspector
