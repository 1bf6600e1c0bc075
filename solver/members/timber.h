#pragma once

#include <string>

namespace deadshore::solver {

/// A strength class of solid timber, EN 338: characteristic strengths (5th percentile) and moduli
/// in N/mm2, densities in kg/m3.
struct TimberClass {
  std::string name;       ///< "C24"
  double f_m_k = 0.0;     ///< bending
  double f_c_0_k = 0.0;   ///< compression along the grain
  double f_c_90_k = 0.0;  ///< compression across the grain
  double f_v_k = 0.0;     ///< shear
  double E_0_mean = 0.0;  ///< mean modulus of elasticity along the grain: for deflections
  double E_0_05 = 0.0;    ///< its 5th percentile: for buckling
  double G_mean = 0.0;    ///< mean shear modulus
  double rho_k = 0.0;     ///< characteristic density: for fasteners
  double rho_mean = 0.0;  ///< mean density: for weight
};

/// A sawn rectangle, mm.
struct TimberSection {
  double b = 0.0;  ///< across the load
  double h = 0.0;  ///< along the load

  [[nodiscard]] double area() const { return b * h; }                    ///< mm2
  [[nodiscard]] double inertia() const { return b * h * h * h / 12.0; }  ///< bent along h, mm4
  [[nodiscard]] double modulus() const { return b * h * h / 6.0; }       ///< bent along h, mm3
};

/// How long a load lasts altogether, EN 1995-1-1 Table 2.1.
enum class LoadDuration {
  permanent,      ///< over 10 years
  long_term,      ///< over 6 months
  medium_term,    ///< over a week
  short_term,     ///< under a week
  instantaneous,  ///< a moment
};

/// How damp timber is in use, EN 1995-1-1 2.3.1.3.
enum class ServiceClass {
  one,    ///< in heated rooms
  two,    ///< under cover
  three,  ///< in the open
};

/// Modification factor k_mod of solid timber for duration of load and moisture, EN 1995-1-1 Table
/// 3.1 (from memory, unverified).
[[nodiscard]] double modification_factor(LoadDuration duration, ServiceClass service);

/// Checks the dimensions of a section.
/// \throws MemberError unless both dimensions are above 0.
void require_sound(const TimberSection& section);

}  // namespace deadshore::solver
