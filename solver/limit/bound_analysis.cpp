#include "solver/limit/bound_analysis.h"

#include "solver/fem/index.h"
#include "solver/limit/flow_elements.h"
#include "solver/limit/limit_iterate.h"
#include "solver/limit/limit_program.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace deadshore::solver {

namespace {

constexpr double bound_gap = 1e-3;
constexpr int most_bound_steps = 80;
constexpr double bound_balance = 1e-6;  // of the largest load, before stresses are mended
constexpr int bound_patience = 6;       // steps without a better gap
constexpr double hung_load_cost = 20.0;

LimitProgram bound_program(const BoundProblem& problem, const FlowElements& elements) {
  LimitProgram program;
  program.load = Eigen::VectorXd::Zero(elements.matrices.equations);
  for (std::size_t i = 0; i < problem.triangles.size(); ++i) {
    program.strength.push_back(
        {problem.compression[i] / problem.masonry_strength,
         std::max(problem.tension[i] / problem.masonry_strength, tension_left_in_bounds), 0.0});
  }
  for (const LinearForm& form : elements.pushing) program.forces.push_back({.along = form});
  return program;
}

LimitProgram factor_program(const BoundProblem& problem, const FlowElements& elements,
                            double most) {
  LimitProgram program = bound_program(problem, elements);
  program.load_rise = elements.load;
  program.parameter_cost = -1.0;
  program.most_parameter = most;
  return program;
}

/// Steps until cost and bound meet or nothing gets better; `look` sees each state in balance.
template <class Look>
int run(LimitIterate& iterate, double scale, double gap, const Look& look) {
  double best = std::numeric_limits<double>::infinity();
  int since = 0;
  int step = 0;
  for (; step < most_bound_steps; ++step) {
    const double cost = iterate.cost();
    const double bound = iterate.bound();
    const bool balanced = iterate.residual() < bound_balance;
    const double now = (cost - bound) / std::max(std::abs(cost), scale);
    ++since;
    look(balanced);
    if (balanced && now < best) {
      best = now;
      since = 0;
    }
    if (best < gap || (std::isfinite(best) && since > bound_patience)) break;
    if (!interior_step(iterate, {})) break;
  }
  return step;
}

struct PrincipalStress {
  double major = 0.0;
  double minor = 0.0;
};
PrincipalStress principal_of(const Mohr& stress) {
  const double radius = std::hypot(stress(1), stress(2));
  return {stress(0) + radius, stress(0) - radius};
}

/// Brings stresses into balance by the least change of them.
class Balance {
 public:
  explicit Balance(const Equilibrium& equilibrium)
      : equilibrium_(equilibrium), factor_(equilibrium.pattern().empty()) {
    SparseStiffness stiffness = equilibrium.pattern().empty();
    const std::vector<Eigen::Matrix3d> root(index_of(equilibrium.point_count()),
                                            Eigen::Matrix3d::Identity());
    equilibrium.add_stiffness(root, stiffness);
    // Where two straight lines cross, one of the equations follows from the others.
    constexpr double raise = 1e-10;
    for (int i = 0; i < stiffness.cols(); ++i)
      stiffness.valuePtr()[stiffness.outerIndexPtr()[i]] *= 1.0 + raise;
    is_ready_ = factor_.factorize(stiffness, 0.0);
  }

  /// Returns the largest force that is still out of balance with `force`.
  double mend(std::vector<Mohr>& stress, const Eigen::VectorXd& force) const {
    std::vector<Mohr> strain(stress.size());
    double rest = out_of_balance(stress, force).lpNorm<Eigen::Infinity>();
    for (int pass = 0; pass < 6 && is_ready_; ++pass) {
      equilibrium_.strains(factor_.solve(-out_of_balance(stress, force)), strain);
      std::vector<Mohr> better = stress;
      for (std::size_t p = 0; p < stress.size(); ++p) better[p] += strain[p];
      const double now = out_of_balance(better, force).lpNorm<Eigen::Infinity>();
      if (!(now < rest)) break;
      rest = now;
      stress = std::move(better);
    }
    return rest;
  }

