#pragma once

#include "solver/fem/equation_map.h"
#include "solver/fem/quad_shape.h"
#include "solver/fem/stiffness_pattern.h"

#include <Eigen/Core>

#include <array>
#include <cstddef>
#include <span>

namespace deadshore::solver {

/// A sum of a few displacements, each times a coefficient: how far a point of the wall comes down,
/// by how much a beam and the wall approach each other. A force along it acts on each displacement
/// times its coefficient.
struct LinearForm {
  struct Term {
    int index = 0;  ///< in a nodal vector, 2 * node + component, or in a free one
    double coefficient = 0.0;

    [[nodiscard]] int node() const { return index / 2; }
    [[nodiscard]] int component() const { return index % 2; }
  };
  std::array<Term, 7> terms{};  ///< up to 3 of a wall's side and 4 of a beam's element
  int count = 0;

  void add(int index, double coefficient) {
    terms[static_cast<std::size_t>(count++)] = {index, coefficient};
  }
  void add(int node, int component, double coefficient) { add(2 * node + component, coefficient); }
  [[nodiscard]] std::span<const Term> active_terms() const {
    return std::span(terms).first(static_cast<std::size_t>(count));
  }

  /// Its value at displacements.
  [[nodiscard]] double of(const Eigen::VectorXd& displacement) const;

  /// Adds a force of this size along it, N.
  void push(double size, Eigen::VectorXd& forces) const;

  /// This form of nodal displacements over the free ones: what supports give is left out.
  [[nodiscard]] LinearForm over(const EquationMap& equations) const;

  /// Adds `value` (N/mm) times the outer product of its terms.
  /// \pre a form of free displacements, coupled with each other in the pattern
  void add_stiffness(double value, const StiffnessPattern& pattern,
                     SparseStiffness& stiffness) const;
};

/// Adds the upward movement of a point on a side of the mesh, times `factor`, to a nodal form.
void add_rise(const SidePoint& point, LinearForm& form, double factor = 1.0);

}  // namespace deadshore::solver
