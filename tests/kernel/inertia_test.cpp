// Second moments in closed form against the kernel's.
#include <gtest/gtest.h>

#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>

#include "kernel/sample.h"
#include "kernel/shapes.h"
#include "loads/body.h"

namespace bedwright {
namespace {

// About the centre of the kernel's solid, kg m2, for steel.
Vec3 of_kernel(const TopoDS_Shape& shape, Kg mass) {
  GProp_GProps p;
  BRepGProp::VolumeProperties(shape, p, 1e-9);
  const double rho = mass / p.Mass() * 1e-6;
  const gp_Mat m = p.MatrixOfInertia();
  return {rho * m(1, 1), rho * m(2, 2), rho * m(3, 3)};
}

void expect_alike(Form form, double slack) {
  const Part part{{Kind::main}, "A36", Origin::made, std::move(form)};
  const Body body = body_of(part);
  const Vec3 ours = inertia(body), kernel = of_kernel(build_part(part), body.mass);
  EXPECT_NEAR(ours.x, kernel.x, slack * kernel.x);
  EXPECT_NEAR(ours.y, kernel.y, slack * kernel.y);
  EXPECT_NEAR(ours.z, kernel.z, slack * kernel.z);
}

// Holes count as points, which in a small plate with wide ones is most of a percent.
TEST(Inertia, PlateWithHoles) { expect_alike(sample::tab(), 0.01); }

TEST(Inertia, ChannelWithHoles) { expect_alike(sample::main_member(3000, 8), 0.002); }

TEST(Inertia, MitredChannel) {
  Member m{sample::channel(), 1000, -25 * degree, -25 * degree, {}};
  expect_alike(m, 0.0005);
}

TEST(Inertia, Angle) { expect_alike(Member{sample::angle(), 800, 0, 0, {}}, 0.002); }

TEST(Inertia, Wheel) {
  Bought bought = sample::wheel();
  if (bought.envelope.size() > 1) bought.envelope.resize(1);
  const Part one{{Kind::wheel}, "", Origin::bought, bought};
  const Body body = body_of(one);
  const Vec3 ours = inertia(body), kernel = of_kernel(build_part(one), body.mass);
  EXPECT_NEAR(ours.x, kernel.x, 1e-6 * kernel.x);
  EXPECT_NEAR(ours.y, kernel.y, 1e-6 * kernel.y);
}

}  // namespace
}  // namespace bedwright
