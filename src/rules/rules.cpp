// The table of rules, and how they are run and their findings sorted.
#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <tuple>

#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {

const std::vector<Rule>& rules() {
  static const char* practice = "common practice, no published source";
  // Causes before what follows from them: findings are read in this order.
  static const std::vector<Rule> table{
      {"STANDING", "hole fit", "Is a frame that stands left as it is, and used where it has its holes?",
       "parts and holes of it that would be made again; the order's jacks and axle against "
       "frame.jack.existing "
       "and frame.axle.existing, from the mains' front end",
       "none made but what tabs.to_add, tabs.to_replace and jack.to_add ask for, no hole drilled in place "
       "but "
       "four in each main for each of jack.to_move and jack.to_add; half a mark of the tape",
       practice,
       "the order's jacks and axle, jacks bolted up elsewhere, or what the frame's file says was measured",
       check_standing},
      {"WELD-CONTACT", "weld", "Do the parts of each weld touch, over enough to lay a weld on?",
       "gap between the two; where they meet, the patch in two directions",
       "gap 1/16 in; patch 3 mm either way",
       "gap: AWS D1.1 fillet fit-up, from memory; patch: common practice, no published source",
       "the place or size of one of the two", check_weld_contact},
      {"WELD-STEEL", "weld", "Has each fillet steel of both parts from its one end to its other?",
       "each run's root against both parts, and the leg beyond it against the face it lies on",
       "the whole length; a part may stand off by 1/16 in",
       "AISC 360 section J2.2b: a fillet counts over its length; gap: AWS D1.1 fit-up, from memory",
       "the length or place of the part that ends too soon", check_weld_steel},
      {"CROSS-SPACING", "weld", "Do cross members stand as close as the frame's file asks?",
       "web to web, and to the front and rear member's",
       "frame.cross_member.max_spacing; a warning on a frame "
       "that stands, and where its cross members were not measured",
       practice, "the jacks that leave no place between, or the spacing asked for", check_cross_spacing},
      {"COUPLER-FIT", "ground", "Is the coupler one for this tongue, and does it lie on it?",
       "its plate behind the tongue's front cut; its edges against each flange's web and toe, at both ends; "
       "its "
       "height against the tongue's; its sizes against a ball's",
       "on the tongue 2 in; a ledge of the fillet's leg beside it; 1/2 in of each flange under it; 1 in "
       "under "
       "the tongue; ball 1-7/8 in",
       "ball: classes of SAE J684, from memory; the others: common practice, no published source",
       "another coupler, or the tongue's angle", check_coupler_fit},
      {"SPRING-SEAT", "ground", "Do the springs hang from steel of the mains?",
       "spring's width against the flange's; hangers (half a spring from the axle) to the mains' ends",
       "margin 0; 1 in for a hanger's weld", practice, "narrower springs, a wider main, or the axle's place",
       check_spring_seat},
      {"TONGUE-END", "ground", "Do the tongue's rear ends stay under the mains?",
       "outer corner of each channel's rear end beyond the main's web", "1 mm", practice,
       "a shorter tongue or a smaller angle", check_tongue_end},
      {"RAIL-REMAINDER", "rail joint", "Is a rail a whole number of bunk pitches long?",
       "rail length less whole pitches", "0", practice, "the rail length or the bunk pitch",
       check_rail_remainder},
      {"HOLE-NO-TAB", "hole fit", "Is there a tab under every mounting hole of the rails?",
       "a track hole with no tab in reach", "none without", practice,
       "weld a tab under the hole, or another rail length", check_hole_no_tab},
      {"TAB-LINE", "hole fit", "Do the kit's mounting holes lie over the tab holes of a frame that stands?",
       "|kit's hole line - frame.tabs.existing_line|, both outward from the web's back, against the play of "
       "rail's and tab's holes across the bed",
       "the play; tolerances are counted by HOLE-FIT", practice, "another kit, another frame, or new tabs",
       check_tab_line},
      {"HOLE-FIT", "hole fit", "Does each bolt go through every hole it must, tolerances and all?",
       "need <= float along each axis square to the bolt; need = |offset as laid out| + stack-up (worst "
       "case: sum of all; "
       "root sum square: shift of the means + square root of the sum of squared half ranges); float = travel "
       "of the slots "
       "along the axis + sqrt(r^2 - residual^2), r = sum of (hole - bolt)/2, residual = need of the other "
       "axis beyond its "
       "slots. Each hole counts as small as it may come out (tolerances.cut_size off the table, "
       "tolerances.hole_size drilled "
       "or bought, and twice tolerances.finish), and none may be narrower than its bolt, which is never over "
       "its size "
       "(ASME B18.2.1, cap screws; ISO 4014). Slots at an angle to both axes count as round.",
       "margin 0, on the basis limits.fit_basis asks for (worst_case unless set)", practice,
       "the tabs' slot length, the tab's place, or the end the track is pinned at", check_hole_fit},
      {"HOLE-PAINT", "hole fit", "How thick may paint or zinc lie on the walls of the holes?",
       "the least over all bolts of (r - what is needed beyond the slots)/2, r = sum of (hole - bolt)/2 as "
       "in "
       "HOLE-FIT, worst "
       "case, beside any tolerances.finish already counted",
       "none: a note; under 0.02 mm it is called none", practice,
       "mask the holes, or ream them after painting", check_hole_paint},
      {"TAB-FOUND", "hole fit", "Does each tab stand where it was laid out?",
       "tabs_found of the order: how far off it was measured", "0; a note", practice,
       "nothing on this frame; a new one is built without tabs_found", check_tab_found},
      {"BOLT-SHORT", "stack", "Does enough thread stand past the nut?",
       "(length - length tolerance - washers - plies - nut) / pitch", "limits.threads_past_nut (1)", practice,
       "the next longer stock length", check_bolt_short},
      {"BOLT-LONG", "stack", "Does the bolt stand too far past the nut?",
       "length + length tolerance - washers - plies - nut",
       "limits.most_past_nut (3/8 in); a warning: it holds, and stock may come in longer steps", practice,
       "a shorter stock length", check_bolt_long},
      {"BOLT-THREAD", "stack", "Does the thread reach under the nut's bearing face?",
       "plain shank = length - thread length <= washers + plies", "margin 0", practice,
       "a shorter, fully threaded length, or more washers", check_bolt_thread},
      {"WASHER-FLAT", "stack", "Do head and nut seat square to the bolt?",
       "slope of the face under head or nut", "1 degree", practice, "a bevel washer of the face's slope",
       check_washer_flat},
      {"WASHER-COVER", "stack",
       "Does each head, nut or washer lie flat, clear of the fillet beside it, and cover the hole it bears "
       "on, with steel enough under it, the bolt as far to one side as it goes?",
       "washer outside diameter - (2 x width of the hole - bolt diameter); over a slot, washer outside "
       "diameter - 2 x from the bolt as laid out to the slot's furthest point; and the least area of the "
       "washer on steel, off holes and edges, with the bolt in the middle and at each end and side of its "
       "hole or slot",
       "margin 0; as much area as the face of the head or nut about its bolt, pi/4 x (flats^2 - bolt "
       "diameter^2), so that the steel is pressed no harder than the washer is",
       "over a slot: RCSC section 6.1 and AISC 360 section J3.2, from memory; the rest: common practice, no "
       "published source",
       "a shorter slot, a smaller hole, or a wider washer", check_washer_cover},
      {"TIP", "tip", "Is there room between the bolt's tip and what is beyond it?",
       "distance from the last ply to the nearest thing on the bolt's axis or rim, less the length beyond "
       "the plies at its "
       "longest",
       "limits.tip_clearance (1/16 in)", practice, "a shorter stock length, or a higher standoff", check_tip},
      {"TIP-HEIGHT", "height", "Does every tip keep clear when the rail lies lower than drawn?",
       "TIP's clearance - (what plates may be thin + weld pull + bow of the main from tab to tab)",
       "margin 0, worst case", "bow and plates: ASTM A6, from memory; weld pull: common practice",
       "a higher standoff, or a shorter bolt", check_tip_height},
      {"RAIL-SHIM", "height", "How much shim may a rail want at the worst tab?",
       "highest tab top - lowest: plates over + plates under + 2 x weld pull (clips: 2 x clip height + 2 x "
       "weld "
       "pull) + bow of a main over its length x (section / main)^2, worst case; where the tabs' heights were "
       "measured (frame.tabs.heights): each tab's gap under a straight rail that touches the highest of its "
       "side, both rails of the slope with the least widest gap, to the nearest shim",
       "limits.most_shim (3/8 in); up to it a note, and shims on the hardware list",
       "bow 1/8 in for each 5 ft and plates: ASTM A6, from memory; the others: common practice",
       "straighter mains, tabs held while welded, or more shim; of a frame that stands the tab that is out",
       check_rail_shim},
      {"CLASH", "clash", "Are no two solids in one place?",
       "overlap of convex pieces deeper than 0.05 mm; where pieces only cover the steel, common volume over "
       "1 mm3",
       "margin 0", practice, "move one of the two by the shift given", check_clash},
      {"CLEARANCE", "clash",
       "Do things that are not to touch stay apart, however they lie within their tolerances?",
       "gap as drawn, less what the two may be out to each other: over whatever holds them, each hole's "
       "place and "
       "the play its bolt may have to take up, each weld's placement with half a mark of the tape, the gauge",
       "margin 0, the tolerances added up as limits.fit_basis asks", practice,
       "more room between the two, or closer tolerances", check_clearance},
      {"CLASH-MOVING", "clash", "Is there room around the head, the clamps and the wheels wherever they go?",
       "least distance between the moving thing in each of its states and everything else",
       "limits.moving_clearance (1/4 in): nearer is a warning, overlap a stop", practice,
       "another bunk for a clamp, or move the fixed thing by the shift given", check_clash_moving},
      {"HEAD-ON-RAILS", "travel", "Does the head stay on its rails wherever it runs and is locked?",
       "rail left beyond the wheels (half of wheel_base from the head's centre) at each stop and at the "
       "lock; "
       "sideways, how far a box of the head covers each standing leg, and no box within a rail",
       "limits.wheel_to_end (1 in); sideways half of tolerances.gauge", practice,
       "the stops further in, the lock, or the gauge", check_head_on_rails},
      {"TRACK-STOP", "travel", "Do the stops stop the head?",
       "what the head's foremost and rearmost boxes and a stop have in common, across and up, less the "
       "gauge, "
       "the play of the stop's bolt and the rail's height",
       "limits.stop_overlap (1/2 in), each way", practice, "a higher or a wider stop, or nearer the heel",
       check_track_stop},
      {"HEAD-LOCK", "travel", "Is the head locked between its stops?",
       "the locked head's place against the ends of its travel, and its boxes against the stops", "margin 0",
       practice, "kit.head.lock_offset: another place for the lock", check_head_lock},
      {"HOLE-STEEL", "edge, spacing", "Does each hole lie wholly in the steel of its face?",
       "the hole's rim (slot: its whole length) to the nearest edge of the face, and to the other leg, the "
       "flange or "
       "what else stands up from it",
       "0; into the fillet beside a leg alone: a warning", practice,
       "the hole's place, the slot's length, or the size of the part", check_hole_steel},
      {"EDGE", "edge, spacing", "Is there steel enough between each hole and the edge?",
       "hole centre (slot: centre of the end arc) to the nearest free edge of the face",
       "the catalogue's edge_minimum of the bolt, and half of what the hole is wider than standard; in a "
       "bought part "
       "a warning, and a stop under 1.2 widths of the hole; 1.25 diameters where no bolt goes (a warning)",
       "AISC 360 table J3.4 by the catalogue; 1.2 widths: EN 1993-1-8 table 3.3, from memory; 1.25 "
       "diameters: "
       "from memory, common practice",
       "the size of the part, or the hole's place", check_edge},
      {"SPACING", "edge, spacing", "Is there steel enough between holes?",
       "centre to centre in one face (slots: nearest centres of end arcs)",
       "2-2/3 bolt diameters, and half of what each hole is wider than standard, and 2.2 widths of the "
       "wider hole; "
       "beside a hole no bolt goes through, a web of 3/4 of the smaller hole; in a bought part a warning, "
       "and "
       "a stop "
       "under 2.2 widths (a web of half the smaller hole where one has no bolt)",
       "AISC 360 section J3.3; 2.2 widths: EN 1993-1-8 table 3.3, from memory; webs beside holes without a "
       "bolt: from "
       "memory, common practice",
       "the spacing of the holes", check_spacing},
      {"JACK-REACH", "ground", "Does every jack reach the ground, the bed level on its tyres?",
       "tyres' lowest point - foot of the jack run all the way down",
       "limits.jack_travel_left (2 in) to spare", practice, "a jack with more travel, or a lower foot",
       check_jack_reach},
      {"ROAD-CLEAR", "ground", "Does all that hangs low clear the road?",
       "lowest point above the tyres' - bump x (from the ball / ball to axle), at its rear end",
       "limits.road_clearance (1 in) at rest, 0 at the bump stops; there less than that limit is a warning",
       practice, "a jack that draws up higher, or larger tyres", check_road_clear},
      {"DEPARTURE", "ground", "Does all behind the wheels clear a drive that rises there?",
       "the line from the tyre to the lowest point behind it, turned until it touches: asin(r / R) - atan((r "
       "- "
       "height) / distance)",
       "limits.departure (5.14 degrees, a grade of 9 %); a warning",
       "ITE's guide to driveways, from memory, for the grade",
       "jacks that draw up or fold, or more height under the mains", check_departure},
      {"CREST", "ground", "Does all between its wheels and the tow vehicle's clear a crest?",
       "atan(height / distance to its own wheels) + atan(height / distance to the tow vehicle's), those 48 "
       "in ahead of the ball",
       "5.7 degrees, a grade that falls by 10 %; a warning",
       "ITE's guide to driveways, from memory, for the grade",
       "jacks that draw up or fold, or more height under the mains", check_crest},
      {"TURN", "ground", "Does the tow vehicle's bumper clear the bed in a tight turn?",
       "a bumper 78 in wide, 8 in ahead of the ball, turned about it degree by degree",
       "60 degrees; a warning", practice, "a longer tongue", check_turn},
      {"BALL-HEIGHT", "ground", "Does it run level on the towing ball?",
       "(road.ball_height - height of the coupler's middle, the bed level) / (axle - ball)",
       "1 degree; a warning, a note where the ball's height is not stated", practice,
       "a ball mount higher or lower", check_ball_height},
      {"BUNK-ON-RAIL", "rail joint", "Does each bunk lie whole on one rail section?",
       "bunk's flat leg to the section's ends", "2 x the kit's hole tolerance", practice,
       "the bunk's hole set further in", check_bunk_on_rail},
      {"ON-BUNK", "travel", "Do log stops and clamps stay on their bunks?",
       "post against the bunk's ends, its toe and its fillet; the foot of a clamp, over its whole slide, "
       "against "
       "the "
       "bunk's ends",
       "margin 0", practice, "the post nearer the middle, or a shorter slide", check_on_bunk},
      {"JOINT-SUPPORT", "rail joint", "Does every rail joint have a tab near it?",
       "joint to the nearest tab's hole, each side", "limits.joint_to_support (8 in); a warning", practice,
       "another tab near the joint", check_joint_support},
      {"JOINT-CLAMP", "rail joint", "Is every clamp's slide away from the rail joints?",
       "joint to the nearer side of the clamp's foot, along the bed",
       "limits.joint_to_clamp (2 in): a log is drawn up against a whole rail; a warning", practice,
       "another bunk for the clamp", check_joint_clamp},
      {"JOINT-GAP", "rail joint", "Do the rail joints close enough for the wheels?",
       "joint gap as laid out + what the kit lets it stand open", "limits.joint_gap (1/8 in)", practice,
       "draw the joints up", check_joint_gap},
      {"JOINT-STEP", "rail joint", "Do the rails' tops meet at one height?",
       "2 x tolerance of the standing leg's height; sideways the gusset draws both legs to one face",
       "limits.joint_step (1/32 in); a warning", practice, "sort the sections by height, or grind the step",
       check_joint_step},
      {"GUSSET-BOLTS", "rail joint", "Does the gusset hold both rails of each joint?",
       "gusset bolts ahead of and behind the joint, the fewer",
       "limits.gusset_bolts (2): one lets the joint turn", practice, "a gusset with more bolts",
       check_gusset_bolts},
      {"TRACK-LENGTH", "rail joint", "Do many sections still add up to the track that was ordered?",
       "sections x length tolerance + joints x what each may stand open, worst case",
       "limits.track_length_error (1/4 in); a warning", practice, "draw the joints up, or rails held closer",
       check_track_length},
      {"REACH", "reach", "Does a tool get on each bolt and turn it?",
       "a socket straight on (outside 1.5 flats), or an open-end wrench (jaws 2.2 flats wide and 0.45 thick, "
       "handle "
       "10 flats) that swings 30 degrees, clear of everything that does not move; sizes from the catalogue "
       "where "
       "it has them",
       "neither end turned: a stop; 30 degrees only, or one end out of reach: a warning",
       "30 degrees: J. Rose, Modern Machine-Shop Practice, figs. 445 to 448, a wrench set at 15 and turned "
       "over each time; tool sizes: "
       "common practice, no published source",
       "room beside head or nut", check_reach},
      {"CUT-HOLE", "cut", "Can the plasma table cut each hole it is given?",
       "width of the hole / thickness of the plate; with cut.kerf set, width of the hole / kerf",
       "limits.table_hole (1); a round hole under it becomes a centre mark by itself. Twice the kerf",
       practice, "a wider slot, or thinner plate", check_cut_hole},
      {"CENTRE-MARK", "cut", "Which holes are marked for the drill because the table cannot cut them?",
       "diameter < limits.table_hole x thickness", "none: a note", practice,
       "nothing: drill them after cutting", check_centre_mark},
      {"CUT-WEB", "cut", "Is there steel enough between two cuts not to burn through?",
       "hole's rim to the outline, and to each other cut hole's rim",
       "limits.table_web (1) x thickness; a warning", practice, "move the cuts apart", check_cut_web},
      {"STOCK-PLATE", "cut", "Does each plate lie in the plate the shop buys?",
       "the part's longer and shorter side against the stock's, square to it",
       "limits.stock_length, limits.stock_width (96 x 48 in)",
       "common practice, no published source: the usual sheet", "larger stock, or the part in two",
       check_stock_plate},
      {"LETTERS", "cut", "Is there room for letters that can be read?",
       "height at which name, order and revision have a place 3 mm clear of every edge, on up to three lines",
       "limits.letter_height (4 mm); a warning", practice, "write the name on by hand", check_letters},
      {"WELD-LEAST", "weld", "Is each fillet large enough for its steel?",
       "leg against the thinner part joined", "1/8 in to 1/4 in thick, 3/16 to 1/2, 1/4 to 3/4, 5/16 over",
       "AISC 360 table J2.4", "a larger leg", check_weld_least},
      {"WELD-MOST", "weld", "Does each fillet leave its edge standing?",
       "leg against the edge it runs along, where parts lap",
       "the edge's thickness under 1/4 in; 1/16 in less from there up", "AISC 360 section J2.2b",
       "a smaller leg", check_weld_most},
      {"WELD-LOAD", "weld", "At work: does each tab's weld carry its bolt's load as a log lands?",
       "elastic method, two lines L long, bolt at e from their middle: f = P/2L and 3Pe/L^2, added on the "
       "flange, "
       "square to each other on the web; allowed the less of 0.60 x 70 ksi / 2.0 x 0.707 leg (0.928 kip/in "
       "each 1/16 in) "
       "and of 0.60 x 360 MPa / 2.0 x the thinner steel",
       "P = limits.tab_load, else a quarter of the head and of the order's log (1,500 lb where it names "
       "none), times work.landing",
       "AISC 360 table J2.5 and section J4.2 (ASD); the load is an assumption: common practice, no published "
       "source",
       "a larger leg, or a longer line", check_weld_load},
      {"TORCH", "weld", "Does a torch reach the welds at each tab's ends?",
       "nozzle 4 in long, 1/2 in off the root, leaned 30, 45 or 60 degrees, against everything welded before",
       "limits.torch_diameter (3/4 in)", practice, "tabs further apart, or shorter", check_torch},
      {"BOLT-KINDS", "kinds of bolt", "Would fewer different bolt lengths serve every hole?",
       "exact: fewest stock lengths of a size that suit every hole (BOLT-SHORT, BOLT-LONG, BOLT-THREAD, "
       "TIP), then "
       "the fewest of the longest, and so on down",
       "as few as would do; a note", practice, "the lengths given", check_bolt_kinds},
      {"DATUM", "hole fit", "Is the track pinned where its worst hole has most room?",
       "least margin of HOLE-FIT, worst case, over all track bolts with the track pinned at front, middle "
       "and rear",
       "the best of the three, to 0.01 in; a note", practice, "pin it at the place given", check_datum},
  };
  return table;
}

