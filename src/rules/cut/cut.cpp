// CUT-HOLE, CENTRE-MARK, CUT-WEB, STOCK-PLATE, LETTERS: what the plasma table can
// make of the made plates.
#include <fmt/format.h>

#include "draw/scribe.h"
#include "rules/cut/edge.h"
#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

struct MadePlate {
  const Part& part;
  const Plate& plate;
  int item;
};

std::vector<MadePlate> made_plates(const Bed& bed) {
  std::vector<int> first(bed.parts.size(), -1);
  for (std::size_t i = bed.items.size(); i-- > 0;) first[bed.items[i].part] = static_cast<int>(i);
  std::vector<MadePlate> all;
  for (std::size_t p = 0; p < bed.parts.size(); ++p) {
    const auto* plate = std::get_if<Plate>(&bed.parts[p].form);
    if (plate && bed.parts[p].origin == Origin::made && first[p] >= 0)
      all.push_back({bed.parts[p], *plate, first[p]});
  }
  return all;
}

Finding found(const Scene& scene, const char* code, Severity severity, const MadePlate& m, Vec2 at) {
  Finding f = finding_of(code, severity, m.part, scene.bed.items[m.item].placement.point({at.x, at.y, 0}));
  f.subjects.push_back(scene.bed.items[m.item]);
  return f;
}

// Values of the frame that thin the plate or widen the slot, by the part they make.
void suggest_for_slot(const Scene& scene, const MadePlate& m, Mm width, Finding& f) {
  const Figures& say = scene.figures;
  const Mm wider = say.round_up(width);
  const Mm thinner = std::floor(f.measured / scene.limits.table_hole / say.step() + 1e-6) * say.step();
  f.remedy =
      fmt::format("make it {} wide, or the plate no thicker than {}", say.say(wider), say.say(thinner));
  const bool pad = m.part.id.kind == Kind::tab_pad;
  if (!pad && m.part.id.kind != Kind::tab) return;
  // A slot is no shorter than it is wide.
  const Job* job = scene.input.job;
  if (!job || wider <= job->frame.tabs.slot_length + same_place)
    f.changes.push_back({"frame.tabs.hole_diameter", say.set(wider)});
  const char* key = pad ? "frame.tabs.plate.pad_thickness" : "frame.tabs.plate.plate_thickness";
  if (thinner > 0) f.changes.push_back({key, say.set(thinner)});
}

// Radius of a hole's ends.
Mm radius(const Hole& h) { return h.diameter / 2; }

Mm to_outline(const MadePlate& m, const Hole& h) {
  const auto [a, b] = arc_centres(h);
  return std::min(nearest_edge(m.plate.outline, a).distance, nearest_edge(m.plate.outline, b).distance) -
         radius(h);
}

Mm between(const Hole& p, const Hole& q) {
  const auto [a, b] = arc_centres(p);
  const auto [c, d] = arc_centres(q);
  return segment_distance(a, b, c, d) - radius(p) - radius(q);
}

void web(const Scene& scene, const MadePlate& m, Mm steel, Vec2 at, const std::string& where,
         std::vector<Finding>& findings) {
  const Mm limit = scene.limits.table_web * m.plate.thickness;
  if (steel >= limit - same_place || steel < -same_place) return;  // none at all: HOLE-STEEL or SPACING
  Finding f = found(scene, "CUT-WEB", Severity::warn, m, at);
  f.measured = steel;
  f.limit = limit;
  f.margin = steel - limit;
  const Figures& say = scene.figures;
  f.message = fmt::format(
      "{} leaves {} of steel between two cuts; {} is asked of plate {} thick, or it burns through", where,
      say.say(steel), say.say(limit), say.say(m.plate.thickness));
  f.remedy = fmt::format("move the cuts {} further apart", say.say(say.round_up(limit - steel)));
  findings.push_back(std::move(f));
}

}  // namespace

// What the table asks of a hole: some plate thicknesses, and room for the path
// inside it to be as wide as the cut itself, so that the slug comes free.
void check_cut_hole(const Scene& scene, std::vector<Finding>& findings) {
  const Mm kerf = scene.input.job ? scene.input.job->order.cut.kerf : 0;
  for (const MadePlate& m : made_plates(scene.bed)) {
    const Mm for_thickness = scene.limits.table_hole * m.plate.thickness, for_kerf = 2 * kerf;
    const Mm limit = std::max(for_thickness, for_kerf);
    for (std::size_t i = 0; i < m.plate.holes.size(); ++i) {
      const Hole& h = m.plate.holes[i];
      if (h.process != Process::cut || h.diameter >= limit - same_place) continue;
      Finding f = found(scene, "CUT-HOLE", Severity::stop, m, h.at);
      f.measured = h.diameter;
      f.limit = limit;
      f.margin = h.diameter - limit;
      const Figures& say = scene.figures;
      if (for_kerf > for_thickness) {
        f.message = fmt::format("{} is {} across; a cut {} wide leaves no path inside it under {}",
                                hole_text(m.part, i, h), say.say(h.diameter), say.say(kerf), say.say(limit));
        f.remedy = fmt::format("make it {} wide, or cut with a kerf of {} or less",
                               say.say(say.round_up(limit)), say.say(h.diameter / 2));
        f.changes.push_back({"cut.kerf", say.set_at_most(h.diameter / 2)});
      } else {
        f.message = fmt::format("{} is {} across in plate {} thick; the table cuts none under {}",
                                hole_text(m.part, i, h), say.say(h.diameter), say.say(m.plate.thickness),
                                say.say(limit));
        suggest_for_slot(scene, m, limit, f);
      }
      findings.push_back(std::move(f));
    }
  }
}

