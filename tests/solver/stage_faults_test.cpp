// What find_faults refuses of a permanent beam, dead shores and an order of work, at which key, and
// what it lets pass. The rules are those of solver/job/stage_faults.h; no outside source.
// Each operation's own refusals, with their words, are in tests/io/data/bad_stages.txt.
#include "solver/job/usual_stages.h"
#include "tests/solver/fault_cases.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <string>
#include <vector>

namespace deadshore::solver {
namespace {

// 6 m x 5 m, cut from 1.2 m to 4.2 m up to 2.4 m, which takes a door and its lintel; a beam 210 mm
// deep under 20 mm of packing, so that its padstones are from 1.92 m to 2.17 m up.
Job staged_job() {
  Job job;
  job.title = "an invented wall";
  job.wall.length = 6000.0;
  job.wall.top = {{0.0, 5000.0}, {6000.0, 5000.0}};
  job.wall.openings = {{"window", 2000.0, 3200.0, 900.0, 1000.0, 0.0},
                       {"door", 1800.0, 0.0, 900.0, 2000.0, 0.0}};
  job.wall.lintels = {{"window lintel", 0, 150.0, 150.0}, {"door lintel", 1, 150.0, 150.0}};
  job.wall.cut = {1200.0, 4200.0, 2400.0};
  job.thickness = 215.0;
  job.masonry = {"soft brick", 19e-6, 1500.0, 0.2, 2.4, 0.05};
  for (const mesh::LintelShape& shape : job.wall.lintels)
    job.lintels.push_back({shape, "concrete", 25e-6, 25000.0, 0.2, 215.0});
  job.line_loads = {{"floor", 2700.0, false, {0.0, 6000.0}, 3.0, 2.0},
                    {"roof", 5000.0, true, {0.0, 6000.0}, 2.0, 1.0}};
  job.point_loads = {{"purlin", 3500.0, 4500.0, 200.0, 6500.0, 4000.0}};
  job.needles = {{"N1", 1700.0, 150.0, 20e3, 0.0, 5e3, {}},
                 {"N2", 3700.0, 150.0, 20e3, 0.0, 0.0, {}}};
  PermanentBeam beam;
  beam.name = "beam";
  beam.member.section = {"invented", SectionKind::i_section, 210.0, 134.0, 6.4, 9.6, 7.6};
  beam.member.class_in_bending = 1;
  beam.bearing = 150.0;
  beam.padstone = {440.0, 250.0, 31e3, 0.2, 25e-6, 25.0};
  beam.packing = {20.0, 1e4, 20.0, 0.25};
  job.beam = beam;
  job.dead_shores = {{"D1", LineLoadId{0}, 0.6, {}, {}}, {"D2", LineLoadId{0}, 0.4, {}, {}}};
  job.analysis.sequence = Sequence::staged;
  return job;
}

constexpr double infinity = std::numeric_limits<double>::infinity();

class StageFaults : public testing::TestWithParam<BadJob> {};

TEST_P(StageFaults, AreFoundAtTheirKeyFirst) {
  Job job = staged_job();
  job.stages = usual_stages(job);
  expect_fault(job, GetParam());
}

void add_opening(Job& job, double left, double sill) {
  job.wall.openings.push_back({"hatch", left, sill, 300.0, 300.0, 0.0});
}

const BadJob bad_beams[] = {
    {"beam.name", "no name", [](Job& j) { j.beam->name.clear(); }},
    {"beam.section", "class 4", [](Job& j) { j.beam->member.class_in_bending = 4; }},
    {"beam.count", "0", [](Job& j) { j.beam->count = 0; }},
    {"beam.bearing", "inf", [](Job& j) { j.beam->bearing = infinity; }},
    {"beam.restraint_spacing", "-1 m", [](Job& j) { j.beam->restraint_spacing = -1000.0; }},
    {"beam.deflection_ratio", "0", [](Job& j) { j.beam->deflection_ratio = 0.0; }},
    {"beam.padstone.strength", "0 N/mm2", [](Job& j) { j.beam->padstone.strength = 0.0; }},
    {"beam.packing.E", "0 N/mm2", [](Job& j) { j.beam->packing.E = 0.0; }},
    {"beam.packing.hardening", "0", [](Job& j) { j.beam->packing.hardening = 0.0; }},
    {"beam.padstone.length", "under a bearing of 450 mm", [](Job& j) { j.beam->bearing = 450.0; }},
    {"beam.padstone.length", "where the left pier is 400 mm wide",
     [](Job& j) { j.wall.cut.left = 400.0; }},
    {"beam.padstone.length", "where the right pier is 0 mm wide",
     [](Job& j) { j.wall.cut.right = 6000.0; }},
    {"beam.padstone.depth", "whose underside is at 2.17 m",
     [](Job& j) { j.beam->padstone.depth = 2170.0; }},
    {"beam", "2.41 m deep, under a soffit at 2.4 m",
     [](Job& j) { j.beam->packing.thickness = 2200.0; }},
    {"beam.bearing", "opening \"hatch\", 2.17 m to 2.4 m up, which the right pocket",
     [](Job& j) { add_opening(j, 4300.0, 2200.0); }},
    {"beam.padstone.length", "opening \"hatch\", 1.92 m to 2.17 m up, which the left padstone",
     [](Job& j) { add_opening(j, 600.0, 1650.0); }},
    {"beam.padstone.length", "which the right padstone",  // its head against the padstone's bed
     [](Job& j) { add_opening(j, 4300.0, 1620.0); }},
    {"line_load[0].level", "in the right padstone of the beam",
     [](Job& j) {
       j.line_loads[0].x = {4300.0, 6000.0};
       j.line_loads[0].level = 2000.0;
     }},
    {"point_load[0].level", "in the left pocket of the beam",
     [](Job& j) {
       j.point_loads[0].x = 1000.0;
       j.point_loads[0].level = 2300.0;
     }},
};
INSTANTIATE_TEST_SUITE_P(InTheBeam, StageFaults, testing::ValuesIn(bad_beams));

const BadJob bad_shores[] = {
    {"dead_shore[1].name", "\"D1\"", [](Job& j) { j.dead_shores[1].name = "D1"; }},
    {"dead_shore[0].carries", "line load 3",
     [](Job& j) { j.dead_shores[0].carries = LineLoadId{2}; }},
    {"dead_shore[0].share", "-0.1", [](Job& j) { j.dead_shores[0].share = -0.1; }},
    {"dead_shore[1].share", "carry 1.1 times \"floor\"",
     [](Job& j) { j.dead_shores[1].share = 0.5; }},
    {"dead_shore[0].joist_gap", "-1 mm",
     [](Job& j) {
       j.dead_shores[0].joist_ends = {-1.0, 2e3, 400.0};
     }},
    {"dead_shore[0].joist_spacing", "0 mm",
     [](Job& j) {
       j.dead_shores[0].joist_ends = {5.0, 2e3, 0.0};
     }},
};
INSTANTIATE_TEST_SUITE_P(InDeadShores, StageFaults, testing::ValuesIn(bad_shores));

Stage& stage_called(Job& job, const std::string& name) {
  return *std::ranges::find_if(job.stages, [&](const Stage& s) { return s.name == name; });
}

const BadJob bad_stages[] = {
    {"stage[0].name", "no name", [](Job& j) { j.stages[0].name.clear(); }},
    {"stage[1].name", "\"as built\"", [](Job& j) { j.stages[1].name = "as built"; }},
    {"stage[0].day", "inf", [](Job& j) { j.stages[0].day = infinity; }},
    {"stage[1].day", "where stage \"as built\" before it is on day 9",
     [](Job& j) { j.stages[0].day = 9.0; }},
    {"stage", "no stage that takes the cut out",
     [](Job& j) {
       j.stages = {{"as built", 0.0, {}}};
     }},
    {"stage[0].do[0]", "\"release N1\" in stage \"as built\", but it is not in yet",
     [](Job& j) {
       j.stages[0].operations = {{Act::release, NeedleId{0}}};
     }},
    {"stage[0].do[0]", "\"fit\" in stage \"as built\", which is done to nothing in the job",
     [](Job& j) {
       j.stages[0].operations = {{Act::fit, NeedleId{2}}};
     }},
    {"stage[0].do[0]", "\"fit cut\" in stage \"as built\", which is nothing to fit",
     [](Job& j) { j.stages[0].operations = {{}}; }},
    {"stage[4].do[0]", "\"place beam\" in stage \"cut\", but the cut is still in",
     [](Job& j) {
       auto& in_cut = stage_called(j, "cut").operations;
       in_cut.insert(in_cut.begin(), {Act::place, WorkPart::beam});
     }},
};
INSTANTIATE_TEST_SUITE_P(InTheOrderOfWork, StageFaults, testing::ValuesIn(bad_stages));

class NoStageFaults : public testing::TestWithParam<GoodJob> {};

TEST_P(NoStageFaults, AreFoundInASoundJob) {
  Job job = staged_job();
  GetParam().change(job);
  if (job.stages.empty()) job.stages = usual_stages(job);
  expect_no_fault(job);
}

const GoodJob good_jobs[] = {
    {"as it is", [](Job&) {}},
    {"no beam and no dead shore",
     [](Job& j) {
       j.beam.reset();
       j.dead_shores.clear();
     }},
    {"no needles", [](Job& j) { j.needles.clear(); }},
    {"a padstone as long as the bearing and the pier",
     [](Job& j) {
       j.wall.cut.left = 440.0;
       j.beam->bearing = 440.0;
     }},
    {"a hatch just under a padstone", [](Job& j) { add_opening(j, 4300.0, 1619.0); }},
    {"a load on the masonry over the pocket",
     [](Job& j) {
       j.point_loads[0].x = 1000.0;
       j.point_loads[0].level = 2400.0;
     }},
    {"a cut that nothing holds up, needles that stay, a pause",
     [](Job& j) {
       j.stages = {{"cut", 0.0, {{Act::remove, WorkPart::cut}}},
                   {"late needle", 0.0, {{Act::fit, NeedleId{1}}}},
                   {"a week", 7.0, {}}};
     }},
    {"shores tightened again and loads that come and go",
     [](Job& j) {
       j.stages = {{"all",
                    0.0,
                    {{Act::load_off, LineLoadId{0}},
                     {Act::load_on, LineLoadId{0}},
                     {Act::tighten, ShoreId{0}},
                     {Act::slacken, ShoreId{0}},
                     {Act::tighten, ShoreId{0}},
                     {Act::load_off, PointLoadId{0}},
                     {Act::remove, WorkPart::cut}}}};
     }},
    {"pockets before the cut",
     [](Job& j) {
       j.stages = {{"all",
                    0.0,
                    {{Act::remove, WorkPart::pockets},
                     {Act::place, WorkPart::padstones},
                     {Act::remove, WorkPart::cut},
                     {Act::place, WorkPart::beam}}}};
     }},
};
INSTANTIATE_TEST_SUITE_P(AtTheLimits, NoStageFaults, testing::ValuesIn(good_jobs));

}  // namespace
}  // namespace deadshore::solver
