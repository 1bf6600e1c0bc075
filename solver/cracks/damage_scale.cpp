#include "solver/cracks/damage_scale.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace deadshore::solver {

namespace {

/// Depth from the neutral axis to the edge in tension, and the second moment of area about the
/// axis for 1 mm of thickness.
struct Section {
  double to_edge = 0.0;
  double inertia = 0.0;
};
Section section_of(const DeepBeam& beam) {
  const double cube = beam.height * beam.height * beam.height;
  if (beam.bending == Bending::sagging) return {0.5 * beam.height, cube / 12.0};
  return {beam.height, cube / 3.0};
}

double e_over_g(const DeepBeam& beam) {
  return 2.0 * (1.0 + beam.nu);
}

}  // namespace

int damage_by_strain(double strain) {
  constexpr std::array<double, 4> bounds{0.0005, 0.00075, 0.0015, 0.003};
  return static_cast<int>(std::ranges::upper_bound(bounds, strain) - bounds.begin());
}

int damage_by_width(double width) {
  constexpr double hair = 0.1;
  if (width < hair) return 0;
  constexpr std::array<double, 4> bounds{1.0, 5.0, 15.0, 25.0};
  return 1 + static_cast<int>(std::ranges::lower_bound(bounds, width) - bounds.begin());
}

std::string damage_in_words(int category) {
  constexpr std::array<const char*, 6> words{
      "0, negligible: no more than hairlines under 0.1 mm",
      "1, very slight: fine cracks up to 1 mm, gone with the next decoration",
      "2, slight: cracks up to 5 mm, to be filled and decorated over; doors and windows may stick",
      "3, moderate: cracks of 5 to 15 mm, to be opened up and made good by a mason; some brickwork "
      "may have to be rebuilt, and rain may come in",
      "4, severe: cracks of 15 to 25 mm; parts of the wall have to be taken down and rebuilt, "
      "above "
      "all over openings",
      "5, very severe: cracks over 25 mm; the wall may become unstable and needs shoring and "
      "rebuilding"};
  return words[static_cast<std::size_t>(std::clamp(category, 0, 5))];
}

double bending_strain(const DeepBeam& beam, double deflection_ratio) {
  const auto [to_edge, inertia] = section_of(beam);
  return deflection_ratio /
         (beam.length / (12.0 * to_edge) +
          3.0 * inertia * e_over_g(beam) / (2.0 * to_edge * beam.length * beam.height));
}

double diagonal_strain(const DeepBeam& beam, double deflection_ratio) {
  const double inertia = section_of(beam).inertia;
  return deflection_ratio /
         (1.0 + beam.height * beam.length * beam.length / (18.0 * inertia * e_over_g(beam)));
}

double tensile_strain(const DeepBeam& beam, double deflection_ratio, double level_strain) {
  const double bending = bending_strain(beam, deflection_ratio) + level_strain;
  const double diagonal =
      0.5 * level_strain * (1.0 - beam.nu) +
      std::hypot(0.5 * level_strain * (1.0 + beam.nu), diagonal_strain(beam, deflection_ratio));
  return std::max(bending, diagonal);
}

}  // namespace deadshore::solver
