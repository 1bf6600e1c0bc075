#pragma once

#include "solver/conic/second_order_cone.h"
#include "solver/fem/stiffness_pattern.h"

#include <Eigen/Core>

#include <cstddef>
#include <span>
#include <vector>

namespace deadshore::solver {

/// What the stresses at a few points of each element exert on the equations of equilibrium: for each
/// element its equations (-1: held, there is none), for each point a matrix B of 3 rows (of a `Mohr`)
/// and a column for each of the element's equations. B^T stress is the force, B velocity the strain
/// times the volume of the point. All elements are alike in size.
struct ElementMatrices {
  int points = 0;     ///< stress points of an element
  int width = 0;      ///< equations of an element
  int equations = 0;  ///< in all
  std::vector<int> numbers;
  std::vector<double> values;

  using Matrix = Eigen::Matrix<double, 3, Eigen::Dynamic>;

  [[nodiscard]] int count() const { return static_cast<int>(numbers.size()) / width; }
  [[nodiscard]] std::span<const int> numbers_of(int element) const {
    return std::span<const int>(numbers).subspan(
        static_cast<std::size_t>(element) * static_cast<std::size_t>(width),
        static_cast<std::size_t>(width));
  }
  [[nodiscard]] Eigen::Map<Matrix> of(int element, int point) {
    return {values.data() + place_of(element, point), 3, width};
  }
  [[nodiscard]] Eigen::Map<const Matrix> of(int element, int point) const {
    return {values.data() + place_of(element, point), 3, width};
  }

 private:
  [[nodiscard]] std::ptrdiff_t place_of(int element, int point) const {
    return static_cast<std::ptrdiff_t>(element * points + point) * 3 * width;
  }
};

/// The equations of equilibrium between the stresses at the points of elements (element by element)
/// and the forces on their equations. Stresses are `Mohr`, and the strains that work on them are
/// given times the volume of their point.
class Equilibrium {
 public:
  explicit Equilibrium(ElementMatrices matrices);

  [[nodiscard]] int equation_count() const { return matrices_.equations; }
  [[nodiscard]] const StiffnessPattern& pattern() const { return pattern_; }
  [[nodiscard]] int element_count() const { return matrices_.count(); }
  [[nodiscard]] int points_per_element() const { return matrices_.points; }
  [[nodiscard]] int point_count() const { return matrices_.points * matrices_.count(); }

  /// Adds the forces that stresses exert to a vector of the equations.
  void add_forces(std::span<const Mohr> stress, Eigen::VectorXd& force) const;

  /// Volume strain at each point under the velocities `u` of the equations.
  void strains(const Eigen::VectorXd& u, std::span<Mohr> strain) const;

  /// Adds B^T D B, where D = root^T root maps volume strain to stress at each point.
  void add_stiffness(std::span<const Eigen::Matrix3d> root, SparseStiffness& stiffness) const;

 private:
  ElementMatrices matrices_;
  StiffnessPattern pattern_;
};

}  // namespace deadshore::solver
