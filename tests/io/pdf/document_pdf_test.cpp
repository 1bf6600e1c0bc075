#include "io/pdf/document_pdf.h"

#include "tests/io/pdf/pdf_file.h"
#include "viz/page/canvas.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

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

Document document_of(const Blocks& front) {
  return {"A wall", "", front, {"summary", "Summary", Paragraph{"It holds."}}, {}, {}};
}

std::string pdf_of(const Blocks& front) {
  return document_pdf(document_of(front));
}

Blocks paragraphs(int count) {
  Blocks all;
  for (int i = 0; i < count; ++i) {
    all +=
        Paragraph{fmt::format("P{}. Words that fill a line or two of the page, so that pages "
                              "break somewhere among them, and a few more.",
                              i)};
  }
  return all;
}

viz::Figure figure(const std::string& name, viz::Size size) {
  viz::Figure made;
  made.name = name;
  made.caption = "Caption of " + name + ".";
  made.drawing = {size, [size, name](viz::Canvas& canvas) {
                    canvas.outline(viz::Rect{1.0, 1.0, size.width - 1.0, size.height - 1.0}, {});
                    canvas.fill(viz::Rect{9.0, 9.0, 99.0, 99.0}, viz::tension, 0.5);
                    canvas.text({0.5 * size.width, 0.5 * size.height}, "inside " + name, {}, {});
                  }};
  return made;
}

TEST(DocumentPdf, TheSameDocumentGivesTheSameBytes) {
  const viz::Figure drawn = figure("one", {300.0, 200.0});
  const Document document = document_of(paragraphs(3) + Figure{&drawn, 1});
  EXPECT_EQ(document_pdf(document), document_pdf(document));
}

TEST(DocumentPdf, WhatIsForTheScreenIsLeftOut) {
  StageViewer viewer;
  viewer.stages = {"glass"};
  const PdfFile pdf(pdf_of(Paragraph{"always"} + viewer + Form{"form", {{{"Client", ""}}}}));
  const std::vector<std::string> pages = pdf.page_texts();
  EXPECT_EQ(page_with(pages, "always"), 1U);
  EXPECT_EQ(page_with(pages, "Client"), 1U);
  EXPECT_EQ(page_with(pages, "glass"), 0U);
  EXPECT_EQ(page_with(pages, "by hand"), 0U);
}

TEST(DocumentPdf, EveryPageHasAFootWithTitleProgramAndNumber) {
  const PdfFile pdf(pdf_of(paragraphs(90)));
  const std::vector<std::string> pages = pdf.page_texts();
  ASSERT_GT(pages.size(), 2U);
  for (std::size_t page = 0; page < pages.size(); ++page) {
    EXPECT_THAT(pages[page], AllOf(HasSubstr("A wall"), HasSubstr("deadshore 0."),
                                   HasSubstr(fmt::format("page {} / {}", page + 1, pages.size()))));
  }
}

TEST(DocumentPdf, TheRevisionStandsInEveryFoot) {
  Document document = document_of(paragraphs(90));
  EXPECT_THAT(PdfFile(document_pdf(document)).page_texts(), Each(Not(HasSubstr("Revision"))));
  document.revision = "P2";
  EXPECT_THAT(PdfFile(document_pdf(document)).page_texts(), Each(HasSubstr("Revision P2")));
}

TEST(DocumentPdf, ContentsAndBookmarksGiveThePagesOfTheChapters) {
  Document document = document_of({});
  for (int i = 1; i <= 6; ++i) {
    document.chapters.push_back(
        {fmt::format("c{}", i), fmt::format("Chapter of {}s", i), {}, paragraphs(7 * i)});
  }
  const PdfFile pdf(document_pdf(document));
  std::vector<std::string> pages = pdf.page_texts();
  const std::string first = pages.front();
  pages.front() = first.substr(first.find("Chapter of 6s") + 13);  // past the contents
  const auto bookmarks = pdf.bookmarks();
  ASSERT_EQ(bookmarks.size(), 8U);
  EXPECT_EQ(bookmarks[0].first, "Contents");
  EXPECT_EQ(bookmarks[1].first, "Summary");
  for (int i = 1; i <= 6; ++i) {
    const std::string heading = fmt::format("{0} Chapter of {0}s", i);
    const std::size_t page = page_with(pages, heading);
    EXPECT_THAT(test::squeezed(first),
                HasSubstr(test::squeezed(fmt::format("{} {}", heading, page))));
    EXPECT_EQ(bookmarks[static_cast<std::size_t>(i) + 1],
              std::pair(heading, static_cast<int>(page)));
  }
  EXPECT_THAT(pdf.links(), Contains(Pair("Chapter of 6s", bookmarks.back().second)));
  EXPECT_GT(page_with(pages, "6 Chapter of 6s"), 2U);
}

void expect_together(const std::vector<std::string>& pages, const std::string& one,
                     const std::string& other) {
  EXPECT_GT(page_with(pages, one), 0U) << one;
  EXPECT_EQ(page_with(pages, one), page_with(pages, other)) << one << " and " << other;
}

/// A table of groups: heading, rows with their working, total.
Table grouped_table(int groups) {
  Table table{"t", "Caption of the table", {"Head of it", numeric("kN")}};
  for (int g = 0; g < groups; ++g) {
    table.add({fmt::format("Group{}.", g)}, RowKind::heading);
    for (int r = 0; r < 5; ++r) {
      table.add({fmt::format("row{}.{};", g, r), fmt::format("{}.5", r)});
      table.add({fmt::format("how{}.{}; it comes about", g, r)}, RowKind::working);
    }
    table.add({fmt::format("Sum{}.", g), "12.5"}, RowKind::total);
  }
  return table;
}

