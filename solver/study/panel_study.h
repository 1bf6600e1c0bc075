#pragma once

#include "mesh/quad_mesh.h"
#include "solver/job/job.h"
#include "solver/panel/newton.h"
#include "solver/panel/panel_model.h"
#include "solver/panel/panel_result.h"
#include "solver/study/stopwatch.h"

#include <Eigen/Core>

#include <functional>

namespace deadshore::solver {

/// A job's wall on one mesh, ready to be analysed under either masonry model and with other needles
/// or loads. The mesh must outlive the study.
class PanelStudy {
 public:
  PanelStudy(const Job& job, const mesh::QuadMesh& mesh);

  /// Called after each Newton step with the model, the iteration and the relative residual.
  using Report = std::function<void(MasonryModel, int, double)>;

  /// Reactions, fields and, for the cracked model, loose masonry. `start` holds displacements (2
  /// per node) to begin the cracked solution from; the uncracked ones where it is empty. \throws
  /// SolveError if it does not converge or is not in equilibrium to 1e-8
  [[nodiscard]] PanelResult analyse(const Job& job, MasonryModel masonry,
                                    const Eigen::VectorXd& start, const Report& report,
                                    Stopwatch& stopwatch);

  /// Uncracked reactions alone.
  [[nodiscard]] PanelResult uncracked_reactions(const Job& job);

 private:
  /// Solution under a loading, from `start` on; counts its factorisations in `result`.
  [[nodiscard]] Eigen::VectorXd solve(const PanelLoading& loading, const Eigen::VectorXd& start,
                                      const std::function<void(int, double)>& progress,
                                      PanelResult& result);
  const Eigen::VectorXd& uncracked_displacement(const Job& job, const Report& report,
                                                PanelResult& result);

  PanelModel model_;
  Eigen::VectorXd uncracked_;  ///< of the last job; a start for the next
};

}  // namespace deadshore::solver
