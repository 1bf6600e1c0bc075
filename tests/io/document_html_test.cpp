#include "io/document/html.h"
#include "tests/io/note_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace deadshore::io {
namespace {

using ::testing::HasSubstr;

std::string html(const Blocks& blocks) {
  return html_of(blocks).str();
}

TEST(DocumentHtml, RunsAreMarkedAndEscaped) {
  EXPECT_EQ(html_of("a < b " + strong("c & d") + io::Run{"2", Mark::sup} + io::Run{"t", Mark::sub} +
                    io::Run{"so", Mark::emphasis} + io::Run{"x = 1", Mark::code} +
                    link_to("#a\"b", "there"))
                .str(),
            "a &lt; b <strong>c &amp; d</strong><sup>2</sup><sub>t</sub><em>so</em>"
            "<code>x = 1</code><a href=\"#a&quot;b\">there</a>");
  EXPECT_THAT(html_of(io::Run{"Plumb.", Mark::hold}).str(),
              HasSubstr("<span class=\"hold\"><span class=\"box\"></span>Plumb.</span>"));
}

TEST(DocumentHtml, ControlCharactersThatXmlForbidsAreReplaced) {
  EXPECT_EQ(escape_html("a\x01\tb\n'\""), "a\uFFFD\tb\n&#39;&quot;");
}

TEST(DocumentHtml, AnEmptyListIsNothing) {
  EXPECT_EQ(html(bullets({})), "");
  EXPECT_EQ(html(List{{"one"}, true}), "<ol><li>one</li>\n</ol>\n");
}

TEST(DocumentHtml, ASingleParagraphIsItsOwnCallout) {
  EXPECT_EQ(html(callout(Severity::alarm, "Stop.", "Look.")),
            "<p class=\"alarm\"><strong>Stop.</strong> Look.</p>\n");
  EXPECT_EQ(html(Callout{Severity::warning, Paragraph{"a"} + bullets({"b"})}),
            "<div class=\"warning\"><p>a</p>\n<ul><li>b</li>\n</ul>\n</div>\n");
}

TEST(DocumentHtml, TheLastCellOfAShortRowSpansTheRest) {
  Table table{"t", "", {"What", numeric("kN"), numeric("mm")}};
  table.add({"a", "1", "2"});
  table.add({"b", "none"}, RowKind::fails);
  EXPECT_THAT(html(table),
              HasSubstr("<tr><th scope=\"row\">a</th><td class=\"fig\">1</td>"
                        "<td class=\"fig\">2</td></tr>\n"
                        "<tr class=\"fails\"><th scope=\"row\">b</th><td colspan=\"2\">none</td>"));
}

TEST(DocumentHtml, ARowStandsInOneGroupWithItsWorkingAndItsHeading) {
  Table table{"t", "", {"What", numeric("kN")}};
  table.add({"Floors"}, RowKind::heading);
  table.add({"a", "1"});
  table.add({"how a comes about"}, RowKind::working);
  table.add({"b", "2"});
  table.add({"how b comes about"}, RowKind::working);
  table.add({"Sum", "3"}, RowKind::total);
  std::vector<bool> starts;
  for (std::size_t row = 0; row < table.rows.size(); ++row) {
    starts.push_back(table.starts_group(row));
  }
  EXPECT_THAT(starts, ::testing::ElementsAre(true, false, false, true, false, false));
}

TEST(DocumentHtml, APageIsXmlWithContentsThatLeadToItsChapters) {
  const Document document{"A & B",
                          "",
                          Heading{"A & B", 1},
                          {"summary", "Summary", Paragraph{"It holds."}},
                          {},
                          {{"one", "The <first>", {}}, {"two", "Second", {}}}};
  const std::string page = document_html(document);
  EXPECT_NE(test::parsed(page), nullptr);
  EXPECT_THAT(page, HasSubstr("<title>A &amp; B</title>"));
  EXPECT_THAT(page, HasSubstr("<li><a href=\"#summary\">Summary</a></li>"));
  EXPECT_THAT(page,
              HasSubstr("<li><span class=\"number\">2</span> <a href=\"#two\">Second</a></li>"));
  EXPECT_THAT(page, HasSubstr("<section id=\"one\">\n<div class=\"keep\">"
                              "<h2><span class=\"number\">1</span> The &lt;first&gt;</h2>"));
}

}  // namespace
}  // namespace deadshore::io
