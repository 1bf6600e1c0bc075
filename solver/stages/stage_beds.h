#pragma once

#include "mesh/quad_mesh.h"
#include "solver/job/job.h"
#include "solver/job/stage_state.h"
#include "solver/panel/beam_line.h"
#include "solver/panel/contact_bed.h"

#include <optional>
#include <vector>

/// What touches the wall at a stage, as beds of contact. Their points come in the same order at
/// every stage, so that what they remember can be carried along.
namespace deadshore::solver {

/// The permanent beam behind `first_node` nodes of a wall. \pre job.beam
[[nodiscard]] BeamLine beam_line_of(const Job& job, int first_node);

/// Beds between the beam and the wall: its packing (with a stiffness of 1; it depends on age) and
/// its two bearings.
[[nodiscard]] std::vector<ContactBed> beam_beds(const Job& job, const mesh::QuadMesh& mesh,
                                                const BeamLine& beam);

/// All beds that are there at a stage, every rest at zero approach: needles, joist ends, and the
/// beam's if it is there.
[[nodiscard]] std::vector<ContactBed> beds_at(const Job& job, const mesh::QuadMesh& mesh,
                                              const StageState& state,
                                              const std::optional<BeamLine>& beam);

}  // namespace deadshore::solver
