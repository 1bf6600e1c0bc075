#pragma once

#include "io/job/job_file.h"
#include "solver/result/results.h"
#include "viz/figures.h"

#include <span>
#include <string>

namespace deadshore::io {

/// The design note: one self-contained page (nothing loaded; one script, if the
/// work is followed stage by stage, without which the note is complete) with the figures inline,
/// each in the chapter it belongs to, for the screen, a phone and A4 paper. It is well-formed
/// XHTML; every name is escaped. Forces in kN, characteristic. The same result gives the same
/// bytes. `file` is only printed. What is meant for the screen alone has the class "screen-only",
/// for paper alone "print-only"; every figure has its name in data-figure.
[[nodiscard]] std::string note_html(const solver::JobResult& result,
                                    std::span<const viz::Figure> figures, const JobFile& file);

}  // namespace deadshore::io
