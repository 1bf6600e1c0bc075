#include "io/note/note.h"

#include "io/note/html.h"
#include "io/note/sections.h"
#include "io/note/style.h"

#include <fmt/format.h>

namespace deadshore::io {
namespace {

Html head_of(const std::string& title) {
  return element("head", Html::trusted("<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" "
                                       "content=\"width=device-width, initial-scale=1\"/>\n") +
                             element("title", text("Design note: " + title)) +
                             element("style", Html::trusted(std::string(note_style))));
}

Html title_block(const std::string& title, const std::string& job_file_name) {
  return element(
      "header",
      paragraph("Design note \u00b7 temporary works", "kind") + element("h1", text(title)) +
          paragraph("A masonry wall on needles while an opening is cut beneath it. Units: kN, "
                    "mm, N/mm\u00b2.") +
          paragraph(fmt::format("Job file {} \u00b7 worked out by deadshore {}", job_file_name,
                                DEADSHORE_VERSION),
                    "small"));
}

}  // namespace

std::string note_html(const solver::JobResult& result, std::span<const viz::Figure> figures,
                      const std::string& job_file_name) {
  const std::string& title = result.job.title;
  Html chapters = title_block(title, job_file_name);
  chapters += summary_section(result);
  chapters += wall_section(result.job);
  chapters += take_down_section(result);
  chapters += loads_section(result);
  chapters += assumptions_section(result);
  chapters += figures_section(figures);
  chapters += stages_section(result);
  chapters += safety_section(result);
  chapters += hand_section(result);
  chapters += comparison_section(result);
  chapters += needles_section(result);
  chapters += dead_shores_section(result);
  chapters += beam_section(result);
  chapters += lift_section(result);
  chapters += removal_section(result);
  chapters += checks_section(result);
  chapters += evidence_section(result);
  chapters += parties_section();
  chapters += not_checked_section(result.job);
  chapters += cautions_section();
  const Html body = element("body", element("main", chapters));
  return "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\">\n" +
         (head_of(title) + body).str() + "</html>\n";
}

}  // namespace deadshore::io
