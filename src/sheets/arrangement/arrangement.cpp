// General arrangement: plan, side and rear in projection, a picture, overall
// sizes, numbers with a parts table, masses and ratings.
#include "sheets/arrangement/arrangement.h"

#include <fmt/format.h>

#include <algorithm>

#include "bed/names.h"
#include "loads/travel_name.h"
#include "sheets/arrangement/balloons.h"
#include "sheets/flow.h"
#include "sheets/marks.h"
#include "sheets/part_words.h"
#include "sheets/plan.h"
#include "sheets/sheets.h"

namespace bedwright {
namespace {

constexpr Mm balloon_space = 18, title_space = 9, between = 6;
constexpr Mm dimension_apart = 8;
constexpr int most_reduction = 500;
// Runs shorter than this on paper are specks.
constexpr Mm least_run = 0.15;

Box2 extent(const View& view) {
  Box2 box;
  for (const ViewLine& line : view)
    for (const Vec2 p : line.points) box.add(p);
  return box;
}

void add_view(List2d& list, const View& view, int scale, Vec2 origin) {
  const int edge = list.layer({"VIEW", 7, LineKind::continuous, 0.35}),
            thin = list.layer({"EXISTING", 7, LineKind::continuous, 0.13});
  for (const ViewLine& line : view) {
    if (!line.visible || line.edge == ViewEdge::smooth) continue;
    Path path{line.standing ? thin : edge, {}};
    for (const Vec2 p : line.points) path.points.push_back(origin + (1.0 / scale) * p);
    Box2 box;
    for (const Vec2 p : path.points) box.add(p);
    if (std::max(box.width(), box.height()) >= least_run) list.add(std::move(path));
  }
}

class Arrangement {
 public:
  Arrangement(const SheetInput& in, const Box2& space, int least)
      : in_(in), figures_(in.figures()), first_angle_(figures_.iso_practice()), pens_(list_) {
    plan_ = extent(in.views->plan);
    side_ = extent(in.views->side);
    rear_ = extent(in.views->rear);
    balloons_ = balloons(in.bed);
    const Mm wide = plan_.width() + rear_.width(), tall = plan_.height() + side_.height();
    scale_ =
        std::max(reduction(wide, space.width() - 60),
                 reduction(tall, space.height() - 2 * balloon_space - 2 * title_space - 3 * dimension_apart));
    scale_ = std::max(scale_, reduction(least, 1));
  }

  int scale() const { return scale_; }

  List2d drawn() {
    const Mm side_top = side_.high.y / scale_, side_bottom = side_.low.y / scale_;
    // The side view's origin is the paper's; the plan stands above it, or below
    // it in first angle.
    const Mm below_side = side_bottom - 3 * dimension_apart - title_space;
    const Mm plan_y = first_angle_ ? below_side - between - balloon_space - plan_.high.y / scale_
                                   : side_top + balloon_space + between + title_space - plan_.low.y / scale_;
    const Mm rear_x = first_angle_ ? side_.low.x / scale_ - 22 - rear_.high.x / scale_
                                   : side_.high.x / scale_ + 22 - rear_.low.x / scale_;
    add_view(list_, in_.views->side, scale_, {0, 0});
    add_view(list_, in_.views->plan, scale_, {0, plan_y});
    add_view(list_, in_.views->rear, scale_, {rear_x, 0});
    numbers(plan_y, side_top);
    sizes(plan_y, rear_x);
    title({plan_.low.x / scale_, plan_y + plan_.low.y / scale_ - 6}, "PLAN, front at the left");
    title({side_.low.x / scale_, side_bottom - 3 * dimension_apart - 5}, "SIDE, from the left");
    title({rear_x + rear_.low.x / scale_, side_bottom - 3 * dimension_apart - 5}, "REAR");
    return std::move(list_);
  }

  const std::vector<Balloon>& numbers() const { return balloons_; }

 private:
  void title(Vec2 at, const std::string& s) {
    list_.add(Text{pens_.text, at, bench_text, s, Across::left, Up::baseline, 0});
  }

  void numbers(Mm plan_y, Mm side_top) {
    std::vector<BalloonPlace> above, beside;
    for (const Balloon& b : balloons_) {
      const Vec2 p = (1.0 / scale_) * place_in_view(b.in_plan ? plan_direction : side_direction, b.tip);
      if (b.in_plan) {
        above.push_back({{p.x, p.y + plan_y}, b.number});
      } else {
        beside.push_back({p, b.number});
      }
    }
    balloon_row(list_, above, plan_y + plan_.high.y / scale_ + balloon_space - balloon_radius);
    balloon_row(list_, beside, side_top + balloon_space - balloon_radius);
  }

