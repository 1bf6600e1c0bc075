#pragma once

#include <string>

namespace deadshore::solver {

/// Hollow sections are hot finished (EN 10210); a square one is rectangular with h = b.
enum class SectionKind { i_section, channel, rectangular_hollow, circular_hollow };

/// A hot-rolled section by its dimensions, mm. Web upright, bent about its level axis y.
struct SteelSection {
  std::string name;
  SectionKind kind = SectionKind::i_section;
  double h = 0.0;   ///< depth; the diameter of a circular hollow section
  double b = 0.0;   ///< width; the diameter of a circular hollow section
  double tw = 0.0;  ///< web; the wall of a hollow section
  double tf = 0.0;  ///< flange; the wall of a hollow section
  double r = 0.0;   ///< root radius; hollow sections take their corners from EN 10210-2

  [[nodiscard]] bool is_hollow() const {
    return kind == SectionKind::rectangular_hollow || kind == SectionKind::circular_hollow;
  }
};

/// Properties worked out from the dimensions: mm2, mm3, mm4, mm6.
struct SteelProperties {
  double mass = 0.0;  ///< kg/m, at 7850 kg/m3
  double A = 0.0;
  double I_y = 0.0;
  double I_z = 0.0;
  double W_el_y = 0.0;
  double W_el_z = 0.0;  ///< to the farther edge
  double W_pl_y = 0.0;
  double W_pl_z = 0.0;
  double I_t = 0.0;
  double I_w = 0.0;  ///< 0 for hollow sections
  double A_v = 0.0;  ///< for shear along the web, EN 1993-1-1 6.2.6(3) with eta 1.0
  double i_y = 0.0;  ///< radius of gyration, mm
  double i_z = 0.0;
};

/// Properties of a section with its root fillets or corners.
///
/// Torsion and warping: El Darwish & Johnston's formulas for I sections and channels with fillets,
/// as used for the British tables (SCI P363; from memory, checked in the tests). Channels have
/// parallel flanges.
/// \throws MemberError where the dimensions do not make a section.
[[nodiscard]] SteelProperties properties_of(const SteelSection& section);

}  // namespace deadshore::solver
