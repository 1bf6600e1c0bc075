#pragma once

#include "mesh/plane.h"
#include "solver/job/needle_frame.h"

#include <optional>
#include <span>
#include <vector>

/// A head plate as a continuous beam over its uprights. N, mm; x along the wall.
namespace deadshore::solver {

/// What holds the plate up at one place. It only pushes: where the plate lifts, it lets go.
struct PlateSupport {
  double x = 0.0;                   ///< mm
  std::optional<double> stiffness;  ///< N/mm; empty: rigid
};

/// A head plate with its supports.
struct HeadPlate {
  mesh::Interval x;                       ///< its two ends, mm
  double E = 0.0;                         ///< modulus of elasticity, N/mm2
  double A = 0.0;                         ///< area, mm2
  double I = 0.0;                         ///< second moment of area, mm4
  std::optional<double> shear_stiffness;  ///< G A_s, N; rigid in shear if empty
  double weight = 0.0;                    ///< N/mm
  std::vector<PlateSupport> supports;     ///< by rising x, on the plate
};

/// A member laid as a head plate over `x`, its weight times a factor; without supports yet.
[[nodiscard]] HeadPlate head_plate_of(const NeedleMember& member, mesh::Interval x,
                                      double weight_factor = 1.0);

/// A force on the plate.
struct PlateForce {
  double x = 0.0;      ///< mm
  double force = 0.0;  ///< downwards, N
};

/// Forces and deflection of a head plate.
struct PlateAnswer {
  std::vector<double> reactions;     ///< per support, upwards, N
  std::vector<double> over_support;  ///< moment of the plate there, N mm, sagging positive
  double sagging = 0.0;              ///< largest between supports, N mm
  double hogging = 0.0;              ///< largest, as a size, N mm
  double largest_shear = 0.0;        ///< N, as a size
  /// Deflection of the bay, or of the end beyond a support, where it is largest for its length,
  /// from the line between the supports, mm.
  double deflection = 0.0;
  double deflection_span = 0.0;  ///< that bay's length, or twice that of the end, mm
  /// As a size, N mm.
  [[nodiscard]] double largest_moment() const { return sagging > hogging ? sagging : hogging; }
};

/// Analyses a head plate as a continuous beam, exact and of first order.
/// \pre forces on the plate, two supports or more
/// \throws SolveError where the plate tips off its supports
[[nodiscard]] PlateAnswer analyse_head_plate(const HeadPlate& plate,
                                             std::span<const PlateForce> forces);

}  // namespace deadshore::solver
