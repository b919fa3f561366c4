// Solves the beam for one set of supports, and finds the set that is in touch.
#include "loads/beam.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace bedwright {
namespace {

// Against the total load, in scaled units: what rounding leaves of a reaction or
// a gap that is nought. Far below anything a shop could feel.
constexpr double nought = 1e-11;

double cube(double d) { return std::abs(d) * d * d / 12; }
// Integral of cube() from 0 to d.
double quartic(double d) { return std::abs(d) * d * d * d / 48; }
double sign(double d) { return d > 0 ? 1 : d < 0 ? -1 : 0; }

}  // namespace

LoadField& LoadField::operator+=(const LoadField& other) {
  add(other, 1);
  return *this;
}

void LoadField::add(const LoadField& other, double times) {
  total += times * other.total;
  moment += times * other.moment;
  at_supports += times * other.at_supports;
  spline += times * other.spline;
  steepness += times * other.steepness;
  bending += times * other.bending;
  shear += times * other.shear;
}

Beam::Beam(std::vector<BeamSupport> supports, std::vector<Mm> stations, double ei)
    : supports_(std::move(supports)), stations_(std::move(stations)), ei_(ei) {
  if (supports_.size() < 2) throw std::invalid_argument("a beam needs two supports");
  for (std::size_t i = 1; i < supports_.size(); ++i)
    if (supports_[i].x - supports_[i - 1].x < 1e-3)
      throw std::invalid_argument("a beam's supports must lie apart, in order");
  middle_ = (supports_.front().x + supports_.back().x) / 2;
  length_ = supports_.back().x - supports_.front().x;
  const auto n = static_cast<Eigen::Index>(supports_.size()), m = static_cast<Eigen::Index>(stations_.size());
  at_.resize(n);
  sunk_.resize(n);
  station_at_.resize(m);
  for (Eigen::Index i = 0; i < n; ++i) at_[i] = scaled(supports_[i].x);
  for (Eigen::Index i = 0; i < n; ++i) sunk_[i] = supports_[i].sunk * ei_ / (length_ * length_ * length_);
  for (Eigen::Index i = 0; i < m; ++i) station_at_[i] = scaled(stations_[i]);
  for (Eigen::MatrixXd* of : {&spline_, &steepness_, &bending_, &shear_}) of->resize(m, n);
  for (Eigen::Index j = 0; j < n; ++j)
    for (Eigen::Index i = 0; i < m; ++i) {
      const double d = station_at_[i] - at_[j];
      spline_(i, j) = cube(d);
      steepness_(i, j) = std::abs(d) * d / 4;
      bending_(i, j) = -std::abs(d) / 2;
      shear_(i, j) = -sign(d) / 2;
    }
}

LoadField Beam::field(const std::vector<BeamLoad>& loads) const {
  LoadField f;
  f.at_supports = Eigen::VectorXd::Zero(at_.size());
  for (Eigen::VectorXd* of : {&f.spline, &f.steepness, &f.bending, &f.shear})
    *of = Eigen::VectorXd::Zero(station_at_.size());
  for (const BeamLoad& load : loads) {
    const double a = scaled(load.from), b = scaled(load.to);
    f.total += load.force;
    f.moment += load.force * (a + b) / 2;
    if (b - a < 1e-9) {
      for (Eigen::Index i = 0; i < at_.size(); ++i) f.at_supports[i] += load.force * cube(at_[i] - a);
      for (Eigen::Index i = 0; i < station_at_.size(); ++i) {
        const double d = station_at_[i] - a;
        f.spline[i] += load.force * cube(d);
        f.steepness[i] += load.force * std::abs(d) * d / 4;
        f.bending[i] -= load.force * std::abs(d) / 2;
        f.shear[i] -= load.force * sign(d) / 2;
      }
      continue;
    }
    const double even = load.force / (b - a);
    for (Eigen::Index i = 0; i < at_.size(); ++i)
      f.at_supports[i] += even * (quartic(at_[i] - a) - quartic(at_[i] - b));
    for (Eigen::Index i = 0; i < station_at_.size(); ++i) {
      const double da = station_at_[i] - a, db = station_at_[i] - b;
      f.spline[i] += even * (quartic(da) - quartic(db));
      f.steepness[i] += even * (cube(da) - cube(db));
      f.bending[i] -= even * (std::abs(da) * da - std::abs(db) * db) / 4;
      f.shear[i] -= even * (std::abs(da) - std::abs(db)) / 2;
    }
  }
  return f;
}

