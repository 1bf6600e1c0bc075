#pragma once

#include "io/note/html.h"
#include "solver/model/results.h"
#include "viz/figures.h"

#include <span>

/// The chapters of the design note, in the order of the page.
namespace deadshore::io {

/// What the reader must know first: does it stand, what is loose, the load to design each needle
/// for.
[[nodiscard]] Html summary_section(const solver::JobResult& result);

/// Geometry, materials and needles as given.
[[nodiscard]] Html wall_section(const solver::Job& job);

/// Every load and the self-weight, adding up to what the analyses were loaded with.
[[nodiscard]] Html loads_section(const solver::JobResult& result);

[[nodiscard]] Html assumptions_section(const solver::JobResult& result);
[[nodiscard]] Html figures_section(std::span<const viz::Figure> figures);

/// The hand method as a sum that can be checked line by line.
[[nodiscard]] Html hand_section(const solver::JobResult& result);

/// Hand method against finite elements, and why they differ; what each analysis found.
[[nodiscard]] Html comparison_section(const solver::JobResult& result);

/// What speaks for the analyses: equilibrium, convergence, mesh.
[[nodiscard]] Html evidence_section(const solver::JobResult& result);

[[nodiscard]] Html not_checked_section();
[[nodiscard]] Html cautions_section();

}  // namespace deadshore::io
