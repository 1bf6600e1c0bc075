#pragma once

#include <Eigen/Core>

#include <optional>

namespace deadshore::solver {

/// What a region of the panel is made of and how thick it is.
struct PanelMaterial {
  double E = 0.0;            ///< modulus of elasticity, N/mm2
  double nu = 0.0;           ///< Poisson's ratio, 0 <= nu < 0.5
  double unit_weight = 0.0;  ///< N/mm3
  double thickness = 0.0;    ///< mm

  /// Largest principal tension, N/mm2; none for a material that stays linear elastic.
  std::optional<double> tensile_strength;

  /// Part of the elastic energy that open cracks keep, so that the problem stays defined.
  double residual = 1e-4;
};

/// Strain (xx, yy, gamma_xy) or stress (xx, yy, xy) in Voigt form, tension positive; gamma_xy is
/// the engineering shear.
using Voigt = Eigen::Vector3d;

/// Answer of a material at one point.
struct PanelResponse {
  double energy = 0.0;                                ///< energy density, N/mm2
  Voigt stress = Voigt::Zero();                       ///< d energy / d strain, N/mm2
  Eigen::Matrix3d tangent = Eigen::Matrix3d::Zero();  ///< d stress / d strain, N/mm2; symmetric
};

/// Which branch of the cracked law a strain is on.
enum class CrackState {
  closed,         ///< elastic
  one_direction,  ///< cracked across the major principal direction, compressed along the crack
  open,           ///< cracked both ways
};

/// Stiffness of plane-stress elasticity, d stress / d strain in Voigt form, N/mm2.
[[nodiscard]] Eigen::Matrix3d elastic_stiffness(double E, double nu);

/// Energy, stress and consistent tangent at `strain`.
///
/// With a tensile strength f_t this is the normal elastic no-tension material of Del Piero,
/// Meccanica 24 (1989) 150-156, shifted by f_t: principal stresses stay below f_t and the stress is
/// the gradient of a convex energy. With e1 >= e2 the principal values of
/// `eps - (f_t (1 - nu) / E) I`: closed (elastic) where e1 + nu e2 <= 0; one crack direction where
/// e2 < 0, energy E e2^2 / 2; else open both ways; `f_t tr(eps)` is added. The energy is blended as
/// (1 - residual) * cracked + residual * elastic, which leaves closed masonry exactly elastic.
[[nodiscard]] PanelResponse respond(const PanelMaterial& material, const Voigt& strain);

/// Branch of the cracked law at `strain`; `closed` for a linear elastic material.
[[nodiscard]] CrackState crack_state(const PanelMaterial& material, const Voigt& strain);

/// Strain that open cracks take, in Voigt form: total strain less the elastic strain of the stress.
[[nodiscard]] Voigt crack_strain(const PanelMaterial& material, const Voigt& strain);

/// Stress carried by the residual stiffness beyond what the cracked law allows, N/mm2; zero where
/// closed.
[[nodiscard]] Voigt residual_stress(const PanelMaterial& material, const Voigt& strain);

}  // namespace deadshore::solver
