#include "io/results/results_json.h"
#include "tests/io/made_up_result.h"
#include "tests/io/note_page.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <map>
#include <set>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::Not;

/// Two figures that both name their parts as a drawing library would.
const std::vector<viz::Figure> figures = [] {
  const std::string svg =
      "<?xml version=\"1.0\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" "
      "xmlns:xlink=\"http://www.w3.org/1999/xlink\"><defs><path id=\"glyph\" d=\"M0 0\"/></defs>"
      "<g clip-path=\"url(#clip)\"><use xlink:href=\"#glyph\"/></g></svg>";
  std::vector<viz::Figure> both(2);
  both[0].name = "elevation";
  both[0].caption = "The wall as cut.";
  both[1].name = "needle-loads";
  both[1].caption = "Loads on the needles.";
  for (viz::Figure& figure : both) figure.svg = svg;
  return both;
}();

using test::for_each_element;
using test::Page;
using test::parsed;

std::string note_of(const solver::JobResult& result) {
  return test::note_html(result, figures, {"wall.toml", "title = 1"});
}

/// The cells of a table by the text of their row's first cell.
std::map<std::string, std::vector<std::string>> rows_of(vtkXMLDataElement* page,
                                                        const std::string& table_id) {
  std::map<std::string, std::vector<std::string>> rows;
  for (const test::PageRow& row : test::rows_in_order(page, table_id)) {
    rows[row.cells.at(0)] = row.cells;
  }
  return rows;
}

std::string one_decimal(const json& kilonewtons) {
  return fmt::format("{:.1f}", kilonewtons.get<double>());
}

TEST(Note, PrintsReactionsWithTheErrorOfTheMeshRoundedUp) {
  solver::JobResult result = test::made_up_result();
  EXPECT_THAT(note_of(result), Not(HasSubstr("Plus or minus after a reaction")));
  result.stages.front().analyses.back().mesh_error = {{support_of(solver::NeedleId{0}), 120.0},
                                                      {solver::supports::right_pier, 30.0}};
  const std::string note = note_of(result);
  const auto page = parsed(note);
  const auto comparison = rows_of(page, "comparison");
  EXPECT_EQ(comparison.at("N1").at(2), "21.3");
  EXPECT_EQ(comparison.at("N1").at(3), "24.6\u00a0\u00b1\u00a00.2");
  EXPECT_EQ(comparison.at("right pier").at(3), "26.0\u00a0\u00b1\u00a00.1");
  EXPECT_THAT(note, HasSubstr("Plus or minus after a reaction"));
}

TEST(Note, SaysWhatEachSupportWouldCarryIfWhatIsUnsureWereOtherwise) {
  solver::JobResult result = test::made_up_result();
  EXPECT_THAT(note_of(result), Not(HasSubstr("What if")));
  result.sensitivities = {test::made_up_sensitivity()};
  const std::string note = note_of(result);
  const Page page = parsed(note);
  ASSERT_NE(page, nullptr);
  const auto rows = rows_of(page, "what-if-cracked");
  EXPECT_THAT(rows.at("N1"),
              ::testing::ElementsAre("N1", "24.6", "22.0 to 27.5", "* 24.1 to 30.0 (N2)"));
  EXPECT_THAT(note, HasSubstr("changes found on elements of 400 mm"));
  EXPECT_THAT(note, HasSubstr("One thing is changed at a time"));
  EXPECT_THAT(note, HasSubstr("With cracked masonry for: tensile strength x 0.5."));
}

TEST(Note, IsWellFormedWithoutScriptOrAnythingToLoad) {
  const std::string note = note_of(test::made_up_result());
  ASSERT_NE(parsed(note), nullptr);
  EXPECT_THAT(note, Not(HasSubstr("<script")));
  EXPECT_THAT(note, Not(HasSubstr("src=")));
  EXPECT_THAT(note, Not(HasSubstr("<link")));
  EXPECT_THAT(note, Not(HasSubstr("@import")));
}

TEST(Note, EveryIdIsUniqueAndEveryReferenceFindsItsOwnFigure) {
  const std::string note = note_of(test::made_up_result());
  const Page page = parsed(note);
  ASSERT_NE(page, nullptr);
  std::multiset<std::string> ids;
  std::vector<std::string> references;
  for_each_element(page, [&](vtkXMLDataElement* element) {
    if (const char* id = element->GetAttribute("id")) ids.insert(id);
    if (const char* reference = element->GetAttribute("xlink:href"))
      references.emplace_back(reference);
  });
  for (const std::string& id : ids) EXPECT_EQ(ids.count(id), 1U) << id;
  EXPECT_THAT(references, ::testing::ElementsAre("#figure-1-glyph", "#figure-2-glyph"));
  EXPECT_THAT(note, HasSubstr("url(#figure-2-clip)"));
}

