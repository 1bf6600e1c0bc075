// How the way up of a job's beam is read, and what the answers say of it. No outside source.
#include "io/job/job_reader.h"
#include "io/results/results_json.h"
#include "tests/io/core_keys.h"
#include "tests/io/made_up_result.h"
#include "tests/io/note_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::SizeIs;

constexpr double kgf = 9.80665;

solver::Lifting read_with(const std::string& old_part, const std::string& new_part) {
  return parse_job(with(test_data("lift_keys.toml"), old_part, new_part), "yard.toml")
      .lifting.value();
}

TEST(LiftReader, AJobNeedNotSayHowItsBeamGoesUp) {
  EXPECT_FALSE(parse_job(test_data("staged_keys.toml"), "yard.toml").lifting.has_value());
}

TEST(LiftReader, ReadsTheWayWithItsDefaults) {
  const solver::Lifting lifting = read_with("", "");
  EXPECT_EQ(lifting.side, solver::PropSide::outside);
  EXPECT_EQ(lifting.entry, solver::BeamEntry::sideways);
  EXPECT_EQ(lifting.clearance, 25.0);
  EXPECT_EQ(lifting.needle_underside, 2550.0);
  EXPECT_EQ(lifting.pocket_left, 200.0);
  EXPECT_EQ(lifting.pocket_right, 180.0);
  EXPECT_EQ(lifting.floor_level, 0.0);
  EXPECT_EQ(lifting.room_left, 0.0);
  EXPECT_EQ(lifting.room_right, 5000.0);
  EXPECT_EQ(lifting.dynamic_factor, 1.25);
  EXPECT_TRUE(lifting.one_at_a_time);
}

TEST(LiftReader, ReadsTheWayAsSaid) {
  const solver::Lifting lifting =
      read_with("side             = \"outside\"",
                "side = \"inside\"\nentry = \"endways\"\nsections = \"together\"\n"
                "clearance = \"1 in\"\nfloor_level = \"-150 mm\"\ndynamic_factor = 1.5");
  EXPECT_EQ(lifting.side, solver::PropSide::inside);
  EXPECT_EQ(lifting.entry, solver::BeamEntry::endways);
  EXPECT_FALSE(lifting.one_at_a_time);
  EXPECT_NEAR(lifting.clearance, 25.4, 1e-9);
  EXPECT_EQ(lifting.floor_level, -150.0);
  EXPECT_EQ(lifting.dynamic_factor, 1.5);
}

TEST(LiftReader, ReadsLiftersWithTheirPlates) {
  const solver::Lifting lifting = read_with("", "");
  ASSERT_THAT(lifting.lifters, SizeIs(2));
  const solver::Lifter& first = lifting.lifters[0];
  EXPECT_EQ(first.name, "L1");
  EXPECT_EQ(first.at, 900.0);
  EXPECT_EQ(first.load_distance, 500.0);
  EXPECT_EQ(first.width, 600.0);
  EXPECT_EQ(first.capacity.source, "plate on the lifter");
  ASSERT_THAT(first.capacity.rows, SizeIs(2));
  EXPECT_EQ(first.capacity.rows[1].distance, 600.0);
  EXPECT_NEAR(first.capacity.rows[1].load, 150.0 * kgf, 1e-6);
  EXPECT_FALSE(first.tipping.has_value());
  ASSERT_TRUE(lifting.lifters[1].tipping.has_value());
  EXPECT_NEAR(lifting.lifters[1].tipping->own_weight, 90.0 * kgf, 1e-6);
  EXPECT_EQ(lifting.lifters[1].tipping->weight_behind, 350.0);
  EXPECT_EQ(lifting.lifters[1].tipping->load_beyond, -50.0);
}

