// A tag for the tongue: what holds the bed down while it is coupled, uncoupled and its head
// is rolled, in letters that are read standing.
#include <fmt/format.h>

#include <algorithm>

#include "loads/travel_name.h"
#include "sheets/flow.h"
#include "sheets/sheets.h"

namespace bedwright {
namespace {

constexpr Mm tag_text = 5, tag_width = 330;

// What the tongue presses with, in every way this order travels.
Table2d tongue_table(const SheetInput& in) {
  const Figures figures = in.figures();
  Table2d table{{"TOWED SO", "WEIGHS", "ON THE BALL", "ON THE JACK"}, {}};
  for (const TowCondition& c : in.examined.loads.tow.conditions)
    if (c.judged)
      table.rows.push_back({name(c.travel), figures.mass(c.mass),
                            fmt::format("{}, {:.0f} %", figures.mass(c.tongue), 100 * c.share),
                            figures.mass(c.jack)});
  return table;
}

// Ways the bed may stand in that the order does not tow it and that lift its tongue.
std::string never(const SheetInput& in) {
  const std::vector<TravelCase> usual = usual_travels(in.job.order);
  std::string text;
  for (const TowCondition& c : in.examined.loads.tow.conditions)
    if (!c.judged && c.share < in.job.order.road.share_low &&
        std::find(usual.begin(), usual.end(), c.travel) != usual.end())
      text +=
          fmt::format("{}{} ({:.0f} % on the ball)", text.empty() ? "" : ", ", name(c.travel), 100 * c.share);
  return text;
}

std::vector<std::string> tag_notes(const SheetInput& in) {
  const Figures figures = in.figures();
  const Tow& tow = in.examined.loads.tow;
  const auto place = [&](Mm x) { return figures.customer(figures.whole_down(x)); };
  std::vector<std::string> notes{
      "Coupling or uncoupling: level ground, both wheels chocked, the head locked or off.",
      fmt::format("The head travels locked, its middle {} behind the front end of the track.",
                  figures.customer(in.bed.track.head_lock)),
      "Rear jacks down and carrying before the head is unlocked. They stay down until it is locked again."};
  if (tow.tips_on_track())
    notes.push_back(
        fmt::format("On wheels and tongue jack alone the bed TIPS BACK with the head more than {} behind the "
                    "front end of the track.",
                    place(tow.tips_behind)));
  if (const std::string ways = never(in); !ways.empty())
    notes.push_back(fmt::format("NEVER tow it or stand it on wheels and tongue jack so: {}.", ways));
  if (const auto& cargo = in.job.order.road.cargo)
    notes.push_back(
        fmt::format("Its load, {}, is lashed with its middle {} behind the front end of the track.",
                    figures.mass(cargo->mass), figures.customer(cargo->position)));
  return notes;
}

}  // namespace

std::vector<Sheet> tongue_tag_sheets(const SheetInput& in) {
  Sheet form;
  form.title = "TAG FOR THE TONGUE";
  form.file = "tongue_tag";
  form.scale = "NONE";
  Flow flow(form, drawing_space(paper_of(in.job.order.order), in.draft));
  flow.notes("BEFORE THE HEAD IS UNLOCKED, BEFORE IT IS COUPLED OR UNCOUPLED", tag_notes(in), tag_text,
             tag_width);
  flow.below();
  flow.table("WHAT HOLDS THE TONGUE DOWN", tongue_table(in), tag_text);
  flow.below();
  flow.notes(
      "THE TAG",
      {"Print it, cover it against weather, and fix it to the tongue where the one who couples the bed "
       "reads it. A new issue of this sheet replaces it."},
      bench_text, tag_width);
  return std::move(flow).sheets();
}

}  // namespace bedwright