namespace {

int compare_subjects(const Finding& a, const Finding& b) {
  for (std::size_t i = 0; i < std::min(a.subjects.size(), b.subjects.size()); ++i)
    if (const auto order = a.subjects[i].id <=> b.subjects[i].id; order != 0) return order < 0 ? -1 : 1;
  return a.subjects.size() == b.subjects.size() ? 0 : a.subjects.size() < b.subjects.size() ? -1 : 1;
}

std::size_t place_in_table(const std::vector<Rule>& table, const std::string& code) {
  const auto at = std::find_if(table.begin(), table.end(), [&](const Rule& r) { return r.code == code; });
  return static_cast<std::size_t>(at - table.begin());
}

bool comes_before(const std::vector<Rule>& table, const Finding& a, const Finding& b) {
  if (a.severity != b.severity) return a.severity < b.severity;
  if (a.code != b.code) return place_in_table(table, a.code) < place_in_table(table, b.code);
  if (const int subjects = compare_subjects(a, b)) return subjects < 0;
  return std::tie(a.x, a.y, a.z) < std::tie(b.x, b.y, b.z);
}

}  // namespace

void sort_findings(std::vector<Finding>& findings, const std::vector<Rule>& table) {
  std::stable_sort(findings.begin(), findings.end(),
                   [&](const Finding& a, const Finding& b) { return comes_before(table, a, b); });
}

