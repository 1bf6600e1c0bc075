#pragma once

#include <optional>
#include <string>
#include <vector>

namespace deadshore::solver {

/// A round steel tube, mm.
struct Tube {
  double diameter = 0.0;  ///< outside
  double wall = 0.0;      ///< thickness

  [[nodiscard]] double area() const;     ///< mm2
  [[nodiscard]] double inertia() const;  ///< second moment of area, mm4
};

/// Classes of adjustable telescopic steel props, EN 1065.
enum class PropClass { a, b, c, d, e };

/// Safe loads against extension from a supplier's sheet.
struct CapacityTable {
  /// The safe load at one extension.
  struct Row {
    double extension = 0.0;  ///< mm
    double load = 0.0;       ///< N, for unfactored loads
  };
  std::string source;     ///< the sheet, as it is cited beside each check
  std::vector<Row> rows;  ///< two or more, by rising extension
};

/// An adjustable telescopic steel prop: an inner tube that slides in an outer tube and stands on a
/// pin and a collar. mm.
struct Prop {
  std::string name;                     ///< class and longest extension in dm, such as "B35"
  double shortest = 0.0;                ///< extension of the closed prop
  double longest = 0.0;                 ///< largest extension
  Tube outer;                           ///< as long as the closed prop
  Tube inner;                           ///< stands out of it by the rest of the extension
  std::optional<PropClass> prop_class;  ///< none for props older than EN 1065
  std::optional<CapacityTable> supplier_table;  ///< goes before every other basis where given
  std::string source;                           ///< of its dimensions
};

/// Checks a prop's dimensions.
/// \throws MemberError unless the range, the tubes and a supplier's table make sense.
void require_sound(const Prop& prop);

/// Checks that a prop reaches.
/// \param extension mm
/// \throws MemberError unless the prop can be set to it
void require_within_range(const Prop& prop, double extension);

/// Safe load at an extension (mm) by linear interpolation, N.
/// \throws MemberError outside the table.
[[nodiscard]] double capacity_at(const CapacityTable& table, double extension);

/// Characteristic strength by EN 1065, N: A 51.0 l_max/l^2 <= 44.0, B 68.0 l_max/l^2 <= 51.0,
/// C 102.0 l_max/l^2 <= 59.5, D 34.0, E 51.0 kN, l in m. It allows for the eccentricity and the
/// lean of the standard, not for more, and carries no margin for the site. The formulas of B and
/// the value of D were read in public copies; A, C, E and the limits are from memory, unverified.
/// \param extension l, mm
/// \throws MemberError outside the prop's range, or for a prop without a class.
[[nodiscard]] double characteristic_strength(const Prop& prop, double extension);

/// Axial stiffness, force over shortening, N/mm: the outer tube, as long as the closed prop, in
/// series with as much inner tube as the extension needs. Pin, collar, head and foot count as
/// rigid.
/// \param extension mm
/// \throws MemberError outside the prop's range.
[[nodiscard]] double axial_stiffness(const Prop& prop, double extension);

/// Angle from the plumb line that a prop may stand at, BS 5975, degrees.
inline constexpr double prop_lean_degrees = 1.5;
/// Distance from its axis at which a prop's load may act, BS 5975, mm.
inline constexpr double prop_eccentricity = 25.0;

/// Sideways force at the head of a prop under `load` that leans by `prop_lean_degrees`, N.
[[nodiscard]] double lean_force(double load);

/// Where the safe load of a prop comes from.
enum class SafeLoadBasis {
  /// The supplier's table where there is one, else the least of the next two and of the prop's own
  /// second-order strength 25 mm off its axis over 1.65.
  lower_of_both,
  en_1065,         ///< characteristic strength of EN 1065 over 1.65, for the eccentricity of that
                   ///< standard, about 10 mm (from memory, unverified)
  ciria_tn79,      ///< CIRIA TN79 (1977), eccentricity up to 25 mm
  supplier_table,  ///< the prop's own table alone
};

/// The divisor of EN 1065's strength: 1.5 on the load, 1.1 on the prop.
inline constexpr double en_1065_divisor = 1.5 * 1.1;

/// What a prop may carry of unfactored load.
struct SafeLoad {
  double load = 0.0;    ///< N
  std::string clause;   ///< the table or standard that it comes from, as printed beside a check
  std::string working;  ///< the numbers substituted, one line
};

/// Safe load of a prop at an extension, for unfactored loads, out of plumb up to 1.5 degrees and
/// eccentric up to 25 mm; by EN 1065 alone only as eccentric as that standard has it.
///
/// CIRIA TN79 as quoted in later guidance: the row of sizes 1 to 3 for props up to 3.95 m long, of
/// size 4 for longer ones, linear between its heights; below its first height the first value
/// holds, above its last there is none.
/// \param extension mm
/// \throws MemberError outside the range of the prop or of the basis.
[[nodiscard]] SafeLoad safe_load(const Prop& prop, double extension,
                                 SafeLoadBasis basis = SafeLoadBasis::lower_of_both);

}  // namespace deadshore::solver