TEST(Note, LoadsOnTheNeedlesAreThoseOfTheResultsFile) {
  const solver::JobResult result = test::made_up_result();
  const json answer = json::parse(results_json(result, {}));
  const json& analyses = answer.at("stages").at(0).at("analyses");
  const Page page = parsed(note_of(result));
  ASSERT_NE(page, nullptr);
  const auto comparison = rows_of(page, "comparison");
  const auto design = rows_of(page, "design-loads");
  for (const auto& [name, hand] : answer.at("hand").at("needles").items()) {
    const std::vector<std::string>& row = comparison.at(name);
    EXPECT_EQ(row.at(1), one_decimal(hand)) << name;
    EXPECT_EQ(row.at(2), one_decimal(analyses.at("uncracked").at("needles").at(name))) << name;
    EXPECT_EQ(row.at(3), one_decimal(analyses.at("cracked").at("needles").at(name))) << name;
    EXPECT_EQ(design.at(name).at(4), one_decimal(answer.at("design_loads").at(name).at("load")));
  }
  EXPECT_EQ(comparison.at("left pier").at(2),
            one_decimal(analyses.at("uncracked").at("base").at("left")));
  EXPECT_EQ(comparison.at("right pier").at(3),
            one_decimal(analyses.at("cracked").at("base").at("right")));
}

TEST(Note, LoadsTableAddsUpToTheTotal) {
  const solver::JobResult result = test::made_up_result();
  const auto rows = rows_of(parsed(note_of(result)), "load-sum");
  double sum = 0.0;
  for (const auto& [name, cells] : rows) {
    if (name != "All loads" && name != "Load") sum += std::stod(cells.at(5));
  }
  EXPECT_NEAR(sum, 100.0, 0.05 * static_cast<double>(rows.size()));
  EXPECT_EQ(rows.at("All loads").at(5), "100.0");
}

TEST(Note, LoadsThatDoNotAddUpAreSaidLoudly) {
  solver::JobResult result = test::made_up_result();
  EXPECT_THAT(note_of(result), Not(HasSubstr("The loads do not agree.")));
  result.job.point_loads.front().dead += 5e3;
  EXPECT_THAT(note_of(result), HasSubstr("The loads do not agree."));
}

TEST(Note, NamesFromTheJobCannotBecomeMarkup) {
  solver::JobResult result = test::made_up_result();
  const std::string hostile = "</td><script>alert(\"1\")</script>&\x01";
  result.job.title = hostile;
  result.job.masonry.name = hostile;
  result.job.needles.front().name = hostile;
  result.job.line_loads.front().name = hostile;
  result.job.wall.openings.front().name = hostile;
  result.hand.needles.front().items.front().name = hostile;
  result.stages.front().name = hostile;
  result.comparison.front().needle = hostile;
  result.comparison.front().reason = hostile;
  result.stages.front().analyses.back().loose.front().where = hostile;
  result.stages.front().analyses.front().no_equilibrium = hostile;
  result.mesh.remarks.front() = hostile;
  const std::string note = test::note_html(result, figures, {hostile, hostile});
  EXPECT_THAT(note, Not(HasSubstr("<script")));
  EXPECT_THAT(note, HasSubstr("&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;&amp;\uFFFD"));
  EXPECT_NE(parsed(note), nullptr);
}

TEST(Note, AWallThatFallsShowsTheReasonAndNoReactions) {
  const solver::JobResult result = test::made_up_result_that_falls("nothing takes the thrust.");
  const std::string note = note_of(result);
  EXPECT_THAT(note, HasSubstr("This wall does not stand."));
  EXPECT_THAT(note, HasSubstr("nothing takes the thrust."));
  EXPECT_THAT(note, Not(HasSubstr("nan")));
  const Page page = parsed(note);
  EXPECT_TRUE(rows_of(page, "design-loads").empty());
  EXPECT_EQ(rows_of(page, "comparison").at("N1").at(3), "\u2013");
  EXPECT_EQ(rows_of(page, "comparison").at("left pier").at(3), "\u2013");
  EXPECT_TRUE(rows_of(page, "needles-1-cracked").empty());
  EXPECT_FALSE(rows_of(page, "needles-1-uncracked").empty());
}

TEST(Note, LooseMasonryIsNamedWithItsWeightInTheSummary) {
  const std::string note = note_of(test::made_up_result());
  const std::string summary = test::section_of(note, "summary");
  EXPECT_THAT(summary, HasSubstr("Loose masonry: 1.2 kN would fall."));
  EXPECT_THAT(summary, HasSubstr("over the cut between N1 and N2"));
}

TEST(Note, OverstressAndIdleNeedlesAreWarnedOf) {
  solver::JobResult result = test::made_up_result();
  EXPECT_THAT(note_of(result), Not(HasSubstr("Crushing.")));
  EXPECT_THAT(note_of(result), Not(HasSubstr("A needle carries nothing.")));
  result.stages.front().analyses.back().max_compression = 2.5;
  result.stages.front().analyses.back().needles.back().force = 0.0;
  EXPECT_THAT(note_of(result), HasSubstr("Crushing."));
  EXPECT_THAT(note_of(result), HasSubstr("nothing comes down on N2."));
}

TEST(Note, WorkedHandSumsAddUpForEverySupport) {
  const solver::JobResult result = test::made_up_result();
  const Page page = parsed(note_of(result));
  const auto rows = rows_of(page, "hand-sums");
  EXPECT_EQ(rows_of(page, "hand-needle-1").at("Total on N1").at(2), "30.00");
  EXPECT_EQ(rows.at("Total on left pier").at(2), "26.00");
  EXPECT_EQ(rows.at("Sum over all supports").at(2), "100.00");
  EXPECT_THAT(note_of(result), HasSubstr("2.600 m\u00b2 \u00d7 0.25 m \u00d7 20 kN/m\u00b3"));
  EXPECT_THAT(note_of(result), HasSubstr("38.8 % of 40.00 kN, round an opening"));
}

}  // namespace
}  // namespace deadshore::io
