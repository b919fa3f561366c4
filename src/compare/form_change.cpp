// Two forms of one part: what differs, in words.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "bed/names.h"
#include "compare/compare.h"
#include "units/print.h"

namespace bedwright {
namespace {

bool differ(Mm a, Mm b) { return std::abs(a - b) > same_place; }

std::string longer(Mm a, Mm b, const Figures& f) {
  return fmt::format("{} {}", f.say(std::abs(b - a)), b > a ? "longer" : "shorter");
}

// A hole with where it is drilled or cut.
struct PlacedHole {
  std::optional<Face> face;  // none for a plate
  Hole hole;
};

bool same_size(const Hole& a, const Hole& b) {
  return !differ(a.diameter, b.diameter) && !differ(a.length, b.length) && std::abs(a.angle - b.angle) < 1e-9;
}
bool same_spot(const PlacedHole& a, const PlacedHole& b) {
  return a.face == b.face && !differ(a.hole.at.x, b.hole.at.x) && !differ(a.hole.at.y, b.hole.at.y);
}

std::string size_text(const Hole& h, const Figures& f) {
  return h.slotted() ? fmt::format("{} x {} slot", f.brief(h.diameter), f.brief(h.length))
                     : fmt::format("{} hole", f.brief(h.diameter));
}

// "9/16 in hole becomes 5/8 in hole"; in more places where it would read as no change.
std::string resized_text(const Hole& a, const Hole& b, const Figures& f) {
  const std::string from = size_text(a, f), to = size_text(b, f);
  if (from != to) return fmt::format("{} becomes {}", from, to);
  if (differ(a.diameter, b.diameter))
    return fmt::format("{} mm wide becomes {} mm", plain_figure(a.diameter), plain_figure(b.diameter));
  if (differ(a.length, b.length))
    return fmt::format("{} mm long becomes {} mm", plain_figure(a.length), plain_figure(b.length));
  return fmt::format("{} turned from {} to {} deg", from, plain_figure(a.angle / degree),
                     plain_figure(b.angle / degree));
}

std::string becomes(const char* what, Mm a, Mm b, const Figures& f) {
  const std::string from = f.say(a), to = f.say(b);
  if (from != to) return fmt::format("{} {} becomes {}", what, from, to);
  return fmt::format("{} {} mm becomes {} mm", what, plain_figure(a), plain_figure(b));
}

// Where they are along the part, each place once, at most `most` of them.
std::string along(const std::vector<PlacedHole>& holes, const Figures& f) {
  constexpr std::size_t most = 8;
  std::vector<Mm> places;
  for (const PlacedHole& h : holes) places.push_back(h.hole.at.x);
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end(), [](Mm a, Mm b) { return !differ(a, b); }),
               places.end());
  std::string text;
  for (std::size_t i = 0; i < std::min(most, places.size()); ++i)
    text += (i == 0 ? "" : ", ") + f.brief(places[i]);
  return places.size() > most ? fmt::format("{} and {} more", text, places.size() - most) : text;
}

const char* plural(std::size_t n) { return n == 1 ? "" : "s"; }

// Tells the holes of one purpose apart: kept, of another size, gone, new.
void hole_changes(std::vector<PlacedHole> a, std::vector<PlacedHole> b, const Figures& f,
                  FormChange& change) {
  std::size_t kept = 0;
  std::vector<std::string> resized;
  bool smaller = false;
  std::erase_if(a, [&](const PlacedHole& h) {
    const auto at = std::find_if(b.begin(), b.end(), [&](const PlacedHole& g) { return same_spot(h, g); });
    if (at == b.end()) return false;
    if (same_size(h.hole, at->hole)) {
      ++kept;
    } else {
      const std::string text = fmt::format("{}: {}", word(h.hole.purpose), resized_text(h.hole, at->hole, f));
      if (std::find(resized.begin(), resized.end(), text) == resized.end()) resized.push_back(text);
      smaller = smaller || at->hole.diameter + same_place < h.hole.diameter ||
                at->hole.length + same_place < h.hole.length;
    }
    b.erase(at);
    return true;
  });
  change.how.insert(change.how.end(), resized.begin(), resized.end());
  if (!a.empty())
    change.how.push_back(
        fmt::format("{} hole{} gone, from its front end at {}", a.size(), plural(a.size()), along(a, f)));
  if (!b.empty())
    change.how.push_back(fmt::format("{} new hole{}, from its front end at {}{}", b.size(), plural(b.size()),
                                     along(b, f), kept > 0 ? fmt::format("; {} stay", kept) : ""));
  if (smaller || !a.empty()) change.rework = "no";
}

