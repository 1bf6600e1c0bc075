#pragma once

#include "solver/frame/frame_element.h"

#include <Eigen/Core>

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace deadshore::solver {

/// A spring along one combination of displacements: it shortens by the sum of factor * displacement
/// and pushes by stiffness * (shortening - gap).
struct SpringRow {
  /// One displacement of the combination.
  struct Term {
    int displacement = 0;  ///< number as in `FrameSystem`
    double factor = 0.0;
  };
  std::vector<Term> terms;
  double stiffness = 0.0;         ///< N/mm, or N mm per radian
  double gap = 0.0;               ///< mm or radians
  bool compression_only = false;  ///< lets go where it would have to pull

  /// How far it is pressed beyond its gap, mm or radians.
  [[nodiscard]] double closure(const Eigen::VectorXd& u) const;
};

/// A frame as equations. Displacements are numbered 3 * node + (0 for x, 1 for y, 2 for rotation);
/// n is 3 times the number of nodes.
struct FrameSystem {
  std::vector<FrameElement> elements;  ///< one per member
  Eigen::MatrixXd stiffness;           ///< of the members, without springs; n x n
  Eigen::VectorXd load;                ///< on the nodes, members' loads included; n
  std::vector<SpringRow> springs;      ///< the frame's springs, then its rotation springs
  std::vector<int> free;               ///< numbers of the displacements to solve for
  Eigen::VectorXd given;               ///< displacements of the supports, zero elsewhere; n

  /// Displacements of the two nodes of a member, out of those of all nodes.
  [[nodiscard]] EndVector of_member(const Frame& frame, int member, const Eigen::VectorXd& u) const;
};

/// Numbers of the displacements of a member's two nodes.
[[nodiscard]] std::array<int, 6> node_displacements(const FrameMember& member);

/// Assembles a frame's equations. Empty if a member buckles between its own ends. A node on which
/// every member is pinned has no rotation to solve for.
/// \param axial force of each member for its second-order effect, N, tension positive; zeros for
///   first order
/// \param buckled gets the label of the member that buckles
/// \throws SolveError if a moment acts there
[[nodiscard]] std::optional<FrameSystem> assemble(const Frame& frame,
                                                  const std::vector<double>& axial,
                                                  std::string& buckled);

/// Describes a mechanism for a message: the node that moves most and how, "up and down", "sideways"
/// or as a turn.
/// \param movement displacements of all nodes, as numbered in `FrameSystem`
[[nodiscard]] std::string freest_movement(const Frame& frame, const Eigen::VectorXd& movement);

}  // namespace deadshore::solver
