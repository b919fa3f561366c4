#include "export/cut.h"

#include <fmt/format.h>

#include <stdexcept>

#include "export/dxf.h"
#include "export/scribe.h"

namespace bedwright {
namespace {

double scale_of(Printing units) { return units == Printing::inches ? 1 / inch : 1; }

std::string in_units(Mm value, Printing units) {
  return units == Printing::inches ? fmt::format("{:.4f}", value / inch) : fmt::format("{:.3f}", value);
}

std::vector<std::string> comments(const Part& part, const Plate& plate, Vec2 size, const Heading& heading,
                                  Printing units) {
  const char* unit = units == Printing::inches ? "inch" : "mm";
  return {
      fmt::format("UNITS: {}, scale 1:1", units == Printing::inches ? "inches" : "millimetres"),
      fmt::format("Part: {}, order {}, revision {}", part.name, heading.number, heading.revision),
      fmt::format("Stock: {} plate, {} {} thick", part.material, in_units(plate.thickness, units), unit),
      fmt::format("Check after reading: the part is {} x {} {} overall", in_units(size.x, units),
                  in_units(size.y, units), unit),
      "Layers: SCRIBE mark, CENTRE_MARK mark for the drill, INNER_CUT cut first, OUTER_CUT cut last",
      "Cut lines are the finished edge: set kerf at the table",
  };
}

void check_holes(const Part& part, const Plate& plate) {
  for (std::size_t i = 0; i < plate.holes.size(); ++i) {
    if (plate.holes[i].process == Process::as_bought) {
      throw std::invalid_argument(
          fmt::format("cut file of {}: hole {} is neither to be cut nor drilled", part.name, i + 1));
    }
    for (std::size_t j = 0; j < i; ++j) {
      if (norm(plate.holes[i].at - plate.holes[j].at) < same_place) {
        throw std::invalid_argument(
            fmt::format("cut file of {}: holes {} and {} share a place", part.name, j + 1, i + 1));
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

}  // namespace

Cut cut(const Part& part, const Heading& heading, Printing units) {
  const Plate* plate = std::get_if<Plate>(&part.form);
  if (plate == nullptr || part.origin != Origin::made) {
    throw std::invalid_argument(fmt::format("cut file of {}: not a plate the shop makes", part.name));
  }
  check_holes(part, *plate);
  List2d flat;
  const int scribed = flat.layer({"SCRIBE", 3});
  const int marks = flat.layer({"CENTRE_MARK", 2});
  const int inner = flat.layer({"INNER_CUT", 5});
  const int outer = flat.layer({"OUTER_CUT", 1});

  Cut out;
  const std::optional<Lettering> letters =
      scribe(*plate, {part.name, heading.number, "REV " + heading.revision});
  if (letters) {
    out.letter_height = letters->height;
    for (const std::vector<Vec2>& run : letters->strokes) flat.add(Path{scribed, run});
  }
  for (const Hole& h : plate->holes) {
    if (h.process == Process::drilled) add_marks(flat, marks, h.at);
  }
  for (const Hole& h : plate->holes) {
    if (h.process == Process::cut) add_hole(flat, inner, h);
  }
  flat.add(Closed{outer, plate->outline});

  const Box2 box = bounds(flat.entities.back());
  out.size = box.high - box.low;
  out.list.comments = comments(part, *plate, out.size, heading, units);
  out.list.append(flat, Vec2{} - box.low);
  return out;
}

std::string cut_file(const Part& part, const Heading& heading, Printing units) {
  return dxf(cut(part, heading, units).list, scale_of(units));
}

}  // namespace bedwright
