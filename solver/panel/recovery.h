#pragma once

#include "solver/job/job.h"
#include "solver/panel/panel_model.h"
#include "solver/panel/panel_result.h"

#include <Eigen/Core>

#include <vector>

namespace deadshore::solver {

/// Stresses and crack strains over the mesh at displacement `u` (2 per node, mm).
[[nodiscard]] PanelFields fields_of(const PanelModel& model, const PanelLoading& loading,
                                    const Eigen::VectorXd& u);

/// Load that only the residual stiffness of open cracks carries: the sum of the nodal forces by
/// which residual stress holds masonry up, N. Well under 1% of all load in a wall that stands.
[[nodiscard]] double load_on_residual(const PanelModel& model, const PanelLoading& loading,
                                      const Eigen::VectorXd& u);

/// Fills in reactions, settlements and the check of equilibrium at displacement `u` (2 per node,
/// mm). Leaves fields and loose masonry as they are.
void add_reactions(const Job& job, const PanelModel& model, const PanelLoading& loading,
                   const Eigen::VectorXd& u, PanelResult& result);

}  // namespace deadshore::solver