std::vector<Finding> run_checks(const Scene& scene) {
  std::vector<Finding> findings;
  for (const Rule& rule : rules()) rule.check(scene, findings);
  sort_findings(findings, rules());
  return findings;
}

std::vector<Finding> run_checks(const CheckInput& input) { return run_checks(Scene(input)); }

bool is_about_clashes(const std::string& code) {
  return std::any_of(rules().begin(), rules().end(), [&](const Rule& r) {
    return r.code == code && (r.check == check_clash || r.check == check_clash_moving);
  });
}

std::vector<Finding> with_open_pairs_judged(Scene& scene, PairJudge& judge, std::vector<Finding> findings) {
  std::set<std::string> open;
  for (const Finding& f : findings)
    if (f.severity == Severity::warn && is_about_clashes(f.code)) open.insert(f.code);
  if (open.empty()) return findings;
  std::erase_if(findings, [&](const Finding& f) { return open.contains(f.code); });
  scene.input.judge = &judge;
  for (const Rule& rule : rules())
    if (open.contains(rule.code)) rule.check(scene, findings);
  scene.input.judge = nullptr;
  sort_findings(findings, rules());
  return findings;
}

std::string entry_text(const Rule& rule) {
  return fmt::format("{} ({})\n  asks     {}\n  formula  {}\n  limit    {}\n  source   {}\n  change   {}\n",
                     rule.code, rule.family, rule.asks, rule.formula, rule.limit, rule.source, rule.change);
}

std::optional<std::string> explain(const std::string& code) {
  const auto found =
      std::find_if(rules().begin(), rules().end(), [&](const Rule& r) { return r.code == code; });
  if (found == rules().end()) return std::nullopt;
  return entry_text(*found);
}

}  // namespace bedwright
