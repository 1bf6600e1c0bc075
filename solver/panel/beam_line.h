#pragma once

#include "solver/fem/linear_form.h"

#include <Eigen/Core>

#include <array>
#include <vector>

namespace deadshore::solver {

/// A straight elastic beam along the wall, with bending and shear, as nodes behind those of a
/// panel's mesh. Component 1 of a node is its movement up, mm; component 0 is its rotation
/// (anticlockwise) times `rotation_length`, so that all unknowns are lengths of like size and short
/// elements do not spoil the round-off.
///
/// Two-node elements with the exact shape functions of a beam with shear (Przemieniecki, Theory of
/// Matrix Structural Analysis, 1968, ch. 5: Phi = 12 E I / (G A_v L^2)): exact at the nodes for
/// loads brought there.
struct BeamLine {
  int first_node = 0;     ///< number of its first node in the panel
  std::vector<double> x;  ///< of its nodes, ascending, mm
  double EI = 0.0;        ///< N mm2
  double GA = 0.0;        ///< N
  double weight = 0.0;    ///< N/mm

  [[nodiscard]] int node_count() const { return static_cast<int>(x.size()); }

  /// By which rotations are multiplied, mm: the mean length of its elements.
  [[nodiscard]] double rotation_length() const;
};

/// Makes a beam from x = `from` to x = `to`, mm, with elements of about `size` mm.
/// \param first_node number of its first node: that of nodes in the mesh
/// \param EI bending stiffness, N mm2
/// \param GA shear stiffness, N
/// \param weight N/mm
[[nodiscard]] BeamLine make_beam_line(int first_node, double from, double to, double size,
                                      double EI, double GA, double weight);

/// Stiffness of one element, N/mm, over its nodes' (scaled rotation, movement up): start, then end.
[[nodiscard]] Eigen::Matrix4d element_stiffness(const BeamLine& beam, int element);

/// Adds the beam's movement up at `x`, times `factor`, to a nodal form.
/// \pre x on the beam
void add_rise(const BeamLine& beam, double x, LinearForm& form, double factor = 1.0);

/// Movement up at `x`, mm, by the element's shape functions.
/// \pre x on the beam
[[nodiscard]] double rise_at(const BeamLine& beam, double x, const Eigen::VectorXd& u);

/// Adds the beam's weight to nodal forces, N.
void add_weight(const BeamLine& beam, Eigen::VectorXd& load);

}  // namespace deadshore::solver
