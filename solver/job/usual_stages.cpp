#include "solver/job/usual_stages.h"

#include "solver/job/cut.h"
#include "solver/job/stage_state.h"

#include <algorithm>

namespace deadshore::solver {

namespace {

// Days between the steps, common practice, no source.
constexpr double padstone_cures = 7.0;
constexpr double packing_cures = 3.0;  // before the first needle is released
constexpr double between_needles = 1.0;
constexpr double finished_after_packing = 28.0;

std::vector<Operation> for_each_shore(const Job& job, Act act) {
  std::vector<Operation> operations;
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i) operations.push_back({act, ShoreId{i}});
  return operations;
}

/// Needles one by one: each is packed tight (and jacked) before the next is begun.
std::vector<Operation> needles_in(const Job& job) {
  std::vector<Operation> operations;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    operations.push_back({Act::fit, NeedleId{i}});
    if (job.needles[i].preload > 0.0) operations.push_back({Act::preload, NeedleId{i}});
  }
  return operations;
}

std::vector<Operation> lintels_out(const Job& job) {
  std::vector<Operation> operations;
  for (std::size_t i = 0; i < job.lintels.size(); ++i) {
    if (takes_out(job.wall, job.lintels[i].shape)) operations.push_back({Act::remove, LintelId{i}});
  }
  return operations;
}

/// "N1 out"; where a needle has such a name that another stage is called so, "needle ... out".
std::string name_of_release(const Needle& needle, const std::vector<Stage>& stages) {
  std::string name = needle.name + " out";
  while (std::ranges::count(stages, name, &Stage::name) > 0) name = "needle " + name;
  return name;
}

void add_beam(const Job& job, double day, std::vector<Stage>& stages) {
  stages.push_back({"pockets", day, {{Act::remove, WorkPart::pockets}}});
  stages.push_back({"padstones", day, {{Act::place, WorkPart::padstones}}});
  day += padstone_cures;
  stages.push_back({"beam in", day, {{Act::place, WorkPart::beam}}});
  stages.push_back({"packed", day, {{Act::pack, WorkPart::beam}}});
  const double packed = day;
  day += packing_cures;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    stages.push_back({name_of_release(job.needles[i], stages), day, {{Act::release, NeedleId{i}}}});
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
  stages.push_back({"cut", 1.0, {{Act::remove, WorkPart::cut}}});
  if (job.beam) add_beam(job, 1.0, stages);
  return stages;
}

std::vector<Stage> stages_of(const Job& job) {
  return job.stages.empty() ? usual_stages(job) : job.stages;
}

std::vector<Stage> analysed_stages(const Job& job) {
  return job.analysis.sequence == Sequence::at_once ? std::vector{stage_at_once(job)}
                                                    : stages_of(job);
}

}  // namespace deadshore::solver
