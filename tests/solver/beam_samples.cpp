#include "tests/solver/beam_samples.h"

#include "tests/solver/sample_sections.h"

#include <algorithm>
#include <iterator>
#include <stdexcept>
#include <utility>

namespace deadshore::solver::testing {

Job weightless_beam_job() {
  Job job;
  job.title = "Invented beam";
  job.wall.length = 6000.0;
  job.wall.top = {{0.0, 5000.0}, {6000.0, 5000.0}};
  job.wall.cut = {1500.0, 4500.0, 2400.0};
  job.thickness = 215.0;
  job.masonry = {"invented brick", 0.0, 1500.0, 0.2, 4.0, 0.1};
  PermanentBeam beam;
  beam.name = "B1";
  beam.member = steel_member(ub_254x31, SteelGrade::s275);
  beam.member.properties.mass = 0.0;
  beam.bearing = 225.0;
  beam.padstone = {440.0, 215.0, 25000.0, 0.2, 0.0, 20.0};
  beam.packing = {25.0, 15000.0, 20.0, 0.25};
  job.beam = beam;
  return job;
}

Job beam_job() {
  Job job = weightless_beam_job();
  job.masonry.unit_weight = 19e-6;
  job.beam->member = steel_member(ub_254x31, SteelGrade::s275);
  job.beam->padstone.unit_weight = 24e-6;
  job.line_loads = {{"floor", 2700.0, false, {0.0, 6000.0}, 4.0, 3.0}};
  return job;
}

PanelResult with_beam(MasonryModel model, double moment, double shear) {
  PanelResult analysis;
  analysis.model = model;
  BeamResult beam;
  beam.reaction_left = beam.reaction_right = shear;
  beam.largest_moment = moment;
  beam.largest_shear = shear;
  beam.sag = 1.0;
  beam.stations = {{3000.0, moment, shear, 1.0, 0.0}};
  analysis.beam = beam;
  return analysis;
}

JobResult staged_result(const Job& job, std::vector<PanelResult> analyses) {
  JobResult result;
  result.job = job;
  StageResult stage;
  stage.name = "packed";
  stage.operations = {{Act::place, WorkPart::beam}, {Act::pack, WorkPart::beam}};
  stage.analyses = std::move(analyses);
  result.stages = {stage};
  return result;
}

std::vector<Check> rows_of(const std::vector<Check>& checks, const std::string& member,
                           const std::string& check) {
  std::vector<Check> rows;
  std::copy_if(checks.begin(), checks.end(), std::back_inserter(rows),
               [&](const Check& row) { return row.member == member && row.check == check; });
  return rows;
}

Check row_of(const std::vector<Check>& checks, const std::string& member, const std::string& check,
             const std::string& stage) {
  std::vector<Check> rows = rows_of(checks, member, check);
  std::erase_if(rows, [&](const Check& row) { return row.stage != stage; });
  if (rows.size() != 1)
    throw std::logic_error("not one row: " + member + " " + check + " " + stage);
  return rows.front();
}

}  // namespace deadshore::solver::testing
