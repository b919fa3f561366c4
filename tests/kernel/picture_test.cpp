// The picture sheet: what is on it and that nothing lies on anything else.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <regex>

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

struct Extent {
  double low = 1e9, high = -1e9;
};

// The lowest and highest y of the picture's own lines (those with the pens'
// stroke widths; the caption's rule is 0.35 wide).
Extent drawn(const std::string& svg) {
  Extent e;
  const std::regex path("<path stroke-width=\"0\\.(18|25|09|13)\"[^>]*d=\"([^\"]*)\"");
  const std::regex point("[ML]([-0-9.]+) ([-0-9.]+)");
  for (std::sregex_iterator p(svg.begin(), svg.end(), path), end; p != end; ++p) {
    const std::string d = (*p)[2];
    for (std::sregex_iterator q(d.begin(), d.end(), point); q != end; ++q) {
      e.low = std::min(e.low, std::stod((*q)[2]));
      e.high = std::max(e.high, std::stod((*q)[2]));
    }
  }
  return e;
}

struct Words {
  double y, size;
  std::string text;
};

std::vector<Words> words(const std::string& svg) {
  std::vector<Words> found;
  const std::regex text("<text x=\"[^\"]*\" y=\"([^\"]*)\" font-size=\"([^\"]*)\"[^>]*>([^<]*)</text>");
  for (std::sregex_iterator t(svg.begin(), svg.end(), text), end; t != end; ++t) {
    found.push_back({std::stod((*t)[1]), std::stod((*t)[2]), (*t)[3]});
  }
  return found;
}

TEST(Picture, text_keeps_off_the_drawing) {
  for (const Mm side : {10.0, 99.0, 7777.0, 20000.0}) {
    const std::string svg = picture_svg(square(side), {"A-1", "B", {"one", "two", "three"}, true});
    const Extent e = drawn(svg);
    ASSERT_LT(e.low, e.high);
    const auto all = words(svg);
    ASSERT_EQ(all.size(), 4u + 2 + 1);
    for (const Words& w : all) {
      const double top = w.y - w.size, bottom = w.y + 0.3 * w.size;
      EXPECT_TRUE(bottom < e.low || top > e.high) << w.text << " at side " << side;
    }
  }
}

TEST(Picture, stamp_on_drafts_only) {
  EXPECT_THAT(picture_svg(square(100), {"A-1", "B", {}, true}), HasSubstr("NOT FOR FABRICATION"));
  EXPECT_THAT(picture_svg(square(100), {"A-1", "B", {}, false}), Not(HasSubstr("NOT FOR FABRICATION")));
}

TEST(Picture, scale_is_stated_and_kept) {
  const std::string svg = picture_svg(square(2000), {"A-1", "B", {}, false});
  std::smatch scale;
  ASSERT_TRUE(std::regex_search(svg, scale, std::regex("reduced 1:([0-9]+) on A3")));
  const Extent e = drawn(svg);
  EXPECT_NEAR((e.high - e.low) * std::stoi(scale[1]), 2000, 0.02 * std::stoi(scale[1]));
}

TEST(Picture, text_is_escaped_and_long_lines_shrink) {
  const std::string svg = picture_svg(square(100), {"<A&B>", "B", {std::string(400, 'w')}, false});
  EXPECT_THAT(svg, HasSubstr("Order &lt;A&amp;B&gt;"));
  for (const Words& w : words(svg)) {
    if (w.text.size() == 400) {
      EXPECT_LE(w.size * 0.65 * 400, 326);  // the room left of the revision, in mm
    }
  }
}

TEST(Picture, too_much_caption_is_refused) {
  EXPECT_THROW(picture_svg(square(100), {"A", "B", std::vector<std::string>(60, "line"), false}),
               std::invalid_argument);
}

TEST(Picture, an_empty_view_still_makes_a_sheet) {
  EXPECT_THAT(picture_svg({}, {"A-1", "B", {}, false}), HasSubstr("Order A-1"));
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
  const auto draw = [&] { return picture_svg(Viewer(bed).view(isometric_view), {"A", "B", {}, true}); };
  const std::string first = draw();
  EXPECT_EQ(first, draw());
  EXPECT_THAT(first, Not(HasSubstr("-0.00")));
  EXPECT_THAT(first, Not(HasSubstr("nan")));
}

}  // namespace
}  // namespace bedwright
