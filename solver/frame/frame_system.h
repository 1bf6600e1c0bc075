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
  struct Term {
    int displacement = 0;
    double factor = 0.0;
  };
  std::vector<Term> terms;
  double stiffness = 0.0;
  double gap = 0.0;
  bool compression_only = false;

  /// How far it is pressed beyond its gap, mm or radians.
  [[nodiscard]] double closure(const Eigen::VectorXd& u) const;
};

/// A frame as equations. Displacements are numbered 3 * node + (0 for x, 1 for y, 2 for rotation).
struct FrameSystem {
  std::vector<FrameElement> elements;  ///< one per member
  Eigen::MatrixXd stiffness;           ///< of the members, without springs
  Eigen::VectorXd load;                ///< on the nodes, members' loads included
  std::vector<SpringRow> springs;      ///< the frame's springs, then its rotation springs
  std::vector<int> free;               ///< displacements to solve for
  Eigen::VectorXd given;               ///< displacements of the supports, zero elsewhere

  /// Displacements of the two nodes of a member.
  [[nodiscard]] EndVector of_member(const Frame& frame, int member, const Eigen::VectorXd& u) const;
};

/// Numbers of the displacements of a member's two nodes.
[[nodiscard]] std::array<int, 6> node_displacements(const FrameMember& member);

/// Equations with each member's axial force as given (for second order; zeros for first order).
/// Empty if a member buckles between its own ends, and `buckled` then names it. A node on which
/// every member is pinned has no turn to solve for.
/// \throws SolveError if a moment acts there
[[nodiscard]] std::optional<FrameSystem> assemble(const Frame& frame,
                                                  const std::vector<double>& axial,
                                                  std::string& buckled);

/// "up and down", "sideways", "turn" and so on: the node that moves most in a displacement of all
/// nodes, and how, in words.
[[nodiscard]] std::string freest_movement(const Frame& frame, const Eigen::VectorXd& movement);

}  // namespace deadshore::solver