void check_centre_mark(const Scene& scene, std::vector<Finding>& findings) {
  for (const MadePlate& m : made_plates(scene.bed)) {
    const Mm limit = scene.limits.table_hole * m.plate.thickness;
    for (std::size_t i = 0; i < m.plate.holes.size(); ++i) {
      const Hole& h = m.plate.holes[i];
      if (h.process != Process::drilled || h.diameter >= limit - same_place) continue;
      Finding f = found(scene, "CENTRE-MARK", Severity::note, m, h.at);
      f.measured = h.diameter;
      f.limit = limit;
      f.margin = h.diameter - limit;
      const Figures& say = scene.figures;
      f.message = fmt::format(
          "{} is {} across in plate {} thick, too small for the table: the cut file has a centre mark for "
          "the drill",
          hole_text(m.part, i, h), say.say(h.diameter), say.say(m.plate.thickness));
      f.remedy = fmt::format("drill it {} after cutting", say.say(h.diameter));
      findings.push_back(std::move(f));
    }
  }
}

void check_cut_web(const Scene& scene, std::vector<Finding>& findings) {
  for (const MadePlate& m : made_plates(scene.bed)) {
    const auto& holes = m.plate.holes;
    for (std::size_t i = 0; i < holes.size(); ++i) {
      if (holes[i].process != Process::cut) continue;
      web(scene, m, to_outline(m, holes[i]), holes[i].at, hole_text(m.part, i, holes[i]) + " to the edge",
          findings);
      for (std::size_t j = i + 1; j < holes.size(); ++j)
        if (holes[j].process == Process::cut)
          web(scene, m, between(holes[i], holes[j]), holes[i].at,
              fmt::format("{} to hole {}", hole_text(m.part, i, holes[i]), j + 1), findings);
    }
  }
}

void check_stock_plate(const Scene& scene, std::vector<Finding>& findings) {
  const Mm length = std::max(scene.limits.stock_length, scene.limits.stock_width);
  const Mm width = std::min(scene.limits.stock_length, scene.limits.stock_width);
  for (const MadePlate& m : made_plates(scene.bed)) {
    const Box3 box = local_bounds(m.part);
    const Mm x = box.high.x - box.low.x, y = box.high.y - box.low.y;
    const Mm longer = std::max(x, y), shorter = std::min(x, y);
    const Mm over = std::max(longer - length, shorter - width);
    if (over <= same_place) continue;
    Finding f = found(scene, "STOCK-PLATE", Severity::stop, m, {});
    const bool lengthwise = longer - length >= shorter - width;
    f.measured = lengthwise ? longer : shorter;
    f.limit = lengthwise ? length : width;
    f.margin = -over;
    const Figures& say = scene.figures;
    f.message =
        fmt::format("{} is {} by {} and does not lie in the stock plate of {} by {}, either way round",
                    name(m.part), say.say(longer), say.say(shorter), say.say(length), say.say(width));
    f.remedy = fmt::format("buy plate at least {} by {}, or make the part in two",
                           say.say(std::max(longer, length)), say.say(std::max(shorter, width)));
    // The order may name the two the other way about.
    const bool turned = scene.limits.stock_length < scene.limits.stock_width;
    if (longer > length + same_place)
      f.changes.push_back({turned ? "limits.stock_width" : "limits.stock_length", say.set_at_least(longer)});
    if (shorter > width + same_place)
      f.changes.push_back({turned ? "limits.stock_length" : "limits.stock_width", say.set_at_least(shorter)});
    findings.push_back(std::move(f));
  }
}

void check_letters(const Scene& scene, std::vector<Finding>& findings) {
  if (!scene.input.job) return;
  const Mm limit = scene.limits.letter_height;
  for (const MadePlate& m : made_plates(scene.bed)) {
    const std::vector<std::string> words = scribe_words(m.part, scene.input.job->order.order);
    if (letters_fit(m.plate, words, limit)) continue;
    Mm high = limit;
    while (high > 0.5 && !letters_fit(m.plate, words, high)) high -= 0.25;
    Finding f = found(scene, "LETTERS", Severity::warn, m, {});
    f.measured = high;
    f.limit = limit;
    f.margin = high - limit;
    const Figures& say = scene.figures;
    f.message = fmt::format("{} has room for letters {} high; under {} they are not read", name(m.part),
                            say.say(high), say.say(limit));
    f.remedy = fmt::format("write its name on with a paint pen, {} high or more, as it comes off the table",
                           say.say(limit));
    findings.push_back(std::move(f));
  }
}

}  // namespace bedwright
