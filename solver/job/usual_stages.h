#pragma once

#include "solver/job/job.h"

#include <vector>

namespace deadshore::solver {

/// The order of work that a careful builder would follow, made from the job (common practice, no
/// source): "as built"; "floors propped" where there are dead shores; "needles in"; "lintels out"
/// where the cut takes lintels; "cut"; and with a permanent beam "pockets", "padstones", "beam in",
/// "packed", a stage "NAME out" for each needle in the job's order from the third day after
/// packing, one a day, and "finished" four weeks after packing, with the dead shores slackened.
[[nodiscard]] std::vector<Stage> usual_stages(const Job& job);

/// The job's own stages, or the usual ones where it gives none.
[[nodiscard]] std::vector<Stage> stages_of(const Job& job);

/// The stages that an analysis follows: those, or a single one of the wall as cut where the job
/// asks for everything at once.
[[nodiscard]] std::vector<Stage> analysed_stages(const Job& job);

}  // namespace deadshore::solver
