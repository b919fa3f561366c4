// The general arrangement: the kernel's views on the sheet, against projections
// worked out here and against what a reader can make out.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <random>

#include "bed/names.h"
#include "kernel/viewer.h"
#include "loads/loads.h"
#include "sheets/arrangement/balloons.h"
#include "support/demo.h"
#include "support/readable.h"

namespace bedwright {
namespace {

// Nearest end of a run in the view.
Mm nearest(const View& view, Vec2 place) {
  Mm least = 1e9;
  for (const ViewLine& line : view)
    for (const Vec2 p : line.points) least = std::min(least, norm(p - place));
  return least;
}

// A corner of a box seen along an axis lies at two of its three coordinates: no
// formula shared with the views.
TEST(BedViews, corners_are_drawn_where_they_are) {
  const Job job = testing::demo_job("base");
  const Bed bed = testing::bed_of(job);
  const BedViews views = bed_views(bed);
  const Mm post = job.frame.jack.post_width / 2;
  const Box3 rear = bounds(bed, bed.item({Kind::rear_member})),
             jack = bounds(bed, bed.item({Kind::jack, Side::left, 1}));
  EXPECT_LT(nearest(views.side, {job.order.jacks[0] - post, jack.low.z}), 1e-6);
  EXPECT_LT(nearest(views.side, {job.order.jacks[0] + post, jack.low.z}), 1e-6);
  EXPECT_LT(nearest(views.plan, {rear.high.x, rear.low.y}), 1e-6);
  EXPECT_LT(nearest(views.plan, {rear.high.x, rear.high.y}), 1e-6);
  EXPECT_LT(nearest(views.rear, {rear.low.y, rear.low.z}), 1e-6);
  // Isometric: the rotation written out. Seen from (-1, 1, 1): right is (1, 1, 0) / sqrt 2 turned
  // so that the front is to the right, up is (1, -1, 2) / sqrt 6.
  const Vec3 corner{jack.low.x, jack.low.y, jack.low.z};
  const Vec2 seen{(-corner.x - corner.y) / std::sqrt(2.0),
                  (corner.x - corner.y + 2 * corner.z) / std::sqrt(6.0)};
  const Vec2 drawn = place_in_view(isometric_view, corner);
  EXPECT_NEAR(drawn.x, seen.x, 1e-9);
  EXPECT_NEAR(drawn.y, seen.y, 1e-9);
}

// Ends of the lines of the sheet's views; what stands already is drawn thin.
std::vector<Vec2> ends_of_views(const Sheet& sheet) {
  std::vector<Vec2> ends;
  for (const Entity& e : sheet.list.entities)
    if (const Path* p = std::get_if<Path>(&e)) {
      const std::string& layer = sheet.list.layers[static_cast<std::size_t>(p->layer)].name;
      if (layer == "VIEW" || layer == "EXISTING") ends.insert(ends.end(), p->points.begin(), p->points.end());
    }
  return ends;
}

// Whether lines end at all of the places, wherever on the paper, at 1 : `scale`.
bool are_drawn(const std::vector<Vec2>& ends, const std::vector<Vec2>& places, double scale) {
  return std::any_of(ends.begin(), ends.end(), [&](Vec2 first) {
    return std::all_of(places.begin(), places.end(), [&](Vec2 place) {
      const Vec2 wanted = first + (1 / scale) * (place - places[0]);
      return std::any_of(ends.begin(), ends.end(), [&](Vec2 end) { return norm(end - wanted) < 1e-6; });
    });
  });
}

// Places as far apart as order, kit, frame and catalogue state, on paper, by the scale in
// the title block: the track's corners from above, a main's and the rails' ends from the
// side, the rear member's corners from the rear. At another scale they are not there.
TEST(Arrangement, is_to_the_scale_it_states) {
  for (const std::string& name : testing::good_orders) {
    const Job job = testing::demo_job(name);
    const Bed bed = testing::bed_of(job);
    const BedViews views = bed_views(bed);
    const LoadsResult loads = run_loads(job, bed);
    const std::vector<Sheet> sheets = arrangement_sheets({*examine(job, bed), false, {}, &views});
    ASSERT_FALSE(sheets.empty());
    ASSERT_TRUE(sheets[0].scale.starts_with("1:"));
    const double n = std::stod(sheets[0].scale.substr(2));
    const auto rectangle_of = [](Mm wide, Mm high) {
      return std::vector<Vec2>{{0, 0}, {wide, 0}, {wide, high}, {0, high}};
    };
    const auto depth = [&](const Name& section) { return job.catalog.section(section.text)->depth; };
    const FrameMain& main = job.frame.main;
    const int sections = job.kit.rail.base_sections + job.order.track.extension_count;
    const Mm track = sections * job.order.track.rail_length + (sections - 1) * job.kit.rail.joint_gap;
    const Mm main_length = main.length.value_or(track + main.front_overhang + main.rear_overhang);
    std::vector<Vec2> side = rectangle_of(main_length, depth(main.section));
    const Mm rail_top = depth(main.section) + bed.track.standoff + job.kit.rail.standing_leg;
    side.insert(side.end(), {{main.front_overhang, rail_top}, {main.front_overhang + track, rail_top}});
    const std::vector<Vec2> ends = ends_of_views(sheets[0]);
    for (const auto& [what, places] :
         {std::pair("plan", rectangle_of(track, job.kit.gauge)), std::pair("side", side),
          std::pair("rear", rectangle_of(main.spacing, depth(job.frame.rear_member.section)))}) {
      EXPECT_TRUE(are_drawn(ends, places, n)) << name << ": " << what;
      for (const double off : {0.99, 1.01, 2.0})
        EXPECT_FALSE(are_drawn(ends, places, off * n)) << name << ": " << what;
    }
  }
}

TEST(Arrangement, every_part_has_a_number_and_a_row) {
  for (const std::string& name : testing::good_orders) {
    const Bed bed = testing::demo_bed(name);
    const std::vector<Balloon> all = balloons(bed);
    std::size_t parts = 0;
    for (std::size_t p = 0; p < bed.parts.size(); ++p) {
      bool shown = false;
      for (const Item& i : bed.items)
        shown = shown || (i.part == static_cast<int>(p) && i.shown && i.bolt < 0);
      parts += shown;
    }
    EXPECT_EQ(all.size(), parts);
    for (const Balloon& b : all) {
      bool on = false;
      for (std::size_t i = 0; i < bed.items.size(); ++i) {
        const Box3 box = bounds(bed, static_cast<int>(i));
        on = on ||
             (bed.items[i].part == b.part && b.tip.x >= box.low.x - 1e-9 && b.tip.x <= box.high.x + 1e-9 &&
              b.tip.y >= box.low.y - 1e-9 && b.tip.y <= box.high.y + 1e-9 && b.tip.z >= box.low.z - 1e-9 &&
              b.tip.z <= box.high.z + 1e-9);
      }
      EXPECT_TRUE(on) << name << ": number " << b.number << " points past "
                      << bedwright::name(bed.parts[static_cast<std::size_t>(b.part)]);
    }
  }
}

void expect_whole_set_readable(const Job& job, bool draft, const std::string& what) {
  const Bed bed = testing::bed_of(job);
  const BedViews views = bed_views(bed);
  const auto examined = examine(job, bed);
  SheetInput input = testing::input_of(*examined, draft);
  input.views = &views;
  testing::expect_set_readable(input, what);
}

TEST(Arrangement, nothing_lies_on_anything_in_the_demo_orders) {
  for (const std::string& name : testing::good_orders)
    for (const char* size : {"by_units", "D", "A1"})
      expect_whole_set_readable(testing::demo_job(name, {std::string("order.sheet=") + size}), false,
                                name + " on " + size);
}

// BEDWRIGHT_RANDOM_ORDERS asks for more than the 30, each with four views by the kernel.
TEST(Arrangement, nothing_lies_on_anything_in_random_orders) {
  const char* asked = std::getenv("BEDWRIGHT_RANDOM_ORDERS");
  const int count = asked ? std::max(1, std::atoi(asked)) : 30;
  std::mt19937 random(20261125);
  for (int i = 0; i < count; ++i)
    expect_whole_set_readable(testing::quoted_job(random), i % 2 == 0, "random order " + std::to_string(i));
}

}  // namespace
}  // namespace bedwright
