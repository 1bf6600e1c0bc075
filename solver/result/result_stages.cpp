#include "solver/result/result_stages.h"

namespace deadshore::solver {

bool is_staged(const JobResult& result) {
  return result.job.analysis.sequence == Sequence::staged;
}

}  // namespace deadshore::solver
