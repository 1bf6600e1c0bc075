#include "io/pdf/note_pdf.h"

#include "tests/io/pdf/pdf_file.h"
#include "viz/page/canvas.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <stdexcept>

namespace deadshore::io {
namespace {

using test::page_with;
using test::PdfFile;
using ::testing::AllOf;
using ::testing::Contains;
using ::testing::Each;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::Pair;

std::string note_of(const std::string& body, const std::string& title = "A wall") {
  return "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\"><head><title>" + title +
         "</title></head><body><main>" + body + "</main></body></html>";
}

std::string pdf_of(const std::string& body, std::span<const viz::Figure> figures = {}) {
  return note_pdf(note_of(body), figures, UnknownMarkup::refuse);
}

std::string paragraphs(int count, const std::string& words =
                                      "Words that fill a line or two of the page, so that pages "
                                      "break somewhere among them, and a few more.") {
  std::string all;
  for (int i = 0; i < count; ++i) all += fmt::format("<p>P{}. {}</p>", i, words);
  return all;
}

viz::Figure figure(const std::string& name, viz::Size size) {
  viz::Figure made;
  made.name = name;
  made.drawing = {size, [size, name](viz::Canvas& canvas) {
                    canvas.outline(viz::Rect{1.0, 1.0, size.width - 1.0, size.height - 1.0}, {});
                    canvas.fill(viz::Rect{9.0, 9.0, 99.0, 99.0}, viz::tension, 0.5);
                    canvas.text({0.5 * size.width, 0.5 * size.height}, "inside " + name, {}, {});
                  }};
  return made;
}

std::string shown(const std::string& name) {
  return fmt::format(
      "<figure data-figure=\"{0}\"><svg/><figcaption>Caption of {0}.</figcaption></figure>", name);
}

TEST(NotePdf, TheSameNoteGivesTheSameBytes) {
  const std::vector<viz::Figure> figures = {figure("one", {300.0, 200.0})};
  EXPECT_EQ(pdf_of(paragraphs(3) + shown("one"), figures),
            pdf_of(paragraphs(3) + shown("one"), figures));
}

TEST(NotePdf, MarkupWithoutAFormIsRefusedOrSetAsPlainText) {
  for (const char* body :
       {"<p>a</p><blockquote>odd words</blockquote>", "<p class=\"loud\">odd words</p>",
        "<p><u>odd words</u></p>", "<table><tr><td rowspan=\"2\">odd words</td></tr></table>"}) {
    EXPECT_THROW(static_cast<void>(pdf_of(body)), std::invalid_argument) << body;
    const PdfFile plain(note_pdf(note_of(body), {}));
    EXPECT_EQ(page_with(plain.page_texts(), "odd words"), 1U) << body;
  }
}

TEST(NotePdf, AFigureThatIsNotDrawnIsRefused) {
  EXPECT_THROW(static_cast<void>(pdf_of(shown("nowhere"))), std::invalid_argument);
}

TEST(NotePdf, APageThatIsNotWellFormedIsRefused) {
  EXPECT_THROW(static_cast<void>(note_pdf("<html><body><p>", {})), std::runtime_error);
  EXPECT_THROW(static_cast<void>(note_pdf("", {})), std::runtime_error);
}

TEST(NotePdf, WhatIsForTheScreenIsLeftOutAndWhatIsForPaperKept) {
  const PdfFile pdf(
      pdf_of("<p>always</p><div class=\"screen-only\"><p>glass</p></div>"
             "<p>a <span class=\"screen-only\">button</span></p>"
             "<script>var code = 1;</script><p>b<style>p { color: red; }</style></p>"
             "<p class=\"print-only\">sheet</p>"));
  const std::vector<std::string> pages = pdf.page_texts();
  EXPECT_EQ(page_with(pages, "glass"), 0U);
  EXPECT_EQ(page_with(pages, "button"), 0U);
  EXPECT_EQ(page_with(pages, "code"), 0U);
  EXPECT_EQ(page_with(pages, "color"), 0U);
  EXPECT_EQ(page_with(pages, "sheet"), 1U);
}

TEST(NotePdf, EveryPageHasAFootWithTitleProgramAndNumber) {
  const PdfFile pdf(pdf_of(paragraphs(90)));
  const std::vector<std::string> pages = pdf.page_texts();
  ASSERT_GT(pages.size(), 2U);
  for (std::size_t page = 0; page < pages.size(); ++page) {
    EXPECT_THAT(pages[page], AllOf(HasSubstr("A wall"), HasSubstr("deadshore 0."),
                                   HasSubstr(fmt::format("page {} / {}", page + 1, pages.size()))));
  }
}

TEST(NotePdf, TheRevisionOfTheTitleBlockStandsInEveryFoot) {
  const std::string block =
      "<table "
      "id=\"title-block\"><tr><th>Reference</th><td>TW-01</td><th>Revision</th><td>P2</td></tr>"
      "</table>";
  EXPECT_THAT(PdfFile(pdf_of(block + paragraphs(90))).page_texts(), Each(HasSubstr("Revision P2")));
  const std::string blank =
      "<table id=\"title-block\"><tr><th>Revision</th><td class=\"blank\"><span "
      "class=\"screen-only\">by hand</span></td></tr></table>";
  EXPECT_THAT(PdfFile(pdf_of(blank + paragraphs(90))).page_texts().at(1),
              Not(HasSubstr("Revision")));
}

TEST(NotePdf, ContentsAndBookmarksGiveThePagesOfTheChapters) {
  std::string contents;
  std::string chapters;
  for (int i = 1; i <= 6; ++i) {
    contents += fmt::format(
        "<li><span class=\"number\">{0}</span> <a href=\"#c{0}\">Chapter of {0}s</a></li>", i);
    chapters += fmt::format(
        "<section id=\"c{0}\"><h2><span class=\"number\">{0}</span> Chapter of "
        "{0}s</h2>{1}</section>",
        i, paragraphs(7 * i));
  }
  const PdfFile pdf(
      pdf_of("<nav id=\"contents\"><h2>Contents</h2><ol>" + contents + "</ol></nav>" + chapters));
  std::vector<std::string> pages = pdf.page_texts();
  const std::string first = pages.front();
  pages.front() = first.substr(first.find("Chapter of 6s") + 13);  // past the contents
  const auto bookmarks = pdf.bookmarks();
  ASSERT_EQ(bookmarks.size(), 7U);
  for (int i = 1; i <= 6; ++i) {
    const std::size_t page = page_with(pages, fmt::format("{0} Chapter of {0}s", i));
    EXPECT_THAT(test::squeezed(first),
                HasSubstr(test::squeezed(fmt::format("{0} Chapter of {0}s {1}", i, page))))
        << i;
    EXPECT_EQ(bookmarks[static_cast<std::size_t>(i)].first, fmt::format("{0} Chapter of {0}s", i));
    EXPECT_EQ(bookmarks[static_cast<std::size_t>(i)].second, static_cast<int>(page));
  }
  EXPECT_THAT(pdf.links(), Contains(Pair("Chapter of 6s", bookmarks.back().second)));
  EXPECT_GT(page_with(pages, "6 Chapter of 6s"), 2U);
}

TEST(NotePdf, ALineOfTheContentsThatLeadsNowhereIsRefused) {
  EXPECT_THROW(static_cast<void>(pdf_of(
                   "<nav id=\"contents\"><ol><li><a href=\"#gone\">Gone</a></li></ol></nav>")),
               std::invalid_argument);
}

void expect_together(const std::vector<std::string>& pages, const std::string& one,
                     const std::string& other) {
  EXPECT_GT(page_with(pages, one), 0U) << one;
  EXPECT_EQ(page_with(pages, one), page_with(pages, other)) << one << " and " << other;
}

/// A table of groups: heading, rows with their working, total.
std::string grouped_table(int groups) {
  std::string rows;
  for (int g = 0; g < groups; ++g) {
    rows += fmt::format("<tbody><tr class=\"group\"><th colspan=\"2\">Group{0}.</th></tr>", g);
    for (int r = 0; r < 5; ++r) {
      rows += fmt::format(
          "<tr class=\"worked\"><th>row{0}.{1};</th><td class=\"fig\">{1}.5</td></tr>"
          "<tr class=\"working\"><td colspan=\"2\">how{0}.{1}; it comes about</td></tr>",
          g, r);
    }
    rows += fmt::format(
        "<tr class=\"total\"><th>Sum{0}.</th><td class=\"fig\">12.5</td></tr></tbody>", g);
  }
  return "<table id=\"t\"><caption>Caption of the table</caption><thead><tr><th>Head of it</th><th "
         "class=\"fig\">kN</th></tr></thead>" +
         rows + "</table>";
}

TEST(NotePdf, TheHeadOfABrokenTableComesAgainOnEveryPage) {
  const PdfFile pdf(pdf_of(grouped_table(30)));
  const std::vector<std::string> pages = pdf.page_texts();
  ASSERT_GT(pages.size(), 3U);
  EXPECT_THAT(pages, Each(HasSubstr("Head of it")));
  EXPECT_EQ(page_with(pages, "Caption of the table"), 1U);
}

TEST(NotePdf, RowsStandWithTheirWorkingHeadingAndTotal) {
  for (const int above : {0, 1, 2, 3}) {
    const PdfFile pdf(pdf_of(paragraphs(above) + grouped_table(20)));
    const std::vector<std::string> pages = pdf.page_texts();
    for (int g = 0; g < 20; ++g) {
      expect_together(pages, fmt::format("Group{}.", g), fmt::format("row{}.0;", g));
      expect_together(pages, fmt::format("Sum{}.", g), fmt::format("row{}.4;", g));
      for (int r = 0; r < 5; ++r) {
        expect_together(pages, fmt::format("row{}.{};", g, r), fmt::format("how{}.{};", g, r));
      }
    }
  }
}

TEST(NotePdf, ARowIsNeverSplitUnlessItIsTallerThanAPage) {
  std::string words;
  for (int i = 0; i < 60; ++i) words += "some words more ";
  std::string rows;
  for (int r = 0; r < 30; ++r) {
    rows += fmt::format("<tr><th>r{0}.</th><td>begin{0}. {1} end{0}.</td></tr>", r, words);
  }
  std::string tall;
  for (int i = 0; i < 4000; ++i) tall += fmt::format("w{} ", i);
  rows += "<tr><th>tall.</th><td>" + tall + "</td></tr>";
  const PdfFile pdf(pdf_of("<table><thead><tr><th>Head</th><th>of it</th></tr></thead><tbody>" +
                           rows + "</tbody></table>"));
  const std::vector<std::string> pages = pdf.page_texts();
  for (int r = 0; r < 30; ++r) {
    expect_together(pages, fmt::format("begin{}.", r), fmt::format("end{}.", r));
  }
  EXPECT_GT(page_with(pages, "w3999"), page_with(pages, "tall."));
}

TEST(NotePdf, AHeadingIsNeverAloneAtTheFootOfAPage) {
  std::string body;
  for (int i = 0; i < 80; ++i)
    body += fmt::format("<h3>Heading{0}.</h3><p>first{0}. {1}</p>", i,
                        std::string(static_cast<std::size_t>(30 + 41 * (i % 7)), 'x'));
  const std::vector<std::string> pages = PdfFile(pdf_of(body)).page_texts();
  for (int i = 0; i < 80; ++i) {
    expect_together(pages, fmt::format("Heading{}.", i), fmt::format("first{}.", i));
  }
}

TEST(NotePdf, FiguresAreLinesAndTextAndWideOnesLie) {
  const std::vector<viz::Figure> figures = {figure("small", {300.0, 200.0}),
                                            figure("tall", {500.0, 900.0}),
                                            figure("wide", {785.0, 500.0})};
  const PdfFile pdf(pdf_of(shown("small") + shown("tall") + shown("wide"), figures));
  EXPECT_EQ(pdf.images(), 0U);
  const std::vector<std::string> texts = pdf.page_texts();
  const std::vector<test::PdfPage> pages = pdf.pages();
  for (const char* name : {"small", "tall", "wide"}) {
    const std::size_t page = page_with(texts, std::string("inside ") + name);
    ASSERT_GT(page, 0U) << name;
    EXPECT_EQ(page, page_with(texts, fmt::format("Caption of {}.", name)));
    EXPECT_EQ(pages[page - 1].width > pages[page - 1].height, std::string(name) == "wide");
  }
}

TEST(NotePdf, TextIsSearchableInEmbeddedFonts) {
  const PdfFile pdf(
      pdf_of("<p>\u03c3 \u2264 2.4 N/mm\u00b2, 3 \u00d7 4 \u2013 f<sub>t</sub> <em>so</em> <code>x "
             "= 1</code></p>"));
  EXPECT_EQ(page_with(pdf.page_texts(), "\u03c3 \u2264 2.4 N/mm\u00b2, 3 \u00d7 4 \u2013 f"), 1U);
  EXPECT_THAT(pdf.fonts(), Each(HasSubstr("DejaVuSans")));
  EXPECT_THAT(pdf.fonts(), Each(HasSubstr("yes yes yes")));  // embedded, a subset, with its letters
}

TEST(NotePdf, NoLettersAreDrawnAsOneThatASearchWouldMiss) {
  const std::vector<std::string> pages =
      PdfFile(pdf_of("<p>finished offices float</p>")).page_texts();
  EXPECT_THAT(pages.at(0), HasSubstr("finished offices float"));
  EXPECT_THAT(
      PdfFile(pdf_of("<p><a href=\"#x\">finished offices</a></p><h3 id=\"x\">X</h3>")).links(),
      Contains(Pair("finished offices", 1)));
}

TEST(NotePdf, ALongLineOfAListingGoesOnUnderAMark) {
  const PdfFile pdf(
      pdf_of("<pre>short = 1\n  long = \"" + std::string(300, 'y') + "\"\nlast = 2</pre>"));
  const std::string page = pdf.page_texts().at(0);
  EXPECT_THAT(page, AllOf(HasSubstr("short = 1"), HasSubstr("last = 2"), HasSubstr("\u21b3")));
  EXPECT_THAT(PdfFile(pdf_of("<pre>short = 1</pre>")).page_texts().at(0), Not(HasSubstr("\u21b3")));
}

TEST(NotePdf, HostileTextStaysOnThePageAndInTheDocument) {
  const std::string shout(10000, 'W');
  const std::string loud(1500, 'W');
  const std::string hebrew = "\u05e7\u05d9\u05e8 \u05dc\u05d1\u05e0\u05d9\u05dd";
  const std::string odd = "&lt;b&gt; &amp; \ufffd \xff\xfe (paren) \\ back ' quote" + hebrew;
  const std::string body = "<h1>" + shout + "</h1><section id=\"a'b)\"><h2>" + odd + "</h2><p>" +
                           loud + "</p><ul><li>" + loud + "</li></ul><p class=\"alarm\"><strong>" +
                           odd + "</strong> " + loud + "</p><table><caption>" + odd +
                           "</caption><tbody><tr class=\"fails\"><th>" + loud +
                           "</th><td class=\"fig\">" + loud + "</td><td>" + odd +
                           "</td></tr></tbody></table><pre>" + loud + "</pre></section>";
  const PdfFile pdf(note_pdf(note_of(body, odd + shout), {}, UnknownMarkup::refuse));
  for (const test::PdfPage& page : pdf.pages()) {
    for (const test::PdfWord& word : page.words) {
      EXPECT_GE(word.left, 0.0) << word.text;
      EXPECT_LE(word.right, page.width) << word.text;
      EXPECT_GE(word.top, 0.0) << word.text;
      EXPECT_LE(word.bottom, page.height) << word.text;
    }
  }
  EXPECT_GT(page_with(pdf.page_texts(), "(paren) \\ back ' quote"), 0U);
}

}  // namespace
}  // namespace deadshore::io
