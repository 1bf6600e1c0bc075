#include "solver/frame/frame_buckling.h"

#include "solver/fem/dense_symmetric.h"
#include "solver/frame/frame_system.h"
#include "solver/frame/solve_frame.h"
#include "solver/frame/spring_contact.h"
#include "solver/job/error.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>

namespace deadshore::solver {

namespace {

constexpr double no_buckling = 1e-12;  // mu of the largest entry of G below which nothing buckles

// Points on [-1, 1] and weights; Abramowitz & Stegun (1964), table 25.4.
constexpr double root_3_5 = 0.774596669241483377;
constexpr std::array<double, 3> three_gauss_points = {-root_3_5, 0.0, root_3_5};
constexpr std::array<double, 3> three_gauss_weights = {5.0 / 9.0, 8.0 / 9.0, 5.0 / 9.0};

/// Slope v' of the axis at `x` by each displacement of the member's nodes, global axes; first
/// order.
Eigen::Matrix<double, 1, 6> slopes_at(const FrameElement& element, double x) {
  Eigen::Matrix<double, 1, 6> slopes;
  for (Eigen::Index i = 0; i < 6; ++i) {
    const BeamState start = element.unloaded_start_state(EndVector::Unit(i));
    slopes(i) = axis_slope(element.beam, state_at(element.beam, start, {}, x, SectionSide::after));
  }
  return slopes;
}

/// Consistent geometric stiffness under compression: integral of -N v' v'. Exact for a linear N.
EndMatrix compression_stiffness(const FrameElement& element, const MemberSolution& member) {
  EndMatrix G = EndMatrix::Zero();
  const double half = 0.5 * element.beam.length;
  for (std::size_t point = 0; point < three_gauss_points.size(); ++point) {
    const double x = half * (1.0 + three_gauss_points[point]);
    const auto slopes = slopes_at(element, x);
    G -= three_gauss_weights[point] * half * section(member, x).axial * slopes.transpose() * slopes;
  }
  return G;
}

/// The `count` largest eigenvalues mu of G x = mu K x with their x, largest first: the smallest
/// load factors. In this form G may be indefinite, and no shift has to be guessed.
Eigenpairs largest_modes(const Eigen::MatrixXd& G, const Eigen::MatrixXd& K, Eigen::Index count) {
  const auto factor = DenseCholesky::of(K);
  if (!factor) throw SolveError("the frame has no stiffness against some movement");
  Eigenpairs modes = largest_eigenpairs(factor->reduce(G), count);
  modes.vectors = factor->restore(std::move(modes.vectors));
  return modes;
}

std::vector<NodeMovement> shape_of(Eigen::VectorXd u) {
  const double size = u.reshaped(3, u.size() / 3).topRows<2>().cwiseAbs().maxCoeff();
  if (size > 0.0) u /= size;
  std::vector<NodeMovement> shape;
  for (Eigen::Index i = 0; i < u.size(); i += 3) shape.push_back({u(i), u(i + 1), u(i + 2)});
  return shape;
}

}  // namespace

std::vector<BucklingMode> buckling(const Frame& frame, const BucklingOptions& options) {
  require_sound(frame);
  const Frame cut = divided(frame, options.parts);
  const FrameSolution solution = solve(cut).value();
  std::string buckled;
  const auto system = assemble(cut, std::vector<double>(cut.members.size(), 0.0), buckled);
  if (!system) throw SolveError(buckled + " buckles without load");

  Eigen::MatrixXd G = Eigen::MatrixXd::Zero(system->load.size(), system->load.size());
  for (std::size_t i = 0; i < cut.members.size(); ++i) {
    const auto places = node_displacements(cut.members[i]);
    G(places, places) += compression_stiffness(system->elements[i], solution.members[i]);
  }
  const Eigen::MatrixXd K = free_stiffness(*system, bearing_springs(cut, solution));
  // Scaled to a unit diagonal of K, so that displacements and rotations compare.
  const Eigen::VectorXd scale = K.diagonal().cwiseSqrt().cwiseInverse();
  const Eigen::MatrixXd scaled_G =
      scale.asDiagonal() * G(system->free, system->free) * scale.asDiagonal();
  const Eigen::MatrixXd scaled_K = scale.asDiagonal() * K * scale.asDiagonal();
  const auto count = std::min<Eigen::Index>(options.modes, K.rows());
  const Eigenpairs modes = largest_modes(scaled_G, scaled_K, count);

  std::vector<BucklingMode> result;
  for (Eigen::Index i = 0; i < count; ++i) {
    if (!(modes.values(i) > no_buckling * scaled_G.cwiseAbs().maxCoeff())) break;
    Eigen::VectorXd u = Eigen::VectorXd::Zero(system->load.size());
    u(system->free) = scale.cwiseProduct(modes.vectors.col(i));
    result.push_back({1.0 / modes.values(i), cut, shape_of(std::move(u))});
  }
  return result;
}

}  // namespace deadshore::solver
