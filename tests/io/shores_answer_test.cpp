#include "io/document/html.h"
#include "io/job/job_reader.h"
#include "io/note/chapters.h"
#include "io/results/shores_json.h"
#include "tests/io/core_keys.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace deadshore::io {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

/// The dead shores of shored_keys.toml worked out: D1 on props at given places, D2 a stud wall.
solver::JobResult worked_out(const std::string& text) {
  solver::JobResult result;
  result.job = parse_job(text, "yard.toml");
  result.shores = solver::design_shores(result.job);
  return result;
}

std::string chapter_of(const std::string& text) {
  return html_of(dead_shores_chapter(worked_out(text)).rest).str();
}

std::string shored_keys() {
  return test_data("shored_keys.toml");
}

TEST(DeadShoresChapter, SaysWhatEachIsMadeOf) {
  const std::string page = chapter_of(shored_keys());
  EXPECT_THAT(page, HasSubstr("timber 100 \u00d7 150 mm, C24"));
  EXPECT_THAT(page, HasSubstr("props B30"));
  EXPECT_THAT(page, HasSubstr("timber 47 \u00d7 100 mm, C16, at 600 mm, noggings at mid-height"));
  EXPECT_THAT(page,
              HasSubstr("the suspended floor \u201cfirst floor\u201d, 2700 mm above the base"));
}

// 3.8 / 3.1 = 1.2258; 4.5 kN/m over 3.4 m is 15.30 kN, times that 18.75 kN.
TEST(DeadShoresChapter, WorksTheLeverOutInNumbers) {
  const std::string page = chapter_of(shored_keys());
  EXPECT_THAT(page, HasSubstr("3.80 / (3.80 \u2212 0.70) = 1.226"));
  EXPECT_THAT(page, HasSubstr("15.30 kN on the wall and 18.75 kN on the head plate"));
}

TEST(DeadShoresChapter, ListsEachUprightAndItsAdvice) {
  const std::string page = chapter_of(shored_keys());
  for (const char* mark : {"D1 P1", "D1 P4", "D2 stud 1", "D2 stud 8"})
    EXPECT_THAT(page, HasSubstr(mark));
  EXPECT_THAT(page, Not(HasSubstr("D1 P5")));
  EXPECT_THAT(page, HasSubstr("reaches beyond the row"));
}

TEST(DeadShoresChapter, IsNotThereWithoutFrames) {
  EXPECT_EQ(chapter_of(test_data("staged_keys.toml")), "");
}

TEST(DeadShoresChapter, GivesNoLoadWhereThePlateWouldTip) {
  const std::string page =
      chapter_of(with(shored_keys(), R"(["1 m", "2 m", "3 m", "4 m"])", R"(["1 m", "1.2 m"])"));
  EXPECT_THAT(page, HasSubstr("No load is given."));
  EXPECT_THAT(page, Not(HasSubstr("D1 P1")));
}

TEST(ShoresJson, HasLeverLoadsAndUprights) {
  const solver::JobResult result = worked_out(shored_keys());
  const Json shores = shores_json(result);
  ASSERT_EQ(shores.size(), 2U);
  const Json& first = shores.at("D1");
  EXPECT_NEAR(first.at("lever").get<double>(), 3.8 / 3.1, 1e-9);
  EXPECT_EQ(first.at("uprights").size(), 4U);
  EXPECT_EQ(first.at("uprights").at(0).at("mark"), "D1 P1");
  EXPECT_EQ(first.at("uprights").at(0).at("x"), 1000.0);
  double on_plate = 0.0;
  for (const Json& load : first.at("loads"))
    on_plate += load.at("dead").get<double>() + load.at("imposed").get<double>();
  EXPECT_NEAR(on_plate, 4.5 * 3.4 * 3.8 / 3.1, 1e-6);
  EXPECT_GT(first.at("total").get<double>(), on_plate);
}

}  // namespace
}  // namespace deadshore::io
