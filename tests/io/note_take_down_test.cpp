// The take-down as the note and results.json have it. Sums are worked by hand beside each check.
#include "io/results/results_json.h"
#include "solver/loads/take_down.h"
#include "tests/io/made_up_result.h"
#include "tests/io/note_page.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using nlohmann::json;
using test::PageRow;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

/// A floor of 4 m x 3 m and a slope of 60 degrees, of which 1.5 m x 4 m and 1 m x 4 m on plan
/// count.
solver::House made_up_house() {
  solver::House house;
  house.floors.push_back(
      {.name = "floor <1>",
       .level = 2500.0,
       .x = {0.0, 4000.0},
       .span = 3000.0,
       .build_up =
           {{.material = "boards", .thickness = 22.0, .weight = 0.1e-3, .source = "sheet A"},
            {.material = "ceiling", .weight = 0.2e-3, .source = "sheet B"}},
       .imposed = {.use = "domestic", .load = 1.5e-3, .source = "EN 1991-1-1"}});
  solver::Roof roof;
  roof.name = "slope";
  roof.follows_top = true;
  roof.level = 3000.0;
  roof.x = {0.0, 4000.0};
  roof.pitch = 60.0;
  roof.run = 2000.0;
  roof.on_slope = {{.material = "tiles", .weight = 0.5e-3, .source = "sheet C"}};
  roof.access = 0.2e-3;
  roof.access_source = "as asked";
  roof.snow = 0.3e-3;
  roof.snow_source = "the map";
  house.roofs.push_back(roof);
  return house;
}

solver::JobResult result_with_house() {
  solver::JobResult result = test::made_up_result();
  result.job.house = made_up_house();
  result.take_down = solver::take_down(result.job.house);
  return result;
}

std::string chapter(const solver::JobResult& result) {
  return test::section_of(test::note_html(result, {}, {"wall.toml", "title = 1"}), "take-down");
}

std::vector<PageRow> rows_of(const solver::JobResult& result, const std::string& table) {
  const test::Page page = test::parsed(test::note_html(result, {}, {"wall.toml", "title = 1"}));
  return page == nullptr ? std::vector<PageRow>() : test::rows_in_order(page, table);
}

std::vector<std::string> numbers_of(const PageRow& row) {
  return {row.cells.begin() + 1, row.cells.end()};
}

TEST(NoteTakeDown, IsNotThereWhereNoHouseIsDescribed) {
  EXPECT_THAT(test::note_html(test::made_up_result(), {}, {"wall.toml", "title = 1"}),
              Not(HasSubstr("id=\"take-down\"")));
}

TEST(NoteTakeDown, EveryLineIsQuantityTimesUnitLoadTimesShare) {
  const std::vector<PageRow> rows = rows_of(result_with_house(), "take-down-lines");
  std::vector<PageRow> floor;
  const auto begins = [](const PageRow& row) { return row.cells[0] == "floor <1>"; };
  const auto ends = [](const PageRow& row) { return row.cells[0] == "Sum of floor <1>"; };
  const auto first = std::ranges::find_if(rows, begins);
  const auto last = std::ranges::find_if(rows, ends);
  ASSERT_EQ(last - first, 7);  // the heading, then three lines each with its working
  EXPECT_EQ(first->css_class, "group");
  EXPECT_THAT(numbers_of(first[1]),
              ElementsAre("12.000 m\u00b2", "0.1 kN/m\u00b2", "0.5", "0.60", ""));
  EXPECT_THAT(first[2].cells, ElementsAre(HasSubstr("sheet A")));
  EXPECT_THAT(numbers_of(first[3]),
              ElementsAre("12.000 m\u00b2", "0.2 kN/m\u00b2", "0.5", "1.20", ""));
  EXPECT_THAT(numbers_of(first[5]),
              ElementsAre("12.000 m\u00b2", "1.5 kN/m\u00b2", "0.5", "", "9.00"));
  EXPECT_THAT(numbers_of(*last), ElementsAre("", "", "", "1.80", "9.00"));
}

