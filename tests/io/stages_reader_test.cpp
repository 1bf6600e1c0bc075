// How a job's permanent beam, dead shores and order of work are read, and printed again. No outside
// source but where one is named.
#include "io/job/job_reader.h"
#include "io/job/schema_pages.h"
#include "solver/job/usual_stages.h"
#include "solver/loads/house_loads.h"
#include "tests/io/core_keys.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using solver::Act;
using solver::Operation;
using solver::WorkPart;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

constexpr solver::NeedleId first{0};
constexpr solver::NeedleId second{1};
constexpr solver::ShoreId shore{0};
constexpr solver::PointLoadId purlin{0};

std::string staged_keys() {
  return test_data("staged_keys.toml");
}

solver::Job read_with(const std::string& old_part, const std::string& new_part) {
  return parse_job(with(staged_keys(), old_part, new_part), "yard.toml");
}

/// The job without its own order of work.
std::string without_stages() {
  const std::string text = staged_keys();
  return text.substr(0, text.find("[[stage]]"));
}

TEST(StagesReader, AJobIsStagedUnlessItSaysOtherwise) {
  EXPECT_EQ(parse_job(staged_keys(), "yard.toml").analysis.sequence, solver::Sequence::staged);
  EXPECT_EQ(parse_job(core_keys(), "yard.toml").analysis.sequence, solver::Sequence::at_once);
  const solver::Job said = read_with("[beam]", "[analysis]\nmesh = \"50 mm\"\n[beam]");
  EXPECT_EQ(said.analysis.sequence, solver::Sequence::staged);
}

TEST(StagesReader, ReadsTheBeamWithItsDefaults) {
  const solver::Job job = parse_job(staged_keys(), "yard.toml");
  ASSERT_TRUE(job.beam.has_value());
  EXPECT_EQ(job.beam->name, "beam");
  EXPECT_EQ(job.beam->member.section.name, "UB 203x133x30");
  EXPECT_EQ(job.beam->member.grade, solver::SteelGrade::s275);
  EXPECT_EQ(job.beam->member.f_y, 275.0);
  EXPECT_EQ(job.beam->count, 1);
  EXPECT_EQ(job.beam->bearing, 150.0);
  EXPECT_EQ(job.beam->restraint_spacing, 0.0);
  EXPECT_EQ(job.beam->deflection_ratio, 500.0);
  EXPECT_EQ(job.beam->padstone.length, 440.0);
  EXPECT_EQ(job.beam->padstone.depth, 215.0);
}

TEST(StagesReader, APadstoneIsOfConcreteUnlessSaid) {
  // C25/30: EN 1992-1-1 Table 3.1 (f_ck, E_cm) and 3.1.3(4) (nu); 25 kN/m3: EN 1991-1-1 Table A.1
  // for reinforced concrete (from memory).
  const solver::Padstone usual = parse_job(staged_keys(), "yard.toml").beam.value().padstone;
  EXPECT_EQ(usual.E, 31000.0);
  EXPECT_EQ(usual.strength, 25.0);
  EXPECT_EQ(usual.nu, 0.2);
  EXPECT_DOUBLE_EQ(usual.unit_weight, 25e-6);
  const solver::Padstone stone =
      read_with("depth  = \"215 mm\"",
                "depth = \"215 mm\"\nE = \"20 GPa\"\nstrength = \"40 N/mm2\"\nnu = 0.25\n"
                "unit_weight = \"27 kN/m3\"")
          .beam.value()
          .padstone;
  EXPECT_EQ(stone.E, 20000.0);
  EXPECT_EQ(stone.strength, 40.0);
  EXPECT_EQ(stone.nu, 0.25);
  EXPECT_DOUBLE_EQ(stone.unit_weight, 27e-6);
}

