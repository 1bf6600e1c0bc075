#pragma once

#include "solver/job/job.h"
#include "solver/result/results.h"

#include <span>
#include <vector>

/// Finds what the reactions of a job depend on: everything that is unsure is changed on its own
/// (see sensitivity.h) and the wall solved again. Needles keep the stiffness that they have in
/// `job`, changed or not: their frames are not worked out again.
namespace deadshore::solver {

/// Size of the elements on which changes are found that cannot be condensed, mm: twice the run's;
/// of eight-node elements up to four times, as far as 400 mm. Measured on two walls, the brackets
/// come out within 0.03 kN of those from elements half that size.
[[nodiscard]] double what_if_size(const AnalysisOptions& analysis);

/// Of a wall taken through the stages, in the one in which the needles together carry most. Each
/// change is taken through them from the start, on elements of `what_if_size`, and added to the
/// reactions found; where there is but one stage, an uncracked wall on the run's own elements.
/// \param found the run's own stages, on `mesh`
[[nodiscard]] std::vector<Sensitivity> sensitivities_of(const Job& job,
                                                        const std::vector<Stage>& stages,
                                                        std::span<const StageResult> found,
                                                        const mesh::WallMesh& mesh);

}  // namespace deadshore::solver