TEST(DocumentPdf, TheHeadOfABrokenTableComesAgainOnEveryPage) {
  std::vector<std::string> pages = PdfFile(pdf_of(grouped_table(30))).page_texts();
  ASSERT_GT(pages.size(), 3U);
  EXPECT_EQ(page_with(pages, "Caption of the table"), 1U);
  pages.pop_back();  // that of contents and summary
  EXPECT_THAT(pages, Each(HasSubstr("Head of it")));
}

TEST(DocumentPdf, RowsStandWithTheirWorkingHeadingAndTotal) {
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

TEST(DocumentPdf, ARowIsNeverSplitUnlessItIsTallerThanAPage) {
  std::string words;
  for (int i = 0; i < 60; ++i) words += "some words more ";
  Table table{"t", "", {"Head", "of it"}};
  for (int r = 0; r < 30; ++r) {
    table.add({fmt::format("r{}.", r), fmt::format("begin{0}. {1} end{0}.", r, words)});
  }
  std::string tall;
  for (int i = 0; i < 4000; ++i) tall += fmt::format("w{} ", i);
  table.add({"tall.", tall});
  const std::vector<std::string> pages = PdfFile(pdf_of(table)).page_texts();
  for (int r = 0; r < 30; ++r) {
    expect_together(pages, fmt::format("begin{}.", r), fmt::format("end{}.", r));
  }
  EXPECT_GT(page_with(pages, "w3999"), page_with(pages, "tall."));
}

TEST(DocumentPdf, AHeadingIsNeverAloneAtTheFootOfAPage) {
  Blocks body;
  for (int i = 0; i < 80; ++i) {
    const std::string filling(static_cast<std::size_t>(30 + 41 * (i % 7)), 'x');
    body += Heading{fmt::format("Heading{}.", i)};
    body += Paragraph{fmt::format("first{}. {}", i, filling)};
  }
  const std::vector<std::string> pages = PdfFile(pdf_of(body)).page_texts();
  for (int i = 0; i < 80; ++i) {
    expect_together(pages, fmt::format("Heading{}.", i), fmt::format("first{}.", i));
  }
}

TEST(DocumentPdf, FiguresAreLinesAndTextAndWideOnesTakeALandscapePage) {
  const std::vector<viz::Figure> figures = {figure("small", {300.0, 200.0}),
                                            figure("tall", {500.0, 900.0}),
                                            figure("wide", {785.0, 500.0})};
  const PdfFile pdf(
      pdf_of(Blocks(Figure{&figures[0], 1}) + Figure{&figures[1], 2} + Figure{&figures[2], 3}));
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

TEST(DocumentPdf, TextIsSearchableInEmbeddedFonts) {
  const PdfFile pdf(pdf_of(Paragraph{
      "\u03c3 \u2264 2.4 N/mm\u00b2, 3 \u00d7 4 \u2013 f" + Text(io::Run{"t", Mark::sub}) + " " +
      io::Run{"so", Mark::emphasis} + " " + io::Run{"x = 1", Mark::code} + strong("!")}));
  EXPECT_EQ(page_with(pdf.page_texts(), "\u03c3 \u2264 2.4 N/mm\u00b2, 3 \u00d7 4 \u2013 f"), 1U);
  EXPECT_THAT(pdf.fonts(), Each(HasSubstr("DejaVuSans")));
  EXPECT_THAT(pdf.fonts(), Each(HasSubstr("yes yes yes")));  // embedded, a subset, with its letters
}

TEST(DocumentPdf, NoLettersAreDrawnAsOneThatASearchWouldMiss) {
  const PdfFile pdf(pdf_of(Paragraph{"finished offices float"} +
                           Paragraph{link_to("#summary", "finished offices")}));
  EXPECT_THAT(pdf.page_texts().at(0), HasSubstr("finished offices float"));
  EXPECT_THAT(pdf.links(), Contains(Pair("finished offices", 1)));
}

TEST(DocumentPdf, ALongLineOfAListingGoesOnUnderAMark) {
  const PdfFile pdf(
      pdf_of(Listing{"short = 1\n  long = \"" + std::string(300, 'y') + "\"\nlast = 2"}));
  const std::string page = pdf.page_texts().at(0);
  EXPECT_THAT(page, AllOf(HasSubstr("short = 1"), HasSubstr("last = 2"), HasSubstr("\u21b3")));
  EXPECT_THAT(PdfFile(pdf_of(Listing{"short = 1"})).page_texts().at(0), Not(HasSubstr("\u21b3")));
}

TEST(DocumentPdf, AHoldPointHasABoxToTick) {
  Table table{"steps", "", {"Step", "Hold"}};
  table.add({"1", io::Run{"Props plumb.", Mark::hold}});
  EXPECT_EQ(page_with(PdfFile(pdf_of(table)).page_texts(), "\u2610 Props plumb."), 1U);
}

TEST(DocumentPdf, HostileTextStaysOnThePageAndInTheDocument) {
  const std::string shout(10000, 'W');
  const std::string loud(1500, 'W');
  const std::string hebrew = "\u05e7\u05d9\u05e8 \u05dc\u05d1\u05e0\u05d9\u05dd";
  const std::string odd = "<b> & \x01 \xff\xfe (paren) \\ back ' quote" + hebrew;
  Table table{"t", odd, {loud, numeric(loud), odd}};
  table.add({loud, loud, odd}, RowKind::fails);
  const Blocks body = Paragraph{loud} + bullets({loud, odd}) + callout(Severity::alarm, odd, loud) +
                      table + Listing{loud + odd};
  Document document = document_of(Heading{shout, 1});
  document.title = odd + shout;
  document.revision = loud;
  document.chapters = {{"a'b)", odd, {}, body}};
  const PdfFile pdf(document_pdf(document));
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
