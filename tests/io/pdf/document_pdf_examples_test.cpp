#include "io/document/html.h"
#include "io/job/job_reader.h"
#include "io/note/note.h"
#include "io/pdf/document_pdf.h"
#include "solver/study/analyse.h"
#include "tests/io/pdf/pdf_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace deadshore::io {
namespace {

/// A job of the examples on elements so coarse that it is done at once.
solver::JobResult example(const std::string& name, double mesh) {
  solver::Job job = read_job(DEADSHORE_SOURCE_DIR "/io/examples/" + name);
  job.analysis.mesh_size = mesh;
  return solver::analyse(job);
}

void replace_all(std::string& text, const std::string& what, const std::string& by) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at)) {
    text.replace(at, what.size(), by);
    at += by.size();
  }
}

/// Takes every stretch from `begin` to the next `end` out of a text.
void take_out(std::string& text, const std::string& begin, const std::string& end) {
  for (std::size_t at = text.find(begin); at != std::string::npos; at = text.find(begin, at)) {
    const std::size_t to = text.find(end, at);
    ASSERT_NE(to, std::string::npos) << begin;
    text.erase(at, to + end.size() - at);
  }
}

/// What a piece of the page says, with spaces where lines do not break as plain ones: so they come
/// out of a PDF.
std::string words_of(std::string html) {
  take_out(html, "<", ">");
  for (const auto& [entity, sign] : {std::pair{"&lt;", "<"},
                                     {"&gt;", ">"},
                                     {"&quot;", "\""},
                                     {"&#39;", "'"},
                                     {"&amp;", "&"},
                                     {"\u00a0", " "}}) {
    replace_all(html, entity, sign);
  }
  return html;
}

/// The body of the note without figures and what is for the screen alone.
std::string body_for_paper(const std::string& note) {
  std::string body = note.substr(note.find("<body>"));
  take_out(body, "<svg", "</svg>");
  take_out(body, "<span class=\"screen-only\">", "</span>");
  if (const std::size_t viewer = body.find("<div id=\"viewer\""); viewer != std::string::npos) {
    body.erase(viewer, body.find("<section", viewer) - viewer);
  }
  return body;
}

class DocumentPdfOf : public ::testing::TestWithParam<std::pair<const char*, double>> {};

TEST_P(DocumentPdfOf, ShowsEveryWordAndRowOfThePageInsideThePaper) {
  const solver::JobResult result = example(GetParam().first, GetParam().second);
  const std::vector<viz::Figure> figures = viz::draw_figures(result);
  const Document note = design_note(result, figures, {GetParam().first, "title = 1\n"});
  const test::PdfFile pdf(document_pdf(note));

  std::string shown;
  const std::vector<std::string> texts = pdf.page_texts();
  for (const std::string& page : texts) shown += page;
  shown = test::squeezed(shown);
  for (std::size_t at = shown.find("\u21b3"); at != std::string::npos; at = shown.find("\u21b3")) {
    shown.erase(at, std::string("\u21b3").size());
  }

  const std::string body = body_for_paper(document_html(note));
  std::istringstream stream(words_of(body));
  std::size_t words = 0;
  for (std::string word; stream >> word; ++words) {
    EXPECT_NE(shown.find(word), std::string::npos) << word;
  }
  EXPECT_GT(words, 1000U);
  std::size_t rows = 0;
  for (std::size_t at = body.find("<tr"); at != std::string::npos; at = body.find("<tr", at + 1)) {
    const std::string row = test::squeezed(words_of(body.substr(at, body.find("</tr>", at) - at)));
    EXPECT_NE(shown.find(row), std::string::npos) << row;
    ++rows;
  }
  EXPECT_GT(rows, 50U);

  for (const test::PdfPage& sheet : pdf.pages()) {
    for (const test::PdfWord& word : sheet.words) {
      EXPECT_TRUE(word.left >= 0.0 && word.right <= sheet.width && word.top >= 0.0 &&
                  word.bottom <= sheet.height)
          << word.text;
    }
  }
  EXPECT_EQ(pdf.images(), 0U);
  EXPECT_GT(texts.size(), 5U);
  EXPECT_LT(texts.size(), 80U);
}

INSTANTIATE_TEST_SUITE_P(Examples, DocumentPdfOf,
                         ::testing::Values(std::pair{"garden_wall.toml", 250.0},
                                           std::pair{"kitchen_wall.toml", 500.0}));

}  // namespace
}  // namespace deadshore::io
