// A second way to bend a beam, for tests: stiffness matrices of cubic elements,
// nodes wherever a load or a support is. It shares nothing with src/loads/beam.
#pragma once

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <vector>

namespace bedwright::testing {

class Hermite {
 public:
  Hermite(std::vector<double> nodes, double ei) : nodes_(std::move(nodes)), ei_(ei) {
    std::sort(nodes_.begin(), nodes_.end());
    nodes_.erase(std::unique(nodes_.begin(), nodes_.end(), [](double a, double b) { return b - a < 1e-9; }),
                 nodes_.end());
    const auto n = static_cast<Eigen::Index>(2 * nodes_.size());
    stiffness_ = Eigen::MatrixXd::Zero(n, n);
    forces_ = Eigen::VectorXd::Zero(n);
    for (std::size_t i = 0; i + 1 < nodes_.size(); ++i) {
      const double l = nodes_[i + 1] - nodes_[i], k = ei_ / (l * l * l);
      Eigen::Matrix4d m;
      m << 12, 6 * l, -12, 6 * l, 6 * l, 4 * l * l, -6 * l, 2 * l * l, -12, -6 * l, 12, -6 * l, 6 * l,
          2 * l * l, -6 * l, 4 * l * l;
      stiffness_.block<4, 4>(static_cast<Eigen::Index>(2 * i), static_cast<Eigen::Index>(2 * i)) += k * m;
    }
  }
  Eigen::Index at(double x) const {
    const auto it = std::min_element(nodes_.begin(), nodes_.end(),
                                     [&](double a, double b) { return std::abs(a - x) < std::abs(b - x); });
    return 2 * (it - nodes_.begin());
  }
  void point(double x, double down) { forces_[at(x)] += down; }
  // Even over whole elements between two nodes.
  void even(double from, double to, double down) {
    const double q = down / (to - from);
    for (std::size_t i = 0; i + 1 < nodes_.size(); ++i) {
      if (nodes_[i] < from - 1e-9 || nodes_[i + 1] > to + 1e-9) continue;
      const double l = nodes_[i + 1] - nodes_[i];
      const auto k = static_cast<Eigen::Index>(2 * i);
      forces_[k] += q * l / 2;
      forces_[k + 1] += q * l * l / 12;
      forces_[k + 2] += q * l / 2;
      forces_[k + 3] -= q * l * l / 12;
    }
  }
  // Deflections and slopes with these supports held.
  void solve(const std::vector<double>& supports) {
    std::vector<Eigen::Index> freed;
    for (Eigen::Index i = 0; i < stiffness_.rows(); ++i)
      if (std::none_of(supports.begin(), supports.end(), [&](double x) { return at(x) == i; }))
        freed.push_back(i);
    u_ = Eigen::VectorXd::Zero(stiffness_.rows());
    const Eigen::VectorXd part = stiffness_(freed, freed).eval().fullPivLu().solve(forces_(freed).eval());
    for (std::size_t i = 0; i < freed.size(); ++i) u_[freed[i]] = part[static_cast<Eigen::Index>(i)];
    reactions_ = forces_ - stiffness_ * u_;
  }
  double down(double x) const { return u_[at(x)]; }
  double slope(double x) const { return u_[at(x) + 1]; }
  double reaction(double x) const { return reactions_[at(x)]; }

 private:
  std::vector<double> nodes_;
  double ei_;
  Eigen::MatrixXd stiffness_;
  Eigen::VectorXd forces_, u_, reactions_;
};

}  // namespace bedwright::testing
