#include "io/job/job_reader.h"
#include "io/note/note.h"
#include "io/pdf/note_pdf.h"
#include "solver/study/analyse.h"
#include "tests/io/pdf/pdf_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <pugixml.hpp>
#include <sstream>
#include <string>

namespace deadshore::io {
namespace {

/// A job of the examples on elements so coarse that it is done at once, and its note.
struct Example {
  solver::JobResult result;
  std::vector<viz::Figure> figures;
  std::string note;
};

Example example(const std::string& name, double mesh) {
  solver::Job job = read_job(DEADSHORE_SOURCE_DIR "/io/examples/" + name);
  job.analysis.mesh_size = mesh;
  Example made{solver::analyse(job), {}, ""};
  made.figures = viz::draw_figures(made.result);
  made.note = note_html(made.result, made.figures, {name, "title = 1\n"});
  return made;
}

bool is_for_paper(const pugi::xml_node& node) {
  const std::string_view tag = node.name();
  return tag != "svg" && tag != "style" &&
         std::string_view(node.attribute("class").value()).find("screen-only") ==
             std::string_view::npos;
}

/// With spaces where lines do not break as plain ones: so they come out of a PDF.
std::string plain_spaces(std::string text) {
  const std::string firm = "\u00a0";
  for (std::size_t at = text.find(firm); at != std::string::npos; at = text.find(firm, at))
    text.replace(at, firm.size(), " ");
  return text;
}

/// Calls `visit` with every text on the page that paper shows.
template <class Visit>
void for_each_text(const pugi::xml_node& node, const Visit& visit) {
  if (!is_for_paper(node)) return;
  if (node.type() == pugi::node_pcdata) visit(plain_spaces(node.value()));
  for (const pugi::xml_node& child : node.children()) for_each_text(child, visit);
}

std::string text_in(const pugi::xml_node& node) {
  std::string all;
  for_each_text(node, [&](const std::string& text) { all += text; });
  return test::squeezed(all);
}

class NotePdfOf : public ::testing::TestWithParam<std::pair<const char*, double>> {};

TEST_P(NotePdfOf, ShowsEveryWordAndRowOfThePageInsideThePaper) {
  const Example made = example(GetParam().first, GetParam().second);
  const test::PdfFile pdf(note_pdf(made.note, made.figures, UnknownMarkup::refuse));

  std::string shown;
  const std::vector<std::string> texts = pdf.page_texts();
  for (const std::string& page : texts) shown += page;
  shown = test::squeezed(shown);
  for (std::size_t at = shown.find("\u21b3"); at != std::string::npos; at = shown.find("\u21b3")) {
    shown.erase(at, std::string("\u21b3").size());
  }

  pugi::xml_document page;
  ASSERT_TRUE(page.load_string(made.note.c_str()));
  const pugi::xml_node body = page.child("html").child("body");
  std::size_t words = 0;
  for_each_text(body, [&](const std::string& text) {
    std::istringstream stream(text);
    for (std::string word; stream >> word; ++words) {
      EXPECT_NE(shown.find(word), std::string::npos) << word << " in: " << text;
    }
  });
  EXPECT_GT(words, 1000U);
  for (const pugi::xpath_node& row :
       body.select_nodes("//tr[not(ancestor::*[@class='screen-only'])]")) {
    EXPECT_NE(shown.find(text_in(row.node())), std::string::npos) << text_in(row.node());
  }

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

INSTANTIATE_TEST_SUITE_P(Examples, NotePdfOf,
                         ::testing::Values(std::pair{"garden_wall.toml", 250.0},
                                           std::pair{"kitchen_wall.toml", 500.0}));

}  // namespace
}  // namespace deadshore::io
