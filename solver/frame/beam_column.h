#pragma once

#include <Eigen/Core>

#include <array>
#include <span>

namespace deadshore::solver {

/// A straight prismatic beam-column whose axial force, as far as it bends the member, is constant.
///
/// With v the displacement across, r the turn of a section, N the axial force, V the force across
/// the straight axis and M the moment:
///   v' = r - M' / (G A_s),  E I r' = M,  M' = V + N v',  V' = load across.
/// The shear follows the slope of the bent axis (Engesser): a pinned column then buckles at
/// P_E / (1 + P_E / (G A_s)); Timoshenko & Gere, Theory of Elastic Stability, 2nd ed. (1961),
/// 2.17. The equations are solved in closed form from the state at one end (method of initial
/// parameters), so one member is exact for any load, first order (N = 0) or second.
struct BeamColumn {
  double length = 0.0;             ///< mm
  double EA = 0.0;                 ///< N
  double EI = 0.0;                 ///< N mm2
  double shear_flexibility = 0.0;  ///< 1 / (G A_s), 1/N; 0 for rigid in shear
  double axial = 0.0;              ///< the constant N above, N, tension positive
};

/// Displacements and internal forces of a section; local axes: along the member, and across to its
/// left.
struct BeamState {
  double along = 0.0;       ///< displacement, mm
  double across = 0.0;      ///< displacement v, mm
  double rotation = 0.0;    ///< r, of the section, radians
  double axial = 0.0;       ///< N, tension positive
  double transverse = 0.0;  ///< V, N, across the straight axis
  double moment = 0.0;      ///< M, N mm
};

/// Loads that begin at a place on a member, in local axes (along, across). A line load that ends is
/// another one that begins there with the opposite sign.
struct LoadOnset {
  double at = 0.0;                                    ///< mm from the member's start
  Eigen::Vector2d force = Eigen::Vector2d::Zero();    ///< N
  Eigen::Vector2d uniform = Eigen::Vector2d::Zero();  ///< N/mm from here on
  Eigen::Vector2d ramp = Eigen::Vector2d::Zero();     ///< N/mm2: growth per mm from here on
  double moment = 0.0;                                ///< N mm
};

/// Which side of a place where a load begins: forces jump there.
enum class SectionSide { before, after };

/// Displacements of, or forces on, a member's two ends: along, across and rotation (or moment) at
/// its start, then the same at its end. mm and radians, or N and N mm.
using EndVector = Eigen::Matrix<double, 6, 1>;
/// Stiffness between two `EndVector`s.
using EndMatrix = Eigen::Matrix<double, 6, 6>;

/// The functions in which a beam-column's differential equation is solved:
/// c_n(x) = sum over k of lambda^k x^(2k+n) / (2k+n)!, n = 0 to 5. They are trigonometric for
/// lambda < 0 (compression), hyperbolic for lambda > 0 and powers of x for 0, without loss of
/// digits in between.
[[nodiscard]] std::array<double, 6> beam_functions(double lambda, double x);

/// Whether the member stays stable with both ends held and clamped: k L < 2 pi, which is four times
/// the Euler load.
[[nodiscard]] bool stable_between_clamps(const BeamColumn& beam);

/// Forces on the ends per displacement of the ends.
/// \pre stable_between_clamps(beam)
[[nodiscard]] EndMatrix end_stiffness(const BeamColumn& beam);

/// Forces on the ends that hold them still under the loads.
[[nodiscard]] EndVector clamped_end_forces(const BeamColumn& beam,
                                           std::span<const LoadOnset> loads);

/// State at `x` mm from the start, integrated from the state just before the start.
[[nodiscard]] BeamState state_at(const BeamColumn& beam, const BeamState& start,
                                 std::span<const LoadOnset> loads, double x, SectionSide side);

/// Slope of the bent axis, v'.
[[nodiscard]] double axis_slope(const BeamColumn& beam, const BeamState& state);

/// Slope of the moment, M': the shear across the bent axis, N.
[[nodiscard]] double moment_slope(const BeamColumn& beam, const BeamState& state);

}  // namespace deadshore::solver
