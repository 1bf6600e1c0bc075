#include "tests/viz/view/shown_folder.h"
#include "viz/view/answers.h"
#include "viz/view/picked.h"
#include "viz/view/solids.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

namespace deadshore::viz {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

class PickText : public ::testing::Test {
 protected:
  /// What is said of a thing, by its name.
  [[nodiscard]] std::vector<std::string> said_of(const char* what, std::size_t stage,
                                                 std::size_t analysis) const {
    return picked_text(picked_by_name(result, what), result, stage, analysis);
  }
  test::ShownFolder folder;
  ShownResult result = read_result(folder.path());
};

TEST_F(PickText, ANeedleHasItsReactionNowByHandAndThroughTheStages) {
  const std::vector<std::string> lines = said_of("N1", 2, 1);
  EXPECT_EQ(lines.front(), "N1");
  EXPECT_THAT(lines, Contains("Reaction now: 20.00 kN"));
  EXPECT_THAT(lines, Contains("By hand, 45 degrees: 30.00 kN"));
  EXPECT_THAT(lines, Contains("Through the stages (cracked):"));
  EXPECT_THAT(lines, Contains("> cut: 20.00 kN"));
  EXPECT_THAT(lines, Contains("   finished: 0.00 kN"));
  EXPECT_THAT(said_of("N1", 2, 0), Contains("Reaction now: 18.00 kN"));
}

TEST_F(PickText, ChecksOfANeedleAndItsPropsComeWorstFirstWithTheirClause) {
  const std::vector<std::string> lines = said_of("N1", 2, 1);
  const auto first = std::ranges::find(lines, "0.80  N1, bending");
  const auto second = std::ranges::find(lines, "0.60  N1 outer prop, prop strength");
  ASSERT_TRUE(first != lines.end() && second != lines.end());
  EXPECT_LT(first, second);
  EXPECT_EQ(*(first + 1), "      made-up clause; cut");
  EXPECT_THAT(lines, Not(Contains(HasSubstr("N2"))));
}

TEST_F(PickText, EverySupportHasTheForceOfTheResultsFile) {
  EXPECT_THAT(said_of("left pier", 2, 1), Contains("Reaction now: 16.00 kN"));
  EXPECT_THAT(said_of("right pier", 0, 0), Contains("Reaction now: 45.00 kN"));
  EXPECT_THAT(said_of("base under the cut", 0, 1), Contains("Reaction now: 29.00 kN"));
  EXPECT_THAT(said_of("base under the cut", 2, 1), Contains("Reaction now: none"));
  EXPECT_THAT(said_of("right end", 2, 1), Contains("Reaction now: 5.25 kN"));
  EXPECT_THAT(said_of("joists on floor shore", 2, 1), Contains("Reaction now: 2.00 kN"));
  EXPECT_THAT(said_of("beam left end", 4, 1), Contains("Reaction now: 13.00 kN"));
  EXPECT_THAT(said_of("beam left end", 4, 1),
              Contains("1.25 FAILS  twin beam left padstone, crushing"));
}

TEST_F(PickText, TheBeamHasItsMomentShearAndSag) {
  const std::vector<std::string> lines = said_of("beam", 4, 1);
  EXPECT_THAT(lines, Contains("Moment now: 12.50 kNm"));
  EXPECT_THAT(lines, Contains("Shear now: 12.50 kN"));
  EXPECT_THAT(lines, Contains("Sag now: 2.50 mm"));
  EXPECT_THAT(said_of("beam", 2, 1), Contains("Moment now: none"));
}

TEST_F(PickText, APropHasTheLoadItIsCheckedFor) {
  const double load = result.answers.at("needle_frames").at("N1").at("props").at(0).at("load");
  EXPECT_THAT(said_of("N1 outer prop", 2, 1),
              Contains("Load at worst: " + fmt::format("{:.2f}", load) + " kN"));
}

TEST_F(PickText, APlaceOnTheWallHasEveryFieldWithItsUnit) {
  // The made-up displacement is 1e-4 x and -5e-4 y, the stress xx -1e-4 x.
  const std::vector<std::string> lines = said_of("3250,2250", 2, 1);
  EXPECT_EQ(lines.front(), "Wall at x 3250 mm, y 2250 mm");
  EXPECT_THAT(lines, Contains("displacement: x 0.325, y -1.12 mm"));
  EXPECT_THAT(lines, Contains("stress: xx -0.325, yy -0.45, xy 0.05 N/mm2"));
  EXPECT_THAT(lines, Contains("material: soft brick"));
  EXPECT_THAT(lines, Contains("loose: 0"));
  EXPECT_THAT(said_of("2000,500", 2, 1), Contains("No masonry is there in this stage."));
  EXPECT_THAT(said_of("2000,500", 1, 1), Contains("material: soft brick"));
}

TEST_F(PickText, WhatIsNotThereIsRefusedWithWhatIs) {
  try {
    (void)picked_by_name(result, "N7");
    FAIL() << "N7 is accepted";
  } catch (const std::invalid_argument& error) {
    EXPECT_THAT(error.what(), HasSubstr("N1, N2, left pier"));
    EXPECT_THAT(error.what(), HasSubstr("N1 outer prop"));
  }
  for (const char* what : {"1,", "nan,2", "1,2,3", "", "1;2"}) {
    EXPECT_THROW((void)picked_by_name(result, what), std::invalid_argument) << what;
  }
}

TEST_F(PickText, WarnsOfLooseMasonryAndOfAWallThatDoesNotStand) {
  EXPECT_THAT(wall_warnings(result.answers, {2, "cracked"}), ElementsAre("Loose masonry: 1.25 kN"));
  EXPECT_TRUE(wall_warnings(result.answers, {3, "cracked"}).empty());
  const test::ShownFolder falling(io::test::made_up_result_that_falls("it spreads"));
  EXPECT_THAT(wall_warnings(read_result(falling.path()).answers, {0, "cracked"}),
              Contains("The wall does not stand here."));
}

TEST_F(PickText, ACheckThatNobodyMadeIsNotVerifiedWhateverItsNumbers) {
  const nlohmann::json answers = nlohmann::json::parse(R"({"checks": [
    {"member": "N1", "check": "ground", "clause": "none", "stage": "cut", "utilisation": null,
     "passes": false, "not_verified": true}]})");
  EXPECT_THAT(check_lines(answers, {"N1"}), Contains("not verified  N1, ground"));
  EXPECT_THAT(check_lines(answers, {"N2"}), ElementsAre("No check names it."));
}

