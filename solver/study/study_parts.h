#pragma once

#include "solver/result/results.h"
#include "solver/study/comparison.h"
#include "solver/study/panel_study.h"

#include <vector>

/// What studies of a job at once and stage by stage have in common.
namespace deadshore::solver {

/// What the hand method gives each needle, N, in the job's order.
[[nodiscard]] std::vector<double> hand_loads(const SpreadResult& hand);

/// How needles and bases of an analysis differ from those of the same on larger elements.
[[nodiscard]] MeshEffect mesh_effect(const PanelResult& fine, const PanelResult& coarse,
                                     double coarse_size);

/// Solves the uncracked wall with what is asked changed, on the study's mesh.
[[nodiscard]] WhatIf ask_what_if(const Job& job, PanelStudy& study);

/// Refuses a mesh that weighs something else than the hand sum of all loads, `expected` N.
/// \throws SolveError
void check_load_total(const PanelResult& analysis, double expected);

/// Adds every check of the permanent beam, if there is one, and what needs no finite elements: the
/// take-down, the dead shores, the way of the beam, what is carried away, the marks to watch. All
/// checks come out worst first.
void add_beam_and_site(JobResult& result);

}  // namespace deadshore::solver
