#pragma once

#include "solver/fem/equation_map.h"
#include "solver/fem/quad_shape.h"
#include "solver/fem/stiffness_pattern.h"

#include <Eigen/Core>

#include <array>
#include <cstddef>
#include <span>

namespace deadshore::solver {

/// A linear form of displacements: a sum of a few of them, each times a coefficient. It says how
/// far a point of the wall comes down, or by how much a beam and the wall approach each other. A
/// force along it acts on each displacement times its coefficient, by virtual work.
struct LinearForm {
  /// One displacement and its coefficient.
  struct Term {
    int index = 0;  ///< in a nodal vector, 2 * node + component, or in a free one
    double coefficient = 0.0;

    [[nodiscard]] int node() const { return index / 2; }
    [[nodiscard]] int component() const { return index % 2; }
  };
  std::array<Term, 7> terms{};  ///< up to 3 of a wall's side and 4 of a beam's element
  int count = 0;                ///< of the terms in use

  /// Adds a term.
  /// \pre count < 7
  void add(int index, double coefficient) {
    terms[static_cast<std::size_t>(count++)] = {index, coefficient};
  }
  /// Adds a term of a nodal form: component 0 along x, 1 along y.
  void add(int node, int component, double coefficient) { add(2 * node + component, coefficient); }
  /// The terms in use.
  [[nodiscard]] std::span<const Term> active_terms() const {
    return std::span(terms).first(static_cast<std::size_t>(count));
  }

  /// Its value at displacements, mm.
  [[nodiscard]] double of(const Eigen::VectorXd& displacement) const;

  /// Adds a force of `size` N along it to forces that are numbered as its terms are.
  void push(double size, Eigen::VectorXd& forces) const;

  /// This form of nodal displacements over the free ones: what supports give is left out.
  [[nodiscard]] LinearForm over(const EquationMap& equations) const;

  /// Adds `value` (N/mm) times the outer product of its terms.
  /// \pre a form of free displacements, coupled with each other in the pattern
  void add_stiffness(double value, const StiffnessPattern& pattern,
                     SparseStiffness& stiffness) const;
};

/// Adds the upward movement of a point on a side of the mesh, times `factor`, to a nodal form.
/// The form of an approach that closes as the wall comes down has the factor -1.
void add_rise(const SidePoint& point, LinearForm& form, double factor = 1.0);

}  // namespace deadshore::solver
