#include "solver/limit/limit_analysis.h"

#include "solver/fem/index.h"
#include "solver/fem/quad_shape.h"
#include "solver/limit/quad_elements.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace deadshore::solver {

namespace {

constexpr double factor_gap = 1e-3;
constexpr double loose_gap = 5e-5;  // of all load
constexpr double tension_gap = 5e-3;
constexpr double least_tension = 5e-3;  // of the compressive strength: below, the gap is absolute

/// Strength times thickness times the size of an element: forces of order 1 in these units.
double force_unit_of(const LimitProblem& problem) {
  const QuadGeometry geometry(problem.quads);
  double area = 0.0;
  double volume = 0.0;
  for (int quad = 0; quad < problem.quads.quad_count(); ++quad) {
    area += geometry.area(quad);
    volume += geometry.area(quad) * problem.thickness[index_of(quad)];
  }
  const double size = std::sqrt(area / std::max(1, problem.quads.quad_count()));
  return problem.masonry_strength * volume / area * size;
}

std::vector<double> times(const std::vector<double>& values, double factor) {
  std::vector<double> result = values;
  for (double& value : result) value *= factor;
  return result;
}

double sum(const std::vector<double>& values, std::size_t from, std::size_t to) {
  double total = 0.0;
  for (std::size_t i = from; i < to; ++i) total += values[i];
  return total;
}

}  // namespace

LimitAnalysis::LimitAnalysis(const LimitProblem& problem)
    : problem_(problem),
      force_unit_(force_unit_of(problem)),
      equations_(problem.quads, problem.supports),
      equilibrium_(quad_elements(problem.quads, equations_,
                                 times(problem.thickness, problem.masonry_strength / force_unit_))),
      solver_(equilibrium_) {}

LimitProgram LimitAnalysis::program(double tension) const {
  LimitProgram program;
  program.load = Eigen::VectorXd::Zero(equations_.count());
  for (std::size_t quad = 0; quad < problem_.compression.size(); ++quad) {
    const double own = problem_.is_masonry[quad] != 0 ? tension : problem_.tension[quad];
    program.strength.push_back({problem_.compression[quad] / problem_.masonry_strength,
                                std::max(own / problem_.masonry_strength, tension_left), 0.0});
  }
  for (const LinearForm& point : problem_.pushing) {
    program.forces.push_back({.along = point.over(equations_)});
  }
  return program;
}

Eigen::VectorXd LimitAnalysis::all_loads() const {
  const Eigen::Index nodes = problem_.quads.node_count();
  Eigen::VectorXd load = Eigen::VectorXd::Zero(2 * nodes);
  load(Eigen::seqN(1, nodes, 2)) = -(problem_.masonry_weight + problem_.other_load) / force_unit_;
  return equations_.gather_free(load);
}

/// A hanger on each node with load, like `kind` but for its place and its most.
void LimitAnalysis::add_hangers(LimitProgram& program, const Eigen::VectorXd& load,
                                const UnknownForce& kind) const {
  for (int node = 0; node < problem_.quads.node_count(); ++node) {
    const int equation = equations_.equation(node, 1);
    const double most = load(node) / force_unit_;
    if (equation < 0 || most <= 0.0) continue;
    UnknownForce hanger = kind;
    hanger.along.add(equation, 1.0);
    hanger.most *= most;
    hanger.most_rise *= most;
    program.forces.push_back(hanger);
  }
}

LimitSolution LimitAnalysis::solve(const LimitProgram& program, double scale, double gap) {
  LimitSolution solution = solver_.solve(program, scale, gap);
  iterations_ += solution.iterations;
  return solution;
}

std::vector<double> LimitAnalysis::mechanism_of(const Eigen::VectorXd& velocity) const {
  Eigen::VectorXd nodal = equations_.spread_out(velocity);
  const double largest = nodal.reshaped(2, nodal.size() / 2).colwise().norm().maxCoeff();
  if (largest > 0.0) nodal /= largest;
  return {nodal.begin(), nodal.end()};
}

