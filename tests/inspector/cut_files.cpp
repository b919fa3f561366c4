// What the plasma table and the drill are told, against itself and against the model.
#include <algorithm>
#include <cmath>
#include <set>

#include "drawing.h"
#include "packet.h"

namespace inspector {
namespace {

// As much as is wanted beside a bolt's hole; see bolts.cpp.
double steel_wanted(double width) { return std::min(0.7 * width, 10.0) - 0.05; }

std::string file_word(std::string name) {
  std::replace(name.begin(), name.end(), ' ', '_');
  return name;
}

struct Extent {
  Flat low{1e300, 1e300}, high{-1e300, -1e300};
  Flat middle() const { return {(low[0] + high[0]) / 2, (low[1] + high[1]) / 2}; }
  double wide() const { return high[0] - low[0]; }
  double tall() const { return high[1] - low[1]; }
};

Extent extent(const Ring& ring) {
  Extent e;
  for (const Flat p : ring)
    for (int k = 0; k < 2; ++k) {
      e.low[k] = std::min(e.low[k], p[k]);
      e.high[k] = std::max(e.high[k], p[k]);
    }
  return e;
}

double narrowest(const Ring& ring) { return 2 * apart(ring, extent(ring).middle()); }

// The file's own holes: inside the outline, with steel to it and to each other.
void check_file(const std::string& part, const Ring& outer, const std::vector<Ring>& inner, Faults& faults) {
  for (std::size_t i = 0; i < inner.size(); ++i) {
    const Flat m = extent(inner[i]).middle();
    const double wanted = steel_wanted(narrowest(inner[i]));
    double steel = apart(inner[i], outer);
    if (!holds(outer, inner[i][0])) steel = -steel;
    if (steel < wanted)
      faults.add(
          "cut file of {}: the hole at {:.1f}, {:.1f} has {:.1f} mm of steel to the outline, {:.1f} mm are "
          "wanted",
          part, m[0], m[1], steel, wanted);
    for (std::size_t j = 0; j < i; ++j) {
      const bool over = holds(inner[i], inner[j][0]) || holds(inner[j], inner[i][0]);
      const double between = over ? 0 : apart(inner[i], inner[j]);
      if (between < wanted)
        faults.add(
            "cut file of {}: the hole at {:.1f}, {:.1f} has {:.1f} mm of steel to the next, {:.1f} mm are "
            "wanted",
            part, m[0], m[1], between, wanted);
    }
  }
}

// Where the model's part has holes on its upper face, in the file's coordinates.
std::vector<Extent> model_holes(const Part& part, const Box& box) {
  std::vector<Extent> all;
  for (const Rim& rim : part.rims) {
    if (rim.outward.z < 0.99) continue;
    Ring ring;
    for (const Point& p : rim.line) ring.push_back({p.x - box.low.x, p.y - box.low.y});
    all.push_back(extent(ring));
  }
  return all;
}

double volume(const Body& body) {
  double six = 0;
  for (const Solid& s : body)
    for (std::size_t t = 0; t < s.triangles().size(); ++t)
      six += dot(s.corner(t, 0), cross(s.corner(t, 1), s.corner(t, 2)));
  return six / 6;
}

void check_part(const Packet& packet, const Part& part, Faults& faults) {
  const auto file = packet.folder / "cut" / (file_word(part.name) + ".dxf");
  if (!std::filesystem::exists(file))
    return faults.add("{}: is cut from plate and has no cut file", part.name);
  const std::string text = read_file(file);
  const bool finished = text.find("Cut lines are the finished edge") != std::string::npos;
  Ring outer;
  int outers = 0;
  std::vector<Ring> inner;
  double holes = 0;
  std::vector<Flat> marks;  // middles of the strokes of centre marks
  for (const Drawn& d : read_drawing(file)) {
    if (d.layer == "OUTER_CUT") ++outers, outer = d.ring;
    if (d.layer == "CENTRE_MARK" && d.ring.size() == 2)
      marks.push_back({(d.ring[0][0] + d.ring[1][0]) / 2, (d.ring[0][1] + d.ring[1][1]) / 2});
    if (d.layer == "INNER_CUT") inner.push_back(d.ring), holes += area(d.ring);
    if ((d.layer == "OUTER_CUT" || d.layer == "INNER_CUT") && !d.closed)
      faults.add("cut file of {}: a cut that is not closed", part.name);
  }
  if (outers != 1) return faults.add("cut file of {}: {} outlines", part.name, outers);
  check_file(part.name, outer, inner, faults);
  const Box box = box_of(part.body);
  const Extent size = extent(outer);
  const double allow = finished ? 0.1 : 5;  // half a kerf either way
  if (std::abs(size.wide() - (box.high.x - box.low.x)) > allow ||
      std::abs(size.tall() - (box.high.y - box.low.y)) > allow)
    faults.add("cut file of {}: {:.1f} x {:.1f} mm, the model has {:.1f} x {:.1f}", part.name, size.wide(),
               size.tall(), box.high.x - box.low.x, box.high.y - box.low.y);
  const std::vector<Extent> modelled = model_holes(part, box);
  for (const Ring& ring : inner) {
    const Extent e = extent(ring);
    const bool found = std::any_of(modelled.begin(), modelled.end(), [&](const Extent& m) {
      return std::hypot(m.middle()[0] - e.middle()[0] + size.low[0],
                        m.middle()[1] - e.middle()[1] + size.low[1]) < allow &&
             std::abs(m.wide() - e.wide()) < allow && std::abs(m.tall() - e.tall()) < allow;
    });
    if (!found)
      faults.add(
          "cut file of {}: the hole of {:.1f} x {:.1f} mm at {:.1f}, {:.1f} is not where the model has one",
          part.name, e.wide(), e.tall(), e.middle()[0], e.middle()[1]);
  }
  // Each hole of the model is cut, or marked for the drill: by two strokes that cross in its middle.
  std::size_t marked = 0;
  for (const Extent& m : modelled)
    marked +=
        std::count_if(marks.begin(), marks.end(), [&](const Flat& at) {
          return std::hypot(m.middle()[0] - at[0] + size.low[0], m.middle()[1] - at[1] + size.low[1]) < allow;
        }) == 2;
  if (inner.size() + marked != modelled.size() || 2 * marked != marks.size())
    faults.add("cut file of {}: {} holes and {} centre marks, the model has {} holes", part.name,
               inner.size(), marks.size() / 2, modelled.size());
  if (finished && marks.empty()) {
    const double thick = box.high.z - box.low.z, drawn = (area(outer) - holes) * thick;
    if (std::abs(drawn - volume(part.body)) > 0.005 * drawn)
      faults.add(
          "cut file of {}: its outline is another than the model's ({:.0f} mm2 of steel, the model has "
          "{:.0f})",
          part.name, drawn / thick, volume(part.body) / thick);
  }
}

const Part* part_called(const Packet& packet, const std::string& name) {
  for (const auto& part : packet.model.parts)
    if (part->name == name) return part.get();
  return nullptr;
}

// A long member is drawn broken, so its holes keep their order and their distances across,
// not those along: those at one place along must stand under each other.
void check_drawing(const Packet& packet, const std::string& part, std::vector<Flat> listed, Faults& faults) {
  std::vector<Flat> drawn;
  for (const auto& entry : std::filesystem::directory_iterator(packet.folder / "drill")) {
    const std::string name = entry.path().stem().string(), word = file_word(part);
    if (name != word && !(name.starts_with(word + "_") && name.size() == word.size() + 2)) continue;
    for (const Drawn& d : read_drawing(entry.path()))
      if (d.layer == "HOLES" && d.closed) drawn.push_back(extent(d.ring).middle());
  }
  if (drawn.size() != listed.size())
    return faults.add("drill file of {}: draws {} holes, the list has {}", part, drawn.size(), listed.size());
  // By place along as listed; in the drawing by x, then from the upper edge down.
  const auto order = [](std::vector<Flat>& all, double same) {
    std::sort(all.begin(), all.end());
    for (std::size_t i = 0; i < all.size();) {
      std::size_t j = i + 1;
      while (j < all.size() && all[j][0] - all[j - 1][0] < same) ++j;
      std::sort(all.begin() + static_cast<long>(i), all.begin() + static_cast<long>(j),
                [](Flat a, Flat b) { return a[1] < b[1]; });
      i = j;
    }
  };
  for (Flat& f : drawn) f[1] = -f[1];
  order(listed, 0.01), order(drawn, 0.01);
  double first = 0;
  for (std::size_t i = 1; i < listed.size(); ++i) {
    const bool under = std::abs(listed[i][0] - listed[i - 1][0]) < 0.01,
               drawn_under = std::abs(drawn[i][0] - drawn[i - 1][0]) < 0.01;
    if (under != drawn_under)
      return faults.add("drill file of {}: the hole at {:.1f} mm along is drawn elsewhere", part,
                        listed[i][0]);
    if (!under || std::abs(listed[i][1] - listed[i - 1][1]) < 0.01) continue;
    // One scale across for all.
    const double scale = (drawn[i][1] - drawn[i - 1][1]) / (listed[i][1] - listed[i - 1][1]);
    if (first == 0) first = scale;
    if (std::abs(scale - first) > 0.02 * std::abs(first))
      return faults.add("drill file of {}: the hole at {:.1f} mm along is drawn {:.1f} mm off across", part,
                        listed[i][0], (scale / first - 1) * (listed[i][1] - listed[i - 1][1]));
  }
}

}  // namespace

void check_cut_files(const Packet& packet, Faults& faults) {
  std::set<std::string> wanted;
  for (const auto& part : packet.model.parts) {
    if (packet.origin.at(part->name) != "made" || !packet.form.at(part->name).starts_with("plate")) continue;
    wanted.insert(file_word(part->name) + ".dxf");
    check_part(packet, *part, faults);
  }
  if (!std::filesystem::exists(packet.folder / "cut")) return;
  for (const auto& entry : std::filesystem::directory_iterator(packet.folder / "cut"))
    if (!wanted.count(entry.path().filename().string()))
      faults.add("{}: cuts nothing that is in the model", entry.path().filename().string());
}

void check_drill_list(const Packet& packet, Faults& faults) {
  const Table& list = packet.drill_list;
  std::map<std::string, std::vector<Flat>> listed;
  for (std::size_t r = 0; r < list.rows(); ++r) {
    const std::string& name = list.text(r, "part");
    const Part* part = part_called(packet, name);
    if (!part) {
      faults.add("drill list: {} is not in the model", name);
      continue;
    }
    const double along = list.number(r, "along mm"), across = list.number(r, "across mm"),
                 wide = list.number(r, "diameter mm");
    if (packet.form.at(name).rfind("plate", 0) != 0) listed[name].push_back({along, across});
    const Box box = box_of(part->body);
    const bool found = std::any_of(part->rims.begin(), part->rims.end(), [&](const Rim& rim) {
      Box hole;
      for (const Point& p : rim.line) hole.add(p);
      const Point size = hole.high - hole.low, c = rim.centre;
      const double narrow =
          std::abs(rim.outward.z) > 0.7 ? std::min(size.x, size.y) : std::min(size.x, size.z);
      if (std::abs(narrow - wide) > 0.2 || std::abs(c.x - box.low.x - along) > 0.1) return false;
      for (const double d : {c.y - box.low.y, box.high.y - c.y, c.z - box.low.z, box.high.z - c.z})
        if (std::abs(d - across) < 0.1) return true;
      return false;
    });
    if (!found)
      faults.add("drill list of {}: the hole of {:.1f} mm at {:.1f} along, {:.1f} across is not in the model",
                 name, wide, along, across);
  }
  for (const auto& [part, along] : listed) check_drawing(packet, part, along, faults);
  // Every hole of a made member is on it.
  for (const auto& part : packet.model.parts) {
    if (packet.origin.at(part->name) != "made" || packet.form.at(part->name).starts_with("plate")) continue;
    // A member runs along its x: the rim of a tube's hollow at either end is no hole.
    const auto rims = std::count_if(part->rims.begin(), part->rims.end(),
                                    [](const Rim& rim) { return std::abs(rim.outward.x) < 0.95; });
    const std::size_t holes = static_cast<std::size_t>(rims) / 2,
                      rows = listed.count(part->name) ? listed[part->name].size() : 0;
    if (holes != rows) faults.add("{}: {} holes in the model, {} on the drill list", part->name, holes, rows);
  }
}

}  // namespace inspector
