#include "draw/list2d.h"

#include <gtest/gtest.h>

#include <numbers>

#include "draw/strokes.h"
#include "draw/table2d.h"

namespace bedwright {
namespace {

constexpr double pi = std::numbers::pi;

void expect_box(const Box2& box, Vec2 low, Vec2 high) {
  EXPECT_NEAR(box.low.x, low.x, 1e-9);
  EXPECT_NEAR(box.low.y, low.y, 1e-9);
  EXPECT_NEAR(box.high.x, high.x, 1e-9);
  EXPECT_NEAR(box.high.y, high.y, 1e-9);
}

TEST(List2d, bounds_of_arcs_reach_the_quadrants_they_cross) {
  expect_box(bounds(Entity(Arc{0, {0, 0}, 10, pi / 4, 3 * pi / 4})),
             {-10 * std::sqrt(0.5), 10 * std::sqrt(0.5)}, {10 * std::sqrt(0.5), 10});
  // From 3/4 turn on through 0 to an eighth.
  expect_box(bounds(Entity(Arc{0, {1, 1}, 2, 3 * pi / 2, pi / 4})), {1, -1}, {3, 1 + 2 * std::sqrt(0.5)});
}

TEST(List2d, bounds_of_bulged_outlines_reach_past_their_vertices) {
  const Outline slot = hole_outline({100, 50}, 20, 60, 0);
  expect_box(bounds(Entity(Closed{0, slot})), {70, 40}, {130, 60});
  expect_box(bounds(Entity(Closed{0, hole_outline({0, 0}, 20, 20, 0.3)})), {-10, -10}, {10, 10});
}

TEST(List2d, run_arc_ends_where_the_run_ends) {
  for (const double bulge : {1.0, -1.0, 0.3, -0.3, 2.5}) {
    const Vec2 from{3, 4}, to{-7, 9};
    const RunArc arc = run_arc(from, to, bulge);
    const Radians end = arc.start + arc.sweep;
    EXPECT_NEAR(arc.centre.x + arc.radius * std::cos(end), to.x, 1e-9);
    EXPECT_NEAR(arc.centre.y + arc.radius * std::sin(end), to.y, 1e-9);
    EXPECT_EQ(arc.sweep > 0, bulge > 0);
  }
  EXPECT_THROW(run_arc({0, 0}, {1, 0}, 0), std::invalid_argument);
}

TEST(List2d, text_box_turns_with_the_text) {
  const Text t{0, {10, 20}, 5, "ABCD", Across::left, Up::baseline, pi / 2};
  expect_box(text_box(t), {5, 20}, {11, 20 + 4 * 5 * text_width_factor});
  // Four letters, five bytes.
  EXPECT_EQ(text_width("ABC\xC3\xA9", 5), text_width("ABCD", 5));
}

TEST(List2d, append_matches_layers_by_name) {
  List2d a, b;
  a.layer({"ONE"});
  b.layer({"TWO"});
  const int one = b.layer({"ONE"});
  b.add(Line{one, {0, 0}, {1, 0}});
  a.append(b, {5, 0});
  ASSERT_EQ(a.layers.size(), 2U);
  const Line line = std::get<Line>(a.entities.at(0));
  EXPECT_EQ(a.layers.at(static_cast<std::size_t>(line.layer)).name, "ONE");
  EXPECT_EQ(line.to.x, 6);
}

TEST(List2d, a_segment_meets_a_box_it_only_passes_through) {
  Box2 box;
  box.add({0, 0});
  box.add({10, 10});
  EXPECT_TRUE(meets({-5, 5}, {15, 6}, box));
  EXPECT_TRUE(meets({2, 2}, {3, 3}, box));
  EXPECT_FALSE(meets({-5, 0}, {0, 16}, box));
  EXPECT_FALSE(meets({11, -5}, {11, 20}, box));
}

TEST(Strokes, every_letter_stays_in_its_box_and_has_no_empty_or_double_stroke) {
  for (char c = 'A'; c <= 'Z'; ++c) {
    const auto runs = strokes(std::string(1, c), 6);
    ASSERT_FALSE(runs.empty()) << c;
  }
  for (const char c : std::string("ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-.,/+()#_x?")) {
    const std::string text = c == 'x' ? "2x4" : std::string(1, c);
    std::vector<std::pair<Vec2, Vec2>> seen;
    for (const auto& run : strokes(text, 6)) {
      ASSERT_GE(run.size(), 2U) << c;
      for (std::size_t i = 0; i < run.size(); ++i) {
        EXPECT_TRUE(run[i].x >= 0 && run[i].x <= stroke_width(text, 6) && run[i].y >= 0 && run[i].y <= 6)
            << c;
        if (i == 0) continue;
        EXPECT_GT(norm(run[i] - run[i - 1]), 0) << c;
        for (const auto& [a, b] : seen) {
          EXPECT_FALSE((a == run[i] && b == run[i - 1]) || (b == run[i] && a == run[i - 1])) << c;
        }
        seen.emplace_back(run[i - 1], run[i]);
      }
    }
  }
}

TEST(Strokes, no_two_characters_look_alike) {
  const std::string all = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-.,/+()#_";
  for (const char a : all) {
    for (const char b : all) {
      if (a < b) {
        EXPECT_NE(strokes(std::string(1, a), 6), strokes(std::string(1, b), 6)) << a << b;
      }
    }
    EXPECT_NE(strokes(std::string(1, a), 6), strokes("?", 6)) << a;
  }
}

TEST(Strokes, small_letters_are_capitals_but_for_an_x_between_figures) {
  EXPECT_EQ(strokes("tab box", 6), strokes("TAB BOX", 6));
  EXPECT_NE(strokes("2 x 4", 6), strokes("2 X 4", 6));
}

TEST(Wrapped, keeps_every_word_and_the_width) {
  const std::string text = "Every word of this sentence, and oneverylongwordthatfitsnoline, is kept";
  std::string joined;
  for (const std::string& line : wrapped(text, 2, 30)) {
    EXPECT_LE(text_width(line, 2), 30);
    joined += line;
  }
  std::string wanted = text;
  std::erase(wanted, ' ');
  std::erase(joined, ' ');
  EXPECT_EQ(joined, wanted);
}

}  // namespace
}  // namespace bedwright
