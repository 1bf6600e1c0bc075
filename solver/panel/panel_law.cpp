#include "solver/panel/panel_law.h"

#include <cmath>

namespace deadshore::solver {

namespace {

/// Principal strains e1 >= e2 after the shift by f_t, and cosine and sine of twice the angle of e1.
struct ShiftedStrain {
  double e1 = 0.0;
  double e2 = 0.0;
  double cosine = 1.0;
  double sine = 0.0;
};

ShiftedStrain shifted_principal(double E, double nu, double tensile_strength, const Voigt& strain) {
  const double shift = tensile_strength * (1.0 - nu) / E;
  const double mean = 0.5 * (strain(0) + strain(1)) - shift;
  const double half_difference = 0.5 * (strain(0) - strain(1));
  const double half_shear = 0.5 * strain(2);
  const double radius = std::hypot(half_difference, half_shear);
  if (radius == 0.0) return {mean, mean};
  return {mean + radius, mean - radius, half_difference / radius, half_shear / radius};
}

CrackState state_of(const ShiftedStrain& s, double nu) {
  if (s.e1 + nu * s.e2 <= 0.0) return CrackState::closed;
  return s.e2 < 0.0 ? CrackState::one_direction : CrackState::open;
}

PanelResponse elastic_response(double E, double nu, const Voigt& strain) {
  PanelResponse response;
  response.tangent = elastic_stiffness(E, nu);
  response.stress = response.tangent * strain;
  response.energy = 0.5 * strain.dot(response.stress);
  return response;
}

/// Compression E e2 along the closed direction only. In the principal frame the tangent is
/// diag(0, E, G), where G = (s1 - s2) / (2 (e1 - e2)) is the stiffness against turning of the axes.
PanelResponse one_direction_response(double E, const ShiftedStrain& s) {
  const double c = s.cosine;
  const double n = s.sine;
  // Strain energy-conjugate to e2, and gamma_12 of a global strain.
  const Voigt along_minor(0.5 * (1.0 - c), 0.5 * (1.0 + c), -0.5 * n);
  const Voigt turning(-n, n, c);
  const double turning_stiffness = -E * s.e2 / (2.0 * (s.e1 - s.e2));
  PanelResponse response;
  response.energy = 0.5 * E * s.e2 * s.e2;
  response.stress = E * s.e2 * along_minor;
  response.tangent =
      E * along_minor * along_minor.transpose() + turning_stiffness * turning * turning.transpose();
  return response;
}

/// What the cracked law's energy has above the elastic one where it is closed. With that it is
/// continuous where a crack opens.
double closed_energy(const PanelMaterial& m, double tensile_strength) {
  return tensile_strength * tensile_strength * (1.0 - m.nu) / m.E;
}

/// The cracked law without the residual where it is not closed.
PanelResponse cracked_response(const PanelMaterial& m, double tensile_strength,
                               const ShiftedStrain& s, const Voigt& strain) {
  PanelResponse response;
  if (s.e2 < 0.0) response = one_direction_response(m.E, s);
  response.energy += tensile_strength * (strain(0) + strain(1));
  response.stress += Voigt(tensile_strength, tensile_strength, 0.0);
  return response;
}

}  // namespace

Eigen::Matrix3d elastic_stiffness(double E, double nu) {
  const double plane = E / (1.0 - nu * nu);
  Eigen::Matrix3d stiffness = Eigen::Matrix3d::Zero();
  stiffness(0, 0) = stiffness(1, 1) = plane;
  stiffness(0, 1) = stiffness(1, 0) = plane * nu;
  stiffness(2, 2) = 0.5 * E / (1.0 + nu);
  return stiffness;
}

PanelResponse respond(const PanelMaterial& material, const Voigt& strain) {
  PanelResponse elastic = elastic_response(material.E, material.nu, strain);
  if (!material.tensile_strength) return elastic;
  const double f_t = *material.tensile_strength;
  const double r = material.residual;
  const ShiftedStrain shifted = shifted_principal(material.E, material.nu, f_t, strain);
  if (state_of(shifted, material.nu) == CrackState::closed) {
    elastic.energy += (1.0 - r) * closed_energy(material, f_t);
    return elastic;
  }
  const PanelResponse cracked = cracked_response(material, f_t, shifted, strain);
  return {(1.0 - r) * cracked.energy + r * elastic.energy,
          (1.0 - r) * cracked.stress + r * elastic.stress,
          (1.0 - r) * cracked.tangent + r * elastic.tangent};
}

CrackState crack_state(const PanelMaterial& material, const Voigt& strain) {
  if (!material.tensile_strength) return CrackState::closed;
  return state_of(shifted_principal(material.E, material.nu, *material.tensile_strength, strain),
                  material.nu);
}

Voigt crack_strain(const PanelMaterial& material, const Voigt& strain) {
  if (crack_state(material, strain) == CrackState::closed) return Voigt::Zero();
  const Voigt s = respond(material, strain).stress;
  const double E = material.E;
  const double nu = material.nu;
  const Voigt elastic((s(0) - nu * s(1)) / E, (s(1) - nu * s(0)) / E, 2.0 * (1.0 + nu) / E * s(2));
  return strain - elastic;
}

Voigt residual_stress(const PanelMaterial& material, const Voigt& strain) {
  if (!material.tensile_strength) return Voigt::Zero();
  const double f_t = *material.tensile_strength;
  const ShiftedStrain shifted = shifted_principal(material.E, material.nu, f_t, strain);
  if (state_of(shifted, material.nu) == CrackState::closed) return Voigt::Zero();
  const Voigt allowed = cracked_response(material, f_t, shifted, strain).stress;
  return respond(material, strain).stress - allowed;
}

}  // namespace deadshore::solver
