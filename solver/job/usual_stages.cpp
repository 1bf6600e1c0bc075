#include "solver/job/usual_stages.h"

#include "solver/job/cut.h"

namespace deadshore::solver {

namespace {

// Days between the steps, common practice, no source.
constexpr double padstone_cures = 7.0;
constexpr double packing_cures = 3.0;
constexpr double between_needles = 1.0;
constexpr double finished_after_packing = 28.0;

std::vector<Operation> for_each_shore(const Job& job, Act act) {
  std::vector<Operation> operations;
  for (const DeadShore& shore : job.dead_shores) operations.push_back({act, shore.name});
  return operations;
}

/// Needles one by one: each is packed tight (and jacked) before the next is begun.
std::vector<Operation> needles_in(const Job& job) {
  std::vector<Operation> operations;
  for (const Needle& needle : job.needles) {
    operations.push_back({Act::fit, needle.name});
    if (needle.preload > 0.0) operations.push_back({Act::preload, needle.name});
  }
  return operations;
}

std::vector<Operation> lintels_out(const Job& job) {
  std::vector<Operation> operations;
  for (const Lintel& lintel : job.lintels) {
    if (takes_out(job.wall, lintel.shape)) operations.push_back({Act::remove, lintel.shape.name});
  }
  return operations;
}

void add_beam(const Job& job, double day, std::vector<Stage>& stages) {
  stages.push_back({"pockets", day, {{Act::remove, pockets_region}}});
  stages.push_back({"padstones", day, {{Act::place, padstones_part}}});
  day += padstone_cures;
  stages.push_back({"beam in", day, {{Act::place, beam_part}}});
  stages.push_back({"packed", day, {{Act::pack, beam_part}}});
  const double packed = day;
  day += packing_cures;
  for (const Needle& needle : job.needles) {
    stages.push_back({needle.name + " out", day, {{Act::release, needle.name}}});
    day += between_needles;
  }
  stages.push_back(
      {"finished", packed + finished_after_packing, for_each_shore(job, Act::slacken)});
  if (stages.back().day < day) stages.back().day = day;
}

}  // namespace

std::vector<Stage> usual_stages(const Job& job) {
  std::vector<Stage> stages{{"as built", 0.0, {}}};
  if (!job.dead_shores.empty()) {
    stages.push_back({"floors propped", 0.0, for_each_shore(job, Act::tighten)});
  }
  if (!job.needles.empty()) stages.push_back({"needles in", 0.0, needles_in(job)});
  if (std::vector<Operation> out = lintels_out(job); !out.empty()) {
    stages.push_back({"lintels out", 1.0, std::move(out)});
  }
  stages.push_back({"cut", 1.0, {{Act::remove, cut_region}}});
  if (job.beam) add_beam(job, 1.0, stages);
  return stages;
}

std::vector<Stage> stages_of(const Job& job) {
  return job.stages.empty() ? usual_stages(job) : job.stages;
}

}  // namespace deadshore::solver
