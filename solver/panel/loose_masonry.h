#pragma once

#include "solver/job/job.h"
#include "solver/panel/panel_model.h"
#include "solver/panel/panel_result.h"

#include <Eigen/Core>

namespace deadshore::solver {

/// What happens to a cracked wall when the residual stiffness of its cracks is cut to a tenth.
struct ResidualTrial {
  Eigen::VectorXd movement;  ///< further displacement, 2 per node, mm

  /// Change of the push of each bed that stands on something outside the panel, over the largest of
  /// their pushes; none where nothing pushes.
  std::vector<double> push_change;
};

/// Moves on from the solution `u` at a tenth of the residual, by at most `most_steps` of Newton's.
/// In a first step cracks stay open, so that masonry which the residual stiffness alone carries
/// stretches by nine times as much again: one step shows where that is as well as a converged
/// solution does. Contacts that open or close may mislead it, so no wall should be said to fall on
/// one step alone.
/// \param u converged solution, 2 per node, mm
/// \throws SolveError if the stiffness is singular
[[nodiscard]] ResidualTrial cut_residual(PanelModel& model, const PanelLoading& loading,
                                         const Eigen::VectorXd& u, int most_steps = 1);

/// Decides what of a cracked wall stands, from a trial at a tenth of the residual.
///
/// Masonry that the residual stiffness alone carries moves about ten times as far in the trial;
/// masonry that stands hardly moves. Quadrilaterals that move on by more than a tenth of
/// `reference_movement` are marked loose, except in patches lighter than a brick, and their patches
/// listed with weight and what would hold them. The wall has no equilibrium, and `no_equilibrium`
/// says what is missing, in any of three cases:
/// - loose masonry is over a third of the wall above the soffit;
/// - over a twentieth of the applied loads stand on it;
/// - the push of a needle changes by more than a twentieth of the largest.
/// \param reference_movement largest displacement of the uncracked wall under the same loads, mm
void judge_trial(const Job& job, const PanelModel& model, const PanelLoading& loading,
                 const ResidualTrial& trial, double reference_movement, PanelResult& result);

}  // namespace deadshore::solver
