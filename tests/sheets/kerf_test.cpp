// Kerf paths: exact areas by Steiner's formula, distances measured, and refusals.
#include "geometry/kerf.h"

#include <gtest/gtest.h>

#include <numbers>
#include <random>

#include "bed/names.h"
#include "sheets/cut/cut.h"
#include "support/demo.h"
#include "support/sample_part.h"

namespace bedwright {
namespace {

constexpr double pi = std::numbers::pi;

// Steiner (1840), for a convex region, and for one whose corners are all convex: the
// area within k of it.
double steiner(const Outline& outline, Mm k) {
  return area_properties(outline).area + perimeter(outline) * k + pi * k * k;
}

double distance_to(const std::vector<Vec2>& loop, Vec2 p) {
  double nearest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < loop.size(); ++i) {
    const Vec2 a = loop[i], d = loop[(i + 1) % loop.size()] - a;
    nearest = std::min(nearest, norm(p - (a + std::clamp(dot(p - a, d) / dot(d, d), 0.0, 1.0) * d)));
  }
  return nearest;
}

// Every point of the path is k from the outline, and the path is a closed run of
// pieces that have a length.
void expect_beside(const Outline& outline, const Outline& path, Mm k) {
  const std::vector<Vec2> edge = flattened(outline, 1e-4);
  for (const Vec2 p : flattened(path, 0.01)) EXPECT_NEAR(distance_to(edge, p), k, 2e-4);
  for (std::size_t i = 0; i < path.size(); ++i)
    EXPECT_GT(norm(path[(i + 1) % path.size()].at - path[i].at), 1e-6);
}

Outline random_convex(std::mt19937& random) {
  const auto from = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  const int corners = 3 + static_cast<int>(from(0, 6));
  Outline outline;
  for (int i = 0; i < corners; ++i) {
    const double turn = 2 * pi * (i + from(0, 0.6)) / corners;
    outline.push_back({{140 * std::cos(turn), 90 * std::sin(turn)}, from(0, 1) < 0.3 ? from(0.01, 0.05) : 0});
  }
  return outline;
}

TEST(Kerf, outside_of_convex_outlines_has_steiners_area) {
  std::vector<Outline> outlines;
  for (const Part& part : sample::plates()) outlines.push_back(std::get<Plate>(part.form).outline);
  std::mt19937 random(20261125);
  for (int i = 0; i < 300; ++i) {
    Outline o = random_convex(random);
    bool convex = true;  // a bulge beside a blunt corner may have made it hollow
    const std::vector<Vec2> p = flattened(o, 0.01);
    for (std::size_t k = 0; k < p.size(); ++k)
      convex =
          convex && cross(p[(k + 1) % p.size()] - p[k], p[(k + 2) % p.size()] - p[(k + 1) % p.size()]) >= 0;
    if (convex) outlines.push_back(o);
  }
  EXPECT_GT(outlines.size(), 150U);
  for (const Outline& o : outlines)
    for (const Mm k : {0.1, 0.75, 3.0}) {
      const Outline path = outside(o, k);
      EXPECT_NEAR(area_properties(path).area, steiner(o, k), 1e-9 * steiner(o, k));
      EXPECT_NEAR(perimeter(path), perimeter(o) + 2 * pi * k, 1e-9 * perimeter(o));
      expect_beside(o, path, k);
    }
}

TEST(Kerf, inside_of_holes_has_steiners_area) {
  for (const double turn : {0.0, 0.7, pi / 2})
    for (const Mm length : {14.3, 31.75}) {
      const Hole hole = sample::hole({20, 30}, 14.3, length, Process::cut, turn);
      const Hole path = inside(hole, 0.75);
      const auto outline = [](const Hole& h) { return hole_outline(h.at, h.diameter, h.length, h.angle); };
      const double a = area_properties(outline(hole)).area, p = perimeter(outline(hole));
      EXPECT_NEAR(area_properties(outline(path)).area, a - p * 0.75 + pi * 0.75 * 0.75, 1e-9 * a);
      EXPECT_EQ(path.at, hole.at);
      expect_beside(outline(hole), outline(path), 0.75);
    }
}

// By hand: five convex square corners add a quarter circle each, the hollow one takes
// a square k x k away.
TEST(Kerf, cuts_back_at_a_hollow_corner) {
  const Outline ell = polygon({{0, 0}, {100, 0}, {100, 40}, {40, 40}, {40, 90}, {0, 90}});
  const Mm k = 2;
  const Outline path = outside(ell, k);
  EXPECT_NEAR(area_properties(path).area, 100 * 40 + 40 * 50 + 380 * k + 5 * pi * k * k / 4 - k * k, 1e-9);
  expect_beside(ell, path, k);
}

// A hollow arc keeps its middle and is tighter by k; its corners are convex, so
// Steiner's formula still holds.
TEST(Kerf, follows_a_hollow_arc) {
  Outline notched = {{{0, 0}}, {{100, 0}}, {{100, 60}}, {{70, 60}, -1}, {{30, 60}}, {{0, 60}}};
  const Outline path = outside(notched, 1.5);
  EXPECT_NEAR(area_properties(path).area, steiner(notched, 1.5), 1e-9 * 6000);
  expect_beside(notched, path, 1.5);
  // A line into a hollow arc, cut back where they meet.
  const Outline scoop = {{{0, 0}}, {{120, 0}}, {{120, 30}}, {{80, 30}, -0.3}, {{60, 60}}, {{0, 60}}};
  const Outline around = outside(scoop, 1.5);
  EXPECT_GT(area_properties(around).area, area_properties(scoop).area);
  expect_beside(scoop, around, 1.5);
}

TEST(Kerf, refuses_what_it_would_close) {
  const Outline slit =
      polygon({{0, 0}, {100, 0}, {100, 60}, {51, 60}, {51, 20}, {49, 20}, {49, 60}, {0, 60}});
  EXPECT_NO_THROW(outside(slit, 0.9));
  EXPECT_THROW(outside(slit, 1.1), std::invalid_argument);
  const Outline scallop = {{{0, 0}}, {{100, 0}}, {{100, 60}}, {{51, 60}, -1}, {{49, 60}}, {{0, 60}}};
  EXPECT_NO_THROW(outside(scallop, 0.9));
  EXPECT_THROW(outside(scallop, 1.1), std::invalid_argument);
  EXPECT_THROW(outside(scallop, -1), std::invalid_argument);
  EXPECT_THROW(inside(sample::hole({0, 0}, 1.5), 0.75), std::invalid_argument);
  EXPECT_NO_THROW(inside(sample::hole({0, 0}, 1.6), 0.75));
  try {
    cut(sample::plate(Kind::tab_pad, rectangle({0, 0}, {30, 22}), 3, {sample::hole({15, 11}, 2)}),
        sample::heading(), Printing::metric, 2.5);
    FAIL();
  } catch (const std::invalid_argument& e) {
    EXPECT_EQ(std::string(e.what()),
              "cut file of tab pad: a hole 2.00 mm across is no wider than a kerf of 2.50 mm");
  }
}

// Every plate of the demo orders: what the path encloses less its holes, against the
// part's own outline and holes.
TEST(Kerf, demo_plates_have_steiners_areas) {
  for (const std::string& order : testing::good_orders) {
    const Bed bed = testing::demo_bed(order);
    for (const Part& part : bed.parts) {
      const Plate* plate = std::get_if<Plate>(&part.form);
      if (!plate || part.origin != Origin::made) continue;
      const Mm kerf = 1.6, k = kerf / 2;
      double wanted = steiner(plate->outline, k), found = 0;
      for (const Hole& h : plate->holes) {
        if (h.process != Process::cut) continue;
        const Outline o = hole_outline(h.at, h.diameter, h.length, h.angle);
        wanted -= area_properties(o).area - perimeter(o) * k + pi * k * k;
      }
      const Cut flat = cut(part, sample::heading(), Printing::metric, kerf);
      for (const Entity& e : flat.list.entities) {
        if (const Circle* c = std::get_if<Circle>(&e)) found -= pi * c->radius * c->radius;
        if (const Closed* c = std::get_if<Closed>(&e))
          found += (flat.list.layers[static_cast<std::size_t>(c->layer)].name == "OUTER_CUT" ? 1 : -1) *
                   area_properties(c->outline).area;
      }
      EXPECT_NEAR(found, wanted, 1e-6 * wanted) << order << ": " << name(part);
    }
  }
}

TEST(Kerf, changes_nothing_but_the_cuts_and_says_so) {
  for (const Part& part : sample::plates()) {
    const Cut plain = cut(part, sample::heading()),
              wide = cut(part, sample::heading(), Printing::metric, 1.5);
    ASSERT_EQ(plain.list.entities.size(), wide.list.entities.size());
    EXPECT_EQ(plain.list.layers, wide.list.layers);
    EXPECT_NEAR(wide.size.x, plain.size.x + 1.5, 1e-9);
    for (std::size_t i = 0; i < plain.list.entities.size(); ++i) {
      const Path *a = std::get_if<Path>(&plain.list.entities[i]),
                 *b = std::get_if<Path>(&wide.list.entities[i]);
      ASSERT_EQ(a == nullptr, b == nullptr);
      for (std::size_t k = 0; a && k < a->points.size(); ++k) {
        EXPECT_NEAR(b->points[k].x, a->points[k].x + 0.75, 1e-9);  // the same place in the part
        EXPECT_NEAR(b->points[k].y, a->points[k].y + 0.75, 1e-9);
      }
    }
  }
  EXPECT_EQ(cut_file(sample::tab(), sample::heading()),
            cut_file(sample::tab(), sample::heading(), Printing::metric, 0));
  const std::string file = cut_file(sample::tab(), sample::heading(), Printing::metric, 1.5);
  EXPECT_NE(file.find("KERF ALLOWED FOR: 1.500 mm wide, paths 0.750 mm outside the outline and inside the "
                      "holes; set kerf 0 at the table"),
            std::string::npos);
  EXPECT_NE(file.find("the part is 120.000 x 102.000 mm overall"), std::string::npos);
  EXPECT_NE(file.find("The outer path is 121.500 x 103.500 mm overall"), std::string::npos);
  EXPECT_EQ(file.find("finished edge"), std::string::npos);
}

}  // namespace
}  // namespace bedwright
