// The entries of the rules about loads.
#include <algorithm>

#include "rules/loads/rules.h"

namespace bedwright {

const std::vector<Rule>& load_rules() {
  static const char* practice = "common practice, no published source";
  static const std::vector<Rule> table{
      {"TOW-SHARE", "tow", "Does the right part of the weight lie on the coupler, in every way it travels?",
       "tongue load / weight; tongue load = weight x (axle - centre of mass) / (axle - ball)",
       "road.share_low (10 %) at least, head on or off and the bare frame; with head or cargo on "
       "road.share_high (15 %) at most",
       practice,
       "where the axle stands, where the head is locked, a longer tongue, a second set of hangers, a load to "
       "carry",
       nullptr},
      {"HITCH-TIP", "tow", "Uncoupled on wheels and tongue jack, does it stay down on its tongue?",
       "weight x (axle - centre of mass) / (axle - tongue jack) / weight, with the head at its lock, off, "
       "and "
       "the bare frame",
       "5 %; a warning in a way the order does not tow it", practice,
       "rear jacks down before it is uncoupled, or the axle further back", nullptr},
      {"HEAD-TIP", "tow", "How far may the head roll before the bed tips back on its wheels?",
       "axle + weight without head x (axle - its centre of mass) / head",
       "none: a note, where the head rolls further", "statics", "rear jacks down before the head is unlocked",
       nullptr},
      {"ROLL-OVER", "tow", "How hard a bend does it take before it rolls over?",
       "about the line from the ball to the outer tyres: (half of the tyres' distance x (1 - share) - centre "
       "of mass from the "
       "centre line) / (its height above the road - share x the ball's height)",
       "1.25 x road.cornering (0.63 g), in every way it is towed: a fifth is taken by springs and tyres that "
       "give",
       "statics; cornering 49 CFR 393.102(a)(1); the 1.25 common practice. For comparison 0.35 g is asked of "
       "heavy "
       "trailers in New Zealand, 0.42 g of tank vehicles by UN ECE regulation 111 (from memory)",
       "tyres further apart, the head carried lower, a lower bed", nullptr},
      {"ROLL-SLOPE", "tow", "Parked on wheels and tongue jack, does it stand across a slope?",
       "as ROLL-OVER, about the line from the tongue jack's foot to the outer tyres", "15 degrees; a warning",
       practice, "jacks down on both sides before it is uncoupled", nullptr},
      {"TOW-COUPLER", "tow", "Does the coupler's rating cover the trailer?", "mass of the whole trailer",
       "frame.coupler.rating", "the coupler's maker; ratings step as the classes of SAE J684 (from memory)",
       "a coupler of the next class", nullptr},
      {"TOW-AXLE", "tow", "Does each axle carry no more than its rating?",
       "(weight - tongue load) / axles, equalised", "frame.axle.axle_rating", "the axle's maker",
       "an axle of the next rating, or two axles", nullptr},
      {"TOW-TYRE", "tow", "Does each tyre carry no more than its rating?",
       "(axle group / 2 + weight x centre of mass from the centre line / track) / axles",
       "frame.axle.tyre_rating",
       "Tire and Rim Association tables by size and load range (params/catalog/tyres.yaml)",
       "a tyre of a higher load range or size", nullptr},
      {"TOW-WIDTH", "tow", "Is it narrow enough for the road?", "widest to widest, tyres included",
       "road.width_limit (102 in); a warning",
       "23 CFR 658.15, National Network of the United States; other roads and places differ",
       "tyres closer together, or a permit", nullptr},
      {"TOW-SIZE", "tow", "How wide, long and high does it stand on its tyres?",
       "extents of all parts as towed", "none: a note", "road rules differ by place",
       "nothing, where the rules of the place allow it", nullptr},
      {"TOW-LAWS", "tow", "Which brakes, lamps and chains does it need?", "mass of the trailer",
       "none: a note; from 3000 lb without frame.axle.brakes a warning",
       "road rules differ by place; many ask for brakes from 1500 lb to 3000 lb (from memory)",
       "ask the road authority of the place", nullptr},
      {"OWN-FACTOR", "tow", "Are the order's own factors and shares as safe as the usual ones?",
       "the order's figure against the one it would have if it named none", "none milder; a warning",
       "AISC 360 and 49 CFR 393.102 for those that have a source; the others common practice",
       "the usual figure, or an engineer who answers for the other", nullptr},
      {"TONGUE-JACK", "tow", "Does the tongue jack hold the tongue up, uncoupled?",
       "weight x (axle - centre of mass) / (axle - tongue jack)",
       "frame.tongue_jack.rating; not stated: a warning", "the jack's maker", "a jack of a higher rating",
       nullptr},
      {"TOW-BEND", "tow", "Do the mains stand the road?",
       "moment along the mains from balance (coupler, hangers, weights) x road.bump / section modulus",
       "yield / work.safety_factor (1.67), less where cross members are so far apart that it buckles "
       "sideways",
       "AISC 360 allowable strength design, section F2; the bump factor: common practice",
       "cross members closer together, or the next channel", nullptr},
      {"TONGUE-BEND", "tow", "Does the tongue stand the road?",
       "the worse of a bump, tongue load x road.bump x (ball to front member) / section modulus of both "
       "channels, and of "
       "braking: the tongue load and what the nose dips with, the same way, plus road.braking x weight along "
       "the channels",
       "yield / work.safety_factor (1.67), less where it buckles sideways over its own length (section F2)",
       "AISC 360 allowable strength design; the bump factor: common practice",
       "a heavier tongue channel, or a shorter tongue", nullptr},
      {"TONGUE-WELD", "tow", "Do the tongue's welds stand the road?",
       "lines of weld under the mains and across the front member: load / length + moment x distance / "
       "inertia, over leg x 0.707",
       "0.60 x 70 ksi / 2.00", "AISC 360 table J2.5, elastic method for weld groups",
       "run the tongue further back, or a larger fillet", nullptr},
      {"TRACK-BOLT", "tow", "Do the track bolts hold head and track on the road?",
       "one section's bolts share braking or cornering of head, cargo and one section of track; tension from "
       "the head's "
       "overturning and the rebound",
       "ASTM A307: shear 27 ksi / 2.00; tension and shear together by J3.7",
       "AISC 360 table J3.2 and J3.7; accelerations 49 CFR 393.102(a)(1), rebound common practice",
       "larger or more track bolts", nullptr},
      {"TAB-ROAD", "tow", "On the road: do tabs and their welds stand bumps, braking and cornering?",
       "tab: most a rail puts on one tab under the locked head x road.bump x (hole - web), and what the "
       "wheels turn it with "
       "further out as for TAB-WORK, / plate modulus; "
       "weld: that load, or the bolt's "
       "tension, with the push fore and aft, on its two lines as for WELD-LOAD (which judges it at work)",
       "yield / work.safety_factor; weld 0.60 x 70 ksi / 2.00 on its throat, 0.60 x 360 MPa / 2.00 on the "
       "thinner steel",
       "AISC 360 allowable strength design, table J2.5 and section J4.2",
       "a thicker or longer tab, or a larger fillet", nullptr},
      {"STAND-LOG", "stand", "Does the log lie on its bunks?", "bunks under it, and its middle between them",
       "two bunks at least, the middle between the outer two; no log named: a warning", "statics",
       "a longer log, or another place", nullptr},
      {"STAND-TIP", "stand", "Does it stand on its jacks wherever the head is?",
       "centre of all weight between the outermost jacks", "inside", "statics",
       "jacks further out, or another pair", nullptr},
      {"STAND-SAG", "stand", "Do the rails stay straight under head and log?",
       "most deflection of a main between its jacks, plus most deflection of a rail between its tabs, over "
       "all places of the "
       "head and the log",
       "work.sag_limit (1/16 in)", practice, "another pair of jacks, a deeper main, or a smaller log",
       nullptr},
      {"STAND-BEND", "stand", "Do mains, rails and bunks stand head and log?",
       "largest moment / section modulus; a main's web: largest shear / (depth x web; of a tube, flat height "
       "x two walls)",
       "yield / work.safety_factor (1.67), a main's less where cross members are so far apart that it "
       "buckles sideways; the "
       "web: 0.60 of the first",
       "AISC 360 allowable strength design, chapters F and G; the log: work.landing of its weight, crooked, "
       "on bunks as "
       "springs that only push",
       "another pair of jacks, a deeper main, or a smaller log", nullptr},
      {"TAB-WORK", "stand", "At work: do the tabs stand what a rail puts on them?",
       "most a rail puts on one tab, under the head and a log that lands x (hole - web), and what turns it: "
       "the wheels' part "
       "x (upright leg - hole) less what the bunks hold through the rail's torsion; / plate modulus, and on "
       "its weld",
       "yield / work.safety_factor (1.67); weld as TAB-ROAD", "AISC 360 allowable strength design",
       "a longer or thicker tab, a larger fillet", nullptr},
      {"JACK-LOAD", "stand", "Does each jack carry no more than its rating?",
       "largest push of the main on it, over all places of the head and a log that lands",
       "frame.jack.rating", "the jack's maker", "another pair of jacks, stronger ones, or a smaller log",
       nullptr},
      {"JACK-WELD", "stand",
       "Where the mains are tubes: do the plate that hangs a jack, and its weld, carry it?",
       "two upright lines at the plate's ends, L each: hypot(push / 2 L, push x (post's middle - main's "
       "side) / (L^2 / 3)); plate: push x (post's middle - main's side) / (length x thickness^2 / 6)",
       "weld 0.60 x 70 ksi / 2.00 on its throat, 0.60 x 360 MPa / 2.00 on the thinner steel; plate yield / "
       "work.safety_factor",
       "AISC Manual, part 8, elastic method; AISC 360 table J2.5 and section J4.2",
       "a larger fillet, a thicker plate, a deeper main, or another pair of jacks", nullptr},
      {"JACK-LIFT", "stand", "Does every jack keep its load?", "least push on it; it only pushes",
       "above 0; a warning", "statics", "a jack nearer its neighbours", nullptr},
      {"STAND-PUSH", "stand", "Does a log that is rolled on leave the bed standing?",
       "weights x distance to the jacks' feet / (work.push x log x height of the push); and with the log's "
       "weight on the bunks' ends",
       "1.5; a warning", practice, "chock the bed, stake the jacks, or a smaller log", nullptr},
      {"RAIL-ROLL", "stand", "Does the rail stay upright under a wheel that stands outside its bolts?",
       "wheels' part of a tab's load x (upright leg - hole), the part the bunks hold: over (flat leg - "
       "bunk's bolt) it pulls "
       "that bolt; x thickness / torsion constant it twists the rail",
       "bolt: ASTM A307, 45 ksi / 2.00; rail: 0.60 x 36 ksi / work.safety_factor",
       "AISC 360 table J3.2; St Venant's torsion of thin legs",
       "larger bunk bolts, or a bunk beside each tab", nullptr},
      {"JACK-SEAT", "stand", "Do a jack's bolts and the cross members hold it beside the main?",
       "load / 4 on each bolt; load x (plate, flange and half the post) / (2 x bolts apart up and down) "
       "pulls the upper or "
       "lower two; with a log's load inside the web it bends one cross member",
       "bolts: ASTM A307, tension and shear together by J3.7; cross member: yield / work.safety_factor",
       "AISC 360 table J3.2 and J3.7, chapter F", "bolts further apart or larger, a heavier cross member",
       nullptr},
      {"JACK-FOOT", "stand", "What goes under each foot?", "load on the jack / its foot's area",
       "1500 lb/ft2 (72 kPa); a note with the size of the timber",
       "International Building Code table 1806.2, the least it lists (from memory)", "timber under each foot",
       nullptr},
      {"TONGUE-SEAT", "tow", "Does the front member's flange stand the tongue that levers on it?",
       "half the coupler's load x (ball to front member + lap) / lap",
       "6.25 x yield x flange^2 / work.safety_factor / 2", "AISC 360 section J10.1, near the member's end",
       "run the tongue further back, or a heavier front member", nullptr},
      {"FATIGUE", "tow", "Do welds and channels stand a life on the road?",
       "stress at rest x 0.47, the even range that wears as 0.15 g root mean square does, 3.2 million times: "
       "20 000 miles "
       "at 45 miles an hour, two swings a second",
       "1000 ksi (Cf / times)^0.333 or its threshold; mains and tongue at welds E, tabs C, throats F",
       "AISC 360 appendix 3, table A-3.1; the road: common practice, no published source",
       "a stronger section, longer or larger welds", nullptr},
      {"HEAD-LASH", "tow", "How is the head tied down on the road?",
       "its weight x road.braking, road.cornering, road.rebound", "none: a note",
       "49 CFR 393.102, 393.106 and 393.110 (from memory)",
       "straps whose working load limits add up to half its weight, beside its lock", nullptr},
  };
  return table;
}

const std::vector<Rule>& all_rules() {
  static const std::vector<Rule> table = [] {
    std::vector<Rule> all = rules();
    all.insert(all.end(), load_rules().begin(), load_rules().end());
    return all;
  }();
  return table;
}

bool is_about_loads(const std::string& code) {
  return std::any_of(load_rules().begin(), load_rules().end(), [&](const Rule& r) { return r.code == code; });
}

}  // namespace bedwright
