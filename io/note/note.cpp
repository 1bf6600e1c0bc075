#include "io/note/note.h"

#include "io/note/chapters.h"
#include "solver/result/result_stages.h"

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

/// Title, title block and what the note was made from.
Blocks front_matter(const solver::Job& job, const JobFile& file) {
  const solver::TitleBlock& block = job.title_block;
  const Form form{"title-block",
                  {{{"Project", block.project}, {"Client", block.client}},
                   {{"Reference", block.reference}, {"Revision", block.revision}},
                   {{"Prepared by", block.prepared_by}, {"Date", block.date}},
                   {{"Checked by", block.checked_by}, {"Program", "deadshore " DEADSHORE_VERSION}},
                   {{"Job file", file.name, 3}},
                   {{"Its SHA-256", sha256_of(file.text), 3}}}};
  return Paragraph{"Design note \u00b7 temporary works", Tone::faint} + Heading{job.title, 1} +
         Paragraph{
             "A masonry wall on needles while an opening is cut beneath it. Units: kN, mm, "
             "N/mm\u00b2."} +
         form;
}

/// What to make of two methods that differ.
Blocks how_to_use_both(const solver::Job& job) {
  const bool all_framed =
      std::ranges::all_of(job.needles, [](const auto& needle) { return needle.frame.has_value(); });
  return Paragraph{
      std::string("Neither method is right alone: the hand method knows nothing of arching and of "
                  "how much the supports give, the analyses depend on stiffnesses that nobody "
                  "knows well. A needle stiffer than its neighbours draws more: where \u201cwhy "
                  "they differ\u201d gives more for needles that do not give, allow for it. ") +
      (all_framed ? "The member checks apply the load factors."
                  : "Apply the load factors of the code you work to.")};
}

/// The comparison with its figures; without stages the stresses have no other chapter.
Chapter comparison_with_figures(const solver::JobResult& result, FigureShelf& figures) {
  Chapter comparison = comparison_chapter(result);
  comparison.rest += how_to_use_both(result.job) + figures.take("needle-loads");
  if (!is_staged(result)) comparison.rest += stress_figures(figures);
  return comparison;
}

/// What no chapter asked for.
Chapter other_figures(FigureShelf& figures) {
  const Blocks rest = figures.take_all("");
  return rest.empty() ? Chapter() : Chapter{"other-figures", "Other figures", {}, rest};
}

/// The job file itself, as it was read.
Chapter job_text_chapter(const JobFile& file) {
  Table content{"job-file", "", {"Job file", file.name}};
  content.add({"SHA-256", sha256_of(file.text)});
  return {"job-text", "The job file as run",
          Paragraph{"What this note was worked out from, byte for byte as it was read. A change of "
                    "any of it changes its SHA-256: compare it with what sha256sum prints of the "
                    "file before using one with the other."} +
              content,
          Listing{file.text}};
}

/// All but the summary, in the order of the page, in which figures are numbered.
std::vector<Chapter> chapters_of(const solver::JobResult& result, FigureShelf& figures,
                                 const JobFile& file) {
  std::vector<Chapter> chapters = {wall_chapter(result.job, figures),
                                   take_down_chapter(result),
                                   loads_chapter(result),
                                   assumptions_chapter(result),
                                   stages_chapter(result, figures),
                                   safety_chapter(result, figures),
                                   hand_chapter(result, figures),
                                   comparison_with_figures(result, figures),
                                   needles_chapter(result, figures),
                                   dead_shores_chapter(result),
                                   beam_chapter(result, figures),
                                   lift_chapter(result),
                                   removal_chapter(result),
                                   checks_chapter(result),
                                   evidence_chapter(result),
                                   other_figures(figures),
                                   parties_chapter(),
                                   not_checked_chapter(result.job),
                                   cautions_chapter(),
                                   job_text_chapter(file)};
  std::erase_if(chapters, [](const Chapter& chapter) { return chapter.empty(); });
  return chapters;
}

}  // namespace

Document design_note(const solver::JobResult& result, std::span<const viz::Figure> figures,
                     const JobFile& file) {
  FigureShelf shelf(figures);
  return {"Design note: " + result.job.title,
          result.job.title_block.revision,
          front_matter(result.job, file),
          summary_chapter(result),
          stage_viewer(result),
          chapters_of(result, shelf, file)};
}

}  // namespace deadshore::io
