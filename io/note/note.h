#pragma once

#include "io/document/block.h"
#include "io/job/job_reader.h"
#include "solver/result/results.h"
#include "viz/figures.h"

#include <span>
#include <string>

namespace deadshore::io {

/// The design note: what was asked, what was found, and what to do about it, with every figure in
/// the chapter it belongs to. Forces in kN, characteristic. The same result gives the same
/// document.
/// \param figures must outlive the note
/// \param file is only printed
[[nodiscard]] Document design_note(const solver::JobResult& result,
                                   std::span<const viz::Figure> figures, const JobFile& file);

}  // namespace deadshore::io