 private:
  [[nodiscard]] Eigen::VectorXd out_of_balance(const std::vector<Mohr>& stress,
                                               const Eigen::VectorXd& force) const {
    Eigen::VectorXd rest = -force;
    equilibrium_.add_forces(stress, rest);
    return rest;
  }

  const Equilibrium& equilibrium_;
  SparseCholesky factor_;
  bool is_ready_ = false;
};

/// How far stresses must be scaled down to lie within strength, at most 1.
double scale_into_strength(const std::vector<Strength>& strength, const std::vector<Mohr>& stress) {
  double largest = 1.0;
  for (std::size_t p = 0; p < stress.size(); ++p) {
    const Strength& s = strength[p / 3];
    const PrincipalStress principal = principal_of(stress[p]);
    largest = std::max({largest, principal.major / s.tension, -principal.minor / s.compression});
  }
  return 1.0 / largest;
}

/// Velocities that no support forbids: nodes first, then the bulges of edges between them.
void lift_off_supports(const std::vector<LinearForm>& pushing, Eigen::VectorXd& u) {
  for (const int terms : {1, 3}) {
    for (const LinearForm& form : pushing) {
      const auto active = form.active_terms();
      const bool is_bulge = active.back().coefficient > 1.0;
      if (is_bulge != (terms == 3)) continue;
      const double below = -form.of(u);
      if (below > 0.0) u(active.back().index) += below / active.back().coefficient;
    }
  }
}

/// Work that each triangle takes on a mechanism if masonry has no tension at all.
std::vector<double> work_taken(const BoundProblem& problem, const Equilibrium& equilibrium,
                               const Eigen::VectorXd& u) {
  std::vector<Mohr> strain(index_of(equilibrium.point_count()));
  equilibrium.strains(u, strain);
  std::vector<double> work(problem.triangles.size(), 0.0);
  for (std::size_t p = 0; p < strain.size(); ++p) {
    const std::size_t i = p / 3;
    work[i] += largest_work({problem.compression[i] / problem.masonry_strength,
                             problem.tension[i] / problem.masonry_strength, 0.0},
                            strain[p])
                   .at_0;
  }
  return work;
}

double sum_of(const std::vector<double>& values) {
  double sum = 0.0;
  for (const double value : values) sum += value;
  return sum;
}

}  // namespace

LowerBound lower_bound(const BoundProblem& problem, double most) {
  const FlowElements elements = lower_elements(problem);
  const Equilibrium equilibrium(elements.matrices);
  SparseCholesky factor(equilibrium.pattern().empty());
  const LimitProgram program = factor_program(problem, elements, most);
  LimitIterate iterate(equilibrium, factor, program);
  std::vector<Mohr> stress;
  std::vector<double> force;
  double parameter = 0.0;
  LowerBound lower;
  lower.iterations = run(iterate, 1.0, bound_gap, [&](bool balanced) {
    if (!balanced || iterate.parameter() < parameter) return;
    stress = iterate.stress();
    force = iterate.force();
    parameter = iterate.parameter();
  });
  if (stress.empty()) return lower;
  Eigen::VectorXd all = parameter * elements.load;
  for (std::size_t j = 0; j < force.size(); ++j) program.forces[j].along.push(force[j], all);
  const double rest = Balance(equilibrium).mend(stress, all);
  const double scale = scale_into_strength(program.strength, stress);
  lower.factor = scale * parameter;
  lower.out_of_balance = rest / (parameter * elements.load.lpNorm<Eigen::Infinity>());
  for (std::size_t p = 0; p < stress.size(); ++p) {
    if (problem.is_masonry[p / 3] == 0) continue;
    lower.tension = std::max(lower.tension, scale * principal_of(stress[p]).major);
  }
  lower.tension *= problem.masonry_strength;
  return lower;
}

