#pragma once

#include "solver/job/job.h"
#include "solver/panel/newton.h"
#include "solver/panel/panel_model.h"
#include "solver/panel/panel_result.h"

#include <Eigen/Core>

namespace deadshore::solver {

/// Refuses a solution that has not converged.
/// \param masonry which analysis it is, for the message
/// \throws SolveError unless `report.converged`
void require_converged(const NewtonReport& report, MasonryModel masonry);

/// Fills in what a solution `u` tells, on the model's own mesh: reactions, fields, and for cracked
/// masonry what of it is loose.
///
/// \param u solution, 2 entries per node, mm
/// \param reference_movement largest displacement of the uncracked wall under the same loads, mm;
///   the measure of how far loose masonry moves; 0 leaves loose masonry out
/// \param result has its `model` already
/// \throws SolveError unless reactions and loads are in equilibrium to 1e-8 of the loads
void complete_result(const Job& job, PanelModel& model, const PanelLoading& loading,
                     const Eigen::VectorXd& u, double reference_movement, PanelResult& result);

}  // namespace deadshore::solver
