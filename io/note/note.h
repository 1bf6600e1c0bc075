#pragma once

#include "solver/model/results.h"
#include "viz/figures.h"

#include <span>
#include <string>

namespace deadshore::io {

/// The design note: one self-contained page (no script, nothing loaded) with the figures inline,
/// for the screen, a phone and A4 paper. It is well-formed XHTML; every name is escaped. Forces in
/// kN, characteristic. The same result gives the same bytes. `job_file_name` is only printed.
[[nodiscard]] std::string note_html(const solver::JobResult& result,
                                    std::span<const viz::Figure> figures,
                                    const std::string& job_file_name);

}  // namespace deadshore::io