TEST(StagesReader, PackingHardensAsNormalCementUnlessSaid) {
  // s = 0.25 for cement of class N: EN 1992-1-1 3.1.2(6) (from memory).
  const solver::DryPacking usual = parse_job(staged_keys(), "yard.toml").beam.value().packing;
  EXPECT_EQ(usual.thickness, 20.0);
  EXPECT_EQ(usual.hardening, 0.25);
  EXPECT_GT(usual.E, 0.0);
  EXPECT_GT(usual.strength, 0.0);
  const solver::DryPacking slow =
      read_with("[beam.padstone]",
                "[beam.packing]\nthickness = \"25 mm\"\nhardening = 0.38\n"
                "E = \"8 GPa\"\nstrength = \"15 N/mm2\"\n[beam.padstone]")
          .beam.value()
          .packing;
  EXPECT_EQ(slow.thickness, 25.0);
  EXPECT_EQ(slow.hardening, 0.38);
  EXPECT_EQ(slow.E, 8000.0);
  EXPECT_EQ(slow.strength, 15.0);
}

TEST(StagesReader, ABeamMayBeTwoSectionsHeldBetweenItsBearings) {
  const solver::PermanentBeam beam =
      read_with("bearing = \"150 mm\"\n\n[beam.padstone]",
                "bearing = \"150 mm\"\nname = \"pair\"\ncount = 2\ngrade = \"S355\"\n"
                "restraint_spacing = \"1 m\"\ndeflection_ratio = 360\n[beam.padstone]")
          .beam.value();
  EXPECT_EQ(beam.name, "pair");
  EXPECT_EQ(beam.count, 2);
  EXPECT_EQ(beam.member.grade, solver::SteelGrade::s355);
  EXPECT_EQ(beam.restraint_spacing, 1000.0);
  EXPECT_EQ(beam.deflection_ratio, 360.0);
}

TEST(StagesReader, ADeadShoreTakesTheWholeLoadAndJoistsCatchNothingUnlessSaid) {
  const solver::Job usual = parse_job(staged_keys(), "yard.toml");
  ASSERT_THAT(usual.dead_shores, SizeIs(1));
  EXPECT_EQ(usual.dead_shores[0].name, "D1");
  EXPECT_EQ(usual.dead_shores[0].carries, solver::LineLoadId{0});
  EXPECT_EQ(usual.dead_shores[0].share, 1.0);
  EXPECT_FALSE(usual.dead_shores[0].joist_ends.has_value());

  const solver::DeadShore said =
      read_with("carries = \"first floor\"",
                "carries = \"first floor\"\nshare = 0.8\njoist_gap = \"5 mm\"\n"
                "joist_stiffness = \"2 kN/mm\"\njoist_spacing = \"400 mm\"")
          .dead_shores.at(0);
  EXPECT_EQ(said.share, 0.8);
  ASSERT_TRUE(said.joist_ends.has_value());
  EXPECT_EQ(said.joist_ends->gap, 5.0);
  EXPECT_EQ(said.joist_ends->stiffness, 2000.0);
  EXPECT_EQ(said.joist_ends->spacing, 400.0);
}

TEST(StagesReader, ReadsTheOrderOfWork) {
  const solver::Job job = parse_job(staged_keys(), "yard.toml");
  ASSERT_THAT(job.stages, SizeIs(5));
  EXPECT_EQ(job.stages[0].name, "as built");
  EXPECT_EQ(job.stages[0].day, 0.0);
  EXPECT_THAT(job.stages[0].operations, IsEmpty());
  EXPECT_EQ(job.stages[1].day, 1.0);
  EXPECT_THAT(job.stages[1].operations,
              ElementsAre(Operation{Act::tighten, shore}, Operation{Act::fit, first},
                          Operation{Act::fit, second}, Operation{Act::preload, first}));
  EXPECT_EQ(job.stages[2].day, 1.0) << "that of the stage before";
  EXPECT_THAT(job.stages[2].operations, ElementsAre(Operation{Act::remove, solver::LintelId{0}},
                                                    Operation{Act::remove, WorkPart::cut}));
  EXPECT_EQ(job.stages[4].day, 11.0);
}