TEST(NoteTakeDown, TheSmallerOfSnowAndAccessStandsInBracketsAndIsNotCounted) {
  const std::vector<PageRow> rows = rows_of(result_with_house(), "take-down-lines");
  std::vector<std::string> imposed;
  bool in_roof = false;
  for (const PageRow& row : rows) {
    in_roof = in_roof || row.cells[0] == "slope";
    if (in_roof && row.cells.size() == 6 && !row.cells[5].empty()) imposed.push_back(row.cells[5]);
  }
  // 4 m x 2 m x 0.5 = 4 m2: access 0.2 kN/m2, snow 0.3 kN/m2
  ASSERT_EQ(imposed.size(), 3U);
  EXPECT_THAT(imposed, ::testing::UnorderedElementsAre("(0.80)", "1.20", "1.20"));
  EXPECT_THAT(chapter(result_with_house()),
              HasSubstr("Snow and access to a roof never act together"));
  solver::JobResult flat = result_with_house();
  flat.job.house.roofs.clear();
  flat.take_down = solver::take_down(flat.job.house);
  EXPECT_THAT(chapter(flat), Not(HasSubstr("never act together")));
}

TEST(NoteTakeDown, SumsSayWhatTheWallGetsPerMetre) {
  const std::vector<PageRow> rows = rows_of(result_with_house(), "take-down-sums");
  ASSERT_EQ(rows.size(), 4U);  // the head, floor, slope, all
  EXPECT_THAT(rows[1].cells, ElementsAre("floor <1>", "at 2500 mm, x = 0 to 4000 mm (4 m)",
                                         "0.45 kN/m", "2.25 kN/m", "1.80", "9.00"));
  // tiles: 0.5 / cos 60 = 1 kN/m2 on plan, on 4 m2
  EXPECT_THAT(rows[2].cells, ElementsAre("slope", "on the top, x = 0 to 4000 mm (4 m)", "1 kN/m",
                                         "0.3 kN/m", "4.00", "1.20"));
  EXPECT_THAT(rows[3].cells, ElementsAre("All of the house", "", "", "", "5.80", "10.20"));
}

// EN 1990 (6.10), (6.10a), (6.10b) with gamma_G 1.35, gamma_Q 1.5, xi 0.925 and psi_0 0.7 (floors),
// 0.5 (snow): UK NA Table NA.A1.1 and NA.A1.2(B) (from memory, unverified).
TEST(NoteTakeDown, TheTotalIsCombinedByEn1990) {
  const std::vector<PageRow> rows = rows_of(result_with_house(), "take-down-combinations");
  const auto value = [&](const std::string& name) {
    const auto found =
        std::ranges::find_if(rows, [&](const PageRow& row) { return row.cells[0] == name; });
    return found == rows.end() ? std::string("missing") : found->cells[1];
  };
  EXPECT_EQ(value("Dead"), "5.80");
  EXPECT_EQ(value("Imposed on floors"), "9.00");
  EXPECT_EQ(value("Access to roofs"), "0.80");
  EXPECT_EQ(value("Snow"), "1.20");
  EXPECT_EQ(value("(6.10)"), fmt::format("{:.2f}", 1.35 * 5.8 + 1.5 * (9.0 + 0.5 * 1.2)));
}

TEST(TakeDownJson, HasEveryLineAndWhatItComesTo) {
  const json answer = json::parse(results_json(result_with_house(), {}));
  const json taken = answer.at("take_down");
  double dead = 0.0;
  for (const json& line : taken.at("lines")) {
    const double product = line.at("quantity").get<double>() * line.at("unit_load").get<double>() *
                           line.at("share").get<double>();
    EXPECT_NEAR(line.at("load").get<double>(), product, 1e-9) << line;
    EXPECT_FALSE(line.at("source").get<std::string>().empty()) << line;
    if (line.at("action") == "dead") dead += line.at("load").get<double>();
  }
  EXPECT_NEAR(dead, 5.8, 1e-9);
  const json floor = taken.at("loads").at(0);
  EXPECT_EQ(floor.at("element"), "floor <1>");
  EXPECT_EQ(floor.at("floor"), "floor <1>");
  EXPECT_EQ(floor.at("acts"), "along the wall");
  EXPECT_NEAR(floor.at("dead_per_metre").get<double>(), 0.45, 1e-9);
  EXPECT_NEAR(floor.at("imposed_per_metre").get<double>(), 2.25, 1e-9);
  EXPECT_NEAR(taken.at("total").at("snow").get<double>(), 1.2, 1e-9);
  EXPECT_NEAR(taken.at("combinations").at("service").get<double>(), 5.8 + 9.0 + 1.2, 1e-9);
}

TEST(TakeDownJson, IsNotThereWhereNoHouseIsDescribed) {
  const json answer = json::parse(results_json(test::made_up_result(), {}));
  EXPECT_FALSE(answer.contains("take_down"));
}

}  // namespace
}  // namespace deadshore::io
