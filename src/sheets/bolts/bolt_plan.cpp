// Track bolting plan: which bolt goes into which hole, in what order, and where
// clamps may sit.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "bed/names.h"
#include "rules/fit/bolt_kinds.h"
#include "sheets/bolts/bolt_kinds.h"
#include "sheets/flow.h"
#include "sheets/marks.h"
#include "sheets/plan.h"
#include "sheets/sheets.h"

namespace bedwright {
namespace {

// Between the two rails of a section, on paper: room for the bunks' numbers. The
// gauge is not to scale.
constexpr Mm between_rails = 10;
// Notes stand beside the strips; strips are this far apart.
constexpr Mm notes_width = 112, strips_apart = 5;

int kind_layer(List2d& list, const BoltKind& kind) {
  constexpr int colours[] = {1, 5, 3, 6, 4, 2};
  return list.layer(
      {fmt::format("BOLT-{}", kind.letter), colours[(kind.letter - 'A') % 6], LineKind::continuous, 0.35});
}

Mm bunk_x(const Bed& bed, int number) { return bed.track.bunks.at(static_cast<std::size_t>(number) - 1).x; }

// One section with its rails on both sides.
class SectionStrip {
 public:
  SectionStrip(const SheetInput& in, const std::vector<BoltKind>& kinds, int section, int scale)
      : in_(in), kinds_(kinds), pens_(list_), section_(section), scale_(scale) {}

  List2d drawn() {
    for (const Side side : {Side::right, Side::left}) draw(side);
    const Box2 box = bounds(list_);
    list_.add(Text{pens_.text,
                   {0, box.high.y + 2.5},
                   bench_text,
                   fmt::format("SECTION {} OF {}, front at the left, rails R{} (above) and L{} (below)",
                               section_, in_.bed.track.sections, section_, section_),
                   Across::left,
                   Up::baseline,
                   0});
    return std::move(list_);
  }

 private:
  void draw(Side side) {
    const double out = outward(side);
    const Box3 rail = bounds(in_.bed, in_.bed.item({Kind::rail, side, section_}));
    const Mm middle = (rail.low.y + rail.high.y) / 2, half = (rail.high.y - rail.low.y) / 2 / scale_;
    const Mm band_at = half + between_rails / 2;
    const auto at = [&](Vec3 p) {
      return Vec2{(p.x - rail.low.x) / scale_, out * band_at + (p.y - middle) / scale_};
    };
    list_.add(Closed{pens_.outline, rectangle(at(rail.low), at(rail.high))});
    const Mm outer = out * (band_at + half), inner = out * (band_at - half);
    // Every kind in its own colour; letters share one row, so they are set out together.
    std::vector<Tag> tags;
    for (const BoltKind& kind : kinds_) {
      const int layer = kind_layer(list_, kind);
      for (const int i : kind.bolts) {
        const Vec3 seat = in_.bed.bolts[i].seat;
        if (seat.x < rail.low.x || seat.x > rail.high.x || seat.y * out < 0) continue;
        list_.add(Circle{layer, at(seat), 0.9});
        tags.push_back({at(seat).x, std::string(1, kind.letter)});
      }
    }
    tag_row(list_, tags, outer + out * 0.5, outer + (out > 0 ? 5 : -5 - bench_text), bench_text, pens_.text);
    std::vector<Tag> bunks;
    for (int number = 1; number <= in_.bed.track.bunk_count(); ++number) {
      const Mm x = bunk_x(in_.bed, number);
      if (x >= rail.low.x && x <= rail.high.x) bunks.push_back({at({x, 0, 0}).x, fmt::format("{}", number)});
    }
    if (out > 0) tag_row(list_, bunks, inner - out * 0.5, inner - 6.5, small_text, pens_.text);
  }