TEST(StagesReader, NamesMayHoldSpacesAndVerbs) {
  std::string text = staged_keys();
  for (int i = 0; i < 3; ++i) text = with(text, "N1", "fit on N 1");
  text = with(text, "release N1", "  release   fit on N 1 ");
  text = with(text, "\"slacken D1\"", "\"load off purlin\", \"load on purlin\"");
  const solver::Job job = parse_job(text, "yard.toml");
  EXPECT_EQ(job.stages[1].operations[1], (Operation{Act::fit, first}));
  EXPECT_THAT(job.stages[4].operations,
              ElementsAre(Operation{Act::release, first}, Operation{Act::release, second},
                          Operation{Act::load_off, purlin}, Operation{Act::load_on, purlin}));
}

TEST(StagesReader, AllStandsForEveryOneThatItWasNotDoneToBefore) {
  std::string text = with(staged_keys(), R"("tighten D1", "fit N1", "fit N2", "preload N1")",
                          R"("tighten all", "fit N2", "fit all", "preload all")");
  text = with(text, R"("release N1", "release N2")", R"("release all")");
  const solver::Job job = parse_job(text, "yard.toml");
  EXPECT_THAT(job.stages[1].operations,
              ElementsAre(Operation{Act::tighten, shore}, Operation{Act::fit, second},
                          Operation{Act::fit, first}, Operation{Act::preload, first}));
  EXPECT_THAT(job.stages[4].operations,
              ElementsAre(Operation{Act::release, first}, Operation{Act::release, second},
                          Operation{Act::slacken, shore}));
}

TEST(StageText, IsReadAgainAsTheSameStages) {
  std::string text = staged_keys();
  text = with(text, "needles in", R"(\"needles\", in \\ twice)");
  text = with(text, "day  = 4", "day = 4.1");
  const solver::Job job = parse_job(text, "yard.toml");
  const std::string printed = stage_text(job, job.stages);
  const std::vector<solver::Stage> again =
      parse_job(without_stages() + printed, "yard.toml").stages;
  ASSERT_EQ(again.size(), job.stages.size());
  for (std::size_t i = 0; i < again.size(); ++i) {
    EXPECT_EQ(again[i].name, job.stages[i].name);
    EXPECT_EQ(again[i].day, job.stages[i].day);
    EXPECT_EQ(again[i].operations, job.stages[i].operations);
  }
  EXPECT_THAT(printed, HasSubstr("# The gap over the beam is packed"));
}

TEST(StageText, BreaksLongLists) {
  solver::Job job;
  solver::Stage stage{"needles in", 1.0, {}};
  for (std::size_t i = 0; i < 30; ++i) {
    job.needles.emplace_back().name = "N" + std::to_string(i);
    stage.operations.push_back({Act::fit, solver::NeedleId{i}});
  }
  const std::string text = stage_text(job, {stage});
  for (std::size_t at = 0; at < text.size(); at = text.find('\n', at) + 1) {
    EXPECT_LE(text.find('\n', at) - at, 100U);
  }
}

TEST(StagesReader, TheUsualStagesOfAJobCanBeDone) {
  solver::Job job = parse_job(without_stages(), "yard.toml");
  EXPECT_THAT(job.stages, IsEmpty());
  job.stages = solver::usual_stages(job);
  for (const solver::Fault& fault : solver::find_faults(job)) {
    ADD_FAILURE() << fault.key << ": " << fault.found << "; due " << fault.due;
  }
}

TEST(StagesReader, TheKitchenWallIsSoundWithABeamAndADeadShore) {
  const solver::Job job = read_job(DEADSHORE_SOURCE_DIR "/io/examples/kitchen_wall.toml");
  EXPECT_EQ(job.analysis.sequence, solver::Sequence::staged);
  EXPECT_TRUE(job.beam.has_value());
  EXPECT_THAT(job.dead_shores, SizeIs(1));
  EXPECT_THAT(job.needles, SizeIs(4));
}

}  // namespace
}  // namespace deadshore::io
