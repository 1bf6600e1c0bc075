#pragma once

#include "mesh/wall_mesher.h"
#include "solver/result/results.h"
#include "solver/study/comparison.h"

#include <vector>

/// Parts of the study of a job.
namespace deadshore::solver {

/// What the hand method gives each needle, N, in the job's order.
[[nodiscard]] std::vector<double> hand_loads(const SpreadResult& hand);

/// How needles and bases of an analysis differ from those of the same on larger elements.
[[nodiscard]] MeshEffect mesh_effect(const PanelResult& fine, const PanelResult& coarse,
                                     double coarse_size);

/// Solves the uncracked wall at once with what is asked changed. \param mesh of the wall as cut
[[nodiscard]] WhatIf ask_what_if(const Job& job, const mesh::WallMesh& mesh);

/// Refuses a mesh that weighs something else than the hand sum of all loads, `expected` N.
/// \throws SolveError
void check_load_total(const PanelResult& analysis, double expected);

/// Adds every check of the permanent beam, if there is one, and what needs no finite elements: the
/// take-down, the dead shores, the way of the beam, what is carried away, the marks to watch. All
/// checks come out worst first.
void add_beam_and_site(JobResult& result);

}  // namespace deadshore::solver
