#include "solver/fem/linear_form.h"

namespace deadshore::solver {

double LinearForm::of(const Eigen::VectorXd& displacement) const {
  double sum = 0.0;
  for (const Term& term : active_terms()) sum += term.coefficient * displacement(term.index);
  return sum;
}

void LinearForm::push(double size, Eigen::VectorXd& forces) const {
  for (const Term& term : active_terms()) forces(term.index) += size * term.coefficient;
}

LinearForm LinearForm::over(const EquationMap& equations) const {
  LinearForm free;
  for (const Term& term : active_terms()) {
    const int equation = equations.equation(term.node(), term.component());
    if (equation >= 0) free.add(equation, term.coefficient);
  }
  return free;
}

void LinearForm::add_stiffness(double value, const StiffnessPattern& pattern,
                               SparseStiffness& stiffness) const {
  for (const Term& a : active_terms()) {
    for (const Term& b : active_terms()) {
      if (a.index < b.index) continue;
      stiffness.valuePtr()[pattern.place(a.index, b.index)] +=
          value * a.coefficient * b.coefficient;
    }
  }
}

void add_rise(const SidePoint& point, LinearForm& form, double factor) {
  for (int i = 0; i < point.nodes.count; ++i) {
    const std::size_t k = static_cast<std::size_t>(i);
    form.add(point.nodes.nodes[k], 1, factor * point.shape[k]);
  }
}

}  // namespace deadshore::solver