TEST(LiftReader, ReadsStandsWithTheirFixings) {
  const solver::Lifting lifting = read_with("", "");
  ASSERT_THAT(lifting.stands, SizeIs(2));
  const solver::Stand& nailed = lifting.stands[0];
  EXPECT_EQ(nailed.legs, 4);
  EXPECT_EQ(nailed.leg.strength_class.name, "C24");
  EXPECT_EQ(nailed.leg.section.b, 47.0);
  EXPECT_EQ(nailed.leg.section.h, 97.0);
  EXPECT_EQ(nailed.leg.duration, solver::LoadDuration::permanent);
  EXPECT_EQ(nailed.leg.service, solver::ServiceClass::two);
  EXPECT_EQ(nailed.leg_length, 1800.0);
  EXPECT_EQ(nailed.fixing.number, 8);
  EXPECT_FALSE(nailed.fixing.capacity.has_value());
  EXPECT_EQ(nailed.fixing.diameter, 3.35);
  EXPECT_EQ(nailed.fixing.tensile_strength, 600.0);
  EXPECT_EQ(nailed.fixing.side_thickness, 38.0);
  EXPECT_EQ(nailed.fixing.penetration, 52.0);
  EXPECT_FALSE(nailed.fixing.predrilled);
  const solver::Stand& given = lifting.stands[1];
  EXPECT_EQ(given.width, 300.0);
  EXPECT_EQ(given.depth, 600.0);
  EXPECT_EQ(given.legs, 2);
  EXPECT_EQ(given.leg.strength_class.name, "C16");
  EXPECT_EQ(given.leg.service, solver::ServiceClass::three);
  EXPECT_EQ(given.fixing.capacity, 1100.0);
}

/// A result with the way up of the job in lift_keys.toml, with one check that fails.
solver::JobResult lifted_result() {
  const solver::Job job =
      parse_job(with(test_data("lift_keys.toml"), "2.55 m", "2.38 m"), "yard.toml");
  solver::JobResult result = test::made_up_staged_result();
  result.job.lifting = job.lifting;
  result.lift = solver::plan_lift(job);
  result.checks = result.lift->checks;
  return result;
}

TEST(LiftNote, HasNoChapterWithoutALift) {
  EXPECT_THAT(test::note_html(test::made_up_staged_result(), {}, {"yard.toml", ""}),
              Not(HasSubstr("<section id=\"lift\"")));
}

TEST(LiftNote, TellsTheStepsAndWhatHoldsTheBeam) {
  const solver::JobResult result = lifted_result();
  const std::string note = test::note_html(result, {}, {"yard.toml", ""});
  const test::Page page = test::parsed(note);
  ASSERT_NE(page, nullptr);
  const auto rows = test::rows_in_order(page, "lift-loads");
  ASSERT_EQ(rows.size(), 5U);
  EXPECT_EQ(rows[1].cells[0], "Lifter L1");
  EXPECT_EQ(rows[4].cells[0], "Stand S2");
  const std::string chapter = test::section_of(note, "lift");
  EXPECT_THAT(chapter, HasSubstr("never the only thing that holds"));
  EXPECT_THAT(chapter, HasSubstr("<ol><li>Bring it to the outside"));
}

TEST(LiftNote, IsLoudAboutAClash) {
  const test::Page page = test::parsed(test::note_html(lifted_result(), {}, {"yard.toml", ""}));
  ASSERT_NE(page, nullptr);
  const auto rows = test::rows_in_order(page, "lift-way");
  const auto clash = std::ranges::find_if(rows, [](const test::PageRow& row) {
    return row.cells.size() > 1 && row.cells[1] == "height under the needles";
  });
  ASSERT_NE(clash, rows.end());
  EXPECT_EQ(clash->css_class, "fails");
  EXPECT_THAT(clash->cells[4], HasSubstr("CLASHES"));
}

TEST(LiftJson, GivesWeightsLoadsAndSteps) {
  const nlohmann::json answer = nlohmann::json::parse(results_json(lifted_result(), {}));
  const nlohmann::json& lift = answer.at("lift");
  EXPECT_EQ(lift.at("length"), 3300.0);
  EXPECT_NEAR(lift.at("weight").get<double>(), 2.0 * lift.at("weight_of_one").get<double>(), 1e-9);
  ASSERT_EQ(lift.at("stands").size(), 2U);
  EXPECT_NEAR(lift.at("stands").at(0).at("per_leg").get<double>(),
              lift.at("stands").at(0).at("load").get<double>() / 4.0, 1e-9);
  EXPECT_EQ(lift.at("lifters").at(0).at("name"), "L1");
  EXPECT_EQ(lift.at("steps").size(), 6U);
  EXPECT_FALSE(nlohmann::json::parse(results_json(test::made_up_result(), {})).contains("lift"));
}

}  // namespace
}  // namespace deadshore::io
