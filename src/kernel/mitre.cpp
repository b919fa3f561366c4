// Builds the faces of the slanting prism, each edge shared by two of them.
#include "kernel/mitre.h"

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRep_Builder.hxx>
#include <Geom2d_BSplineCurve.hxx>
#include <Geom2d_Line.hxx>
#include <Geom_Circle.hxx>
#include <Geom_CylindricalSurface.hxx>
#include <Geom_Ellipse.hxx>
#include <Geom_Line.hxx>
#include <Precision.hxx>
#include <TColStd_Array1OfInteger.hxx>
#include <TColStd_Array1OfReal.hxx>
#include <TColgp_Array1OfPnt2d.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shell.hxx>
#include <TopoDS_Vertex.hxx>
#include <TopoDS_Wire.hxx>
#include <array>
#include <gp_Pln.hxx>
#include <stdexcept>
#include <vector>

namespace bedwright {

namespace {

// The plane x = at + slope * y.
struct Cut {
  Mm at;
  double slope;
  gp_Pnt point(Vec2 p) const { return {at + slope * p.x, p.x, p.y}; }
  gp_Dir along() const { return {slope, 1, 0}; }
  gp_Dir normal() const { return {1, -slope, 0}; }  // toward +x
};

// Of an angle worked out from the corners of a round, even one of a hundredth of
// a millimetre.
constexpr Radians angle_noise = 1e-9;

// An arc of the outline as angles from +y about its centre, in rising order.
struct Round {
  Vec2 centre;
  Mm radius = 0;
  Radians low = 0, high = 0;
  bool rising = true;  // the outline runs from low to high
};

Round round_of(const Vertex& from, Vec2 to) {
  const Vec2 chord = to - from.at;
  const double offset = (1 - from.bulge * from.bulge) / (4 * from.bulge);
  const Vec2 centre = 0.5 * (from.at + to) + offset * Vec2{-chord.y, chord.x};
  const Vec2 spoke = from.at - centre;
  const Radians start = std::atan2(spoke.y, spoke.x), turn = 4 * std::atan(from.bulge);
  // The kernel takes an edge's first parameter on a closed curve into one turn
  // from zero, a hair below zero as zero: do the same, or the cylinder's
  // parameters would part from it.
  const Radians least = std::min(start, start + turn);
  const Radians low = least < -angle_noise ? least + 360 * degree : std::max(0.0, least);
  return {centre, norm(spoke), low, low + std::abs(turn), turn > 0};
}

constexpr int matched = 5;  // derivatives matched at each end
constexpr int order = 2 * matched + 1;

double choose(int n, int k) {
  double value = 1;
  for (int i = 1; i <= k; ++i) value = value * (n - k + i) / i;
  return value;
}

// Bernstein coefficients of the polynomial that agrees with cos at both ends of
// [low, high] in value and `matched` derivatives. Its error is at most
// ((high - low) / 2)^12 / 12!, about 1e-10 for a quarter turn (the remainder of
// two-point Hermite interpolation, at the middle).
std::array<double, order + 1> cosine(Radians low, Radians high) {
  const auto from_end = [&](Radians at, double step, int k) {
    // Taylor term j of cos at `at` in units of `step`, into Bernstein form.
    double sum = 0, scale = 1;
    for (int j = 0; j <= k; ++j) {
      sum += choose(k, j) / choose(order, j) * scale * std::cos(at + j * 90 * degree);
      scale *= step / (j + 1);
    }
    return sum;
  };
  std::array<double, order + 1> coefficients{};
  for (int k = 0; k <= matched; ++k) {
    coefficients[k] = from_end(low, high - low, k);
    coefficients[order - k] = from_end(high, low - high, k);
  }
  return coefficients;
}

// The cut across a round in the cylinder's own coordinates: u the angle, v = x.
Handle(Geom2d_Curve) cut_on_cylinder(const Round& round, const Cut& cut) {
  const auto shape = cosine(round.low, round.high);
  TColgp_Array1OfPnt2d poles(1, order + 1);
  for (int k = 0; k <= order; ++k) {
    const double u = round.low + (round.high - round.low) * k / order;
    poles(k + 1) = {u, cut.at + cut.slope * (round.centre.x + round.radius * shape[k])};
  }
  TColStd_Array1OfReal knots(1, 2);
  knots(1) = round.low;
  knots(2) = round.high;
  TColStd_Array1OfInteger multiplicities(1, 2);
  multiplicities.Init(order + 1);
  return new Geom2d_BSplineCurve(poles, knots, multiplicities, order);
}

// The cut across a round in space, with the round's angle as parameter.
Handle(Geom_Curve) cut_in_space(const Round& round, const Cut& cut) {
  const gp_Ax2 frame(cut.point(round.centre), cut.normal(), cut.along());
  if (cut.slope == 0) return new Geom_Circle(frame, round.radius);
  return new Geom_Ellipse(frame, round.radius * std::hypot(1, cut.slope), round.radius);
}

class Builder {
 public:
  Builder(const Outline& outline, Cut start, Cut end) : outline_(outline), start_(start), end_(end) {}

  TopoDS_Solid solid() {
    for (const Vertex& v : outline_) add_corner(v.at);
    brep_.MakeShell(shell_);
    brep_.MakeWire(start_wire_);
    brep_.MakeWire(end_wire_);
    for (std::size_t i = 0; i < outline_.size(); ++i) {
      if (outline_[i].bulge == 0) {
        add_flat(i);
      } else {
        add_round(i);
      }
    }
    add_cap(start_, TopoDS::Wire(start_wire_.Reversed()), false);
    add_cap(end_, end_wire_, true);
    shell_.Closed(true);
    TopoDS_Solid made;
    brep_.MakeSolid(made);
    brep_.Add(made, shell_);
    return made;
  }

