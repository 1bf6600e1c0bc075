// How long each part of a panel's analysis takes on an invented wall, and what this machine could
// do at best. Names are PART/ELEMENT/UNKNOWNS; `bash benchmarks/run` runs each size in a process of
// its own, so that the peak of memory is that size's.

#include "benchmarks/invented_wall.h"
#include "benchmarks/machine_limits.h"
#include "solver/panel/newton.h"
#include "solver/panel/panel_model.h"
#include "solver/panel/wall_panel.h"

#include <Eigen/SparseCholesky>
#include <fmt/format.h>

#include <benchmark/benchmark.h>
#include <memory>
#include <sys/resource.h>

namespace deadshore::benchmarks {
namespace {

using mesh::QuadOrder;
using solver::MasonryModel;
using solver::PanelLoading;
using solver::PanelModel;
using solver::SparseStiffness;

/// A wall on its mesh with an assembled uncracked stiffness.
struct Assembled {
  Assembled(QuadOrder element, double unknowns)
      : job(invented_wall(element, unknowns)),
        wall(solver::mesh_of(job)),
        supports(solver::supports_of(job, wall.quads)),
        equations(wall.quads, supports),
        model(wall.quads, supports),
        loading(solver::loading_of(job, model, MasonryModel::uncracked)),
        stiffness(model.empty_stiffness()) {
    const Eigen::VectorXd resistance = model.resistance(loading, model.start(), &stiffness);
    out_of_balance = model.gather_free(loading.load - resistance);
  }

  solver::Job job;
  mesh::WallMesh wall;
  std::vector<solver::Support> supports;
  solver::EquationMap equations;
  PanelModel model;
  PanelLoading loading;
  SparseStiffness stiffness;
  Eigen::VectorXd out_of_balance;
};

/// Made when first asked for, then shared by the parts.
class AssembledOnDemand {
 public:
  AssembledOnDemand(QuadOrder element, double unknowns) : element_(element), unknowns_(unknowns) {}

  Assembled& get() {
    if (!made_) made_ = std::make_unique<Assembled>(element_, unknowns_);
    return *made_;
  }

 private:
  QuadOrder element_;
  double unknowns_;
  std::unique_ptr<Assembled> made_;
};

void mesh_wall(benchmark::State& state, Assembled& at) {
  for (auto _ : state) benchmark::DoNotOptimize(solver::mesh_of(at.job));
}

void order(benchmark::State& state, Assembled& at) {
  for (auto _ : state) {
    benchmark::DoNotOptimize(solver::EquationMap(at.wall.quads, at.supports));
  }
}

void pattern(benchmark::State& state, Assembled& at) {
  for (auto _ : state) {
    benchmark::DoNotOptimize(solver::StiffnessPattern(at.wall.quads, at.equations));
  }
}

void symbolic(benchmark::State& state, Assembled& at) {
  for (auto _ : state) benchmark::DoNotOptimize(solver::SparseCholesky(at.stiffness));
}

/// Bytes that an assembly cannot do without: values of the matrix read and written, their places,
/// shape gradients and areas read, once each.
double least_traffic(const Assembled& at) {
  const double quads = at.wall.quads.quad_count();
  const double size = 2.0 * at.wall.quads.nodes_per_quad();
  const double places = 0.5 * size * (size + 1.0) * sizeof(int);
  const double geometry = 4.0 * (size + 1.0) * sizeof(double);
  return 2.0 * sizeof(double) * static_cast<double>(at.stiffness.nonZeros()) +
         quads * (places + geometry);
}

void assemble(benchmark::State& state, Assembled& at) {
  const Eigen::VectorXd u = at.model.start();
  SparseStiffness stiffness = at.model.empty_stiffness();
  for (auto _ : state) {
    benchmark::DoNotOptimize(at.model.resistance(at.loading, u, &stiffness));
  }
  state.counters["matrix_bytes"] = static_cast<double>(at.stiffness.nonZeros()) * sizeof(double);
  state.counters["least_traffic"] = least_traffic(at);
}

void factorise(benchmark::State& state, Assembled& at) {
  for (auto _ : state) benchmark::DoNotOptimize(at.model.factor().factorize(at.stiffness));
  state.counters["factor_flops"] = at.model.factor().size().flops;
  state.counters["factor_bytes"] = at.model.factor().size().entries * sizeof(double);
}

void solve(benchmark::State& state, Assembled& at) {
  if (!at.model.factor().factorize(at.stiffness)) state.SkipWithError("singular");
  for (auto _ : state) benchmark::DoNotOptimize(at.model.factor().solve(at.out_of_balance));
}

/// Peak of memory up to here, B: of this size alone where the process does no other.
void peak_memory(benchmark::State& state, Assembled&) {
  rusage usage{};
  for (auto _ : state) getrusage(RUSAGE_SELF, &usage);
  state.counters["peak_bytes"] = 1024.0 * static_cast<double>(usage.ru_maxrss);
}

void newton_cracked(benchmark::State& state, Assembled& at) {
  const PanelLoading cracked = solver::loading_of(at.job, at.model, MasonryModel::cracked);
  int iterations = 0;
  for (auto _ : state) {
    Eigen::VectorXd u = at.model.start();
    iterations = solver::minimise(at.model, cracked, u).iterations;
  }
  state.counters["steps"] = iterations;
}

void factorise_with_eigen(benchmark::State& state, Assembled& at) {
  Eigen::SimplicialLLT<SparseStiffness, Eigen::Lower> eigen;
  eigen.analyzePattern(at.stiffness);
  for (auto _ : state) eigen.factorize(at.stiffness);
}

using Part = void (*)(benchmark::State&, Assembled&);

benchmark::internal::Benchmark* add(const char* part, Part run, QuadOrder element, int thousands,
                                    const std::shared_ptr<AssembledOnDemand>& wall) {
  const char* element_name = element == QuadOrder::four_node ? "four_node" : "eight_node";
  return benchmark::RegisterBenchmark(
             fmt::format("{}/{}/{}k", part, element_name, thousands).c_str(),
             [wall, run, thousands](benchmark::State& state) {
               Assembled& at = wall->get();
               run(state, at);
               state.counters["unknowns"] = at.equations.count();
             })
      ->Unit(benchmark::kMillisecond)
      ->MeasureProcessCPUTime();
}

void add_all(QuadOrder element, int thousands) {
  const auto wall = std::make_shared<AssembledOnDemand>(element, 1e3 * thousands);
  const auto add_part = [&](const char* name, Part run) {
    return add(name, run, element, thousands, wall);
  };
  add_part("mesh", mesh_wall);
  add_part("order", order);
  add_part("pattern", pattern);
  add_part("symbolic", symbolic);
  add_part("assemble", assemble);
  add_part("factorise", factorise);
  add_part("solve", solve);
  add_part("peak_memory", peak_memory)->Iterations(1)->Repetitions(1);
  if (thousands > 200) return;  // minutes
  add_part("newton_cracked", newton_cracked)->Iterations(1)->Repetitions(2);
  add_part("factorise_with_eigen", factorise_with_eigen)->Iterations(1)->Repetitions(2);
}

}  // namespace
}  // namespace deadshore::benchmarks

int main(int argc, char** argv) {
  benchmark::AddCustomContext("blas", deadshore::solver::blas_description());
  deadshore::benchmarks::register_machine_limits();
  for (const int thousands : {10, 50, 200, 1000}) {
    for (const auto element :
         {deadshore::mesh::QuadOrder::four_node, deadshore::mesh::QuadOrder::eight_node}) {
      deadshore::benchmarks::add_all(element, thousands);
    }
  }
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
