#pragma once

#include "io/note/html.h"
#include "solver/model/results.h"
#include "viz/figures.h"

#include <span>
#include <string>

/// The chapters of the design note, in the order of the page.
namespace deadshore::io {

/// What the reader must know first: does it stand, what is loose, the load to design each needle
/// for.
[[nodiscard]] Html summary_section(const solver::JobResult& result);

/// Part of it: what is loud, in alarms and warnings.
[[nodiscard]] Html warnings_of(const solver::JobResult& result);

/// Geometry, materials and needles as given.
[[nodiscard]] Html wall_section(const solver::Job& job);

/// What the house brings down, line by line. Empty where no house is described.
[[nodiscard]] Html take_down_section(const solver::JobResult& result);

/// Every load and the self-weight, adding up to what the analyses were loaded with.
[[nodiscard]] Html loads_section(const solver::JobResult& result);

[[nodiscard]] Html assumptions_section(const solver::JobResult& result);
[[nodiscard]] Html figures_section(std::span<const viz::Figure> figures);

/// The order of the work with what each stage does to the wall: the worst, every support's load,
/// cracks and damage. Empty where the work is not followed stage by stage.
[[nodiscard]] Html stages_section(const solver::JobResult& result);

/// Part of it: what each support carries in each stage, in tables that fit the page.
[[nodiscard]] Html stage_reactions(const solver::JobResult& result);

/// The factors of each stage if masonry bears no tension. Empty where none was found.
[[nodiscard]] Html safety_section(const solver::JobResult& result);

/// What comes out of the wall and what it weighs: courses, strips, lintels, what is carried away.
[[nodiscard]] Html removal_section(const solver::JobResult& result);

/// The permanent beam as given, by hand and stage by stage. Empty where there is none.
[[nodiscard]] Html beam_section(const solver::JobResult& result);

/// How the beam goes up: what carries it, what is in its way, and the steps. Empty where the job
/// does not say.
[[nodiscard]] Html lift_section(const solver::JobResult& result);

/// The hand method as a sum that can be checked line by line.
[[nodiscard]] Html hand_section(const solver::JobResult& result);

/// Hand method against finite elements, and why they differ; what each analysis found.
[[nodiscard]] Html comparison_section(const solver::JobResult& result);

/// The needle frames: what they are made of, what each needle and prop takes, what could be had
/// lighter. Empty where no needle has a frame.
[[nodiscard]] Html needles_section(const solver::JobResult& result);

/// Part of it: each prop, what it carries and what it may carry. Empty where there are none.
[[nodiscard]] Html prop_schedule(const solver::JobResult& result);

/// The dead shores that have frames: what they are made of, the load on them and on each upright.
/// Empty where there are none.
[[nodiscard]] Html dead_shores_section(const solver::JobResult& result);

/// Every check of needles, props, soles, ground and masonry, worst first, with its working and the
/// rules. Empty where no needle has a frame.
[[nodiscard]] Html checks_section(const solver::JobResult& result);

/// "0.87", "1.12 FAILS" or "NOT VERIFIED", and the row that goes with it.
[[nodiscard]] std::string utilisation_words(const solver::Check& check);
[[nodiscard]] RowKind row_kind_of(const solver::Check& check);

/// For the summary: what fails, what is not verified, or the worst utilisation. Empty where no
/// needle has a frame.
[[nodiscard]] Html checks_verdict(const solver::JobResult& result);

/// What speaks for the analyses: equilibrium, convergence, mesh.
[[nodiscard]] Html evidence_section(const solver::JobResult& result);

/// Who else has to be asked or told before the work begins.
[[nodiscard]] Html parties_section();

[[nodiscard]] Html not_checked_section(const solver::Job& job);
[[nodiscard]] Html cautions_section();

}  // namespace deadshore::io
