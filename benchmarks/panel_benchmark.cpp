// How long each part of a panel's analysis takes, on an invented wall of 6.0 x 5.2 m over a 4.8 m
// cut. The argument of each benchmark is the element size in tenths of a millimetre. The peer of
// the factorisation is Eigen's own sparse Cholesky with its AMD ordering: compare the two rows of a
// size.
//
//   cmake --preset bench && cmake --build --preset bench
//   build/bench/benchmarks/deadshore_panel_benchmark

#include "solver/model/job.h"
#include "solver/panel/newton.h"
#include "solver/panel/panel_model.h"
#include "solver/panel/wall_panel.h"

#include <Eigen/SparseCholesky>

#include <benchmark/benchmark.h>

namespace deadshore::solver {
namespace {

Job wall(double mesh_size) {
  Job job;
  job.wall.length = 6000.0;
  job.wall.top = {{0.0, 5200.0}, {6000.0, 5200.0}};
  job.wall.cut = {600.0, 5400.0, 2400.0};
  job.wall.openings = {{"left window", 900.0, 3300.0, 1100.0, 1250.0, 0.0},
                       {"right window", 3700.0, 3300.0, 1300.0, 1250.0, 0.0}};
  job.thickness = 215.0;
  job.masonry = {"soft brick", 19e-6, 1500.0, 0.2, 2.4, 0.1};
  job.line_loads = {{"roof", 5200.0, false, {0.0, 6000.0}, 6.0, 3.0}};
  job.needles = {{"N1", 1100.0, 152.0, 20000.0, 0.0, 0.0},
                 {"N2", 2400.0, 152.0, 20000.0, 0.0, 0.0},
                 {"N3", 3600.0, 152.0, 20000.0, 0.0, 0.0},
                 {"N4", 4900.0, 152.0, 20000.0, 0.0, 0.0}};
  job.analysis.mesh_size = mesh_size;
  return job;
}

/// A wall on its mesh with an assembled uncracked stiffness.
struct Assembled {
  explicit Assembled(const benchmark::State& state)
      : job(wall(0.1 * static_cast<double>(state.range(0)))),
        mesh(mesh_of(job)),
        model(mesh.quads, supports_of(job, mesh.quads)),
        loading(loading_of(job, model, MasonryModel::uncracked)),
        stiffness(model.empty_stiffness()) {
    const Eigen::VectorXd resistance = model.resistance(loading, model.start(), &stiffness);
    out_of_balance = model.gather_free(loading.load - resistance);
  }

  Job job;
  mesh::WallMesh mesh;
  PanelModel model;
  PanelLoading loading;
  SparseStiffness stiffness;
  Eigen::VectorXd out_of_balance;
};

void mesh_wall(benchmark::State& state) {
  const Job job = wall(0.1 * static_cast<double>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(mesh_of(job));
}

void order_and_analyse_pattern(benchmark::State& state) {
  const Job job = wall(0.1 * static_cast<double>(state.range(0)));
  const mesh::WallMesh mesh = mesh_of(job);
  const auto supports = supports_of(job, mesh.quads);
  for (auto _ : state) benchmark::DoNotOptimize(PanelModel(mesh.quads, supports));
}

void assemble(benchmark::State& state) {
  Assembled wall(state);
  const Eigen::VectorXd u = wall.model.start();
  for (auto _ : state) {
    benchmark::DoNotOptimize(wall.model.resistance(wall.loading, u, &wall.stiffness));
  }
  state.counters["equations"] = wall.model.equations().count();
  state.counters["bytes/s"] =
      benchmark::Counter(static_cast<double>(wall.stiffness.nonZeros()) * sizeof(double),
                         benchmark::Counter::kIsIterationInvariantRate);
}

void factorise(benchmark::State& state) {
  Assembled wall(state);
  for (auto _ : state) benchmark::DoNotOptimize(wall.model.factor().factorize(wall.stiffness));
}

void factorise_peer_eigen(benchmark::State& state) {
  Assembled wall(state);
  Eigen::SimplicialLLT<SparseStiffness, Eigen::Lower> peer;
  peer.analyzePattern(wall.stiffness);
  for (auto _ : state) peer.factorize(wall.stiffness);
}

void solve(benchmark::State& state) {
  Assembled wall(state);
  if (!wall.model.factor().factorize(wall.stiffness)) state.SkipWithError("singular");
  for (auto _ : state) benchmark::DoNotOptimize(wall.model.factor().solve(wall.out_of_balance));
}

void analyse_cracked(benchmark::State& state) {
  Assembled wall(state);
  const PanelLoading cracked = loading_of(wall.job, wall.model, MasonryModel::cracked);
  int iterations = 0;
  for (auto _ : state) {
    Eigen::VectorXd u = wall.model.start();
    iterations = minimise(wall.model, cracked, u).iterations;
  }
  state.counters["iterations"] = iterations;
}

constexpr std::int64_t sizes[] = {500, 250, 125};

void with_sizes(benchmark::internal::Benchmark* b) {
  for (const std::int64_t size : sizes) b->Arg(size);
  b->Unit(benchmark::kMillisecond);
}

BENCHMARK(mesh_wall)->Apply(with_sizes);
BENCHMARK(order_and_analyse_pattern)->Apply(with_sizes);
BENCHMARK(assemble)->Apply(with_sizes);
BENCHMARK(factorise)->Apply(with_sizes);
BENCHMARK(factorise_peer_eigen)->Apply(with_sizes);
BENCHMARK(solve)->Apply(with_sizes);
BENCHMARK(analyse_cracked)->Arg(500)->Arg(250)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace deadshore::solver