// Rows: the beam stays on each touching support; forces balance; moments balance.
const Beam::Factored& Beam::factored(const std::vector<int>& touching) const {
  for (const Factored& f : factored_)
    if (f.touching == touching) return f;
  const auto n = static_cast<Eigen::Index>(touching.size());
  Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(n + 2, n + 2);
  for (Eigen::Index i = 0; i < n; ++i) {
    for (Eigen::Index j = 0; j < n; ++j) matrix(i, j) = cube(at_[touching[i]] - at_[touching[j]]);
    matrix(i, n) = matrix(n, i) = 1;
    matrix(i, n + 1) = matrix(n + 1, i) = at_[touching[i]];
  }
  factored_.push_back({touching, Eigen::PartialPivLU<Eigen::MatrixXd>(matrix), matrix});
  return factored_.back();
}

BeamState Beam::answer(const LoadField& loads, const std::vector<int>& touching) const {
  const Factored& f = factored(touching);
  const auto n = static_cast<Eigen::Index>(touching.size());
  Eigen::VectorXd right(n + 2);
  for (Eigen::Index i = 0; i < n; ++i) right[i] = loads.at_supports[touching[i]] - sunk_[touching[i]];
  right[n] = loads.total;
  right[n + 1] = loads.moment;
  Eigen::VectorXd x = f.system.solve(right);
  x += f.system.solve(right - f.matrix * x);  // one refinement: balance to the last digits
  BeamState state;
  state.touching = touching;
  state.reactions.assign(supports_.size(), 0);
  for (Eigen::Index i = 0; i < n; ++i) state.reactions[touching[i]] = x[i];
  state.shift = -x[n];
  state.tilt = -x[n + 1];
  return state;
}

// Supports that hold the loads up by pushing alone: those that hold down, and the
// nearest on each side of the resultant.
std::optional<std::vector<int>> Beam::bracket(const LoadField& loads) const {
  std::vector<int> set;
  for (std::size_t i = 0; i < supports_.size(); ++i)
    if (supports_[i].holds_down) set.push_back(static_cast<int>(i));
  if (set.size() >= 2) return set;
  if (loads.total <= 0) return std::nullopt;
  const double at = loads.moment / loads.total;
  const int last = static_cast<int>(supports_.size()) - 1;
  if (set.size() == 1) {
    const int held = set.front(), other = at < at_[held] ? held - 1 : held + 1;
    if (other < 0 || other > last) return std::nullopt;
    return std::vector<int>{std::min(held, other), std::max(held, other)};
  }
  if (at < at_[0] - nought || at > at_[last] + nought) return std::nullopt;
  int right = 1;
  while (right < last && at_[right] < at) ++right;
  return std::vector<int>{right - 1, right};
}

