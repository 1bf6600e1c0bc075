#pragma once

#include <string>

/// The scale of visible damage to masonry and the strains it is judged by. Scale: Burland, Broms &
/// de Mello, 9th ICSMFE, Tokyo 1977; strains: Boscardin & Cording, J. Geotech. Engng 115 (1989) 1.
/// Deep beam: Burland & Wroth, Settlement of Structures, Cambridge 1974.
namespace deadshore::solver {

/// Damage category by the largest tensile strain (a ratio, not per cent): 0 below 0.05%, 1 to
/// 0.075%, 2 to 0.15%, 3 to 0.3%, else 4, which stands for 4 to 5: the strain does not tell them
/// apart.
[[nodiscard]] int damage_by_strain(double strain);

/// Damage category by the widest crack: 0 below 0.1 mm, 1 up to 1 mm, 2 to 5, 3 to 15, 4 to 25,
/// else 5.
/// \param width mm
[[nodiscard]] int damage_by_width(double width);

/// "1, very slight: ...": the category's name, what one sees and what puts it right.
[[nodiscard]] std::string damage_in_words(int category);

/// How a stretch of wall bends: sagging has its neutral axis at mid-height; hogging has it at the
/// bottom edge, since what the wall stands on holds it together there.
enum class Bending { sagging, hogging };

/// A stretch of wall taken as a weightless elastic beam with a load at its middle.
struct DeepBeam {
  double length = 0.0;  ///< mm
  double height = 0.0;  ///< mm
  double nu = 0.0;      ///< E / G = 2 (1 + nu)
  Bending bending = Bending::sagging;
};

/// Largest bending strain at the edge in tension. Burland & Wroth 1974.
/// \param deflection_ratio D / L, deflection to length
[[nodiscard]] double bending_strain(const DeepBeam& beam, double deflection_ratio);

/// Largest diagonal strain, from shear. Burland & Wroth 1974.
/// \param deflection_ratio D / L, deflection to length
[[nodiscard]] double diagonal_strain(const DeepBeam& beam, double deflection_ratio);

/// Largest tensile strain of bending or shear together with a horizontal strain. Boscardin &
/// Cording 1989.
/// \param level_strain horizontal strain, tension positive
[[nodiscard]] double tensile_strain(const DeepBeam& beam, double deflection_ratio,
                                    double level_strain);

}  // namespace deadshore::solver
