// Convex pieces cover their items, exact ones are steel throughout, and the
// separating-axis test agrees with brute force.
#include <gtest/gtest.h>

#include <random>

#include "bed/pieces.h"

namespace bedwright {
namespace {

using Random = std::mt19937;

double between(Random& r, double low, double high) { return std::uniform_real_distribution<>(low, high)(r); }

Vec3 random_direction(Random& r) {
  while (true) {
    const Vec3 v{between(r, -1, 1), between(r, -1, 1), between(r, -1, 1)};
    if (norm(v) > 0.1 && norm(v) < 1) return unit(v);
  }
}

Placement random_placement(Random& r, Mm spread) {
  const Vec3 x = random_direction(r);
  Vec3 other = random_direction(r);
  while (norm(cross(x, other)) < 0.1) other = random_direction(r);
  return {{between(r, -spread, spread), between(r, -spread, spread), between(r, -spread, spread)},
          x,
          unit(cross(other, x))};
}

// A prism on an ellipse's polygon, placed anyhow.
Convex random_piece(Random& r, Mm spread) {
  const int sides = 3 + static_cast<int>(between(r, 0, 7));
  const Mm a = between(r, 5, 40), b = between(r, 5, 40);
  std::vector<Vec2> polygon;
  for (int i = 0; i < sides; ++i) {
    const double t = 360 * degree * i / sides;
    polygon.push_back({a * std::cos(t), b * std::sin(t)});
  }
  return prism(polygon, between(r, -40, -2), between(r, 2, 40), random_placement(r, spread));
}

Vec3 random_point_in(Random& r, const Convex& piece) {
  Vec3 sum;
  double total = 0;
  for (const Vec3& c : piece.corners) {
    const double weight = -std::log(between(r, 1e-9, 1));
    sum = sum + weight * c;
    total += weight;
  }
  return (1 / total) * sum;
}

bool contains(const Convex& piece, Vec3 p, Mm hair = 1e-7) {
  for (const Vec3& n : piece.normals) {
    Mm high = -1e300;
    for (const Vec3& c : piece.corners) high = std::max(high, dot(n, c));
    if (dot(n, p) > high + hair) return false;
  }
  return true;
}

bool covered(const std::vector<Convex>& pieces, Vec3 p) {
  return std::any_of(pieces.begin(), pieces.end(), [&](const Convex& c) { return contains(c, p, 1e-6); });
}

Convex moved(const Convex& piece, Vec3 by) { return placed(piece, Placement{by}); }

Convex cube(Mm size, Vec3 at) {
  return prism({{0, 0}, {size, 0}, {size, size}, {0, size}}, 0, size, Placement{at});
}

// Even-odd rule on fine chords.
bool inside(const std::vector<Vec2>& loop, Vec2 p) {
  bool in = false;
  for (std::size_t i = 0, j = loop.size() - 1; i < loop.size(); j = i++)
    if ((loop[i].y > p.y) != (loop[j].y > p.y) &&
        p.x < (loop[j].x - loop[i].x) * (p.y - loop[i].y) / (loop[j].y - loop[i].y) + loop[i].x)
      in = !in;
  return in;
}

TEST(Separation, OfBoxesIsTheGapBetweenThem) {
  EXPECT_NEAR(separation(cube(10, {}), cube(10, {13, 2, 1})), 3, 1e-12);
  EXPECT_NEAR(separation(cube(10, {}), cube(10, {10, 0, 0})), 0, 1e-12);
  EXPECT_NEAR(separation(cube(10, {}), cube(10, {8, 7, 6})), -2, 1e-12);
}

TEST(Separation, OfCrossedEdgesNeedsTheirCrossProduct) {
  // Two long square bars, each turned 45 degrees about its own axis, lying crosswise:
  // only edge against edge separates them. Their ridges are 1 mm apart.
  const double h = std::sqrt(0.5);
  const std::vector<Vec2> square{{-5, -5}, {5, -5}, {5, 5}, {-5, 5}};
  const Convex along_x = prism(square, -100, 100, {{0, 0, 0}, {0, h, h}, {0, -h, h}});
  const Mm ridge = 5 * std::sqrt(2.0);
  const Convex along_y = prism(square, -100, 100, {{0, 0, 2 * ridge + 1}, {h, 0, -h}, {h, 0, h}});
  EXPECT_NEAR(separation(along_x, along_y), 1, 1e-9);
}

TEST(Separation, AgreesWithSampledPoints) {
  Random r(7);
  int apart = 0, overlapping = 0;
  for (int n = 0; n < 400; ++n) {
    const Convex a = random_piece(r, 45), b = random_piece(r, 45);
    const Mm s = separation(a, b);
    EXPECT_NEAR(s, separation(b, a), 1e-9);
    Mm nearest = 1e300;
    bool common = false;
    for (int k = 0; k < 300; ++k) {
      const Vec3 p = random_point_in(r, a), q = random_point_in(r, b);
      nearest = std::min(nearest, norm(p - q));
      common = common || contains(b, p, -1e-9) || contains(a, q, -1e-9);
    }
    if (s > 0) {
      ++apart;
      EXPECT_FALSE(common);
      EXPECT_GE(nearest, s - 1e-9);
    } else {
      ++overlapping;
    }
    if (common) {
      EXPECT_LT(s, 0);
    }
  }
  EXPECT_GT(apart, 50);
  EXPECT_GT(overlapping, 50);
}

TEST(Separation, DepthIsTheLeastMoveThatFrees) {
  Random r(11);
  int tried = 0;
  while (tried < 150) {
    const Convex a = random_piece(r, 20), b = random_piece(r, 20);
    const Mm depth = -separation(a, b);
    if (depth < 0.5) continue;
    ++tried;
    Mm least = 1e300;
    for (int k = 0; k < 60; ++k) {
      const Vec3 d = random_direction(r);
      EXPECT_LT(separation(moved(a, (0.999 * depth) * d), b), 0) << "a shorter move must not free it";
      const Mm exit = exit_distance(a, b, d);
      EXPECT_GE(exit, depth - 1e-9);
      EXPECT_NEAR(separation(moved(a, exit * d), b), 0, 1e-6);
      least = std::min(least, exit);
    }
    for (const Vec3& n : b.normals) least = std::min({least, exit_distance(a, b, n)});
    for (const Vec3& n : a.normals) least = std::min({least, exit_distance(a, b, -n)});
    for (const Vec3& e : a.edges)
      for (const Vec3& f : b.edges)
        if (norm(cross(e, f)) > 1e-3)
          least = std::min(
              {least, exit_distance(a, b, unit(cross(e, f))), exit_distance(a, b, -unit(cross(e, f)))});
    EXPECT_NEAR(least, depth, 1e-6);
  }
}

TEST(Separation, MayStopEarlyButOnlyAboveWhatIsEnough) {
  const Convex a = cube(10, {}), b = cube(10, {13, 40, 1});
  EXPECT_NEAR(separation(a, b), 30, 1e-12);
  EXPECT_GT(separation(a, b, 2), 2);
}

TEST(ExitDistance, IsNothingWhenApart) {
  EXPECT_EQ(exit_distance(cube(10, {}), cube(10, {20, 0, 0}), {1, 0, 0}), 0);
  EXPECT_NEAR(exit_distance(cube(10, {}), cube(10, {8, 0, 0}), {1, 0, 0}), 18, 1e-12);
  EXPECT_NEAR(exit_distance(cube(10, {}), cube(10, {8, 0, 0}), {-1, 0, 0}), 2, 1e-12);
}

TEST(RayHit, AgreesWithStepping) {
  Random r(3);
  int hits = 0;
  for (int n = 0; n < 200; ++n) {
    const Convex piece = random_piece(r, 10);
    const Vec3 from{between(r, -120, 120), between(r, -120, 120), between(r, -120, 120)};
    const Vec3 target = random_point_in(r, piece) + between(r, 0, 30) * random_direction(r);
    const Vec3 d = unit(target - from);
    const Mm hit = ray_hit(piece, from, d);
    Mm stepped = std::numeric_limits<Mm>::infinity();
    for (Mm t = 0; t < 400; t += 0.05) {
      if (!contains(piece, from + t * d)) continue;
      stepped = t;
      break;
    }
    if (std::isinf(hit)) {
      EXPECT_TRUE(std::isinf(stepped));
    } else if (!std::isinf(stepped)) {
      EXPECT_NEAR(hit, stepped, 0.0501);
      ++hits;
    }
  }
  EXPECT_GT(hits, 50);
  EXPECT_EQ(ray_hit(cube(10, {}), {5, 5, 5}, {0, 0, 1}), 0);
  EXPECT_TRUE(std::isinf(ray_hit(cube(10, {}), {5, 5, 12}, {0, 0, 1})));
}

// --- pieces of forms -----------------------------------------------------------

Section channel() {
  Section s;
  s.name = "test channel";
  s.shape = Shape::channel;
  s.depth = 152.4, s.flange = 48.8, s.web = 5.08, s.flange_thickness = 8.7, s.root_radius = 7.6,
  s.toe_radius = 3;
  return s;
}

Section angle() {
  Section s;
  s.name = "test angle";
  s.shape = Shape::angle;
  s.depth = 76.2, s.flange = 63.5, s.web = 6.35, s.root_radius = 8, s.toe_radius = 4;
  return s;
}

void expect_pieces_match(const Section& section) {
  const Member member{section, 500, 0.3, -0.4, {}};
  const std::vector<Convex> pieces = local_pieces(member);
  const std::vector<Vec2> loop = flattened(profile(section), 0.001);
  const auto steel = [&](Vec3 p) {
    return p.x >= p.y * std::tan(0.3) && p.x <= 500 + p.y * std::tan(-0.4) && inside(loop, {p.y, p.z});
  };
  Random r(5);
  int in_steel = 0;
  for (int n = 0; n < 20000; ++n) {
    const Vec3 p{between(r, -20, 520), between(r, -5, section.flange + 5),
                 between(r, -section.depth, section.depth)};
    if (!steel(p)) continue;
    ++in_steel;
    EXPECT_TRUE(covered(pieces, p)) << p.x << " " << p.y << " " << p.z;
  }
  EXPECT_GT(in_steel, 200);
  for (const Convex& piece : pieces) {
    if (!piece.exact) continue;
    for (int n = 0; n < 2000; ++n) {
      const Vec3 p = random_point_in(r, piece);
      EXPECT_TRUE(steel(p)) << p.x << " " << p.y << " " << p.z;
    }
  }
}

Section tube() {
  Section s;
  s.name = "test tube";
  s.shape = Shape::tube;
  s.depth = 120, s.flange = 80, s.web = 5, s.root_radius = 5;
  return s;
}

TEST(Pieces, OfATubeCoverItsWallsAndLeaveItHollow) {
  const Member member{tube(), 500, 0, 0, {}};
  const std::vector<Convex> pieces = local_pieces(member);
  const std::vector<Vec2> outside = flattened(profile(tube()), 0.001),
                          hole = flattened(*hollow(tube()), 0.001);
  const auto steel = [&](Vec3 p) {
    return p.x >= 0 && p.x <= 500 && inside(outside, {p.y, p.z}) && !inside(hole, {p.y, p.z});
  };
  Random r(7);
  int in_steel = 0;
  for (int n = 0; n < 20000; ++n) {
    const Vec3 p{between(r, -20, 520), between(r, -5, 85), between(r, -65, 65)};
    if (!steel(p)) continue;
    ++in_steel;
    EXPECT_TRUE(covered(pieces, p)) << p.x << " " << p.y << " " << p.z;
  }
  EXPECT_GT(in_steel, 200);
  for (const Convex& piece : pieces)
    for (int n = 0; piece.exact && n < 2000; ++n) {
      const Vec3 p = random_point_in(r, piece);
      EXPECT_TRUE(steel(p)) << p.x << " " << p.y << " " << p.z;
    }
  EXPECT_FALSE(covered(pieces, {250, 40, 0})) << "a bolt's nut would be seen in its steel";
}

TEST(Pieces, OfAMitredChannelCoverIt) { expect_pieces_match(channel()); }
TEST(Pieces, OfAMitredAngleCoverIt) { expect_pieces_match(angle()); }

TEST(Pieces, OfASharpChannelAreExactButForTheFillets) {
  Section s = channel();
  s.toe_radius = 0;
  const std::vector<Convex> pieces = local_pieces(Member{s, 500, 0, 0, {}});
  EXPECT_EQ(std::count_if(pieces.begin(), pieces.end(), [](const Convex& c) { return c.exact; }), 3);
  expect_pieces_match(s);
}

TEST(Pieces, AHoleMakesItsFaceInexact) {
  Section s = channel();
  s.toe_radius = 0;
  Member m{s, 500, 0, 0, {{Face::web, {{100, 0}, 14, 14, 0, Process::drilled, Kind::jack_bolt}}}};
  EXPECT_FALSE(local_pieces(m)[0].exact);
  EXPECT_TRUE(local_pieces(m)[1].exact);
  Plate plate{rectangle({0, 0}, {50, 30}), 6, {}};
  EXPECT_TRUE(local_pieces(plate)[0].exact);
  plate.holes.push_back({{25, 15}, 10, 10, 0, Process::cut, Kind::none});
  EXPECT_FALSE(local_pieces(plate)[0].exact);
}

TEST(Pieces, OfAPlateWithArcsCoverItCloselyAndSayTheyAreNotExact) {
  Plate plate{hole_outline({10, 20}, 30, 80, 0.3), 6, {}};
  const std::vector<Convex> pieces = local_pieces(plate);
  ASSERT_EQ(pieces.size(), 1u);
  EXPECT_FALSE(pieces[0].exact);
  for (const Vec2& p : flattened(plate.outline, 1e-4)) EXPECT_TRUE(covered(pieces, {p.x, p.y, 3}));
  // Tangents at 30 degrees stand off by r (1/cos 15 - 1) at most: 0.53 mm here.
  EXPECT_LT(pieces[0].bounds.high.x, 10 + 25 * std::cos(0.3) + 15 + 0.54);
}

TEST(Pieces, OfAHollowPlateAreItsHull) {
  Plate plate{polygon({{0, 0}, {40, 0}, {40, 10}, {10, 10}, {10, 40}, {0, 40}}), 5, {}};
  const std::vector<Convex> pieces = local_pieces(plate);
  ASSERT_EQ(pieces.size(), 1u);
  EXPECT_FALSE(pieces[0].exact);
  EXPECT_EQ(pieces[0].corners.size(), 10u);
  EXPECT_TRUE(covered(pieces, {20, 20, 2}));
}

TEST(Pieces, OfBoughtBlocksStandWhereTheirFramesSay) {
  Bought bought;
  bought.envelope.push_back({Placement{{100, 0, 0}, {0, 1, 0}, {-1, 0, 0}}, {0, 0, 0}, {10, 20, 30}, 0});
  bought.envelope.push_back({Placement{}, {0, 0, -5}, {0, 0, 5}, 12});
  const std::vector<Convex> pieces = local_pieces(bought);
  EXPECT_TRUE(pieces[0].exact);
  EXPECT_NEAR(pieces[0].bounds.low.x, 80, 1e-9);
  EXPECT_NEAR(pieces[0].bounds.high.y, 10, 1e-9);
  EXPECT_FALSE(pieces[1].exact);
  for (int i = 0; i < 360; ++i)
    EXPECT_TRUE(covered(pieces, {12 * std::cos(i * degree), 12 * std::sin(i * degree), 0}));
}

// A right triangle of legs 30 and 40 whose foot is off the frame's origin, given with
// points that its hull leaves out: area 600, centroid a third of the legs in.
TEST(Pieces, OfAPrismAreThePrism) {
  const Placement frame{{0, 0, 5}, {0, 1, 0}, {0, 0, 1}};
  const Block block = prism_block(frame, {{10, 0}, {40, 0}, {10, 40}, {15, 5}, {20, 0}}, -2, 8);
  ASSERT_EQ(block.base.size(), 3u);
  EXPECT_EQ(block.low, (Vec3{10, 0, -2}));
  EXPECT_EQ(block.high, (Vec3{40, 40, 8}));
  Bought bought;
  bought.envelope = {block};
  const Part part{{Kind::head}, "", Origin::kit, bought};
  EXPECT_NEAR(volume(part), 6000, 1e-9);
  const Vec3 centre = centroid(part);  // the frame's x is the world's y, its z the world's x
  EXPECT_NEAR(centre.x, 3, 1e-9);
  EXPECT_NEAR(centre.y, 20, 1e-9);
  EXPECT_NEAR(centre.z, 5 + 40.0 / 3, 1e-9);
  const std::vector<Convex> pieces = local_pieces(bought);
  ASSERT_EQ(pieces.size(), 1u);
  EXPECT_TRUE(pieces[0].exact);
  EXPECT_TRUE(covered(pieces, {0, 39.9, 5.05}));
  EXPECT_TRUE(covered(pieces, {7.9, 10.1, 44.8}));
  EXPECT_FALSE(covered(pieces, {0, 30, 25}));  // beyond the long side
  EXPECT_FALSE(covered(pieces, {8.1, 20, 10}));
}

TEST(Pieces, OfABoltAreItsHeadAndItsShank) {
  BoltSize size;
  size.diameter = 12.7, size.head_flats = 19.05, size.head_height = 8, size.nut_flats = 19.05,
  size.nut_height = 11;
  const std::vector<Convex> bolt = local_pieces(Hardware{HardwareKind::bolt, size, 40});
  ASSERT_EQ(bolt.size(), 2u);
  EXPECT_TRUE(bolt[0].exact);
  EXPECT_FALSE(bolt[0].shank);
  EXPECT_NEAR(bolt[0].bounds.high.y, 19.05 / 2, 1e-9);  // flats along local Y
  EXPECT_NEAR(bolt[0].bounds.high.z, 8, 1e-9);
  EXPECT_TRUE(bolt[1].shank);
  EXPECT_FALSE(bolt[1].exact);
  EXPECT_NEAR(bolt[1].bounds.low.z, -40, 1e-9);
  EXPECT_FALSE(local_pieces(Hardware{HardwareKind::nut, size, 0})[0].exact);
}

TEST(Pieces, OfAnItemAreItsPartsPlaced) {
  Bed bed;
  bed.parts.push_back({{Kind::tab}, "A36", Origin::made, Plate{rectangle({0, 0}, {50, 30}), 6, {}}});
  Item item;
  item.placement = {{1000, 0, 50}, {0, 1, 0}, {0, 0, 1}};
  bed.items.push_back(item);
  const Convex piece = convex_pieces(bed, 0).at(0);
  EXPECT_NEAR(piece.bounds.low.x, 1000, 1e-9);
  EXPECT_NEAR(piece.bounds.high.x, 1006, 1e-9);
  EXPECT_NEAR(piece.bounds.high.y, 50, 1e-9);
  EXPECT_NEAR(piece.bounds.high.z, 80, 1e-9);
}

}  // namespace
}  // namespace bedwright
