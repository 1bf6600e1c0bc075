#pragma once

#include "solver/job/job.h"
#include "solver/panel/newton.h"
#include "solver/panel/panel_model.h"
#include "solver/panel/panel_result.h"

#include <Eigen/Core>

namespace deadshore::solver {

/// Refuses a solution that has not converged, with a sentence that says so.
/// \throws SolveError
void require_converged(const NewtonReport& report, MasonryModel masonry);

/// Everything that a solution `u` tells, on the model's own mesh: reactions, fields, and for
/// cracked masonry what of it is loose. `result` holds its model already.
///
/// \param reference_movement largest displacement of the uncracked wall under the same loads, mm;
///   by it loose masonry is told; 0 leaves that out
/// \throws SolveError where it is not in equilibrium to 1e-8
void complete_result(const Job& job, PanelModel& model, const PanelLoading& loading,
                     const Eigen::VectorXd& u, double reference_movement, PanelResult& result);

}  // namespace deadshore::solver
