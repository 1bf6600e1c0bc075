#pragma once

#include "solver/job/ids.h"
#include "solver/job/shore_frame.h"
#include "solver/members/steel_member.h"

#include <optional>
#include <string>
#include <vector>

/// What stays in the wall, and what carries the floors meanwhile. N, mm, N/mm2.
namespace deadshore::solver {

/// Dry packing between the beam and the masonry over it. It hardens with age as concrete does by
/// EN 1992-1-1 3.1.2(6) and 3.1.3(3). Defaults: sand and cement, 3 to 1, barely damp and rammed in
/// (common practice; values from memory, on the soft and weak side), cement of class N.
struct DryPacking {
  double thickness = 20.0;
  double E = 10000.0;       ///< modulus of elasticity at 28 days
  double strength = 20.0;   ///< characteristic compressive strength f_ck at 28 days
  double hardening = 0.25;  ///< s, EN 1992-1-1 3.1.2(6): 0.20 rapid, 0.25 normal, 0.38 slow cement
  /// Of the site while it hardens, degrees C; none where it is not known.
  std::optional<double> temperature = {};

  /// The same, or that of the standard's curve where it is not known.
  [[nodiscard]] double curing_temperature() const { return temperature.value_or(20.0); }
};

/// Temperature-adjusted age: days at 20 degrees C that harden cement as much as one day at
/// `temperature` (degrees C) does, EN 1992-1-1:2004 (B.10). 1 at 20 degrees; 0.48 at 5 degrees, so
/// that it takes twice as long.
[[nodiscard]] double days_at_20_degrees(double temperature);

/// Least age for which `strength_at` may be relied on, days: EN 1992-1-1:2004 3.1.2(5) asks for
/// tests below it.
inline constexpr double youngest_known = 3.0;

/// Characteristic compressive strength of dry packing at an age in days: beta_cc (f_ck + 8) - 8,
/// EN 1992-1-1:2004 3.1.2(5), (6), N/mm2; never below 0, and at 28 days f_ck.
[[nodiscard]] double strength_at(const DryPacking& packing, double age);

/// Part of the mean 28-day strength that dry packing has at an age in days: beta_cc(t) = exp(s (1 -
/// sqrt(28 / t))), EN 1992-1-1 (3.2), t by `days_at_20_degrees`. 0 at age 0; no gain counts after
/// 28 days, 3.1.2(5). The characteristic strength has less: `strength_at`.
[[nodiscard]] double hardened_strength_share(const DryPacking& packing, double age);

/// Stiffness of the packing per area at an age in days, N/mm3: E(t) / thickness with E(t) =
/// beta_cc(t)^0.3 E, EN 1992-1-1 (3.5). On the day it is rammed in (age below half a day) it counts
/// as half a day old, since dry packing bears at once by being rammed.
[[nodiscard]] double packing_bed(const DryPacking& packing, double age);

/// A padstone under each end of the beam: full thickness of the wall, from the jamb into the pier.
/// Defaults: concrete C25/30, E_cm of EN 1992-1-1 Table 3.1 and unit weight of EN 1991-1-1 Table
/// A.1 (both from memory).
struct Padstone {
  double length = 0.0;         ///< along the wall, >= the beam's bearing
  double depth = 0.0;          ///< from its top down
  double E = 31000.0;          ///< modulus of elasticity
  double nu = 0.2;             ///< Poisson's ratio
  double unit_weight = 25e-6;  ///< N/mm3
  double strength = 25.0;      ///< characteristic compressive strength
};

/// The permanent beam under the soffit: one section, or more of them bolted side by side, that
/// share load evenly.
struct PermanentBeam {
  std::string name = "beam";
  SteelMember member;    ///< one section
  int count = 1;         ///< sections side by side
  double bearing = 0.0;  ///< at each end, on its padstone
  Padstone padstone;     ///< the same at both ends
  DryPacking packing;
  /// A plate on its top flange, as wide as the wall is thick: 0 where there is none. Of the same
  /// grade as the beam.
  double plate_thickness = 0.0;
  double separator_spacing = 0.0;   ///< between separators with two bolts each; 0: not known
  double bolt_diameter = 16.0;      ///< through the webs of two sections, grade 8.8
  double restraint_spacing = 0.0;   ///< between lateral restraints of the top flange; 0: none
  double deflection_ratio = 500.0;  ///< largest deflection under all load is span / this

  [[nodiscard]] double weight() const;             ///< N/mm, all sections
  [[nodiscard]] double bending_stiffness() const;  ///< E I_y, N mm2, all sections
  [[nodiscard]] double shear_stiffness() const;    ///< G A_v, N, all sections
  [[nodiscard]] double flange_width() const;       ///< all sections, mm
};

/// Props and a head plate (or a stud wall) under the joists of one floor: takes it off the wall.
struct DeadShore {
  std::string name;

  /// The line load that it takes; of those that the house brings down by its place among the loads
  /// of `with_house_loads`.
  LineLoadId carries = {};
  double share = 1.0;  ///< of that load and what goes with it, 0 to 1

  /// Line and point loads that stand on the same floor, so that they go with it.
  std::vector<LoadId> along_with = {};

  /// Joist ends built into the wall: with the joists propped, they catch a wall that drops onto
  /// them. None: they are taken to give no support.
  struct JoistEnds {
    double gap = 0.0;        ///< drop of the masonry before it bears on them, mm
    double stiffness = 0.0;  ///< of one propped joist end, N/mm
    double spacing = 0.0;    ///< of joists, mm
  };
  std::optional<JoistEnds> joist_ends;

  /// What it is made of, where that is to be worked out too.
  std::optional<ShoreFrame> frame = {};
};

/// All loads that the shore takes off the wall, the floor's first.
[[nodiscard]] std::vector<LoadId> loads_of(const DeadShore& shore);

}  // namespace deadshore::solver
