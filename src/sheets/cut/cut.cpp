// Makes a plate's flat pattern, layer by layer.
#include "sheets/cut/cut.h"

#include <fmt/format.h>

#include <stdexcept>

#include "bed/names.h"
#include "draw/scribe.h"
#include "formats/dxf.h"
#include "geometry/kerf.h"

namespace bedwright {
namespace {

// The units a cut file is written in, which need not be those the order prints in: the
// one place where a file's units are chosen.
struct FileUnits {
  double scale;  // of a millimetre
  int decimals;
  const char *unit, *word;
  std::string figure(Mm value) const { return fmt::format("{:.{}f}", value * scale, decimals); }
  std::string pair(Vec2 size) const { return figure(size.x) + " x " + figure(size.y); }
};

FileUnits file_units(Printing units) {
  return units == Printing::inches ? FileUnits{1 / inch, 4, "inch", "inches"}
                                   : FileUnits{1, 3, "mm", "millimetres"};
}

// `size`: of the path cut last; `part_size`: of the finished part.
std::vector<std::string> comments(const Part& part, const Plate& plate, Vec2 size, Vec2 part_size,
                                  const Heading& heading, const FileUnits& units, Mm kerf) {
  std::vector<std::string> lines = {
      fmt::format("UNITS: {}, scale 1:1", units.word),
      fmt::format("Part: {}, order {}, revision {}", name(part), heading.number, heading.revision),
      fmt::format("Stock: {} plate, {} {} thick", part.material, units.figure(plate.thickness), units.unit),
      fmt::format("Check after reading: the part is {} {} overall", units.pair(part_size), units.unit),
      "Layers: SCRIBE mark, CENTRE_MARK mark for the drill, INNER_CUT cut first, OUTER_CUT cut last",
  };
  if (kerf > 0) {
    lines.push_back(
        fmt::format("KERF ALLOWED FOR: {0} {1} wide, paths {2} {1} outside the outline and inside the holes; "
                    "set kerf 0 at the table",
                    units.figure(kerf), units.unit, units.figure(kerf / 2)));
    lines.push_back(fmt::format("The outer path is {} {} overall", units.pair(size), units.unit));
  } else {
    lines.push_back("Cut lines are the finished edge: set kerf at the table");
  }
  return lines;
}

void check_holes(const Part& part, const Plate& plate) {
  for (std::size_t i = 0; i < plate.holes.size(); ++i) {
    if (plate.holes[i].process == Process::as_bought) {
      throw std::invalid_argument(
          fmt::format("cut file of {}: hole {} is neither to be cut nor drilled", name(part), i + 1));
    }
    for (std::size_t j = 0; j < i; ++j) {
      if (norm(plate.holes[i].at - plate.holes[j].at) < same_place) {
        throw std::invalid_argument(
            fmt::format("cut file of {}: holes {} and {} share a place", name(part), j + 1, i + 1));
      }
    }
  }
}

void add_marks(List2d& list, int layer, Vec2 at) {
  list.add(Line{layer, at - Vec2{centre_mark_arm, 0}, at + Vec2{centre_mark_arm, 0}});
  list.add(Line{layer, at - Vec2{0, centre_mark_arm}, at + Vec2{0, centre_mark_arm}});
}

void add_hole(List2d& list, int layer, const Hole& hole) {
  if (hole.slotted()) {
    list.add(Closed{layer, hole_outline(hole.at, hole.diameter, hole.length, hole.angle)});
  } else {
    list.add(Circle{layer, hole.at, hole.diameter / 2});
  }
}

// Marks before cuts, holes before the outline.
List2d flat_pattern(const Plate& plate, const std::optional<Lettering>& letters, Mm kerf) {
  List2d flat;
  const int scribed = flat.layer({"SCRIBE", 3});
  const int marks = flat.layer({"CENTRE_MARK", 2});
  const int inner = flat.layer({inner_cut_layer, 5});
  const int outer = flat.layer({outer_cut_layer, 1});
  if (letters) {
    for (const std::vector<Vec2>& run : letters->strokes) flat.add(Path{scribed, run});
  }
  for (const Hole& h : plate.holes) {
    if (h.process == Process::drilled || h.process == Process::in_place) add_marks(flat, marks, h.at);
  }
  for (const Hole& h : plate.holes) {
    if (h.process == Process::cut) add_hole(flat, inner, inside(h, kerf / 2));
  }
  flat.add(Closed{outer, outside(plate.outline, kerf / 2)});
  return flat;
}

}  // namespace

Cut cut(const Part& part, const Heading& heading, Printing units, Mm kerf) {
  const Plate* plate = std::get_if<Plate>(&part.form);
  if (plate == nullptr || part.origin != Origin::made) {
    throw std::invalid_argument(fmt::format("cut file of {}: not a plate the shop makes", name(part)));
  }
  check_holes(part, *plate);
  const std::optional<Lettering> letters = scribe(*plate, scribe_words(part, heading));
  List2d flat;
  try {
    flat = flat_pattern(*plate, letters, kerf);
  } catch (const std::invalid_argument& e) {
    throw std::invalid_argument(fmt::format("cut file of {}: {}", name(part), e.what()));
  }
  const Box2 box = bounds(flat.entities.back()), finished = bounds(Entity(Closed{0, plate->outline}));
  Cut out;
  out.letter_height = letters ? letters->height : 0;
  out.size = box.high - box.low;
  out.list.comments =
      comments(part, *plate, out.size, finished.high - finished.low, heading, file_units(units), kerf);
  out.list.append(flat, Vec2{} - box.low);
  return out;
}

std::string cut_file(const Part& part, const Heading& heading, Printing units, Mm kerf,
                     const std::string& issue) {
  List2d list = cut(part, heading, units, kerf).list;
  if (!issue.empty()) list.comments.push_back("Made for " + issue);
  return dxf(list, file_units(units).scale);
}

Hole inside(Hole hole, Mm by) {
  if (by < 0) throw std::invalid_argument("a kerf must not be under 0");
  if (hole.diameter - 2 * by < same_place)
    throw std::invalid_argument(
        fmt::format("a hole {:.2f} mm across is no wider than a kerf of {:.2f} mm", hole.diameter, 2 * by));
  hole.diameter -= 2 * by;
  hole.length -= 2 * by;
  return hole;
}

}  // namespace bedwright
