#include "solver/result/result_stages.h"

namespace deadshore::solver {

bool is_staged(const JobResult& result) {
  return result.job.analysis.sequence == Sequence::staged;
}

std::vector<StageState> states_of(const JobResult& result) {
  std::vector<Stage> stages;
  for (const StageResult& stage : result.stages) {
    stages.push_back({stage.name, stage.day, stage.operations});
  }
  return states_of(result.job, stages);
}

}  // namespace deadshore::solver
