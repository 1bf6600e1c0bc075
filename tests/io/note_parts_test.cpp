// What holds the note together: title block, contents, links, where figures stand, the job's text.
#include "io/results/results_json.h"
#include "tests/io/made_up_result.h"
#include "tests/io/note_page.h"
#include "tests/viz/made_up_frame.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

const JobFile job_file{"wall.toml", "title = \"Wall & <wall>\"  # two\tparts\n[wall]\n"};

std::vector<viz::Figure> figures_named(const std::vector<std::string>& names) {
  std::vector<viz::Figure> figures(names.size());
  for (std::size_t i = 0; i < names.size(); ++i) {
    figures[i].name = names[i];
    figures[i].caption = "What " + names[i] + " shows.";
    figures[i].svg = "<svg xmlns=\"http://www.w3.org/2000/svg\"/>";
  }
  return figures;
}

const std::vector<std::string> every_kind = {"elevation",
                                             "stages",
                                             "compression-cracked-cut",
                                             "load-flow-cracked-cut",
                                             "reactions-by-stage",
                                             "cracks-cut",
                                             "mechanism",
                                             "beam",
                                             "needle-loads",
                                             "needle-F1",
                                             "spread-N1",
                                             "spread-N2",
                                             "spread-elsewhere",
                                             "plan",
                                             "deformed-cracked-cut",
                                             "something new"};

std::vector<std::string> found_in(const std::string& page, const std::string& pattern) {
  std::vector<std::string> found;
  const std::regex expression(pattern);
  for (std::sregex_iterator at(page.begin(), page.end(), expression), end; at != end; ++at) {
    found.push_back((*at)[1]);
  }
  return found;
}

std::string note_of(const solver::JobResult& result,
                    const std::vector<std::string>& names = every_kind) {
  return test::note_html(result, figures_named(names), job_file);
}

solver::JobResult framed_stages() {
  solver::JobResult result = test::made_up_staged_result();
  viz::put_on_frame(result, viz::made_up_frame("F1"));
  return result;
}

/// A job with everything, one without frames, one at once, and walls that fall.
std::vector<solver::JobResult> all_kinds() {
  return {framed_stages(), test::made_up_staged_result(), test::made_up_result(),
          test::made_up_result_that_falls("nothing ties it"),
          test::made_up_staged_result_that_falls("nothing ties it")};
}

TEST(NoteFigures, EachStandsInTheNoteOnceAndNumbersRunThrough) {
  for (const solver::JobResult& result : all_kinds()) {
    const std::string note = note_of(result);
    EXPECT_THAT(found_in(note, "<figure data-figure=\"([^\"]*)\""),
                ::testing::UnorderedElementsAreArray(every_kind));
    const std::vector<std::string> numbers = found_in(note, "<strong>Figure ([0-9]+)\\.</strong>");
    ASSERT_EQ(numbers.size(), every_kind.size());
    for (std::size_t i = 0; i < numbers.size(); ++i) EXPECT_EQ(numbers[i], std::to_string(i + 1));
  }
}

TEST(NoteFigures, StandInTheChaptersTheyBelongTo) {
  const std::string note = note_of(framed_stages());
  const auto in = [&](const std::string& chapter) {
    return found_in(test::section_of(note, chapter), "<figure data-figure=\"([^\"]*)\"");
  };
  EXPECT_THAT(in("wall"), ElementsAre("elevation"));
  EXPECT_THAT(in("hand"), ElementsAre("spread-N1", "spread-N2", "spread-elsewhere"));
  EXPECT_THAT(in("stages"),
              ElementsAre("reactions-by-stage", "cracks-cut", "compression-cracked-cut",
                          "load-flow-cracked-cut", "deformed-cracked-cut", "stages"));
  EXPECT_THAT(in("safety"), ElementsAre("mechanism"));
  EXPECT_THAT(in("methods"), ElementsAre("needle-loads"));
  EXPECT_THAT(in("needle-frames"), ElementsAre("plan", "needle-F1"));
  EXPECT_THAT(in("beam"), ElementsAre("beam"));
  EXPECT_THAT(in("other-figures"), ElementsAre("something new"));
}

TEST(NoteFigures, ASpreadStandsBesideTheSumOfItsNeedle) {
  const std::string hand = test::section_of(note_of(framed_stages()), "hand");
  const std::size_t second = hand.find("id=\"hand-needle-2\"");
  EXPECT_LT(hand.find("data-figure=\"spread-N1\""), second);
  EXPECT_GT(hand.find("data-figure=\"spread-N2\""), second);
}

TEST(NoteFigures, WithoutAnyOfUnknownNameThereIsNoChapterOfOthers) {
  EXPECT_THAT(note_of(framed_stages(), {"elevation"}), Not(HasSubstr("other-figures")));
}

TEST(NoteContents, HasEveryChapterOnceInItsOrder) {
  for (const solver::JobResult& result : all_kinds()) {
    const std::string note = note_of(result);
    const std::size_t start = note.find("<nav id=\"contents\"");
    const std::string contents = note.substr(start, note.find("</nav>") - start);
    EXPECT_EQ(found_in(contents, "href=\"#([^\"]*)\""),
              found_in(note.substr(note.find("</nav>")), "<section id=\"([^\"]*)\""));
  }
}

