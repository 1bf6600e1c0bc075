#pragma once

#include <string>

namespace deadshore::solver {

/// A strength class of solid timber, EN 338. N/mm2; densities kg/m3.
struct TimberClass {
  std::string name;
  double f_m_k = 0.0;     ///< bending
  double f_c_0_k = 0.0;   ///< compression along the grain
  double f_c_90_k = 0.0;  ///< compression across the grain
  double f_v_k = 0.0;     ///< shear
  double E_0_mean = 0.0;
  double E_0_05 = 0.0;
  double G_mean = 0.0;
  double rho_k = 0.0;
  double rho_mean = 0.0;
};

/// A sawn rectangle, mm. `h` is along the load.
struct TimberSection {
  double b = 0.0;
  double h = 0.0;

  [[nodiscard]] double area() const { return b * h; }
  [[nodiscard]] double inertia() const { return b * h * h * h / 12.0; }
  [[nodiscard]] double modulus() const { return b * h * h / 6.0; }
};

/// How long a load lasts: EN 1995-1-1 Table 2.1. Over 10 years, over 6 months, over a week, under a
/// week, a moment.
enum class LoadDuration { permanent, long_term, medium_term, short_term, instantaneous };

/// 1 heated rooms, 2 covered, 3 in the open: EN 1995-1-1 2.3.1.3.
enum class ServiceClass { one, two, three };

/// k_mod of solid timber: EN 1995-1-1 Table 3.1 (from memory, unverified).
[[nodiscard]] double modification_factor(LoadDuration duration, ServiceClass service);

/// \throws MemberError unless both dimensions are above 0.
void require_sound(const TimberSection& section);

}  // namespace deadshore::solver
