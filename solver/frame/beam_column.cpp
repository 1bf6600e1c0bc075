#include "solver/frame/beam_column.h"

#include <Eigen/LU>

#include <cmath>
#include <cstddef>

namespace deadshore::solver {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double series_limit = 10.0;  // of |lambda| x^2; beyond, the closed forms lose no digits

/// Sum over k of z^k / (2k+n)!, until further terms are below round-off.
double series(double z, int n) {
  double term = 1.0;
  for (int i = 2; i <= n; ++i) term /= i;
  double sum = term;
  for (int m = n; std::abs(term) > 1e-18 * std::abs(sum); m += 2) {
    term *= z / ((m + 1.0) * (m + 2.0));
    sum += term;
  }
  return sum;
}

/// 1 / (1 + N / (G A_s)): where V = 0, the slope of the axis over the rotation of the section.
double slope_share(const BeamColumn& beam) {
  return 1.0 / (1.0 + beam.axial * beam.shear_flexibility);
}

/// Coefficient lambda of the differential equation r'' = lambda r + loads, 1/mm2: above 0 in
/// tension, below 0 in compression.
double wave_number(const BeamColumn& beam) {
  return slope_share(beam) * beam.axial / beam.EI;
}

/// Displacement across and rotation of the far end by a unit moment and by a unit force across at
/// the start, whose own displacement and rotation are zero. Its inverse is the stiffness.
struct EndFlexibility {
  double across_by_moment = 0.0;  ///< also, by reciprocity, the rotation by a force
  double across_by_force = 0.0;
  double turn_by_moment = 0.0;
  double determinant = 0.0;
};

EndFlexibility end_flexibility(const BeamColumn& beam) {
  const double L = beam.length;
  const auto c = beam_functions(wave_number(beam), L);
  const double a = slope_share(beam);
  const double f = beam.shear_flexibility;
  EndFlexibility result;
  result.across_by_moment = a * c[2] / beam.EI;
  result.across_by_force = a * (a * c[3] / beam.EI - f * L);
  result.turn_by_moment = c[1] / beam.EI;
  // c2^2 - c1 c3 = L c3 - 2 c4, which keeps its digits in strong tension.
  result.determinant =
      a * a * (L * c[3] - 2.0 * c[4]) / (beam.EI * beam.EI) + a * f * L * c[1] / beam.EI;
  return result;
}

}  // namespace

std::array<double, 6> beam_functions(double lambda, double x) {
  std::array<double, 6> c{};
  const double z = lambda * x * x;
  const std::array<double, 6> power = {
      1.0, x, x * x / 2.0, x * x * x / 6.0, x * x * x * x / 24.0, x * x * x * x * x / 120.0};
  if (std::abs(z) <= series_limit) {
    c[4] = x * x * x * x * series(z, 4);
    c[5] = x * x * x * x * x * series(z, 5);
    for (std::size_t n = 4; n-- > 0;) c[n] = power[n] + lambda * c[n + 2];
    return c;
  }
  const double k = std::sqrt(std::abs(lambda));
  c[0] = lambda < 0.0 ? std::cos(k * x) : std::cosh(k * x);
  c[1] = (lambda < 0.0 ? std::sin(k * x) : std::sinh(k * x)) / k;
  for (std::size_t n = 2; n < 6; ++n) c[n] = (c[n - 2] - power[n - 2]) / lambda;
  return c;
}

bool stable_between_clamps(const BeamColumn& beam) {
  if (1.0 + beam.axial * beam.shear_flexibility <= 0.0) return false;
  const double limit = 2.0 * pi / beam.length;
  return -wave_number(beam) < limit * limit;
}

