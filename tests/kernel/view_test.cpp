// Hidden-line views of things whose pictures are known.
#include <gtest/gtest.h>

#include <numbers>

#include "kernel/sample.h"
#include "kernel/viewer.h"

namespace bedwright {
namespace {

Bought box(Vec3 size) {
  Bought b;
  b.envelope = {{{}, {}, size, 0}};
  return b;
}

Bed of(const Form& form) {
  Bed bed;
  bed.add_item({bed.add_part({{Kind::tab}, "", Origin::made, form}), {}, {Kind::tab, Side::right, 1}});
  return bed;
}

Mm length(const ViewLine& line) {
  Mm sum = 0;
  for (std::size_t i = 1; i < line.points.size(); ++i) sum += norm(line.points[i] - line.points[i - 1]);
  return sum;
}

Mm length(const View& view, bool visible) {
  Mm sum = 0;
  for (const ViewLine& line : view) sum += line.visible == visible ? length(line) : 0;
  return sum;
}

// A cube in isometric: every edge comes out sqrt(2/3) of its length; nine show.
TEST(View, cube_in_isometric) {
  const View view = Viewer(of(box({100, 100, 100}))).view(isometric_view, true);
  const double edge = 100 * std::sqrt(2.0 / 3);
  EXPECT_NEAR(length(view, true), 9 * edge, 1e-3);
  EXPECT_NEAR(length(view, false), 3 * edge, 1e-3);
}

TEST(View, isometric_has_z_up_and_the_front_to_the_right) {
  for (const auto& [size, direction] : {std::pair{Vec3{1000, 1, 1}, Vec2{-1, std::tan(30 * degree)}},
                                        std::pair{Vec3{1, 1, 1000}, Vec2{0, 1}}}) {
    Vec2 farthest;
    for (const ViewLine& line : Viewer(of(box(size))).view(isometric_view)) {
      for (const Vec2 p : line.points) {
        if (norm(p) > norm(farthest)) farthest = p;
      }
    }
    EXPECT_NEAR(cross(farthest, direction) / norm(farthest) / norm(direction), 0, 3e-3);
    EXPECT_GT(dot(farthest, direction), 0);
  }
}

TEST(View, plan_is_true_to_size) {
  const View view = Viewer(of(box({300, 50, 10}))).view({{0, 0, 1}, {0, 1, 0}});
  Mm right = 0, top = 0;
  for (const ViewLine& line : view) {
    for (const Vec2 p : line.points) right = std::max(right, p.x), top = std::max(top, p.y);
  }
  EXPECT_NEAR(right, 300, 1e-6);
  EXPECT_NEAR(top, 50, 1e-6);
}

TEST(View, what_stands_behind_does_not_show) {
  Bed bed = of(box({100, 100, 10}));
  const int small = bed.add_part({{Kind::tab_pad}, "", Origin::made, box({20, 20, 5})});
  bed.add_item({small, {{40, 40, -50}}, {Kind::tab_pad, Side::right, 1}});
  const View alone = Viewer(of(box({100, 100, 10}))).view({{0, 0, 1}, {0, 1, 0}});
  EXPECT_NEAR(length(Viewer(bed).view({{0, 0, 1}, {0, 1, 0}}), true), length(alone, true), 1e-3);
  bed.items[1].placement.origin.z = 50;
  EXPECT_NEAR(length(Viewer(bed).view({{0, 0, 1}, {0, 1, 0}}), true), length(alone, true) + 80, 1e-3);
}

TEST(View, half_hidden_edge_is_cut_where_it_goes_under) {
  Bed bed = of(box({100, 100, 10}));
  const int bar = bed.add_part({{Kind::tab_pad}, "", Origin::made, box({100, 4, 4})});
  bed.add_item({bar, {{50, 30, -20}}, {Kind::tab_pad, Side::right, 1}});
  const View view = Viewer(bed).view({{0, 0, 1}, {0, 1, 0}});
  EXPECT_NEAR(length(view, true), 400 + 2 * 50 + 4, 1e-2);
}

TEST(View, a_disc_shows_its_rim) {
  Bought disc;
  disc.envelope = {{{}, {0, 0, 0}, {0, 0, 10}, 300}};
  const View view = Viewer(of(disc), 0.2).view({{0, 0, 1}, {0, 1, 0}});
  EXPECT_NEAR(length(view, true), 2 * std::numbers::pi * 300, 0.01 * 2 * std::numbers::pi * 300);
  for (const ViewLine& line : view) {
    for (const Vec2 p : line.points) EXPECT_NEAR(norm(p), 300, 0.21);
  }
}

TEST(View, hardware_and_hidden_items_left_out) {
  Bed bed = of(sample::tab());
  const View before = Viewer(bed).view(isometric_view);
  sample::add_fastening(bed, {Kind::track_bolt, Side::right, 1}, {40, 37.5, 6.35}, 6.35);
  Item pose{0, {{500, 500, 0}}, {Kind::tab, Side::right, 2}};
  pose.shown = false;
  bed.add_item(pose);
  EXPECT_NEAR(length(Viewer(bed).view(isometric_view), true), length(before, true), 1e-9);
}

TEST(View, same_lines_every_time) {
  const Bed bed = sample::bed(6);
  Viewer one(bed), other(bed);
  const View a = one.view(isometric_view, true), b = one.view(isometric_view, true);
  const View c = other.view(isometric_view, true);
  ASSERT_GT(a.size(), 100u);
  for (const View* again : {&b, &c}) {
    ASSERT_EQ(a.size(), again->size());
    for (std::size_t i = 0; i < a.size(); ++i) EXPECT_EQ(a[i].points, (*again)[i].points);
  }
}

TEST(View, nothing_to_draw_is_an_empty_view) { EXPECT_TRUE(Viewer(Bed{}).view(isometric_view).empty()); }

TEST(View, up_along_the_line_of_sight_is_refused) {
  EXPECT_THROW(Viewer(of(sample::tab())).view({{0, 0, 1}, {0, 0, 2}}), std::invalid_argument);
}

}  // namespace
}  // namespace bedwright
