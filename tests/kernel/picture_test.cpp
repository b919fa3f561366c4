// The picture sheet: what is on it and that nothing lies on anything else.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <regex>

#include "formats/page_svg.h"
#include "kernel/sample.h"
#include "kernel/viewer.h"
#include "sheets/bed_picture.h"

namespace bedwright {
namespace {

using testing::HasSubstr;
using testing::Not;

View square(Mm side) {
  return {{{{0, 0}, {side, 0}, {side, side}, {0, side}, {0, 0}}, true, ViewEdge::sharp}};
}

// The picture's own lines.
Box2 drawn(const Page& page) {
  Box2 box;
  for (const Entity& e : page.list.entities)
    if (const Path* path = std::get_if<Path>(&e))
      for (const Vec2 p : path->points) box.add(p);
  return box;
}

std::vector<Text> words(const Page& page) {
  std::vector<Text> found;
  for (const Entity& e : page.list.entities)
    if (const Text* text = std::get_if<Text>(&e)) found.push_back(*text);
  return found;
}

bool says(const Page& page, const std::string& part) {
  const std::vector<Text> all = words(page);
  return std::any_of(all.begin(), all.end(),
                     [&](const Text& t) { return t.text.find(part) != std::string::npos; });
}

TEST(Picture, text_keeps_off_the_drawing) {
  for (const Mm side : {10.0, 99.0, 7777.0, 20000.0}) {
    const Page page = picture_page(square(side), {"A-1", "B", {"one", "two", "three"}, true});
    const Box2 lines = drawn(page);
    ASSERT_LT(lines.low.y, lines.high.y);
    const std::vector<Text> all = words(page);
    ASSERT_EQ(all.size(), 4u + 2 + 1);
    for (const Text& w : all) {
      const Mm bottom = w.at.y - 0.4 * w.height, top = w.at.y + 1.4 * w.height;
      EXPECT_TRUE(bottom > lines.high.y || top < lines.low.y) << w.text << " at side " << side;
    }
  }
}

TEST(Picture, stamp_on_drafts_only) {
  EXPECT_TRUE(says(picture_page(square(100), {"A-1", "B", {}, true}), "NOT FOR FABRICATION"));
  EXPECT_FALSE(says(picture_page(square(100), {"A-1", "B", {}, false}), "NOT FOR FABRICATION"));
}

TEST(Picture, scale_is_stated_and_kept) {
  const Page page = picture_page(square(2000), {"A-1", "B", {}, false});
  int reduction = 0;
  for (const Text& w : words(page)) {
    std::smatch scale;
    if (std::regex_search(w.text, scale, std::regex("reduced 1:([0-9]+) on A3")))
      reduction = std::stoi(scale[1]);
  }
  ASSERT_GT(reduction, 0);
  EXPECT_NEAR(drawn(page).height() * reduction, 2000, 0.02 * reduction);
}

TEST(Picture, runs_that_go_on_are_one_line) {
  View view = square(100);
  view.push_back({{{0, 0}, {50, 50}}, true, ViewEdge::sharp});
  view.push_back({{{50, 50}, {80, 50}}, true, ViewEdge::sharp});
  view.push_back({{{10, 0}, {20, 0}}, true, ViewEdge::sharp});
  const Page page = picture_page(view, {"A-1", "B", {}, false});
  std::vector<std::size_t> points;
  for (const Entity& e : page.list.entities)
    if (const Path* path = std::get_if<Path>(&e)) points.push_back(path->points.size());
  EXPECT_EQ(points, (std::vector<std::size_t>{7, 2}));
}

TEST(Picture, long_lines_shrink) {
  const Page page = picture_page(square(100), {"A-1", "B", {std::string(400, 'w')}, false});
  int found = 0;
  for (const Text& w : words(page))
    if (w.text.size() == 400) {
      ++found;
      EXPECT_LE(text_width(w.text, w.height), 326);  // the room left of the revision, in mm
    }
  EXPECT_EQ(found, 1);
}

TEST(Picture, too_much_caption_is_refused) {
  EXPECT_THROW(picture_page(square(100), {"A", "B", std::vector<std::string>(60, "line"), false}),
               std::invalid_argument);
}

TEST(Picture, an_empty_view_still_makes_a_sheet) {
  EXPECT_TRUE(says(picture_page({}, {"A-1", "B", {}, false}), "Order A-1"));
}

TEST(Picture, reductions) {
  EXPECT_EQ(round_reduction(0, 0, 100, 100), 1);
  EXPECT_EQ(round_reduction(100, 100, 100, 100), 1);
  EXPECT_EQ(round_reduction(100.1, 1, 100, 100), 2);
  EXPECT_EQ(round_reduction(1, 1150, 100, 100), 12);
  EXPECT_EQ(round_reduction(2100, 1, 100, 100), 25);
  EXPECT_EQ(round_reduction(9000, 1, 100, 100), 100);
  EXPECT_THROW(round_reduction(1e12, 1, 100, 100), std::invalid_argument);
}

TEST(Picture, same_bytes_for_the_sample) {
  const Bed bed = sample::bed(4);
  const auto draw = [&] {
    return page_svg(picture_page(Viewer(bed).view(isometric_view), {"A", "B", {}, true}));
  };
  const std::string first = draw();
  EXPECT_EQ(first, draw());
  EXPECT_THAT(first, Not(HasSubstr("-0 ")));
  EXPECT_THAT(first, Not(HasSubstr("nan")));
}

}  // namespace
}  // namespace bedwright
