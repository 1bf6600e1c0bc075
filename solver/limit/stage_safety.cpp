#include "solver/limit/stage_safety.h"

#include "solver/model/error.h"

namespace deadshore::solver {

StageSafety stage_safety(const Job&, const StageState&, const mesh::WallMesh&) {
  throw SolveError("limit analysis is not there yet");
}

}  // namespace deadshore::solver
