#pragma once

#include "mesh/quad_mesh.h"
#include "solver/fem/linear_form.h"
#include "solver/job/job.h"

#include <Eigen/Core>

#include <compare>
#include <cstddef>
#include <span>
#include <vector>

namespace deadshore::solver {

/// A point at which two things press on each other and never pull: unilateral contact.
///
/// Their approach is the linear form `form` of the displacements; past `rest` they push apart with
/// `stiffness * length` N per mm.
struct ContactPoint {
  LinearForm form;         ///< approach, mm, positive as they near each other
  double x = 0.0;          ///< along the wall, mm
  double length = 0.0;     ///< of the bed that the point stands for, mm
  double stiffness = 0.0;  ///< of the bed, N/mm per mm of its length
  double rest = 0.0;       ///< approach at which it starts to push, mm; below 0: preloaded

  /// How far the two have come together at displacements `u` (nodal), mm.
  [[nodiscard]] double approach(const Eigen::VectorXd& u) const { return form.of(u); }
  /// Approach past the rest, mm: above 0 it presses, below 0 it is the gap that is left.
  [[nodiscard]] double closure(const Eigen::VectorXd& u) const { return approach(u) - rest; }

  /// Whether it holds: just touching counts, or a beam laid down on its bearings would be loose.
  [[nodiscard]] bool is_closed(const Eigen::VectorXd& u) const { return closure(u) >= 0.0; }

  /// Push, N.
  [[nodiscard]] double force(const Eigen::VectorXd& u) const {
    return stiffness * length * std::max(0.0, closure(u));
  }
};

/// What a bed belongs to: a needle, a dead shore's joist ends, or the permanent beam.
enum class BedKind { needle, joists, packing, left_bearing, right_bearing };

/// Which bed: `index` is the place of the needle or the dead shore in the job, 0 for the beam's.
struct BedId {
  BedKind kind = BedKind::needle;
  std::size_t index = 0;  ///< of the needle or the dead shore

  auto operator<=>(const BedId&) const = default;
};
/// The bed between the wall and a needle.
[[nodiscard]] constexpr BedId bed_of(NeedleId needle) {
  return {BedKind::needle, index_of(needle)};
}
/// The bed of the joist ends over a dead shore.
[[nodiscard]] constexpr BedId bed_of(ShoreId shore) {
  return {BedKind::joists, index_of(shore)};
}

/// A bed of springs that only push: a needle under the soffit, packing on a beam, joist ends.
struct ContactBed {
  BedId id;
  std::vector<ContactPoint> points;  ///< Gauss points along the bed
};

/// The points of all beds, one bed after the other; the beds must outlive them.
[[nodiscard]] std::vector<const ContactPoint*> points_of(std::span<const ContactBed> beds);

/// The bed of this id; null where it is not there.
[[nodiscard]] const ContactBed* find_bed(std::span<const ContactBed> beds, BedId id);

/// Spring energy at displacement `u`, N mm.
[[nodiscard]] double energy_of(const ContactBed& bed, const Eigen::VectorXd& u);

/// Resultants of a bed at given displacements.
struct ContactState {
  double force = 0.0;     ///< N
  double approach = 0.0;  ///< mean, mm; of a needle the settlement of the wall over it
  double contact = 0.0;   ///< part of its length that presses, 0 to 1
};
/// Resultants of a bed at displacements `u` (nodal, mm).
[[nodiscard]] ContactState state_of(const ContactBed& bed, const Eigen::VectorXd& u);

/// Whether a bed stands on something outside the panel, rather than between wall and beam.
[[nodiscard]] bool stands_on_ground(const mesh::QuadMesh& mesh, const ContactBed& bed);

/// A needle's contact with the soffit: its stiffness spread evenly over its bearing, its slack to
/// close, its preload as a rest below 0. Where the bearing covers part of an element it is
/// integrated over that part.
/// \throws SolveError if the soffit does not cover the whole bearing
[[nodiscard]] ContactBed needle_bed(const mesh::QuadMesh& mesh, std::span<const mesh::Side> soffit,
                                    const Needle& needle, NeedleId id);

}  // namespace deadshore::solver
