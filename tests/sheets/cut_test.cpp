#include "sheets/cut/cut.h"

#include <gtest/gtest.h>

#include <set>

#include "bed/names.h"
#include "draw/scribe.h"
#include "support/sample_part.h"

namespace bedwright {
namespace {

std::string layer_of(const List2d& list, const Entity& e) {
  const int layer = std::visit([](const auto& x) { return x.layer; }, e);
  return list.layers.at(static_cast<std::size_t>(layer)).name;
}

TEST(Cut, sits_in_the_corner_and_cuts_inside_before_outside) {
  for (const Part& part : sample::plates()) {
    const Cut flat = cut(part, sample::heading());
    Box2 outer;
    std::vector<std::string> order;
    for (const Entity& e : flat.list.entities) {
      order.push_back(layer_of(flat.list, e));
      if (order.back() == "OUTER_CUT") outer.join(bounds(e));
    }
    EXPECT_NEAR(outer.low.x, 0, 1e-9);
    EXPECT_NEAR(outer.low.y, 0, 1e-9);
    EXPECT_NEAR(outer.high.x, flat.size.x, 1e-9);
    EXPECT_EQ(std::count(order.begin(), order.end(), "OUTER_CUT"), 1);
    EXPECT_EQ(order.back(), "OUTER_CUT");
    const Box2 all = bounds(flat.list);
    EXPECT_NEAR(all.low.x, 0, 1e-9) << "something lies outside " << name(part);
    EXPECT_NEAR(all.high.y, flat.size.y, 1e-9);
  }
}

TEST(Cut, holes_for_the_drill_are_marked_and_not_cut) {
  const Cut flat = cut(sample::flange(), sample::heading());
  int marks = 0, inner = 0;
  for (const Entity& e : flat.list.entities) {
    marks += layer_of(flat.list, e) == "CENTRE_MARK";
    inner += layer_of(flat.list, e) == "INNER_CUT";
  }
  EXPECT_EQ(marks, 8);
  EXPECT_EQ(inner, 1);
}

// Independent of the search: distance from every stroke point to every chord.
TEST(Cut, letters_keep_clear_of_holes_and_edges) {
  for (const Part& part : {sample::tab(), sample::flange(), sample::gusset()}) {
    const Plate& plate = std::get<Plate>(part.form);
    const auto letters = scribe(plate, {name(part), "1042", "REV B"});
    ASSERT_TRUE(letters) << name(part);
    EXPECT_GE(letters->height, scribe_least_height);
    std::vector<std::vector<Vec2>> loops{flattened(plate.outline, 0.01)};
    for (const Hole& h : plate.holes) {
      loops.push_back(flattened(hole_outline(h.at, h.diameter, h.length, h.angle), 0.01));
    }
    for (const auto& run : letters->strokes) {
      for (const Vec2 p : run) {
        for (const auto& loop : loops) {
          for (std::size_t i = 0; i < loop.size(); ++i) {
            const Vec2 a = loop[i], d = loop[(i + 1) % loop.size()] - a;
            const double t = std::clamp(dot(p - a, d) / dot(d, d), 0.0, 1.0);
            EXPECT_GE(norm(p - (a + t * d)), scribe_clearance - 1e-6) << name(part);
          }
        }
      }
    }
  }
}

TEST(Cut, letters_that_have_no_place_are_left_out_and_said_so) {
  EXPECT_EQ(cut(sample::pad(), sample::heading()).letter_height, 0);
  EXPECT_GT(cut(sample::gusset(), sample::heading()).letter_height, 0);
}

TEST(Cut, refuses_what_it_cannot_cut) {
  const Heading h = sample::heading();
  EXPECT_THROW(cut(sample::main_member(), h), std::invalid_argument);
  Part part = sample::tab();
  part.origin = Origin::kit;
  EXPECT_THROW(cut(part, h), std::invalid_argument);
  part = sample::tab();
  std::get<Plate>(part.form).holes.push_back(std::get<Plate>(part.form).holes[0]);
  EXPECT_THROW(cut(part, h), std::invalid_argument);
  part = sample::tab();
  std::get<Plate>(part.form).holes[0].process = Process::as_bought;
  EXPECT_THROW(cut(part, h), std::invalid_argument);
}

TEST(Cut, states_its_units_ahead_of_everything) {
  EXPECT_TRUE(cut_file(sample::tab(), sample::heading()).starts_with("999\r\nUNITS: millimetres"));
  const std::string inches = cut_file(sample::tab(), sample::heading(), Printing::inches);
  EXPECT_TRUE(inches.starts_with("999\r\nUNITS: inches"));
  EXPECT_NE(inches.find("4.7244 x 4.0157 inch overall"), std::string::npos);  // 120 x 102 mm
}

}  // namespace
}  // namespace bedwright
