#include "solver/panel/interior_point.h"

#include <Eigen/Cholesky>
#include <Eigen/LU>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace deadshore::solver {

namespace {

// Products of S and L are kept between these multiples of mu (Gondzio's choice).
constexpr double least_product = 0.1;
constexpr double most_product = 10.0;

constexpr double most_reach = 0.9;  // of the way to the boundary, in Newton's steps at one point
constexpr int most_central_steps = 100;
constexpr double central_tolerance = 1e-10;

/// SpectralForm crack strains with `f_t - C (eps - l) = mu / l` at principal strains `strain`:
/// Newton on the least of a barrier function, which is convex.
Eigen::Vector2d central_openings(const Eigen::Matrix2d& C, double tensile_strength,
                                 const Eigen::Vector2d& strain, double mu) {
  const Eigen::Vector2d surplus = Eigen::Vector2d::Constant(tensile_strength) - C * strain;
  Eigen::Vector2d opening;  // each as if it were alone
  for (int i = 0; i < 2; ++i) {
    const double root = std::sqrt(surplus(i) * surplus(i) + 4.0 * mu * C(i, i));
    opening(i) =
        surplus(i) > 0.0 ? 2.0 * mu / (root + surplus(i)) : (root - surplus(i)) / (2.0 * C(i, i));
  }
  for (int step = 0; step < most_central_steps; ++step) {
    const Eigen::Vector2d pull = mu * opening.cwiseInverse();
    const Eigen::Matrix2d curvature = C + Eigen::Matrix2d(pull.cwiseQuotient(opening).asDiagonal());
    const Eigen::Vector2d change = curvature.llt().solve(pull - surplus - C * opening);
    const Eigen::Vector2d relative = change.cwiseQuotient(opening);
    opening += std::min(1.0, -most_reach / std::min(relative.minCoeff(), -most_reach)) * change;
    if (relative.cwiseAbs().maxCoeff() < central_tolerance) break;
  }
  return opening;
}

/// SpectralForm values (descending) and the matrix whose columns are their axes.
struct SpectralForm {
  Eigen::Vector2d values;
  Eigen::Matrix2d axes;

  [[nodiscard]] Eigen::Matrix2d with(const Eigen::Vector2d& other) const {
    return axes * other.asDiagonal() * axes.transpose();
  }
};
SpectralForm spectral_form(const Eigen::Matrix2d& symmetric) {
  const double half_difference = 0.5 * (symmetric(0, 0) - symmetric(1, 1));
  const double angle = 0.5 * std::atan2(symmetric(1, 0), half_difference);
  SpectralForm result;
  result.values = eigenvalues_of(symmetric).reverse();
  result.axes << std::cos(angle), -std::sin(angle), std::sin(angle), std::cos(angle);
  return result;
}

/// Elastic strain of a stress.
Voigt elastic_strain(const PanelMaterial& m, const Voigt& stress) {
  return {(stress(0) - m.nu * stress(1)) / m.E, (stress(1) - m.nu * stress(0)) / m.E,
          2.0 * (1.0 + m.nu) / m.E * stress(2)};
}

/// (C^-1 + W)^-1, where W maps X to W X W, as a product Z^T Z: it cannot lose its sign to round-off
/// however far the eigenvalues of W lie apart.
Eigen::Matrix3d softened(const PanelMaterial& m, const PsdScaling& scaling) {
  // W = F F^T with F = congruence(frame) diag(1, 1, 1 / sqrt 2).
  const Eigen::Matrix3d F_inverse =
      Eigen::Vector3d(1.0, 1.0, 0.5 * std::numbers::sqrt2).asDiagonal() *
      congruence(scaling.inverse_frame) * Eigen::Vector3d(1.0, 1.0, 0.5).asDiagonal();
  Eigen::Matrix3d compliance;
  for (int i = 0; i < 3; ++i) compliance.col(i) = elastic_strain(m, Voigt::Unit(i));
  const Eigen::Matrix3d sum =
      Eigen::Matrix3d::Identity() + F_inverse * compliance * F_inverse.transpose();
  const Eigen::Matrix3d Z = sum.llt().matrixL().solve(F_inverse);
  return Z.transpose() * Z;
}

/// The change of strain that an aim asks for: dL + W dS W.
Eigen::Matrix2d asked(const LinearisedCrack& line, const CrackChange& change) {
  return jordan_quotient(change.aim, line.scaling.point);
}

}  // namespace

