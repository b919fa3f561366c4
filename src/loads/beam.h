// A straight beam of one section on rigid supports, some of which can only push.
//
// The beam is free at both ends and carries downward loads, at points or spread
// evenly. Its deflection is the natural spline of the theory of thin beams
// (Euler-Bernoulli): w(x) = a + b x + sum of F_j |x - x_j|^3 / (12 EI) over loads
// (F > 0) and reactions (F < 0). Balance of forces and of moments makes both ends
// free of moment and shear, so nothing is discretised: for point and even loads
// the answer is exact.
//
// A support that only pushes (a jack's head under a main) lets the beam lift. The
// set of supports in touch is found by an active set in the manner of Lawson and
// Hanson: one support is taken in or let go at a time, and each step lowers the
// strain energy, so that it ends at the one answer there is: every reaction is a
// push, and where there is none the beam stands clear.
#pragma once

#include <Eigen/Dense>
#include <optional>
#include <vector>

#include "units/units.h"

namespace bedwright {

// Downward. `from` == `to`: at a point; else spread evenly between them.
struct BeamLoad {
  Mm from = 0, to = 0;
  Newton force = 0;
};

struct BeamSupport {
  Mm x = 0;
  bool holds_down = false;  // a bolt: pulls as well as pushes
  Mm sunk = 0;              // below the straight line the others stand on
};

// What loads do to a beam before its supports answer. Fields of the same beam add up.
struct LoadField {
  Newton total = 0;
  double moment = 0;                                  // of the loads about the beam's origin, scaled
  Eigen::VectorXd at_supports;                        // spline at the supports, scaled
  Eigen::VectorXd spline, steepness, bending, shear;  // at the stations, scaled
  LoadField& operator+=(const LoadField& other);
  // Adds `other` so many times over.
  void add(const LoadField& other, double times);
  friend LoadField operator+(LoadField a, const LoadField& b) { return a += b; }
};

struct BeamState {
  std::vector<Newton> reactions;  // by support, upward; 0 where the beam stands clear
  std::vector<int> touching;      // supports in touch, ascending
  double shift = 0, tilt = 0;     // a and b of the spline, scaled
};

// A bent beam at its stations. Where a load or a support acts just at a station,
// slope and shear there are the mean of both sides.
struct BeamCurves {
  Eigen::VectorXd down;    // mm
  Eigen::VectorXd slope;   // mm per mm, positive where it falls rearward
  Eigen::VectorXd moment;  // N mm, positive where the beam sags between supports
  Eigen::VectorXd shear;   // N, the moment's rise along the beam
};

class Beam {
 public:
  // Supports ascending and at least 0.001 mm apart (std::invalid_argument
  // otherwise). `ei` in N mm2. Deflections and moments are asked for at `stations`.
  Beam(std::vector<BeamSupport> supports, std::vector<Mm> stations, double ei);

  LoadField field(const std::vector<BeamLoad>& loads) const;

  // Nothing when the supports cannot hold the loads up: the beam tips over its
  // outermost support. `start`: supports to begin with, those of a like case.
  std::optional<BeamState> solve(const LoadField& loads, const std::vector<int>& start = {}) const;

  void bend(const LoadField& loads, const BeamState& state, BeamCurves& curves) const;

  // Moment at any place, N mm: `resting` is taken between stations, `moving` (point
  // loads, part of the case `state` was solved for but not of `resting`) exactly.
  double bending_at(Mm x, const LoadField& resting, const std::vector<BeamLoad>& moving,
                    const BeamState& state) const;

  // Mm down at a support, against its own top; below 0 where the beam has lifted off.
  Mm down_at_support(const LoadField& loads, const BeamState& state, int support) const;

  const std::vector<BeamSupport>& supports() const { return supports_; }
  const std::vector<Mm>& stations() const { return stations_; }

 private:
  struct Factored {
    std::vector<int> touching;
    Eigen::PartialPivLU<Eigen::MatrixXd> system;
    Eigen::MatrixXd matrix;
  };
  double scaled(Mm x) const { return (x - middle_) / length_; }
  const Factored& factored(const std::vector<int>& touching) const;
  BeamState answer(const LoadField& loads, const std::vector<int>& touching) const;
  std::optional<std::vector<int>> bracket(const LoadField& loads) const;

  std::vector<BeamSupport> supports_;
  std::vector<Mm> stations_;
  double ei_, middle_ = 0, length_ = 1;
  Eigen::VectorXd at_, sunk_;                             // supports, scaled
  Eigen::VectorXd station_at_;                            // stations, scaled
  Eigen::MatrixXd spline_, steepness_, bending_, shear_;  // station by support, of a unit load
  mutable std::vector<Factored> factored_;                // sets met so far
};

}  // namespace bedwright
