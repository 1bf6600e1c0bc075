#pragma once

#include "io/job/job_reader.h"
#include "solver/result/results.h"
#include "viz/figures.h"

#include <filesystem>
#include <span>

namespace deadshore::io {

class FolderReplacement;

/// Refuses a folder that results may not be written to: the folder above must exist and be
/// writable; `out` must not be there yet, or be empty, or hold an earlier result and nothing else.
///
/// \throws FileError
void check_output_folder(const std::filesystem::path& out);

/// Writes note.html, note.pdf, sheet.html, figures/, results.json, reactions.csv and the VTK files
/// as the folder `out`.
///
/// Everything is first written into a folder beside `out` and then put in its place in one move: a
/// failure leaves an earlier result as it was, and nothing half-written behind. `file` is what the
/// job was read from: note and results name it.
///
/// \throws FileError if `out` is refused by `check_output_folder` or a file cannot be written.
/// \throws std::domain_error if the result holds numbers that are not finite.
void write_results(const solver::JobResult& result, std::span<const viz::Figure> figures,
                   const JobFile& file, const std::filesystem::path& out);

/// The same with the figures drawn here.
void write_results(const solver::JobResult& result, const JobFile& file,
                   const std::filesystem::path& out);

/// The same into a folder that was claimed before the analysis (see io/files/output_folder.h).
void write_results(const solver::JobResult& result, std::span<const viz::Figure> figures,
                   const JobFile& file, FolderReplacement& folder);

}  // namespace deadshore::io