TEST_F(PickText, NeedlesAreInFromTheirFittingToTheirRelease) {
  EXPECT_FALSE(needle_is_in(result.answers, 0, "N1"));
  EXPECT_TRUE(needle_is_in(result.answers, 1, "N1"));
  EXPECT_TRUE(needle_is_in(result.answers, 3, "N1"));
  EXPECT_FALSE(needle_is_in(result.answers, 4, "N1"));
  const test::ShownFolder at_once(io::test::made_up_result());
  EXPECT_TRUE(needle_is_in(read_result(at_once.path()).answers, 0, "N1"));
}

TEST_F(PickText, ArrowsAreThoseOfTheSupportsThatBear) {
  const auto names_at = [&](std::size_t stage) {
    std::vector<std::string> names;
    for (const SupportArrow& arrow : support_arrows(result, stage, 1)) names.push_back(arrow.name);
    return names;
  };
  EXPECT_THAT(names_at(0),
              ElementsAre("left pier", "base under the cut", "right pier", "right end"));
  EXPECT_THAT(names_at(1), Contains("N2"));  // it is in, though it bears nothing yet
  EXPECT_THAT(names_at(4), Contains("beam right end"));
  EXPECT_THAT(names_at(4), Not(Contains("N2")));
  EXPECT_DOUBLE_EQ(largest_reaction(result), 52.5);
}

}  // namespace
}  // namespace deadshore::viz
