#include "io/note/note.h"

#include "io/note/html.h"
#include "io/note/sections.h"
#include "io/note/style.h"
#include "io/note/viewer_style.h"
#include "solver/result/result_stages.h"

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

Html head_of(const std::string& title) {
  return element("head", Html::trusted("<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" "
                                       "content=\"width=device-width, initial-scale=1\"/>\n") +
                             element("title", text("Design note: " + title)) +
                             element("style", Html::trusted(std::string(note_style) +
                                                            std::string(viewer_style))));
}

/// What to make of two methods that differ.
Html how_to_use_both(const solver::Job& job) {
  const bool all_framed =
      std::ranges::all_of(job.needles, [](const auto& needle) { return needle.frame.has_value(); });
  return paragraph(
      std::string("Neither method is right alone: the hand method knows nothing of arching and of "
                  "how much the supports give, the analyses depend on stiffnesses that nobody "
                  "knows well. A needle stiffer than its neighbours draws more: where \u201cwhy "
                  "they differ\u201d gives more for needles that do not give, allow for it. ") +
      (all_framed ? "The member checks apply the load factors."
                  : "Apply the load factors of the code you work to."));
}

/// The comparison with its figures; without stages the stresses have no other chapter.
Chapter comparison_with_figures(const solver::JobResult& result, FigureShelf& figures) {
  const Chapter comparison = followed_by(
      comparison_section(result), how_to_use_both(result.job) + figures.take("needle-loads"));
  return is_staged(result) ? comparison : followed_by(comparison, stress_figures(figures));
}

/// What no chapter asked for.
Chapter other_figures(FigureShelf& figures) {
  const Html rest = figures.take_all("");
  return rest.empty() ? Chapter() : section("other-figures", "Other figures", {}, rest);
}

/// All but the summary, in the order of the page, in which figures are numbered.
std::vector<Chapter> chapters_of(const solver::JobResult& result, FigureShelf& figures,
                                 const JobFile& file) {
  std::vector<Chapter> chapters;
  chapters.push_back(wall_section(result.job, figures));
  chapters.push_back(take_down_section(result));
  chapters.push_back(loads_section(result));
  chapters.push_back(assumptions_section(result));
  chapters.push_back(stages_section(result, figures));
  chapters.push_back(safety_section(result, figures));
  chapters.push_back(hand_section(result, figures));
  chapters.push_back(comparison_with_figures(result, figures));
  chapters.push_back(needles_section(result, figures));
  chapters.push_back(dead_shores_section(result));
  chapters.push_back(beam_section(result, figures));
  chapters.push_back(lift_section(result));
  chapters.push_back(removal_section(result));
  chapters.push_back(checks_section(result));
  chapters.push_back(evidence_section(result));
  chapters.push_back(other_figures(figures));
  chapters.push_back(parties_section());
  chapters.push_back(not_checked_section(result.job));
  chapters.push_back(cautions_section());
  chapters.push_back(job_text_section(file));
  return chapters;
}

}  // namespace

std::string note_html(const solver::JobResult& result, std::span<const viz::Figure> figures,
                      const JobFile& file) {
  FigureShelf shelf(figures);
  const std::vector<Chapter> chapters = chapters_of(result, shelf, file);
  const Chapter summary = summary_section(result);
  const Html page = title_block(result.job, file) + contents_of(summary, chapters) +
                    body_of(summary) + stage_viewer(result) + body_of(chapters);
  return "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\">\n" +
         (head_of(result.job.title) + element("body", element("main", page))).str() + "</html>\n";
}

}  // namespace deadshore::io
