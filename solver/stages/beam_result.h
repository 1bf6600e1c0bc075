#pragma once

#include "solver/job/job.h"
#include "solver/panel/beam_line.h"
#include "solver/panel/contact_bed.h"
#include "solver/panel/panel_result.h"

#include <optional>
#include <span>

namespace deadshore::solver {

/// What the permanent beam carries at a displacement: moments and shears from the forces of its
/// beds by statics. \param packing_age days; none where it is not packed \pre job.beam
[[nodiscard]] BeamResult beam_result_of(const Job& job, const BeamLine& beam,
                                        std::span<const ContactBed> beds, const Eigen::VectorXd& u,
                                        std::optional<double> packing_age);

}  // namespace deadshore::solver
