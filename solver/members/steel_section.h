#pragma once

#include <string>

namespace deadshore::solver {

/// Shapes of rolled sections. Hollow ones are hot finished (EN 10210); a square one is rectangular
/// with h = b.
enum class SectionKind { i_section, channel, rectangular_hollow, circular_hollow };

/// A hot-rolled section by its dimensions, mm. Its web stands upright, and it is bent about its
/// level axis y, the strong one; z is the upright, weak axis.
struct SteelSection {
  std::string name;  ///< as in the tables of sections
  SectionKind kind = SectionKind::i_section;
  double h = 0.0;   ///< depth; the diameter of a circular hollow section
  double b = 0.0;   ///< width; the diameter of a circular hollow section
  double tw = 0.0;  ///< thickness of the web; of the wall of a hollow section
  double tf = 0.0;  ///< thickness of the flanges; of the wall of a hollow section
  double r = 0.0;   ///< root radius; hollow sections take their corners from EN 10210-2

  [[nodiscard]] bool is_hollow() const {
    return kind == SectionKind::rectangular_hollow || kind == SectionKind::circular_hollow;
  }
};

/// Properties of a section, in the symbols of EN 1993-1-1; y is the strong axis, z the weak one.
struct SteelProperties {
  double mass = 0.0;    ///< kg/m, at 7850 kg/m3
  double A = 0.0;       ///< area, mm2
  double I_y = 0.0;     ///< second moment of area, mm4
  double I_z = 0.0;     ///< second moment of area, mm4
  double W_el_y = 0.0;  ///< elastic section modulus, mm3
  double W_el_z = 0.0;  ///< elastic section modulus to the farther edge, mm3
  double W_pl_y = 0.0;  ///< plastic section modulus, mm3
  double W_pl_z = 0.0;  ///< plastic section modulus, mm3
  double I_t = 0.0;     ///< torsion constant of St. Venant, mm4
  double I_w = 0.0;     ///< warping constant, mm6; 0 for hollow sections
  double A_v = 0.0;     ///< shear area along the web, EN 1993-1-1 6.2.6(3) with eta 1.0, mm2
  double i_y = 0.0;     ///< radius of gyration, mm
  double i_z = 0.0;     ///< radius of gyration, mm
};

/// Properties of a section with its root fillets or corners.
///
/// Torsion and warping: El Darwish & Johnston's formulas for I sections and channels with fillets,
/// as used for the British tables (SCI P363; from memory, checked in the tests). Channels have
/// parallel flanges.
/// \throws MemberError where the dimensions do not make a section.
[[nodiscard]] SteelProperties properties_of(const SteelSection& section);

}  // namespace deadshore::solver
