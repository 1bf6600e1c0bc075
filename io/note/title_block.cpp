#include "io/note/sections.h"

#include <fmt/format.h>

#include <string>

namespace deadshore::io {
namespace {

/// One that is not given is a blank to be filled in by hand.
Html entry(const char* label, const std::string& given, int columns = 1) {
  const std::string spans = columns > 1 ? fmt::format(" colspan=\"{}\"", columns) : "";
  const char* css_class = given.empty() ? " class=\"blank\"" : "";
  return Html::trusted(
      fmt::format("<th scope=\"row\">{}</th><td{}{}>{}</td>", label, spans, css_class,
                  given.empty() ? "<span class=\"screen-only\">to be filled in by hand</span>"
                                : escape_html(given)));
}

}  // namespace

Html title_block(const solver::Job& job, const JobFile& file) {
  const solver::TitleBlock& block = job.title_block;
  const Html rows =
      element("tr", entry("Project", block.project) + entry("Client", block.client)) +
      element("tr", entry("Reference", block.reference) + entry("Revision", block.revision)) +
      element("tr", entry("Prepared by", block.prepared_by) + entry("Date", block.date)) +
      element("tr", entry("Checked by", block.checked_by) +
                        entry("Program", "deadshore " DEADSHORE_VERSION)) +
      element("tr", entry("Job file", file.name, 3)) +
      element("tr", entry("Its SHA-256", sha256_of(file.text), 3));
  return element("header",
                 paragraph("Design note \u00b7 temporary works", "kind") +
                     element("h1", text(job.title)) +
                     paragraph("A masonry wall on needles while an opening is cut beneath it. "
                               "Units: kN, mm, N/mm\u00b2.") +
                     Html::trusted("<table id=\"title-block\">\n") + element("tbody", rows) +
                     Html::trusted("</table>\n"));
}

}  // namespace deadshore::io
