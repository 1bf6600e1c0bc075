#pragma once

#include "io/note/html.h"
#include "io/sheet/site_steps.h"
#include "solver/result/results.h"

#include <span>

/// The parts of the sheet that are tables and lists.
namespace deadshore::io {

/// The steps, each with its hold points to tick and its figures.
[[nodiscard]] Html sheet_steps(std::span<const SiteStep> steps);

/// Each needle with its props, as far as they are known.
[[nodiscard]] Html sheet_schedule(const solver::JobResult& result);

/// What is fixed where to be read, with the most expected of it.
[[nodiscard]] Html sheet_marks(const solver::JobResult& result);

/// Curing, what comes out and what it weighs.
[[nodiscard]] Html sheet_facts(const solver::JobResult& result);

/// Who designed, checked, and permits to load and to strike: blanks.
[[nodiscard]] Html sheet_signatures();

}  // namespace deadshore::io