 private:
  std::size_t after(std::size_t i) const { return (i + 1) % outline_.size(); }

  TopoDS_Vertex vertex(const gp_Pnt& at) const {
    TopoDS_Vertex made;
    brep_.MakeVertex(made, at, Precision::Confusion());
    return made;
  }

  void add_corner(Vec2 at) {
    const gp_Pnt first = start_.point(at), last = end_.point(at);
    if (!(last.X() - first.X() > Precision::Confusion())) {
      throw std::runtime_error("the end cuts cross within the member");
    }
    starts_.push_back(vertex(first));
    ends_.push_back(vertex(last));
    const Handle(Geom_Line) line = new Geom_Line(gp_Pnt(0, at.x, at.y), gp_Dir(1, 0, 0));
    sides_.push_back(BRepBuilderAPI_MakeEdge(line, starts_.back(), ends_.back(), first.X(), last.X()));
  }

  static TopoDS_Edge straight(const TopoDS_Vertex& from, const gp_Pnt& a, const TopoDS_Vertex& to,
                              const gp_Pnt& b) {
    const Handle(Geom_Line) line = new Geom_Line(a, gp_Dir(gp_Vec(a, b)));
    return BRepBuilderAPI_MakeEdge(line, from, to, 0, a.Distance(b));
  }

  // Edges in the sense of the outline; the loop runs counter-clockwise seen from outside.
  TopoDS_Wire loop(std::size_t i, const TopoDS_Edge& at_start, const TopoDS_Edge& at_end) {
    TopoDS_Wire wire;
    brep_.MakeWire(wire);
    brep_.Add(wire, at_start);
    brep_.Add(wire, sides_[after(i)]);
    brep_.Add(wire, at_end.Reversed());
    brep_.Add(wire, sides_[i].Reversed());
    wire.Closed(true);
    brep_.Add(start_wire_, at_start);
    brep_.Add(end_wire_, at_end);
    return wire;
  }

  void add_flat(std::size_t i) {
    const Vec2 a = outline_[i].at, b = outline_[after(i)].at;
    const TopoDS_Edge at_start = straight(starts_[i], start_.point(a), starts_[after(i)], start_.point(b));
    const TopoDS_Edge at_end = straight(ends_[i], end_.point(a), ends_[after(i)], end_.point(b));
    const gp_Pln plane(start_.point(a), gp_Dir(0, b.y - a.y, a.x - b.x));
    brep_.Add(shell_, BRepBuilderAPI_MakeFace(plane, loop(i, at_start, at_end), false).Face());
  }

  void add_round(std::size_t i) {
    const Round round = round_of(outline_[i], outline_[after(i)].at);
    const gp_Ax3 axis(gp_Pnt(0, round.centre.x, round.centre.y), gp_Dir(1, 0, 0), gp_Dir(0, 1, 0));
    const Handle(Geom_Surface) surface = new Geom_CylindricalSurface(axis, round.radius);
    const TopoDS_Edge at_start = round_edge(i, round, start_, starts_, surface);
    const TopoDS_Edge at_end = round_edge(i, round, end_, ends_, surface);
    set_side(i, round.rising ? round.low : round.high, surface);
    set_side(after(i), round.rising ? round.high : round.low, surface);
    // The cylinder faces away from its axis; a fillet's steel is on that side.
    TopoDS_Face face;
    brep_.MakeFace(face, surface, Precision::Confusion());
    const TopoDS_Wire wire = loop(i, at_start, at_end);
    brep_.Add(face, round.rising ? wire : TopoDS::Wire(wire.Reversed()));
    brep_.Add(shell_, round.rising ? face : TopoDS::Face(face.Reversed()));
  }

  TopoDS_Edge round_edge(std::size_t i, const Round& round, const Cut& cut,
                         const std::vector<TopoDS_Vertex>& corners, const Handle(Geom_Surface) & surface) {
    const TopoDS_Vertex& low = corners[round.rising ? i : after(i)];
    const TopoDS_Vertex& high = corners[round.rising ? after(i) : i];
    const TopoDS_Edge edge =
        BRepBuilderAPI_MakeEdge(cut_in_space(round, cut), low, high, round.low, round.high);
    brep_.UpdateEdge(edge, cut_on_cylinder(round, cut), surface, TopLoc_Location(), Precision::Confusion());
    return round.rising ? edge : TopoDS::Edge(edge.Reversed());
  }

  void set_side(std::size_t i, Radians angle, const Handle(Geom_Surface) & surface) {
    const Handle(Geom2d_Line) line = new Geom2d_Line(gp_Pnt2d(angle, 0), gp_Dir2d(0, 1));
    brep_.UpdateEdge(sides_[i], line, surface, TopLoc_Location(), Precision::Confusion());
  }

  void add_cap(const Cut& cut, const TopoDS_Wire& wire, bool facing_rear) {
    const gp_Dir normal = facing_rear ? cut.normal() : cut.normal().Reversed();
    brep_.Add(shell_, BRepBuilderAPI_MakeFace(gp_Pln(cut.point({0, 0}), normal), wire, false).Face());
  }

  const Outline& outline_;
  Cut start_, end_;
  BRep_Builder brep_;
  std::vector<TopoDS_Vertex> starts_, ends_;  // one for each corner of the outline
  std::vector<TopoDS_Edge> sides_;            // along X, from start to end
  TopoDS_Wire start_wire_, end_wire_;
  TopoDS_Shell shell_;
};

}  // namespace

TopoDS_Solid slanted_prism(const Outline& outline, Mm length, double start, double end) {
  return Builder(outline, {0, start}, {length, end}).solid();
}

}  // namespace bedwright
