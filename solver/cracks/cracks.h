#pragma once

#include "mesh/quad_mesh.h"
#include "solver/job/job.h"
#include "solver/panel/panel_result.h"

#include <vector>

namespace deadshore::solver {

/// Most cracks that are listed: the widest.
constexpr int most_cracks = 20;

/// The cracks of a cracked analysis, widest first, at most `most_cracks`. A crack's width is what
/// opens across it within one brick's length (see `crack_lines` for the rule and its reason), so
/// that it means the same on finer elements. Where a crack is narrower than a hair (`least_width`
/// mm) it ends. Masonry that is loose or out has none.
[[nodiscard]] std::vector<Crack> cracks_of(const Job& job, const mesh::QuadMesh& mesh,
                                           const PanelFields& fields, double least_width = 0.05);

/// Damage of the masonry above the soffit from its movements since `before` (displacements, 2 per
/// node; the first stage's; empty: nothing had moved) and its widest crack.
///
/// The settlements along the soffit's level, jambs included, are cut at their inflections into
/// sagging and hogging stretches of at least two bricks' length. Each is a deep beam as high as the
/// wall over it (see `bending_strain`), its greatest distance from the chord is its deflection, and
/// its level strain, where it stretches, is taken between its ends at the height of its neutral
/// axis. Openings are not taken off the beam. Nodes of loose or missing masonry do not count.
/// \throws std::invalid_argument where `before` is of another mesh
[[nodiscard]] Damage damage_of(const Job& job, const mesh::QuadMesh& mesh,
                               const PanelFields& fields, const std::vector<double>& before,
                               const std::vector<Crack>& cracks);

}  // namespace deadshore::solver
