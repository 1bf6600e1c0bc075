#pragma once

#include "io/document/block.h"
#include "io/note/figure_shelf.h"
#include "solver/result/results.h"
#include "solver/study/envelope.h"

#include <string>
#include <vector>

/// The chapters of the design note, in the order of the page.
namespace deadshore::io {

/// What the reader must know first: does it stand, what is loose, the load to design each needle
/// for.
[[nodiscard]] Chapter summary_chapter(const solver::JobResult& result);

/// Part of it: what is loud, in alarms and warnings.
[[nodiscard]] Blocks warnings_of(const solver::JobResult& result);

/// For the screen alone: all stages one over another, moved through by a slider. Empty where the
/// work is not followed stage by stage, or no support carries anything in an analysis.
[[nodiscard]] Blocks stage_viewer(const solver::JobResult& result);

/// Geometry, materials and needles as given.
[[nodiscard]] Chapter wall_chapter(const solver::Job& job, FigureShelf& figures);

/// What the house brings down, line by line. Empty where no house is described.
[[nodiscard]] Chapter take_down_chapter(const solver::JobResult& result);

/// Every load and the self-weight, adding up to what the analyses were loaded with.
[[nodiscard]] Chapter loads_chapter(const solver::JobResult& result);

[[nodiscard]] Chapter assumptions_chapter(const solver::JobResult& result);

/// The order of the work with what each stage does to the wall: the worst, every support's load,
/// cracks and damage. Empty where the work is not followed stage by stage.
[[nodiscard]] Chapter stages_chapter(const solver::JobResult& result, FigureShelf& figures);

/// Part of it, or of the comparison where there are no stages: how the masonry is stressed and
/// moves.
[[nodiscard]] Blocks stress_figures(FigureShelf& figures);

/// Part of it: what each support carries in each stage, in tables that fit the page.
[[nodiscard]] Blocks stage_reactions(const solver::JobResult& result);

/// Part of the evidence: what each support would carry if what is unsure were otherwise. Empty
/// where that was not found.
[[nodiscard]] Blocks what_if(const solver::JobResult& result);

/// The factors of each stage if masonry bears no tension. Empty where none was found.
[[nodiscard]] Chapter safety_chapter(const solver::JobResult& result, FigureShelf& figures);

/// What comes out of the wall and what it weighs: courses, strips, lintels, what is carried away.
[[nodiscard]] Chapter removal_chapter(const solver::JobResult& result);

/// The permanent beam as given, by hand and stage by stage. Empty where there is none.
[[nodiscard]] Chapter beam_chapter(const solver::JobResult& result, FigureShelf& figures);

/// How the beam goes up: what carries it, what is in its way, and the steps. Empty where the job
/// does not say.
[[nodiscard]] Chapter lift_chapter(const solver::JobResult& result);

/// The hand method as a sum that can be checked line by line.
[[nodiscard]] Chapter hand_chapter(const solver::JobResult& result, FigureShelf& figures);

/// Hand method against finite elements, and why they differ; what each analysis found.
[[nodiscard]] Chapter comparison_chapter(const solver::JobResult& result);

/// The needle frames: what they are made of, what each needle and prop takes, what could be had
/// lighter. Empty where no needle has a frame.
[[nodiscard]] Chapter needles_chapter(const solver::JobResult& result, FigureShelf& figures);

/// The dead shores that have frames: what they are made of, the load on them and on each upright.
/// Empty where there are none.
[[nodiscard]] Chapter dead_shores_chapter(const solver::JobResult& result);

/// Every check of needles, props, soles, ground and masonry, worst first, with its working and the
/// rules. Empty where no needle has a frame.
[[nodiscard]] Chapter checks_chapter(const solver::JobResult& result);

/// "0.87", "1.12 FAILS" or "NOT VERIFIED", and the row that goes with it.
[[nodiscard]] std::string utilisation_words(const solver::Check& check);
[[nodiscard]] RowKind row_kind_of(const solver::Check& check);

/// Part of it: what was found, a line each, with the chapter that says more.
[[nodiscard]] Table findings_table(const solver::JobResult& result,
                                   const std::vector<solver::EnvelopedLoad>& envelope);

/// For the summary: what fails and what is not verified. Empty where neither is.
[[nodiscard]] Blocks checks_to_mend(const solver::JobResult& result);

/// What the designs of needles and dead shores say would do, or do better; the same sentence for
/// several needles is said once.
[[nodiscard]] std::vector<std::string> needle_advice(const solver::JobResult& result);
[[nodiscard]] std::vector<std::string> shore_advice(const solver::JobResult& result);

/// What speaks for the analyses: equilibrium, convergence, mesh.
[[nodiscard]] Chapter evidence_chapter(const solver::JobResult& result);

/// Who else has to be asked or told before the work begins.
[[nodiscard]] Chapter parties_chapter();

[[nodiscard]] Chapter not_checked_chapter(const solver::Job& job);
[[nodiscard]] Chapter cautions_chapter();

}  // namespace deadshore::io