InteriorCrack central_crack(const PanelMaterial& material, const Voigt& strain, double mu) {
  const SpectralForm p = spectral_form(matrix_of_strain(strain));
  const Eigen::Matrix2d C = elastic_stiffness(material.E, material.nu).topLeftCorner<2, 2>();
  const Eigen::Vector2d opening = central_openings(C, *material.tensile_strength, p.values, mu);
  return {p.with(opening), p.with(mu * opening.cwiseInverse())};
}

LinearisedCrack linearise(const PanelMaterial& material, const InteriorCrack& point,
                          const Voigt& strain) {
  LinearisedCrack line;
  line.scaling = nesterov_todd(point.crack, point.allowance);
  line.tangent = softened(material, line.scaling);
  line.stress = Voigt(*material.tensile_strength, *material.tensile_strength, 0.0) -
                stress_of_matrix(point.allowance);
  line.lag = elastic_strain(material, line.stress) + strain_of_matrix(point.crack) - strain;
  return line;
}

PointAnswer answer(const PanelMaterial& material, const LinearisedCrack& line,
                   const CrackChange& change, const Voigt& strain) {
  const double r = material.residual;
  const Eigen::Matrix3d C = elastic_stiffness(material.E, material.nu);
  const Voigt opened = strain_of_matrix(line.scaling.unscaled_primal(asked(line, change)));
  return {(1.0 - r) * (line.stress - line.tangent * (line.lag + opened)) + r * C * strain,
          (1.0 - r) * line.tangent + r * C};
}

void follow(const LinearisedCrack& line, const Voigt& strain_change, CrackChange& change) {
  const Eigen::Matrix2d both = asked(line, change);
  const Voigt opened = strain_of_matrix(line.scaling.unscaled_primal(both));
  const Voigt stress_change = line.tangent * (strain_change - line.lag - opened);
  change.allowance = -line.scaling.scaled_dual(matrix_of_stress(stress_change));
  change.crack = both - change.allowance;
}

double largest_step(const LinearisedCrack& line, const CrackChange& change) {
  return std::min(line.scaling.largest_step(change.crack),
                  line.scaling.largest_step(change.allowance));
}

Eigen::Matrix2d aim_at(const LinearisedCrack& line, double mu, const CrackChange& tried) {
  const Eigen::Matrix2d product = line.scaling.point.cwiseAbs2().asDiagonal();
  return mu * Eigen::Matrix2d::Identity() - product - jordan_product(tried.crack, tried.allowance);
}

Eigen::Matrix2d centring(const LinearisedCrack& line, double mu, double length,
                         const CrackChange& tried) {
  const Eigen::Matrix2d point = line.scaling.point.asDiagonal();
  const SpectralForm product =
      spectral_form(jordan_product(point + length * tried.crack, point + length * tried.allowance));
  const Eigen::Vector2d wanted =
      product.values.cwiseMax(least_product * mu).cwiseMin(most_product * mu);
  return product.with((wanted - product.values).cwiseMax(-most_product * mu));
}

InteriorCrack moved(const InteriorCrack& point, const LinearisedCrack& line, double length,
                    const CrackChange& change) {
  return {point.crack + length * line.scaling.unscaled_primal(change.crack),
          point.allowance + length * line.scaling.unscaled_dual(change.allowance)};
}

InteriorContact central_contact(double stiffness, double closure, double mu) {
  // Root of k (closure + gap) gap = mu, in the form that does not cancel.
  const double root = std::sqrt(closure * closure + 4.0 * mu / stiffness);
  const double gap =
      closure > 0.0 ? 2.0 * mu / (stiffness * (root + closure)) : 0.5 * (root - closure);
  return {gap, mu / gap};
}

ContactLine linearise(double stiffness, const InteriorContact& point, double closure) {
  return {1.0 / (1.0 / stiffness + point.gap / point.push),
          closure + point.gap - point.push / stiffness};
}

ContactAnswer answer(const InteriorContact& point, const ContactLine& line,
                     const ContactChange& change) {
  return {point.push + line.stiffness * (change.aim / point.push + line.lag), line.stiffness};
}

void follow(const InteriorContact& point, const ContactLine& line, double closure_change,
            ContactChange& change) {
  const double opened = change.aim / point.push;
  change.push = line.stiffness * (closure_change + opened + line.lag);
  change.gap = opened - point.gap / point.push * change.push;
}

double largest_step(const InteriorContact& point, const ContactChange& change) {
  double step = std::numeric_limits<double>::infinity();
  if (change.gap < 0.0) step = std::min(step, -point.gap / change.gap);
  if (change.push < 0.0) step = std::min(step, -point.push / change.push);
  return step;
}

double aim_at(const InteriorContact& point, double mu, const ContactChange& tried) {
  return mu - point.gap * point.push - tried.gap * tried.push;
}

}  // namespace deadshore::solver
