#include "io/results/results_json.h"

#include "tests/io/made_up_result.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <limits>
#include <stdexcept>

namespace deadshore::io {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;

json parsed(const solver::JobResult& result) {
  return json::parse(results_json(result, {}));
}

// The keys and units that design.md, "The answer", promises to other programs.
TEST(ResultsJson, HasTheKeysOfTheContractInKilonewtonsAndMillimetres) {
  const json answer = parsed(test::made_up_result());

  EXPECT_EQ(answer.at("title"), "Invented wall");
  EXPECT_EQ(answer.at("units").at("force"), "kN");
  EXPECT_EQ(answer.at("units").at("length"), "mm");
  EXPECT_EQ(answer.at("units").at("stress"), "N/mm2");
  EXPECT_EQ(answer.at("load_total"), 100.0);
  EXPECT_EQ(answer.at("hand").at("needles"), (json{{"N1", 30.0}, {"N2", 20.0}}));
  EXPECT_EQ(answer.at("checks"), json::array());

  const json& stage = answer.at("stages").at(0);
  EXPECT_EQ(stage.at("name"), "cut");
  const json& cracked = stage.at("analyses").at("cracked");
  EXPECT_EQ(cracked.at("needles"), (json{{"N1", 24.55}, {"N2", 26.05}}));
  EXPECT_EQ(cracked.at("base"), (json{{"left", 23.4}, {"right", 26.0}}));
  EXPECT_EQ(cracked.at("equilibrium_error"), 3e-11);
  EXPECT_EQ(cracked.at("max_settlement"), 2.41);
  EXPECT_EQ(cracked.at("iterations"), 14);
  EXPECT_EQ(stage.at("analyses").at("uncracked").at("needles").at("N1"), 21.3);
}

TEST(ResultsJson, NeedlesAndBasesAddUpToTheLoad) {
  const json answer = parsed(test::made_up_result());
  for (const auto& [model, analysis] : answer.at("stages").at(0).at("analyses").items()) {
    double up = analysis.at("base").at("left").get<double>();
    up += analysis.at("base").at("right").get<double>();
    for (const auto& [name, force] : analysis.at("needles").items()) up += force.get<double>();
    EXPECT_NEAR(up, answer.at("load_total").get<double>(), 1e-6) << model;
  }
}

TEST(ResultsJson, GivesTheErrorOfTheMeshWhereItIsKnown) {
  solver::JobResult result = test::made_up_result();
  result.stages.front().analyses.front().mesh_error = {{support_of(solver::NeedleId{0}), 120.0},
                                                       {solver::supports::left_pier, 340.0}};
  const json answer = parsed(result);
  const json& analyses = answer.at("stages").at(0).at("analyses");
  EXPECT_EQ(analyses.at("uncracked").at("mesh_error"), (json{{"N1", 0.12}, {"left pier", 0.34}}));
  EXPECT_FALSE(analyses.at("cracked").contains("mesh_error"));
}

TEST(ResultsJson, GivesWhatReactionsDependOnByModelAndSupport) {
  const json answer = parsed(test::made_up_result());
  EXPECT_FALSE(answer.contains("sensitivity"));
  solver::JobResult result = test::made_up_result();
  result.sensitivities = {test::made_up_sensitivity()};
  const json found = parsed(result).at("sensitivity");
  EXPECT_EQ(found.at("ranges").at("packing_loss"), (json{0.0, 1.0}));
  const json& cracked = found.at("cracked");
  EXPECT_EQ(cracked.at("mesh_size"), 400.0);
  EXPECT_EQ(cracked.at("no_answer"), json{"tensile strength x 0.5"});
  const json& needle = cracked.at("supports").at("N1");
  EXPECT_EQ(needle.at("reaction"), 24.55);
  EXPECT_EQ(needle.at("brackets").at("masonry_E"), (json{22.0, 27.5}));
  EXPECT_EQ(needle.at("worst"), "packing_loss");
  EXPECT_EQ(needle.at("worst_needle"), "N2");
  EXPECT_FALSE(found.contains("uncracked"));
}

TEST(ResultsJson, AWallThatFallsHasAReasonInsteadOfReactions) {
  const json answer = parsed(test::made_up_result_that_falls("nothing takes the thrust."));
  const json& analyses = answer.at("stages").at(0).at("analyses");
  const json& cracked = analyses.at("cracked");

  EXPECT_EQ(cracked.at("no_equilibrium"), "nothing takes the thrust.");
  for (const char* key : {"needles", "base", "max_settlement", "max_compression", "thrust"}) {
    EXPECT_FALSE(cracked.contains(key)) << key;
  }
  EXPECT_TRUE(analyses.at("uncracked").contains("needles"));
  EXPECT_TRUE(answer.at("design_loads").empty());
  EXPECT_FALSE(answer.at("comparison").at("N1").contains("cracked"));
}

TEST(ResultsJson, DesignLoadIsTheLargestOfAllMethods) {
  const json loads = parsed(test::made_up_result()).at("design_loads");
  EXPECT_EQ(loads.at("N1"), (json{{"load", 30.0}, {"method", "hand"}}));
  EXPECT_EQ(loads.at("N2"), (json{{"load", 26.05}, {"method", "cracked"}}));
}

TEST(ResultsJson, LooseMasonryIsListedWithItsWeightAndPlace) {
  const json analyses = parsed(test::made_up_result()).at("stages").at(0).at("analyses");
  EXPECT_TRUE(analyses.at("uncracked").at("loose").empty());
  const json& patch = analyses.at("cracked").at("loose").at(0);
  EXPECT_EQ(patch.at("weight"), 1.25);
  EXPECT_EQ(patch.at("x"), json::array({2000.0, 2500.0}));
  EXPECT_THAT(patch.at("where").get<std::string>(), HasSubstr("between N1 and N2"));
}

solver::JobResult with_a_checked_needle() {
  solver::JobResult result = test::made_up_result();
  solver::NeedleFrame frame;
  frame.name = "F1";
  result.job.needle_frames = {frame};
  result.job.needles.front().frame = 0;
  solver::NeedleDesign design;
  design.demand = {
      .needle = "N1", .method = "hand", .stage = "cut", .load = 30e3, .dead_share = 0.6};
  design.answer.stiffness = 4500.0;
  design.answer.settlement = 6.5;
  design.answer.largest_moment = 9.1e6;
  design.answer.buckling_factor = std::numeric_limits<double>::infinity();
  design.answer.passes = 3;
  design.answer.props = {{"outer", -725.0, 2270.0, 15.4e3}};
  design.advice = {"UC 152x152x23 would do."};
  result.needle_designs = {design};

  solver::Check floor = solver::not_verified("suspended floor", "common practice", "look");
  floor.demand = 15.4;
  floor.unit = "kN";
  result.checks = solver::labelled({floor}, "N1 inner prop", "cut");
  solver::Check bending;
  bending.member = "N1";
  bending.check = "bending";
  bending.clause = "EN 1993-1-1 6.2.5";
  bending.working = "W f_y";
  bending.stage = "cut";
  bending.demand = 11.0;
  bending.capacity = 22.0;
  bending.unit = "kNm";
  result.checks.push_back(bending);
  result.stages.front().analyses.front().coupling_passes = 4;
  return result;
}

// The keys that design.md, "The answer", promises to other programs.
TEST(ResultsJson, ChecksHaveTheKeysOfTheContract) {
  const json check = parsed(with_a_checked_needle()).at("checks").at(1);
  EXPECT_EQ(check, (json{{"member", "N1"},
                         {"check", "bending"},
                         {"demand", 11.0},
                         {"capacity", 22.0},
                         {"unit", "kNm"},
                         {"utilisation", 0.5},
                         {"clause", "EN 1993-1-1 6.2.5"},
                         {"stage", "cut"},
                         {"passes", true},
                         {"working", "W f_y"}}));
}

TEST(ResultsJson, WhatIsNotVerifiedHasNoUtilisationAndDoesNotPass) {
  const json check = parsed(with_a_checked_needle()).at("checks").at(0);
  EXPECT_TRUE(check.at("utilisation").is_null());
  EXPECT_EQ(check.at("not_verified"), true);
  EXPECT_EQ(check.at("passes"), false);
  EXPECT_EQ(check.at("demand"), 15.4);
  EXPECT_EQ(check.at("caution"), "look");
}

TEST(ResultsJson, NeedleFramesAreGivenByNeedle) {
  const json answer = parsed(with_a_checked_needle());
  const json& frame = answer.at("needle_frames").at("N1");
  EXPECT_EQ(answer.at("needle_frames").size(), 1U);
  EXPECT_EQ(frame.at("frame"), "F1");
  EXPECT_EQ(frame.at("load"), 30.0);
  EXPECT_EQ(frame.at("method"), "hand");
  EXPECT_EQ(frame.at("stiffness"), 4.5);
  EXPECT_EQ(frame.at("largest_moment"), 9.1);
  EXPECT_TRUE(frame.at("buckling_factor").is_null());
  EXPECT_EQ(frame.at("props").at(0),
            (json{{"mark", "outer"}, {"place", -725.0}, {"extension", 2270.0}, {"load", 15.4}}));
  EXPECT_EQ(frame.at("advice").size(), 1U);
}

TEST(ResultsJson, SaysHowManyPassesTheNeedlesTook) {
  const json analyses = parsed(with_a_checked_needle()).at("stages").at(0).at("analyses");
  EXPECT_EQ(analyses.at("uncracked").at("coupling_passes"), 4);
  EXPECT_EQ(analyses.at("cracked").at("coupling_passes"), 1);
}

TEST(ResultsJson, StagesHaveTheirDayAndWhatIsDone) {
  const json stages = parsed(test::made_up_staged_result()).at("stages");
  ASSERT_EQ(stages.size(), 5U);
  const json& needles_in = stages.at(1);
  EXPECT_EQ(needles_in.at("name"), "needles in");
  EXPECT_EQ(needles_in.at("day"), 1.0);
  EXPECT_EQ(needles_in.at("operations"), (json{"tighten floor shore", "fit N1", "fit N2"}));
  EXPECT_EQ(needles_in.at("analyses").at("cracked").at("base"),
            (json{{"left", 33.5}, {"right", 37.0}, {"cut", 24.5}}));
}

TEST(ResultsJson, SupportsOfEveryStageAddUpToItsLoad) {
  const json results = parsed(test::made_up_staged_result());
  for (const json& stage : results.at("stages")) {
    for (const auto& [model, analysis] : stage.at("analyses").items()) {
      double up = 0.0;
      for (const auto& [name, force] : analysis.at("base").items()) up += force.get<double>();
      for (const auto& [name, force] : analysis.at("needles").items()) up += force.get<double>();
      const json joists = analysis.value("joists", json::object());
      for (const auto& [name, joist] : joists.items()) {
        up += joist.at("force").get<double>();
      }
      EXPECT_NEAR(up, analysis.at("load_total").get<double>(), 1e-6)
          << stage.at("name") << " " << model;
    }
  }
}

TEST(ResultsJson, TheBeamIsGivenOnceItIsIn) {
  const json stages = parsed(test::made_up_staged_result()).at("stages");
  EXPECT_FALSE(stages.at(2).at("analyses").at("cracked").contains("beam"));
  const json& beam = stages.at(4).at("analyses").at("cracked").at("beam");
  EXPECT_EQ(beam.at("from_wall"), 25.0);
  EXPECT_EQ(beam.at("reaction_left"), 13.0);
  EXPECT_EQ(beam.at("moment"), 12.5);
  EXPECT_EQ(beam.at("packing_strength"), 12.0);
  EXPECT_EQ(beam.at("stations").at("x"), (json{900.0, 2000.0, 3100.0}));
  EXPECT_EQ(beam.at("stations").at("moment"), (json{0.0, 12.5, 0.0}));
}

TEST(ResultsJson, CracksDamageJoistsAndSafetyAreGivenByStage) {
  const json cut = parsed(test::made_up_staged_result()).at("stages").at(2);
  const json& cracked = cut.at("analyses").at("cracked");
  EXPECT_EQ(cracked.at("joists").at("floor shore"), (json{{"force", 2.0}, {"contact", 0.5}}));
  ASSERT_EQ(cracked.at("cracks").size(), 2U);
  EXPECT_EQ(cracked.at("cracks").at(0).at("width"), 1.4);
  EXPECT_EQ(cracked.at("cracks").at(0).at("from"), (json{1400.0, 1500.0}));
  EXPECT_EQ(cracked.at("cracks").at(0).at("where"), "over needle N1");
  EXPECT_EQ(cracked.at("damage").at("category"), 2);
  EXPECT_EQ(cracked.at("damage").at("by_width"), 1);
  EXPECT_EQ(cut.at("safety").at("factor"), 1.25);
  EXPECT_EQ(cut.at("safety").at("loose_weight"), 1.5);
  EXPECT_FALSE(cut.at("analyses").at("uncracked").contains("cracks"));
}

TEST(ResultsJson, TheWorkEndsWithTheStageThatFalls) {
  const json stages =
      parsed(test::made_up_staged_result_that_falls("nothing takes the thrust.")).at("stages");
  ASSERT_EQ(stages.size(), 3U);
  const json& analyses = stages.back().at("analyses");
  EXPECT_EQ(analyses.at("cracked").at("no_equilibrium"), "nothing takes the thrust.");
  EXPECT_FALSE(analyses.at("cracked").contains("damage"));
  EXPECT_TRUE(analyses.at("uncracked").contains("needles"));
}

TEST(ResultsJson, AnAtOnceAnalysisHasNoDayAndNothingDone) {
  const json stage = parsed(test::made_up_result()).at("stages").at(0);
  for (const char* key : {"day", "operations", "safety"}) EXPECT_FALSE(stage.contains(key)) << key;
  const json& cracked = stage.at("analyses").at("cracked");
  for (const char* key : {"beam", "joists", "cracks", "damage"}) {
    EXPECT_FALSE(cracked.contains(key)) << key;
  }
}

TEST(ResultsJson, RefusesANumberThatIsNotFinite) {
  solver::JobResult result = test::made_up_result();
  result.stages.front().analyses.front().base_left = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW((void)results_json(result, {}), std::domain_error);
}

TEST(ResultsJson, RunTimesDoNotChangeTheBytes) {
  const solver::JobResult first = test::made_up_result();
  solver::JobResult again = first;
  again.times.front().seconds *= 2.0;
  EXPECT_EQ(results_json(first, {}), results_json(again, {}));
}

}  // namespace
}  // namespace deadshore::io
