// The whole command on the example jobs, from job file to result folder, and the stages of a staged
// one. CPU times of all threads.

#include "benchmarks/cpu_clock.h"
#include "io/job/job_reader.h"
#include "io/results/results_writer.h"
#include "solver/fem/job_mesh.h"
#include "solver/fem/sparse_cholesky.h"
#include "solver/job/usual_stages.h"
#include "solver/spread/spread.h"
#include "solver/stages/staged_wall.h"
#include "solver/study/analyse.h"
#include "solver/study/needle_coupling.h"
#include "solver/study/study_parts.h"

#include <fmt/format.h>

#include <benchmark/benchmark.h>
#include <filesystem>
#include <string>
#include <unistd.h>

namespace deadshore::benchmarks {
namespace {

namespace fs = std::filesystem;

fs::path example(const std::string& name) {
  return fs::path(DEADSHORE_EXAMPLES) / (name + ".toml");
}

/// Reading, analysis, and results with note, figures and VTK files, as `deadshore run` does them.
void whole_command(benchmark::State& state, const std::string& name) {
  const fs::path out = fs::temp_directory_path() / fmt::format("deadshore-bench-{}", getpid());
  for (auto _ : state) {
    const double start = cpu_seconds();
    const io::JobFile file = io::read_job_file(example(name));
    const solver::Job job = io::parse_job(file.text, file.name);
    const double read = cpu_seconds();
    const solver::JobResult result = solver::analyse(job);
    const double analysed = cpu_seconds();
    io::write_results(result, file, out);
    const double written = cpu_seconds();
    state.counters["reading"] = read - start;
    state.counters["analysis"] = analysed - read;
    state.counters["writing"] = written - analysed;
  }
  fs::remove_all(out);
}

/// Each stage of the work under each masonry model; the needles as the hand method loads them.
void stages(benchmark::State& state, const std::string& name) {
  using solver::MasonryModel;
  using solver::StagedWall;
  solver::Job job = io::read_job(example(name));
  solver::update_stiffness(job, solver::hand_loads(solver::spread_at_45_degrees(job)));
  const mesh::WallMesh mesh = solver::whole_mesh_of(job, job.analysis.mesh_size);
  for (auto _ : state) {
    StagedWall uncracked(job, mesh, MasonryModel::uncracked);
    StagedWall cracked(job, mesh, MasonryModel::cracked);
    int number = 0;
    for (const solver::Stage& stage : solver::stages_of(job)) {
      const double start = cpu_seconds();
      const solver::PanelResult elastic = uncracked.advance(stage);
      const double half = cpu_seconds();
      const solver::PanelResult result = cracked.advance(stage, uncracked.movement());
      const std::string label = fmt::format("{:02} {}", ++number, stage.name);
      state.counters[label + " | uncracked s"] = half - start;
      state.counters[label + " | cracked s"] = cpu_seconds() - half;
      state.counters[label + " | uncracked iterations"] = elastic.iterations;
      state.counters[label + " | cracked iterations"] = result.iterations;
      if (!result.stands()) break;
    }
  }
  state.counters["quads"] = mesh.quads.quad_count();
}

using Part = void (*)(benchmark::State&, const std::string&);

void add(const char* part, Part run, const std::string& job) {
  benchmark::RegisterBenchmark(fmt::format("{}/{}", part, job).c_str(),
                               [run, job](benchmark::State& state) { run(state, job); })
      ->Unit(benchmark::kMillisecond)
      ->Iterations(1)
      ->MeasureProcessCPUTime();
}

}  // namespace
}  // namespace deadshore::benchmarks

int main(int argc, char** argv) {
  using deadshore::benchmarks::add;
  benchmark::AddCustomContext("blas", deadshore::solver::blas_description());
  for (const char* job : {"garden_wall", "kitchen_wall"}) {
    add("whole_command", deadshore::benchmarks::whole_command, job);
  }
  add("stages", deadshore::benchmarks::stages, "kitchen_wall");
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
