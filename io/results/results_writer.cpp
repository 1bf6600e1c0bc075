#include "io/results/results_writer.h"

#include "io/document/html.h"
#include "io/error.h"
#include "io/files/output_folder.h"
#include "io/files/whole_file.h"
#include "io/note/note.h"
#include "io/pdf/document_pdf.h"
#include "io/results/reactions_csv.h"
#include "io/results/results_json.h"
#include "io/sheet/sheet.h"
#include "io/vtk/vtk_writer.h"

#include <string>

namespace deadshore::io {
namespace {

namespace fs = std::filesystem;

void write_figures(std::span<const viz::Figure> figures, const fs::path& folder) {
  fs::create_directory(folder);
  for (const viz::Figure& figure : figures) {
    write_file(folder / (figure.name + ".svg"), figure.svg);
    write_file(folder / (figure.name + ".pdf"), figure.pdf);
    write_file(folder / (figure.name + ".png"), figure.png);
  }
}

/// Runs `work`; what std::filesystem throws comes out as a FileError.
template <typename Work>
void with_file_errors(const Work& work) {
  try {
    work();
  } catch (const fs::filesystem_error& error) {
    throw FileError(error.path1(), error.code().message());
  }
}

}  // namespace

void check_output_folder(const fs::path& out) {
  with_file_errors([&] { check_replaceable(absolute_folder(out)); });
}

void write_results(const solver::JobResult& result, std::span<const viz::Figure> figures,
                   const JobFile& file, FolderReplacement& folder) {
  with_file_errors([&] {
    write_file(folder.path() / "results.json", results_json(result, file));
    write_file(folder.path() / "reactions.csv", reactions_csv(result));
    const Document note = design_note(result, figures, file);
    write_file(folder.path() / "note.html", document_html(note));
    write_file(folder.path() / "note.pdf", document_pdf(note));
    write_file(folder.path() / "sheet.html", sheet_html(result));
    write_figures(figures, folder.path() / "figures");
    write_vtk(result, folder.path());
    folder.put_in_place();
  });
}

void write_results(const solver::JobResult& result, std::span<const viz::Figure> figures,
                   const JobFile& file, const fs::path& out) {
  FolderReplacement folder(out);
  write_results(result, figures, file, folder);
}

void write_results(const solver::JobResult& result, const JobFile& file, const fs::path& out) {
  write_results(result, viz::draw_figures(result), file, out);
}

}  // namespace deadshore::io
