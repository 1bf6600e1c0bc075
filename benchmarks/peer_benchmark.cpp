// The elastic wall here and in deal.II with its sparse direct solver, from the same mesh. Before
// anything is timed both must give the same reactions. Run with
// --benchmark_enable_random_interleaving so that both see the same machine.

#include "benchmarks/elastic_problem.h"
#include "benchmarks/invented_wall.h"
#include "solver/fem/sparse_cholesky.h"

#include <fmt/format.h>

#include <algorithm>
#include <benchmark/benchmark.h>
#include <cmath>
#include <cstdio>
#include <memory>

namespace deadshore::benchmarks {
namespace {

constexpr double largest_difference = 1e-9;  // relative, of any reaction

using Solve = ElasticSolution (*)(const ElasticProblem&);

/// Largest relative difference of the reactions of two solutions.
double difference(const ElasticProblem& problem, const ElasticSolution& a,
                  const ElasticSolution& b) {
  const std::vector<Reaction> of_a = reactions_of(problem, a.displacement);
  const std::vector<Reaction> of_b = reactions_of(problem, b.displacement);
  double largest = 0.0;
  for (std::size_t i = 0; i < of_a.size(); ++i) {
    largest = std::max(largest, std::abs(of_a[i].force - of_b[i].force) / std::abs(of_a[i].force));
  }
  return largest;
}

void run(benchmark::State& state, const ElasticProblem& problem, Solve solve, double difference) {
  for (auto _ : state) {
    const SolutionTimes times = solve(problem).times;
    state.counters["set_up"] = times.set_up;
    state.counters["assembly"] = times.assembly;
    state.counters["factorisation"] = times.factorisation;
    state.counters["solution"] = times.solution;
  }
  state.counters["unknowns"] =
      static_cast<double>(problem.load.size()) - static_cast<double>(problem.supports.size());
  state.counters["reaction_difference"] = difference;
}

struct Side {
  const char* name;
  Solve solve;
};
constexpr Side sides[] = {{"here", solve_here}, {"dealii", solve_with_dealii}};

/// Registers both solutions of one size. False where they do not agree.
bool compare_at(int thousands) {
  const auto problem = std::make_shared<const ElasticProblem>(
      elastic_problem(invented_wall(mesh::QuadOrder::four_node, 1e3 * thousands)));
  const double apart = difference(*problem, solve_here(*problem), solve_with_dealii(*problem));
  fmt::print(stderr, "{}k: reactions differ by {:.1e}\n", thousands, apart);
  if (!(apart <= largest_difference)) return false;
  for (const Side& side : sides) {
    benchmark::RegisterBenchmark(fmt::format("{}/four_node/{}k", side.name, thousands).c_str(),
                                 [problem, solve = side.solve, apart](benchmark::State& state) {
                                   run(state, *problem, solve, apart);
                                 })
        ->Unit(benchmark::kMillisecond)
        ->Iterations(1)
        ->MeasureProcessCPUTime();
  }
  return true;
}

}  // namespace
}  // namespace deadshore::benchmarks

int main(int argc, char** argv) {
  benchmark::AddCustomContext("blas", deadshore::solver::blas_description());
  benchmark::Initialize(&argc, argv);
  for (const int thousands : {10, 50, 200}) {
    if (!deadshore::benchmarks::compare_at(thousands)) {
      std::fputs("the two programs do not agree: nothing is timed\n", stderr);
      return 1;
    }
  }
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