std::vector<PlacedHole> holes_of(const Plate& plate) {
  std::vector<PlacedHole> all;
  for (const Hole& h : plate.holes) all.push_back({std::nullopt, h});
  return all;
}

std::vector<PlacedHole> holes_of(const Member& member) {
  std::vector<PlacedHole> all;
  for (const FaceHole& h : member.holes) all.push_back({h.face, h.hole});
  return all;
}

struct Extent2 {
  Mm along = 0, across = 0;
};
Extent2 extent(const Outline& outline) {
  Box3 box;
  for (const Vec2 p : flattened(outline, 0.01)) box.add({p.x, p.y, 0});
  return {box.high.x - box.low.x, box.high.y - box.low.y};
}

FormChange changed(const Plate& a, const Plate& b, const Figures& f) {
  FormChange change;
  if (differ(a.thickness, b.thickness))
    change.how.push_back(becomes("thickness", a.thickness, b.thickness, f));
  const Extent2 ea = extent(a.outline), eb = extent(b.outline);
  const bool outline = a.outline != b.outline;
  if (differ(ea.along, eb.along)) change.how.push_back(becomes("length", ea.along, eb.along, f));
  if (differ(ea.across, eb.across)) change.how.push_back(becomes("width", ea.across, eb.across, f));
  if (outline && !differ(ea.along, eb.along) && !differ(ea.across, eb.across))
    change.how.push_back("another outline of the same size");
  hole_changes(holes_of(a), holes_of(b), f, change);
  if (outline || differ(a.thickness, b.thickness) || change.rework == "no")
    change.rework.clear();
  else
    change.rework = "a piece on the shelf can be cut on: its holes only grow or are added to";
  return change;
}

FormChange changed(const Member& a, const Member& b, const Figures& f) {
  FormChange change;
  const bool section = !(a.section == b.section);
  if (section) {
    change.how.push_back(a.section.name == b.section.name
                             ? fmt::format("{} of other sizes", a.section.name)
                             : fmt::format("section {} becomes {}", a.section.name, b.section.name));
  }
  if (differ(a.length, b.length))
    change.how.push_back(
        fmt::format("{}: {}", becomes("length", a.length, b.length, f), longer(a.length, b.length, f)));
  const bool mitres =
      std::abs(a.start_mitre - b.start_mitre) > 1e-9 || std::abs(a.end_mitre - b.end_mitre) > 1e-9;
  if (mitres)
    change.how.push_back(fmt::format("end cuts {} and {} deg become {} and {} deg",
                                     plain_figure(a.start_mitre / degree), plain_figure(a.end_mitre / degree),
                                     plain_figure(b.start_mitre / degree),
                                     plain_figure(b.end_mitre / degree)));
  hole_changes(holes_of(a), holes_of(b), f, change);
  const bool can = !section && !mitres && b.length <= a.length + same_place && change.rework != "no";
  change.rework = !can ? ""
                  : differ(a.length, b.length)
                      ? "a piece on the shelf can be cut to length"
                      : "a piece on the shelf can be drilled on: no hole is in a wrong place";
  return change;
}

FormChange changed(const Bought& a, const Bought& b, const Figures& f) {
  FormChange change;
  if (std::abs(a.mass - b.mass) > 1e-6) {
    change.how.push_back(fmt::format("mass {} becomes {}", f.fine_mass(a.mass), f.fine_mass(b.mass)));
  }
  if (a.envelope != b.envelope || a.lugs != b.lugs) change.how.push_back("other sizes");
  return change;
}

}  // namespace

FormChange form_change(const Form& a, const Form& b, const Figures& figures) {
  if (const auto* p = std::get_if<Plate>(&a)) return changed(*p, std::get<Plate>(b), figures);
  if (const auto* p = std::get_if<Member>(&a)) return changed(*p, std::get<Member>(b), figures);
  return changed(std::get<Bought>(a), std::get<Bought>(b), figures);
}

}  // namespace bedwright