UpperBound upper_bound(const BoundProblem& problem, double most) {
  const FlowElements elements = upper_elements(problem);
  const Equilibrium equilibrium(elements.matrices);
  SparseCholesky factor(equilibrium.pattern().empty());
  const LimitProgram program = factor_program(problem, elements, most);
  LimitIterate iterate(equilibrium, factor, program);
  UpperBound upper;
  upper.factor = most;
  Eigen::VectorXd best = Eigen::VectorXd::Zero(elements.matrices.equations);
  upper.iterations = run(iterate, 1.0, bound_gap, [&](bool) {
    Eigen::VectorXd u = iterate.velocity();
    lift_off_supports(elements.pushing, u);
    const double driven = u.dot(elements.load);
    if (driven <= 0.0) return;
    const double factor_now = sum_of(work_taken(problem, equilibrium, u)) / driven;
    if (factor_now >= upper.factor) return;
    upper.factor = factor_now;
    best = u;
  });
  upper.work = work_taken(problem, equilibrium, best);
  const double taken = sum_of(upper.work);
  if (taken > 0.0)
    for (double& work : upper.work) work /= taken;
  upper.velocity.assign(problem.nodes.size(), {});
  double largest = 0.0;
  for (int triangle = 0; triangle < problem.triangle_count(); ++triangle) {
    const auto number = elements.matrices.numbers_of(triangle);
    for (std::size_t i = 0; i < 3; ++i) {
      const auto of = [&](int equation) { return equation < 0 ? 0.0 : best(equation); };
      mesh::Point& v = upper.velocity[index_of(problem.triangles[index_of(triangle)][i])];
      v = {of(number[2 * i]), of(number[2 * i + 1])};
      largest = std::max(largest, std::hypot(v.x, v.y));
    }
  }
  if (largest > 0.0) {
    for (mesh::Point& v : upper.velocity) v = {v.x / largest, v.y / largest};
  }
  return upper;
}

LooseTriangles loose_triangles(const BoundProblem& problem) {
  const FlowElements elements = lower_elements(problem);
  const Equilibrium equilibrium(elements.matrices);
  SparseCholesky factor(equilibrium.pattern().empty());
  LimitProgram program = bound_program(problem, elements);
  program.load = elements.load;
  const std::size_t first = program.forces.size();
  std::vector<int> triangle_of;
  Eigen::VectorXd applied = -elements.load;
  for (int triangle = 0; triangle < problem.triangle_count(); ++triangle) {
    const double weight = problem.weight[index_of(triangle)] / elements.force_unit;
    if (weight <= 0.0) continue;
    const bool is_masonry = problem.is_masonry[index_of(triangle)] != 0;
    program.forces.push_back({.along = elements.lifting[index_of(triangle)],
                              .most = weight,
                              .cost = is_masonry ? 1.0 : hung_load_cost});
    triangle_of.push_back(triangle);
    elements.lifting[index_of(triangle)].push(-weight, applied);
  }
  const std::size_t second = program.forces.size();
  for (int equation = 0; equation < applied.size(); ++equation) {
    if (applied(equation) <= 1e-12) continue;
    UnknownForce hanger{.most = applied(equation), .cost = hung_load_cost};
    hanger.along.add(equation, 1.0);
    program.forces.push_back(hanger);
  }
  LimitIterate iterate(equilibrium, factor, program);
  LooseTriangles loose;
  loose.part.assign(problem.triangles.size(), 0.0);
  std::vector<double> force(program.forces.size(), 0.0);
  loose.iterations = run(iterate, program.load.lpNorm<1>(), 1e-4, [&](bool balanced) {
    if (balanced) force = iterate.force();
  });
  for (std::size_t j = first; j < second; ++j) {
    const int triangle = triangle_of[j - first];
    const double newtons = elements.force_unit * force[j];
    (problem.is_masonry[index_of(triangle)] != 0 ? loose.masonry : loose.load) += newtons;
    loose.part[index_of(triangle)] = newtons / problem.weight[index_of(triangle)];
  }
  for (std::size_t j = second; j < force.size(); ++j) loose.load += elements.force_unit * force[j];
  return loose;
}

}  // namespace deadshore::solver