std::optional<BeamState> Beam::solve(const LoadField& loads, const std::vector<int>& start) const {
  const double least = nought * std::max(std::abs(loads.total), 1e-300);
  const auto pushes = [&](const BeamState& s) {
    return std::all_of(s.touching.begin(), s.touching.end(),
                       [&](int i) { return supports_[i].holds_down || s.reactions[i] >= -least; });
  };
  std::optional<BeamState> state;
  if (start.size() >= 2) {
    state = answer(loads, start);
    if (!pushes(*state)) state.reset();
  }
  if (!state) {
    const auto set = bracket(loads);
    if (!set) return std::nullopt;
    state = answer(loads, *set);
  }
  // Every turn takes in the support the beam sinks furthest below, then lets go of
  // those that would have to pull. No set comes twice; the bound is for safety only.
  const std::size_t most = 50 * supports_.size() + 50;
  for (std::size_t turn = 0; turn < most; ++turn) {
    int deepest = -1;
    double sunk = least;
    for (std::size_t i = 0; i < supports_.size(); ++i) {
      if (std::binary_search(state->touching.begin(), state->touching.end(), static_cast<int>(i))) continue;
      double down = loads.at_supports[static_cast<Eigen::Index>(i)] - sunk_[static_cast<Eigen::Index>(i)] +
                    state->shift + state->tilt * at_[static_cast<Eigen::Index>(i)];
      for (int j : state->touching)
        down -= state->reactions[j] * cube(at_[static_cast<Eigen::Index>(i)] - at_[j]);
      if (down > sunk) {
        sunk = down;
        deepest = static_cast<int>(i);
      }
    }
    if (deepest < 0) return state;
    std::vector<int> set = state->touching;
    set.insert(std::upper_bound(set.begin(), set.end(), deepest), deepest);
    std::vector<Newton> held = state->reactions;  // pushes that balance the loads
    while (true) {
      BeamState next = answer(loads, set);
      if (pushes(next)) {
        state = std::move(next);
        break;
      }
      double step = 1;
      for (int i : set)
        if (!supports_[i].holds_down && next.reactions[i] < -least)
          step = std::min(step, held[i] / (held[i] - next.reactions[i]));
      for (int i : set) held[i] += step * (next.reactions[i] - held[i]);
      std::erase_if(set, [&](int i) {
        return !supports_[i].holds_down && next.reactions[i] < -least && held[i] <= least;
      });
      // What is left of a gap is rounding: the set before was the answer.
      if (set == state->touching || set.size() < 2) return state;
    }
  }
  throw std::logic_error("the supports in touch were not found");
}

void Beam::bend(const LoadField& loads, const BeamState& state, BeamCurves& curves) const {
  curves.down = loads.spline;
  curves.slope = loads.steepness;
  curves.moment = loads.bending;
  curves.shear = loads.shear;
  for (int i : state.touching) {
    curves.down -= state.reactions[i] * spline_.col(i);
    curves.slope -= state.reactions[i] * steepness_.col(i);
    curves.moment -= state.reactions[i] * bending_.col(i);
    curves.shear -= state.reactions[i] * shear_.col(i);
  }
  curves.down.array() += state.shift + state.tilt * station_at_.array();
  curves.slope.array() += state.tilt;
  curves.down *= length_ * length_ * length_ / ei_;
  curves.slope *= length_ * length_ / ei_;
  curves.moment *= length_;
}

double Beam::bending_at(Mm x, const LoadField& resting, const std::vector<BeamLoad>& moving,
                        const BeamState& state) const {
  const auto right =
      std::clamp<std::ptrdiff_t>(std::upper_bound(stations_.begin(), stations_.end(), x) - stations_.begin(),
                                 1, static_cast<std::ptrdiff_t>(stations_.size()) - 1);
  const double part = (x - stations_[right - 1]) / (stations_[right] - stations_[right - 1]);
  double m = (1 - part) * resting.bending[right - 1] + part * resting.bending[right];
  for (const BeamLoad& load : moving) m -= load.force * std::abs(x - load.from) / length_ / 2;
  for (int i : state.touching) m += state.reactions[i] * std::abs(x - supports_[i].x) / length_ / 2;
  return m * length_;
}

Mm Beam::down_at_support(const LoadField& loads, const BeamState& state, int support) const {
  double down = loads.at_supports[support] - sunk_[support] + state.shift + state.tilt * at_[support];
  for (int j : state.touching) down -= state.reactions[j] * cube(at_[support] - at_[j]);
  return down * length_ * length_ * length_ / ei_;
}

}  // namespace bedwright