  // Nearest the view first: the axle from the datum, then the whole length.
  void sizes(Mm plan_y, Mm rear_x) {
    const Mm low = side_.low.y / scale_;
    const auto along = [&](Mm from, Mm to, int row, const std::string& what) {
      // On a short bed the tape's figure alone; the frame's sheet has the rest.
      std::string label = what + figures_.tape_label(to - from);
      if (text_width(label, small_text) > (to - from) / scale_ - 2)
        label = what + figures_.tape_figure(to - from);
      dimension_along(list_, from / scale_, to / scale_, low, low - row * dimension_apart, label, small_text);
    };
    Mm axles = 0;
    int count = 0;
    for (const int axle : in_.bed.items_of(Kind::axle)) {
      const Item& item = in_.bed.items[axle];
      if (!item.shown) continue;
      axles += item.placement.origin.x;
      ++count;
    }
    if (count > 0 && axles / count > 0) along(0, axles / count, 1, count > 1 ? "axles " : "axle ");
    along(0, in_.bed.track.total_length, 2, "track ");
    along(side_.low.x, side_.high.x, 3, "over all ");
    dimension_along(list_, rear_x + rear_.low.x / scale_, rear_x + rear_.high.x / scale_, low,
                    low - dimension_apart, figures_.tape_label(rear_.width()), small_text);
    const Mm right = rear_x + rear_.high.x / scale_;
    dimension_up(list_, rear_.low.y / scale_, rear_.high.y / scale_, right, right + dimension_apart,
                 figures_.tape_label(rear_.height()), small_text);
    const Mm plan_right = plan_.high.x / scale_;
    dimension_up(list_, plan_y + plan_.low.y / scale_, plan_y + plan_.high.y / scale_, plan_right,
                 plan_right + dimension_apart, figures_.tape_label(plan_.height()), small_text);
  }

  const SheetInput& in_;
  Figures figures_;
  bool first_angle_;
  List2d list_;
  Pens pens_;
  Box2 plan_, side_, rear_;
  std::vector<Balloon> balloons_;
  int scale_ = 1;
};

Table2d parts_table(const SheetInput& in, const std::vector<Balloon>& numbers) {
  Table2d table{{"NO.", "PART", "COUNT", "FORM", "SIZE", "FROM"}, {}};
  for (const Balloon& b : numbers) {
    const Part& part = in.bed.parts[static_cast<std::size_t>(b.part)];
    const auto [form, size] = part_form(part, in.figures());
    table.rows.push_back({fmt::format("{}", b.number), name(part), fmt::format("{}", in.bed.count(b.part)),
                          form, size, origin_name(part.origin)});
  }
  return table;
}

Table2d condition_table(const SheetInput& in) {
  const Figures figures = in.figures();
  const std::string unit = fmt::format(" {}", figures.mass_cell_unit());
  Table2d table{{"ON THE ROAD", "MASS" + unit, "ON COUPLER" + unit, "SHARE", "EACH AXLE" + unit,
                 "HEAVIEST TYRE" + unit},
                {}};
  for (const TowCondition& c : in.examined.loads.tow.conditions)
    if (c.judged)
      table.rows.push_back({name(c.travel), figures.mass_cell(c.mass), figures.mass_cell(c.tongue),
                            fmt::format("{:.1f} %", 100 * c.share), figures.mass_cell(c.axle),
                            figures.mass_cell(c.tyre)});
  return table;
}

Table2d rating_table(const SheetInput& in) {
  const Figures figures = in.figures();
  const auto& f = in.job.frame;
  Table2d table{{"RATED FOR, as the makers state", figures.mass_cell_unit()}, {}};
  const auto row = [&](const char* what, Kg rating) {
    table.rows.push_back({what, rating > 0 ? figures.mass_cell(rating) : "not stated"});
  };
  row("coupler, trailer's mass", f.coupler.rating);
  row("one axle", f.axle.axle_rating);
  row("one tyre", f.axle.tyre_rating);
  row("one jack", f.jack.rating);
  row("tongue jack", f.tongue_jack.rating);
  return table;
}

List2d isometric(const SheetInput& in, const Box2& space) {
  List2d list;
  const Box2 box = extent(in.views->isometric);
  const int scale = std::max(reduction(box.width(), std::min(space.width(), 230.0)),
                             reduction(box.height(), std::min(space.height(), 150.0)));
  add_view(list, in.views->isometric, scale, {0, 0});
  const Pens pens(list);
  list.add(Text{pens.text,
                {box.low.x / scale, box.low.y / scale - 7},
                bench_text,
                fmt::format("ISOMETRIC from the front and the right side, 1:{}, not for measuring", scale),
                Across::left,
                Up::baseline,
                0});
  return list;
}

}  // namespace

std::vector<Sheet> arrangement_sheets(const SheetInput& in) {
  if (!in.views) return {};
  const Box2 space = drawing_space(paper_of(in.job.order.order), in.draft);
  int scale = 1;
  List2d drawn;
  std::vector<Balloon> numbers;
  for (bool fits = false; !fits;) {
    Arrangement arrangement(in, space, scale);
    drawn = arrangement.drawn();
    numbers = arrangement.numbers();
    const Box2 box = bounds(drawn);
    fits = (box.width() <= space.width() && box.height() <= space.height()) ||
           arrangement.scale() >= most_reduction;
    scale = arrangement.scale() + (fits ? 0 : 1);
  }
  Sheet form;
  form.title = "GENERAL ARRANGEMENT";
  form.file = "general_arrangement";
  form.scale = fmt::format("1:{}", scale);
  form.material = in.job.frame.grade;
  Flow flow(form, space);
  flow.picture(drawn);
  flow.picture(isometric(in, space));
  if (stands(in.job.frame))
    flow.notes("THIN LINES", {"What stands already and is not made again. Parts: FROM stands."}, small_text,
               100);
  flow.table("PARTS, bolts and washers apart", parts_table(in, numbers), small_text);
  flow.table("MASSES AND BALANCE", condition_table(in), small_text);
  flow.table("RATINGS", rating_table(in), small_text);
  std::vector<Sheet> sheets = std::move(flow).sheets();
  for (std::size_t i = 1; i < sheets.size(); ++i) sheets[i].scale = "AS NOTED";
  return sheets;
}

}  // namespace bedwright