EndMatrix end_stiffness(const BeamColumn& beam) {
  const EndFlexibility flexibility = end_flexibility(beam);
  const double D = flexibility.determinant;
  const double axial = beam.EA / beam.length;
  const double across = flexibility.turn_by_moment / D;
  const double mixed = flexibility.across_by_moment / D;
  const double far = flexibility.across_by_force / D;
  const double near = mixed * beam.length - far;
  EndMatrix K = EndMatrix::Zero();
  K(0, 0) = K(3, 3) = axial;
  K(0, 3) = K(3, 0) = -axial;
  K(1, 1) = K(4, 4) = across;
  K(1, 4) = K(4, 1) = -across;
  K(1, 2) = K(2, 1) = K(1, 5) = K(5, 1) = mixed;
  K(4, 2) = K(2, 4) = K(4, 5) = K(5, 4) = -mixed;
  K(2, 2) = K(5, 5) = near;
  K(2, 5) = K(5, 2) = far;
  return K;
}

EndVector clamped_end_forces(const BeamColumn& beam, std::span<const LoadOnset> loads) {
  const double L = beam.length;
  const BeamState loose = state_at(beam, {}, loads, L, SectionSide::after);
  const EndFlexibility flexibility = end_flexibility(beam);
  BeamState start;
  start.axial = -loose.along * beam.EA / L;
  start.moment = (-flexibility.across_by_moment * loose.across +
                  flexibility.across_by_force * loose.rotation) /
                 flexibility.determinant;
  start.transverse =
      (flexibility.turn_by_moment * loose.across - flexibility.across_by_moment * loose.rotation) /
      flexibility.determinant;
  const BeamState end = state_at(beam, start, loads, L, SectionSide::after);
  return (EndVector() << -start.axial, start.transverse, -start.moment, end.axial, -end.transverse,
          end.moment)
      .finished();
}

BeamState state_at(const BeamColumn& beam, const BeamState& start, std::span<const LoadOnset> loads,
                   double x, SectionSide side) {
  const double a = slope_share(beam);
  const double f = beam.shear_flexibility;
  const double lambda = wave_number(beam);
  const double EI = beam.EI;
  const auto c = beam_functions(lambda, x);
  BeamState state;
  state.along = start.along + start.axial * x / beam.EA;
  state.across = start.across + a * (start.rotation * c[1] + start.moment * c[2] / EI +
                                     start.transverse * (a * c[3] / EI - f * x));
  state.rotation =
      start.rotation * c[0] + start.moment * c[1] / EI + start.transverse * a * c[2] / EI;
  state.axial = start.axial;
  state.transverse = start.transverse;
  state.moment =
      start.rotation * EI * lambda * c[1] + start.moment * c[0] + start.transverse * a * c[1];
  for (const LoadOnset& load : loads) {
    const double y = x - load.at;
    if (y < 0.0 || (y == 0.0 && side == SectionSide::before)) continue;
    const auto d = beam_functions(lambda, y);
    const Eigen::Vector3d along(load.force.x(), load.uniform.x(), load.ramp.x());
    const Eigen::Vector3d across(load.force.y(), load.uniform.y(), load.ramp.y());
    const Eigen::Vector3d once(1.0, y, y * y / 2.0);  // powers, integrated once, twice
    const Eigen::Vector3d twice(y, y * y / 2.0, y * y * y / 6.0);
    state.axial -= along.dot(once);
    state.along -= along.dot(twice) / beam.EA;
    state.transverse += across.dot(once);
    state.moment += a * across.dot(Eigen::Vector3d(d[1], d[2], d[3])) - load.moment * d[0];
    state.rotation += (a * across.dot(Eigen::Vector3d(d[2], d[3], d[4])) - load.moment * d[1]) / EI;
    state.across +=
        a * ((a * across.dot(Eigen::Vector3d(d[3], d[4], d[5])) - load.moment * d[2]) / EI -
             f * across.dot(twice));
  }
  return state;
}

double axis_slope(const BeamColumn& beam, const BeamState& state) {
  return slope_share(beam) * (state.rotation - beam.shear_flexibility * state.transverse);
}

double moment_slope(const BeamColumn& beam, const BeamState& state) {
  return slope_share(beam) * (state.transverse + beam.axial * state.rotation);
}

}  // namespace deadshore::solver
