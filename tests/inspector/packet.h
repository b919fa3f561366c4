// A released packet as the inspector holds it, and the faults it finds there.
#pragma once

#include <fmt/format.h>

#include <filesystem>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "model.h"
#include "table.h"

namespace inspector {

// A bolt as the model has it: its axis, and its pieces in order from the head.
struct Face {
  double at = 0;                // along the axis from under the head
  int toward = 1;               // +1 to the tip, -1 to the head
  double inner = 0, outer = 0;  // radii of what bears
};
struct Piece {
  const Item* item = nullptr;
  std::vector<Face> faces;
  double from = 0, to = 0;  // along the axis
};
struct Bolt {
  std::string name;
  Point seat, direction;
  double diameter = 0, tip = 0;
  std::vector<Piece> pieces;  // the bolt itself first
  std::vector<const Item*> plies;
  std::vector<std::size_t> rows;  // of stacks.csv
  const Piece* nut = nullptr;
};

struct Packet {
  std::filesystem::path folder;
  Model model;
  Table parts, bolt_list, stacks;
  Table welds;  // those to lay, and those of a frame that stands
  Table moving, cut_list, drill_list;
  Table welds_to_lay;
  std::map<std::string, std::string> form, origin;  // of a part, as parts.csv has them
  std::vector<Bolt> bolts;
  std::vector<std::string> broken;  // what keeps the packet from being read as a whole

  explicit Packet(const std::filesystem::path& folder);
  const std::string& form_of(const Item& item) const;
  bool is_hardware(const Item& item) const;
  // Bought or of the kit, drawn as boxes: its maker's holes are not in the model.
  bool is_envelope(const Item& item) const;
};

// One line for each fault: what, where, parts, figures in millimetres.
class Faults {
 public:
  template <class... Args>
  void add(fmt::format_string<Args...> text, Args&&... args) {
    lines_.push_back(fmt::format(text, std::forward<Args>(args)...));
  }
  const std::vector<std::string>& lines() const { return lines_; }

 private:
  std::vector<std::string> lines_;
};

std::string place(Point p);  // "at x 139.7, y 590.6, z -12.7"

// Each looks at one question of the whole; see its file.
void check_bolts(const Packet& packet, Faults& faults);
void check_cut_files(const Packet& packet, Faults& faults);
void check_drill_list(const Packet& packet, Faults& faults);
void check_welds(const Packet& packet, Faults& faults);
void check_held(const Packet& packet, Faults& faults);
void check_clashes(const Packet& packet, Faults& faults);
void check_moving(const Packet& packet, Faults& faults);
void check_ground(const Packet& packet, Faults& faults);
void check_standing(const Packet& packet, Faults& faults);

// All of them. A check that cannot find what it needs is a fault itself.
std::vector<std::string> inspect(const std::filesystem::path& folder);

}  // namespace inspector