mesh::Point LimitAnalysis::place_of_most_work(const LimitProgram& program,
                                              const Eigen::VectorXd& velocity) const {
  std::vector<Mohr> strain(index_of(equilibrium_.point_count()));
  equilibrium_.strains(velocity, strain);
  double most = -1.0;
  mesh::Point place;
  for (int quad = 0; quad < problem_.quads.quad_count(); ++quad) {
    double work = 0.0;
    for (int point = 0; point < quad_points; ++point) {
      work += largest_work(program.strength[index_of(quad)],
                           strain[index_of(quad_points * quad + point)])
                  .at_0;
    }
    if (work <= most) continue;
    most = work;
    place = {};
    for (const mesh::Point& corner : mesh::corners_of(problem_.quads, quad)) {
      place.x += 0.25 * corner.x;
      place.y += 0.25 * corner.y;
    }
  }
  return place;
}

LimitFactor LimitAnalysis::factor(double tension, double may_fall, double most) {
  LimitProgram program = this->program(tension);
  program.load_rise = all_loads();
  program.parameter_cost = -1.0;
  program.most_parameter = most;
  if (may_fall > 0.0) {
    UnknownForce hanger;
    hanger.most = 0.0;
    hanger.most_rise = 1.0;
    hanger.budget_share = 1.0;
    add_hangers(program, problem_.masonry_weight, hanger);
    program.budget = 0.0;
    program.budget_rise = may_fall / force_unit_;
  }
  const LimitSolution solution = solve(program, 1.0, factor_gap);
  return {-solution.admissible, -solution.bound, mechanism_of(solution.velocity),
          place_of_most_work(program, solution.velocity)};
}

double LimitAnalysis::upper_factor(const std::vector<double>& mechanism, double tension) const {
  const Eigen::VectorXd velocity = equations_.gather_free(
      Eigen::Map<const Eigen::VectorXd>(mechanism.data(), std::ssize(mechanism)));
  const double work = velocity.dot(all_loads());
  if (work <= 0.0) return std::numeric_limits<double>::infinity();
  const LimitProgram program = this->program(tension);
  std::vector<Mohr> strain(index_of(equilibrium_.point_count()));
  equilibrium_.strains(velocity, strain);
  double dissipated = 0.0;
  for (std::size_t point = 0; point < strain.size(); ++point) {
    dissipated += largest_work(program.strength[point / quad_points], strain[point]).at_0;
  }
  return dissipated / work;
}

bool LimitAnalysis::stands() {
  constexpr double little_more = 1.02;
  return factor(0.0, 0.0, little_more).lower >= 1.0;
}

LooseMasonry LimitAnalysis::loose_masonry() {
  LimitProgram program = this->program(0.0);
  program.load = all_loads();
  UnknownForce hanger;
  hanger.most = 1.0;
  hanger.cost = 1.0;
  const std::size_t first = program.forces.size();
  add_hangers(program, problem_.masonry_weight, hanger);
  const std::size_t second = program.forces.size();
  hanger.cost = load_cost;
  add_hangers(program, problem_.other_load, hanger);
  const LimitSolution solution = solve(program, program.load.lpNorm<1>(), loose_gap);
  return {force_unit_ * sum(solution.force, first, second),
          force_unit_ * sum(solution.force, second, solution.force.size()),
          mechanism_of(solution.velocity)};
}

double LimitAnalysis::tension_needed() {
  LimitProgram program = this->program(0.0);
  program.load = all_loads();
  for (std::size_t quad = 0; quad < program.strength.size(); ++quad) {
    if (problem_.is_masonry[quad] != 0) program.strength[quad].tension_rise = 1.0;
  }
  program.parameter_cost = 1.0;
  program.most_parameter = 1.0;
  const double t = solve(program, least_tension, tension_gap).parameter;
  return t * problem_.masonry_strength;
}

}  // namespace deadshore::solver
