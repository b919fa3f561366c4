// Gauge spacers and shop aids: what to make, where it goes, what to read.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <utility>

#include "bed/names.h"
#include "sheets/aids/aids.h"
#include "sheets/flow.h"
#include "sheets/marks.h"
#include "sheets/part_words.h"
#include "sheets/plan.h"
#include "sheets/span.h"

namespace bedwright {
namespace {

// The tube seen from ahead of the bed, and its section, with the centre line on it.
List2d spacer_picture(const SheetInput& in, const GaugeSpacer& s, int scale) {
  const Figures figures = in.figures();
  List2d list;
  const Pens pens(list);
  const double k = 1.0 / scale;
  const Mm half = k * s.length / 2, high = k * s.side, cut = k * s.corner;
  list.add(Closed{
      pens.outline,
      polygon({{-half + cut, 0}, {half - cut, 0}, {half, cut}, {half, high}, {-half, high}, {-half, cut}})});
  list.add(Line{pens.centre, {0, -3}, {0, high + 6}});
  list.add(Text{pens.text,
                {0, high + 7.5},
                bench_text,
                "CENTRE LINE, scribed on all four sides",
                Across::centre,
                Up::baseline,
                0});
  level_span(list, 0, half, 0, -7, figures.size_length(s.length / 2), bench_text);
  level_span(list, -half, half, 0, -19, figures.size_to_make(s.length), large_text);
  list.add(Text{pens.text,
                {-half, -29},
                bench_text,
                fmt::format("GAUGE SPACER, {} off, square tube {}, view 1:{}", spacer_places(in).size(),
                            figures.size_length(s.side), scale),
                Across::left,
                Up::baseline,
                0});
  list.add(Text{pens.text,
                {-half, -35},
                bench_text,
                fmt::format("Length +/- {}", figures.size_length(s.tolerance)),
                Across::left,
                Up::baseline,
                0});
  list.add(Text{pens.text,
                {-half, -41},
                bench_text,
                fmt::format("Both lower corners cut off {0} x {0}", figures.size_length(s.corner)),
                Across::left,
                Up::baseline,
                0});
  return list;
}

// Across the bed where a spacer lies: rails, mains, tube and bar clamp.
List2d in_place_picture(const SheetInput& in, const GaugeSpacer& s, int scale) {
  const Figures figures = in.figures();
  List2d list;
  const Pens pens(list);
  const double k = 1.0 / scale;
  for (const Identity& id : {Identity{Kind::main, Side::left}, Identity{Kind::main, Side::right},
                             Identity{Kind::rail, Side::left, 1}, Identity{Kind::rail, Side::right, 1}})
    for (const Outline& outline : cut_across(in.bed, in.bed.item(id)))
      list.add(Closed{pens.outline, shrunk(outline, scale)});
  const Box3 rail = bounds(in.bed, in.bed.item({Kind::rail, Side::right, 1}));
  const Mm bottom = k * s.bottom, top = bottom + k * s.side, cut = k * s.corner, end = k * s.right;
  list.add(Closed{pens.outline, polygon({{-end + cut, bottom},
                                         {end - cut, bottom},
                                         {end, bottom + cut},
                                         {end, top},
                                         {-end, top},
                                         {-end, bottom + cut}})});
  // The clamp: a jaw on each heel, the bar over the rails.
  const Mm heel = k * rail.high.y, crown = k * rail.high.z, jaw = 3;
  for (const double side : {-1.0, 1.0})
    list.add(Closed{pens.thin, rectangle({std::min(side * heel, side * (heel + jaw)), bottom + 1},
                                         {std::max(side * heel, side * (heel + jaw)), crown + 2})});
  list.add(Closed{pens.thin, rectangle({-heel - jaw, crown + 2}, {heel + jaw, crown + 4.5})});
  list.add(Line{pens.centre, {0, bottom - 4}, {0, crown + 7}});
  const Mm under = bounds(list).low.y;
  level_span(list, -heel, heel, k * rail.low.z, under - 8,
             "gauge, heel to heel: " + figures.size_to_make(in.job.kit.gauge), bench_text);
  leader(list, {-0.1 * end, top}, {-0.15 * end, crown + 11}, "spacer, centre line on the bed's", bench_text);
  leader(list, {-0.7 * end, crown + 4.5}, {-0.66 * end, crown + 11}, "bar clamp", bench_text);
  leader(list, {heel + jaw, bottom + 4}, {heel + jaw + 5, bottom + 4}, "RIGHT (R)", bench_text);
  leader(list, {-heel - jaw, bottom + 4}, {-heel - jaw - 5, bottom + 4}, "LEFT (L)", bench_text, true);
  list.add(Text{pens.text,
                {-heel - jaw, under - 15},
                bench_text,
                fmt::format("SPACER AND BAR CLAMP IN PLACE, looking forward, 1:{}", scale),
                Across::left,
                Up::baseline,
                0});
  return list;
}

// The track in plan with every spacer, its number and its running dimension.
List2d places_picture(const SheetInput& in, const GaugeSpacer& s, const std::vector<SpacerPlace>& places,
                      Mm space) {
  const Figures figures = in.figures();
  // A short track is no larger than leaves room for the rest.
  const int scale =
      std::max(reduction(in.bed.track.total_length, space - 30), reduction(in.job.kit.gauge, 75));
  List2d list;
  const Pens pens(list);
  const double k = 1.0 / scale;
  std::vector<Tag> bunks;
  for (std::size_t i = 0; i < in.bed.items.size(); ++i) {
    const Identity& id = in.bed.items[i].id;
    const bool rail = id.kind == Kind::rail, bunk = id.kind == Kind::bunk;
    if (!rail && !bunk) continue;
    const Box3 box = bounds(in.bed, static_cast<int>(i));
    list.add(Closed{rail ? pens.outline : pens.hidden,
                    rectangle({k * box.low.x, k * box.low.y}, {k * box.high.x, k * box.high.y})});
    if (bunk) bunks.push_back({k * (box.low.x + box.high.x) / 2, mark(id)});
  }
  const Box2 track = bounds(list);
  std::vector<Running> at{{0, "0"}};
  int number = 0;
  for (const SpacerPlace& p : places) {
    list.add(Closed{pens.outline,
                    rectangle({k * (p.x - s.side / 2), k * s.left}, {k * (p.x + s.side / 2), k * s.right})});
    at.push_back({k * p.x, fmt::format("S{}  {}", ++number, figures.tape_figure(p.x))});
  }
  running_along(list, at, track.high.y, true, bench_text);
  list.add(Line{pens.centre, {track.low.x - 3, 0}, {track.high.x + 3, 0}});
  const int every = thin_out(bunks, small_text, space - 30);
  tag_row(list, bunks, track.low.y, track.low.y - 9, small_text, pens.text);
  const auto word = [&](Vec2 p, const std::string& t, Across across) {
    list.add(Text{pens.text, p, bench_text, t, across, Up::middle, 0});
  };
  word({track.low.x - 4, 0}, "FRONT", Across::right);
  list.add(
      Text{pens.text,
           {0, track.low.y - 16},
           bench_text,
           fmt::format("PLACES OF SPACERS AND BAR CLAMPS, 1:{}, right side up; dashed: bunks by number{}",
                       scale, every_words(every)),
           Across::left,
           Up::baseline,
           0});
  return list;
}

// One tab with the line beside it.
List2d string_picture(const SheetInput& in, const StringLine& line, const TabReading& reading, int scale) {
  const Figures figures = in.figures();
  List2d list;
  const Pens pens(list);
  const double k = 1.0 / scale;
  const int main = in.bed.item({Kind::main, Side::right}), first = in.bed.item({Kind::tab, Side::right, 1});
  for (const int item : {main, first})
    for (const Outline& outline : cut_across(in.bed, item))
      list.add(Closed{pens.outline, shrunk(outline, scale)});
  const Box3 tab = bounds(in.bed, first);
  const Mm web = k * in.job.frame.main.spacing / 2, string = k * line.along, top = k * tab.high.z;
  const Mm block_top = std::min(k * tab.low.z, 0.0) - 2;
  list.add(Closed{pens.thin, rectangle({web, block_top - 14}, {string, block_top})});
  list.add(Line{pens.centre, {string, block_top - 17}, {string, top + 3}});
  list.add(Circle{pens.outline, {string, top + 3.8}, 0.8});
  const Mm hole = string - k * reading.to_middle;
  list.add(Line{pens.centre, {hole, k * tab.low.z - 2}, {hole, top + 7}});
  level_span(list, hole, string, top + 8, top + 12,
             figures.size_to_make(reading.to_middle) + "  line to hole's middle", bench_text);
  level_span(list, web, string, block_top - 17, block_top - 22, figures.size_to_make(line.block) + "  block",
             bench_text);
  leader(list, {string + 0.8, top + 3.8}, {string + 6, top + 3.8}, "string", bench_text);
  leader(list, {string, block_top - 7}, {string + 6, block_top - 7},
         "block at each end of the main, not at the tab", bench_text);
  const Box2 box = bounds(list);
  list.add(Text{pens.text,
                {box.low.x, box.low.y - 7},
                bench_text,
                fmt::format("STRING LINE, right side, looking forward, 1:{}", scale),
                Across::left,
                Up::baseline,
                0});
  return list;
}

// `which`: of several, said in the title.
List2d strip_picture(const SheetInput& in, const CheckStrip& strip, const std::string& which, Mm space) {
  const Figures figures = in.figures();
  const Mm length = strip.length, wide = figures.hand_width();
  const int scale = reduction(length, space - 10);
  List2d list;
  const Pens pens(list);
  const double k = 1.0 / scale;
  list.add(Closed{pens.outline, rectangle({0, 0}, {k * length, k * wide})});
  const Mm diameter = in.job.kit.mounting.hole.diameter;
  std::vector<Running> at{{0, "0"}};
  for (const Mm x : strip.holes) {
    list.add(Circle{pens.outline, {k * x, k * wide / 2}, k * diameter / 2});
    at.push_back({k * x, figures.running(x)});
  }
  at.push_back({k * length, figures.running(length)});
  list.add(Line{pens.centre, {-2, k * wide / 2}, {k * length + 2, k * wide / 2}});
  running_along(list, at, k * wide, true, small_text);
  list.add(Text{pens.text,
                {0, -7},
                bench_text,
                fmt::format("CHECK STRIP{}, 1 off, flat bar {} wide, holes {} on its middle line, 1:{}",
                            which, figures.size_length(wide), figures.size_length(diameter), scale),
                Across::left,
                Up::baseline,
                0});
  return list;
}

// "L1 to L12, R1 to R12": runs of neighbours, a side after the other.
std::string runs(const std::vector<Identity>& tabs) {
  std::string words;
  for (std::size_t i = 0; i < tabs.size();) {
    std::size_t last = i;
    while (last + 1 < tabs.size() && tabs[last + 1].side == tabs[i].side &&
           tabs[last + 1].number == tabs[last].number + 1)
      ++last;
    words += (words.empty() ? "" : ", ") + mark(tabs[i]) + (last > i ? " to " + mark(tabs[last]) : "");
    i = last + 1;
  }
  return words;
}

// "L1, L3, R1 and R3".
std::string rails_words(const CheckStrip& strip) {
  std::string words;
  for (std::size_t i = 0; i < strip.rails.size(); ++i)
    words += (i == 0 ? "" : i + 1 == strip.rails.size() ? " and " : ", ") + mark(strip.rails[i]);
  return words;
}

Table2d reading_table(const SheetInput& in, const std::vector<TabReading>& readings) {
  const Figures figures = in.figures();
  Table2d table{{"TAB", "TO HOLE'S MIDDLE", "TO ITS NEAR EDGE", "MAY BE OFF BY"}, {}};
  const auto read = [&](Mm x) { return figures.rule_reading(x); };
  const std::string off = figures.size_length(string_line(in).limit);
  for (const TabReading& r : readings)
    table.rows.push_back({runs(r.tabs), read(r.to_middle), read(r.to_edge), "+/- " + off});
  return table;
}

std::vector<std::string> spacer_notes(const SheetInput& in, const GaugeSpacer& s, std::size_t count) {
  const Figures figures = in.figures();
  std::vector<std::string> notes{
      fmt::format("Make {} spacers. Square both ends, take off burrs, then measure each: a spacer is what "
                  "the gauge is set by.",
                  count),
      fmt::format("Lay one at each place S1 to S{}, cut corners down, its centre line on the bed's centre "
                  "line. It must touch both standing legs.",
                  count),
      fmt::format("Set a bar clamp over each spacer, opening at least {}, jaws on the rails' heels at the "
                  "spacer's height. Pull up until the spacer cannot be turned by hand.",
                  figures.size_length(in.job.kit.gauge + figures.hand_width())),
      "Spacers and clamps stay in until every track bolt and gusset bolt is tight. Then take them out and "
      "measure the gauge at each place again.",
      fmt::format("The gauge may be off by {}, half of it taken by the spacer's length.",
                  figures.size_length(2 * s.tolerance)),
      "Send the spacers with the bed.",
  };
  if (std::cmp_less(count, 2 * in.bed.track.sections))
    notes.push_back(
        "Where a section shows fewer than two spacers there is no room for another between what is bolted to "
        "it: measure the gauge there with a tape.");
  return notes;
}

std::vector<std::string> line_notes(const SheetInput& in, const StringLine& line) {
  const Figures figures = in.figures();
  return {
      fmt::format("String line: clamp a block {} thick to the main's {} ahead of the first tab and another "
                  "behind the last. Stretch the line over both, just above the tabs.",
                  figures.size_to_make(line.block), back_word(in.bed, in.bed.item({Kind::main, Side::left}))),
      std::string("Read square from the line inward to each hole with a rule, at the hole's near edge. ") +
          (stands(in.job.frame) ? "A tab that reads off by more than the table allows is not as the frame's "
                                  "file has it: stop, correct the file and make this packet again."
                                : "A tab that reads off by more than the table allows is moved before it is "
                                  "welded out."),
      "Do both sides. Then measure across from line to line at both ends and the middle: " +
          figures.size_to_make(2 * line.along) + ".",
      "Check strip: lay it over the tabs of each section in turn, its 0 end on the section's front end. A "
      "bolt must drop by hand through strip and tab at every hole.",
  };
}

}  // namespace

std::vector<Sheet> shop_aid_sheets(const SheetInput& in) {
  const GaugeSpacer spacer = gauge_spacer(in);
  const std::vector<SpacerPlace> places = spacer_places(in);
  const std::vector<TabReading> readings = tab_readings(in);
  const Box2 space = drawing_space(paper_of(in.job.order.order), in.draft);
  Sheet form;
  form.title = "GAUGE SPACERS AND SHOP AIDS";
  form.file = "shop_aids";
  form.scale = "AS NOTED";
  Flow flow(form, space);
  const int scale = reduction(in.job.kit.gauge, 160);
  flow.picture(spacer_picture(in, spacer, scale));
  flow.picture(in_place_picture(in, spacer, scale));
  flow.below();
  flow.table("WHERE THE SPACERS GO", spacer_table(in), bench_text);
  flow.notes("SPACERS", spacer_notes(in, spacer, places.size()), bench_text, 215);
  flow.below();
  flow.picture(places_picture(in, spacer, places, space.width()));
  if (!readings.empty()) {
    flow.below();
    flow.picture(string_picture(in, string_line(in), readings.front(), 4));
    flow.table("STRING LINE: WHAT TO READ, FROM THE LINE", reading_table(in, readings), bench_text);
    flow.below();
    flow.notes("STRING LINE AND STRIP", line_notes(in, string_line(in)), bench_text, 300);
    flow.below();
    const std::vector<CheckStrip> strips = check_strips(in);
    for (const CheckStrip& strip : strips) {
      const std::string which = strips.size() == 1 ? "" : " for rails " + rails_words(strip);
      flow.picture(strip_picture(in, strip, which, std::min(space.width(), 380.0)));
      flow.below();
    }
  }
  return std::move(flow).sheets();
}

}  // namespace bedwright