TEST(NoteContents, EveryLinkInsideThePageFindsItsPlace) {
  for (const solver::JobResult& result : all_kinds()) {
    const std::string note = note_of(result);
    const std::vector<std::string> ids = found_in(note, " id=\"([^\"]*)\"");
    const std::set<std::string> known(ids.begin(), ids.end());
    EXPECT_EQ(known.size(), ids.size());
    for (const std::string& target : found_in(note, "href=\"#([^\"]*)\"")) {
      EXPECT_TRUE(known.contains(target)) << target;
    }
  }
}

TEST(NoteTitleBlock, SaysWhatIsGivenAndLeavesBlanksForThePen) {
  solver::JobResult result = test::made_up_result();
  result.job.title_block.project = "Mill <cottage>";
  result.job.title_block.checked_by = "C. Engineer";
  const auto rows = test::rows_in_order(test::parsed(note_of(result)), "title-block");
  ASSERT_EQ(rows.size(), 6U);
  EXPECT_THAT(rows[0].cells, ElementsAre("Project", "Mill <cottage>", "Client", ""));
  EXPECT_EQ(rows[3].cells.at(1), "C. Engineer");
  EXPECT_EQ(rows[4].cells.at(1), "wall.toml");
  EXPECT_EQ(rows[5].cells.at(1), sha256_of(job_file.text));
  const std::vector<std::string> blanks =
      found_in(note_of(result), "([a-zA-Z ]*)</th><td class=\"blank\">");
  EXPECT_THAT(blanks, ElementsAre("Client", "Reference", "Revision", "Prepared by", "Date"));
}

TEST(NoteJobText, IsTheVeryBytesOfTheFile) {
  const test::Page page = test::parsed(note_of(test::made_up_result()));
  std::string text;
  test::for_each_element(page, [&](vtkXMLDataElement* element) {
    if (std::string(element->GetName()) == "pre") text = element->GetCharacterData();
  });
  // The reader of the page drops spaces round a text.
  EXPECT_EQ(text, job_file.text.substr(0, text.size()));
  EXPECT_THAT(text, HasSubstr("[wall]"));
  EXPECT_THAT(test::section_of(note_of(test::made_up_result()), "job-text"),
              HasSubstr(sha256_of(job_file.text)));
}

TEST(NoteJobText, NoteAndResultsNameTheSameFile) {
  const auto answer =
      nlohmann::json::parse(results_json(test::made_up_result(), job_file)).at("input");
  EXPECT_EQ(answer.at("file"), "wall.toml");
  EXPECT_THAT(note_of(test::made_up_result()), HasSubstr(answer.at("sha256").get<std::string>()));
}

TEST(NoteSummary, GivesAVerdictThatGoesWithWhatWasFound) {
  const auto summary = [](const solver::JobResult& result) {
    return test::section_of(note_of(result), "summary");
  };
  solver::JobResult sound = framed_stages();
  for (solver::StageResult& stage : sound.stages) {
    for (solver::PanelResult& analysis : stage.analyses) analysis.loose.clear();
  }
  solver::Check check;
  check.member = "N1";
  check.check = "bending";
  check.demand = 9.0;
  check.capacity = 10.0;
  sound.checks = {check};
  EXPECT_THAT(summary(sound), HasSubstr("No check made here fails; an engineer decides"));
  EXPECT_THAT(summary(sound), HasSubstr("0.90: N1, bending"));

  sound.checks.push_back(solver::not_verified("bolts", "none", "nobody looked"));
  EXPECT_THAT(summary(sound),
              HasSubstr("1 check is not verified: nobody may build it before it is."));

  check.demand = 11.0;
  sound.checks.front() = check;
  EXPECT_THAT(summary(sound), HasSubstr("Not to be built as it is:"));
  EXPECT_THAT(summary(sound), HasSubstr("1 check fails."));

  EXPECT_THAT(summary(framed_stages()), HasSubstr("masonry is loose."));
  EXPECT_THAT(summary(test::made_up_result_that_falls("so")), HasSubstr("the wall does not stand"));
}

TEST(NoteSummary, CollectsWhatToChange) {
  solver::JobResult result = framed_stages();
  result.needle_designs[0].advice = {"UC 152x152x23 is the lightest that passes"};
  const std::string note = note_of(result);
  const std::string summary = test::section_of(note, "summary");
  const std::size_t change = summary.find("What to change");
  EXPECT_LT(change, summary.find("N1: UC 152x152x23 is the lightest that passes. "));
  EXPECT_THAT(summary, HasSubstr("<a href=\"#needle-frames\">"));
  result.needle_designs[0].advice.clear();
  result.checks.clear();
  EXPECT_THAT(test::section_of(note_of(result), "summary"),
              HasSubstr("Nothing that was looked at asks for a change."));
}

}  // namespace
}  // namespace deadshore::io