  const SheetInput& in_;
  const std::vector<BoltKind>& kinds_;
  List2d list_;
  Pens pens_;
  int section_, scale_;
};

Table2d kind_table(const SheetInput& in, const std::vector<BoltKind>& kinds) {
  const Figures figures = in.figures();
  // A length stands without its unit where that is the order's own.
  const auto length_of = [&](const BoltKind& k, Mm length) {
    return figures.without_own_unit(bolt_length_text(k.size, length));
  };
  Table2d table{{"BOLT", "SIZE", "LENGTH", "FOR", "UNDER HEAD", "UNDER NUT", "WRENCH", "COUNT", "NEVER HERE"},
                {}};
  for (const BoltKind& k : kinds) {
    std::string uses, never;
    for (const Kind use : k.uses) uses += (uses.empty() ? "" : ", ") + std::string(role_word(use));
    for (const Mm l : k.too_long) never += (never.empty() ? "" : ", ") + length_of(k, l) + " long";
    table.rows.push_back({std::string(1, k.letter), k.size.name, length_of(k, k.length), uses, k.under_head,
                          k.under_nut, figures.size_figure(k.size.wrench), fmt::format("{}", k.bolts.size()),
                          never.empty() ? "-" : never});
  }
  return table;
}

// Whether a clamp moved from its own bunk to another would meet anything there,
// by boxes around things: what it says is free is free.
std::string clamp_place(const Bed& bed, int bunk) {
  std::string none = "-";
  for (const int i : bed.items_of(Kind::clamp)) {
    const Identity& clamp = bed.items[i].id;
    if (clamp.number != 1) continue;
    const Mm moved = bunk_x(bed, bunk) - bunk_x(bed, clamp.bunk);
    Box3 box = bounds(bed, i);
    box.low.x += moved;
    box.high.x += moved;
    for (std::size_t k = 0; k < bed.items.size(); ++k) {
      // Clamps and the head are what moves.
      const Item& other = bed.items[k];
      if (!other.shown || other.moving || other.bolt >= 0 ||
          other.id == Identity{Kind::bunk, Side::middle, bunk})
        continue;
      if (box.overlaps(bounds(bed, static_cast<int>(k)), -same_place)) return "no: " + name(other);
    }
    none = "free";
  }
  return none;
}

Table2d bunk_table(const SheetInput& in) {
  const Figures figures = in.figures();
  Table2d table{table_row({{"BUNK"}, figures.heads("BOLTS AT"), {"CARRIES", "CLAMP"}}), {}};
  const TrackOrder& t = in.job.order.track;
  for (int number = 1; number <= in.bed.track.bunk_count(); ++number) {
    const Mm x = bunk_x(in.bed, number);
    const bool clamp =
        std::any_of(t.clamps.begin(), t.clamps.end(), [&](const ClampPlace& c) { return c.bunk == number; });
    const bool stop = std::find(t.log_stops.begin(), t.log_stops.end(), number) != t.log_stops.end();
    const std::string carries = clamp && stop ? "clamp, log stop" : clamp ? "clamp" : stop ? "log stop" : "";
    table.rows.push_back(table_row({{fmt::format("{}", number)},
                                    figures.cells(x),
                                    {carries, clamp ? "set here" : clamp_place(in.bed, number)}}));
  }
  return table;
}

std::vector<std::string> notes_of(const SheetInput& in, const std::vector<BoltKind>& kinds) {
  const Datum datum = in.job.order.track.datum;
  const char* from = datum == Datum::front  ? "from the front end rearward"
                     : datum == Datum::rear ? "from the rear end forward"
                                            : "from the middle toward both ends";
  std::vector<std::string> notes{
      "All bolts finger tight first. No nut is pulled down until every bolt of the track is in its hole.",
      fmt::format(
          "Then the gauge: {} over the rails' heels, held by the spacers of the shop aids. Then tighten: "
          "joint gussets first, track bolts {}, both sides in step, then bunks, then track stops.",
          in.figures().size_length(in.job.kit.gauge), from),
      "Torque: as the kit's and the bolts' makers state; this sheet gives none.",
      "Letters along each rail say which bolt; numbers between the rails are the bunks, whose bolts are "
      "measured from the track's front end. The gauge is not to scale.",
      "CLAMP: free is a bunk where a clamp meets nothing in any of its poses; no and a name says what it "
      "would meet.",
  };
  if (std::any_of(kinds.begin(), kinds.end(), [](const BoltKind& k) { return !k.too_long.empty(); }))
    notes.push_back(
        "NEVER HERE: a bolt of that length is at hand and fits the hole, but its tip would come too near to "
        "what is beyond it.");
  return notes;
}

// Sections one under another, as many as a page is high.
std::vector<List2d> strip_columns(const SheetInput& in, const std::vector<BoltKind>& kinds, int scale,
                                  Mm height) {
  std::vector<List2d> columns;
  Mm y = 0;
  for (int s = 1; s <= in.bed.track.sections; ++s) {
    const List2d strip = SectionStrip(in, kinds, s, scale).drawn();
    const Box2 box = bounds(strip);
    if (columns.empty() || y - box.height() < -height) {
      columns.emplace_back();
      y = 0;
    }
    columns.back().append(strip, {-box.low.x, y - box.high.y});
    y -= box.height() + strips_apart;
  }
  return columns;
}

}  // namespace

std::vector<Sheet> bolting_sheets(const SheetInput& in) {
  const std::vector<BoltKind> kinds = track_bolt_kinds(in);
  if (kinds.empty()) return {};
  const Box2 space = drawing_space(paper_of(in.job.order.order), in.draft);
  const int scale = reduction(in.bed.track.rail_length, space.width() - notes_width - 12);
  Sheet form;
  form.title = "TRACK BOLTING PLAN";
  form.file = "track_bolting";
  form.scale = fmt::format("1:{} ALONG", scale);
  Flow flow(form, space);
  bool first = true;
  for (List2d& column : strip_columns(in, kinds, scale, space.height())) {
    flow.below();
    flow.picture(column);
    if (std::exchange(first, false)) flow.notes("NOTES", notes_of(in, kinds), bench_text, notes_width - 8);
  }
  flow.below();
  flow.table("BOLTS", kind_table(in, kinds), bench_text);
  flow.below();
  flow.table("BUNKS AND CLAMPS", bunk_table(in), bench_text);
  return std::move(flow).sheets();
}

}  // namespace bedwright
