#include "tests/solver/staged_samples.h"

#include "solver/fem/job_mesh.h"
#include "solver/job/stage_state.h"
#include "solver/stages/stage_sequence.h"
#include "tests/solver/invented_wall.h"

#include <stdexcept>

namespace deadshore::solver::testing {

Job staged_wall_job() {
  Job job = invented_wall();
  job.wall.cut = {900.0, 5100.0, 2400.0};
  job.wall.openings[0].left = 1000.0;
  job.needles[0].x = 1300.0;
  job.needles[3].x = 4700.0;
  PermanentBeam beam;
  beam.name = "beam";
  beam.member = steel_member(
      {"UC 203x203x46", SectionKind::i_section, 203.2, 203.6, 7.2, 11.0, 10.2}, SteelGrade::s275);
  beam.bearing = 150.0;
  beam.padstone = {300.0, 150.0, 30000.0, 0.2, 24e-6, 25.0};
  beam.packing = {20.0, 15000.0, 20.0, 0.25};
  job.beam = beam;
  job.dead_shores = {{"D1", LineLoadId{0}, 1.0, {}, {}}};
  job.analysis.masonry = {MasonryModel::uncracked};
  job.analysis.sequence = Sequence::staged;
  job.analysis.mesh_size = 150.0;
  return job;
}

std::vector<StageResult> run(const Job& job, const std::vector<Stage>& stages) {
  return run_stages(job, stages, whole_mesh_of(job, job.analysis.mesh_size));
}

std::vector<StageResult> run(const Job& job) {
  return run(job, usual_stages(job));
}

PanelResult at_once(Job job, const mesh::WallMesh& mesh, MasonryModel model) {
  job.analysis.masonry = {model};
  return run_stages(job, {stage_at_once(job)}, mesh).front().analyses.front();
}

const StageResult& stage_named(const std::vector<StageResult>& stages, const std::string& name) {
  for (const StageResult& stage : stages) {
    if (stage.name == name) return stage;
  }
  throw std::out_of_range("no stage " + name);
}

const PanelResult& first_analysis(const std::vector<StageResult>& stages, const std::string& name) {
  return stage_named(stages, name).analyses.front();
}

}  // namespace deadshore::solver::testing
