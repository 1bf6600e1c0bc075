#pragma once

#include "mesh/quad_mesh.h"
#include "solver/fem/equation_map.h"
#include "solver/panel/beam_line.h"
#include "solver/panel/contact_bed.h"

#include <Eigen/Core>

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace deadshore::solver {

/// The rigid-body motions of a panel, which strain nothing: along x, along y and turning for each
/// connected part of its mesh; up and turning for its beam. The stiffness is singular where such a
/// motion meets neither a support nor a closed contact.
///
/// That is decided here by geometry and not by the Cholesky factor: the last pivot of a part that
/// nothing holds is zero but for round-off, which may be above or below zero with the BLAS kernel
/// of the processor. The mesh must outlive the motions.
class RigidMotions {
 public:
  /// Finds the parts and what supports hold of each.
  RigidMotions(const mesh::QuadMesh& mesh, std::span<const Support> supports,
               const std::optional<BeamLine>& beam);

  /// What can move while only supports and `contacts` hold it, in words: "the wall can move
  /// sideways: nothing holds it". Nothing where all is held.
  ///
  /// A part counts as held against turning where the forces that hold it have a lever of more than
  /// about 1e-5 of its size: a wall that balances on a contact 0.1 mm wide is not held. Parts that
  /// share a single node count as one; whether they fold there is left to the factor's pivots.
  [[nodiscard]] std::optional<std::string> unheld(
      std::span<const ContactPoint* const> contacts) const;

 private:
  /// A part of the wall, or the beam. Its rotation is scaled so that a unit of it moves what is
  /// `size` off its centre by 1.
  struct Body {
    std::string name;
    mesh::Point centre;  ///< mm
    double size = 1.0;   ///< mm
  };
  [[nodiscard]] Eigen::VectorXd motions_at(int node, int component) const;

  const mesh::QuadMesh& mesh_;
  std::optional<BeamLine> beam_;
  std::vector<int> body_of_node_;     ///< -1: of no element
  std::vector<Body> bodies_;          ///< parts of the mesh, then the beam
  Eigen::MatrixXd held_by_supports_;  ///< 3 rows and columns for each body
};

}  // namespace deadshore::solver
