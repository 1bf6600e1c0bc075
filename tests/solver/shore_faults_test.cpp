// What find_faults refuses of a dead shore's frame, at which key, and what it lets pass. The rules
// are those of solver/job/shore_faults.cpp; no outside source.
#include "tests/solver/fault_cases.h"
#include "tests/solver/shore_samples.h"

#include <gtest/gtest.h>

#include <cmath>
#include <variant>

namespace deadshore::solver {
namespace {

ShoreFrame& frame_of(Job& job) {
  return *job.dead_shores[0].frame;
}

PropRow& props_of(Job& job) {
  return std::get<PropRow>(frame_of(job).uprights);
}

StudRow& studs_of(Job& job) {
  return std::get<StudRow>(frame_of(job).uprights);
}

class PropShoreFaults : public ::testing::TestWithParam<BadJob> {};
class StudShoreFaults : public ::testing::TestWithParam<BadJob> {};

TEST_P(PropShoreFaults, AreFoundAtTheirKeyFirst) {
  expect_fault(testing::shored_job(), GetParam());
}

TEST_P(StudShoreFaults, AreFoundAtTheirKeyFirst) {
  expect_fault(testing::stud_wall_job(), GetParam());
}

const BadJob on_props[] = {
    {"dead_shore[0].frame.distance", "0 mm, under joists that span 4 m",
     [](Job& j) { frame_of(j).distance = 0.0; }},
    {"dead_shore[0].frame.distance", "4 m", [](Job& j) { frame_of(j).distance = 4000.0; }},
    {"dead_shore[0].frame.distance", "nan", [](Job& j) { frame_of(j).distance = NAN; }},
    {"dead_shore[0].frame.joist_span", "0 mm", [](Job& j) { frame_of(j).joist_span = 0.0; }},
    {"dead_shore[0].frame.joist_spacing", "1 mm, in a row of",
     [](Job& j) {
       frame_of(j).joist_width = 0.5;
       frame_of(j).joist_spacing = 1.0;
     }},
    {"dead_shore[0].frame.joist_spacing", "-400 mm",
     [](Job& j) { frame_of(j).joist_spacing = -400.0; }},
    {"dead_shore[0].frame.joist_width", "0 mm", [](Job& j) { frame_of(j).joist_width = 0.0; }},
    {"dead_shore[0].frame.joist_width", "400 mm, at a spacing of 400 mm",
     [](Job& j) { frame_of(j).joist_width = 400.0; }},
    {"dead_shore[0].frame.width", "0 mm",
     [](Job& j) { std::get<TimberMember>(frame_of(j).head).section.b = 0.0; }},
    {"dead_shore[0].frame.depth", "inf",
     [](Job& j) { std::get<TimberMember>(frame_of(j).head).section.h = INFINITY; }},
    {"dead_shore[0].frame.to", "5 m to 1 m",
     [](Job& j) {
       frame_of(j).x = {5000.0, 1000.0};
     }},
    {"dead_shore[0].frame.to", "1 m to 1.3 m", [](Job& j) { frame_of(j).x.to = 1300.0; }},
    {"dead_shore[0].frame.from", "-1.001 m",
     [](Job& j) {
       frame_of(j).x.from = -1001.0;
       frame_of(j).footing.sole.length = 6001.0;
     }},
    {"dead_shore[0].frame.to", "7.001 m, where the wall ends at 6 m",
     [](Job& j) {
       frame_of(j).x.to = 7001.0;
       frame_of(j).footing.sole.length = 6001.0;
     }},
    {"dead_shore[0].frame.prop_base", "0 mm", [](Job& j) { props_of(j).base = 0.0; }},
    {"dead_shore[0].frame.most_apart", "-1 m", [](Job& j) { props_of(j).most_apart = -1000.0; }},
    {"dead_shore[0].frame.places", "one place", [](Job& j) { props_of(j).places = {3000.0}; }},
    {"dead_shore[0].frame.places[0]", "1.059 m, with a base 120 mm wide",
     [](Job& j) {
       props_of(j).places = {1059.0, 4000.0};
     }},
    {"dead_shore[0].frame.places[1]", "5.2 m",
     [](Job& j) {
       props_of(j).places = {1200.0, 5200.0};
     }},
    {"dead_shore[0].frame.places[1]", "1.2 m after 4 m",
     [](Job& j) {
       props_of(j).places = {4000.0, 1200.0};
     }},
    {"dead_shore[0].frame.places[1]", "1.3 m after 1.2 m",
     [](Job& j) {
       props_of(j).places = {1200.0, 1300.0};
     }},
    {"dead_shore[0].frame.prop", "B30, which reaches 1.8 m to 3 m, where 3.075 m is needed",
     [](Job& j) { frame_of(j).joist_level = 3300.0; }},
    {"dead_shore[0].frame.sole_length", "3 m",
     [](Job& j) { frame_of(j).footing.sole.length = 3000.0; }},
    {"dead_shore[0].frame.prop", "where 1.775 m is needed",
     [](Job& j) { frame_of(j).floor_level = 600.0; }},
    {"dead_shore[0].frame.joist_level", "which leaves -25 mm",
     [](Job& j) { frame_of(j).joist_level = 200.0; }},
    {"dead_shore[0].frame.sole_width", "100 mm, less than the props' base",
     [](Job& j) { frame_of(j).footing.sole.timber.section.b = 100.0; }},
    {"dead_shore[0].frame.sole_thickness", "0 mm",
     [](Job& j) { frame_of(j).footing.sole.timber.section.h = 0.0; }},
    {"dead_shore[0].frame.ground_bearing", "0 kN/m2",
     [](Job& j) { frame_of(j).footing.ground.presumed_bearing = 0.0; }},
    {"dead_shore[0].frame.subgrade_modulus", "0 MN/m3",
     [](Job& j) { frame_of(j).footing.subgrade_modulus = 0.0; }},
};
INSTANTIATE_TEST_SUITE_P(Props, PropShoreFaults, ::testing::ValuesIn(on_props));

const BadJob on_studs[] = {
    {"dead_shore[0].frame.stud_width", "0 mm", [](Job& j) { studs_of(j).stud.section.b = 0.0; }},
    {"dead_shore[0].frame.stud_depth", "-1 mm", [](Job& j) { studs_of(j).stud.section.h = -1.0; }},
    {"dead_shore[0].frame.stud_spacing", "1 mm, in a row of",
     [](Job& j) {
       studs_of(j).stud.section.b = 0.5;
       studs_of(j).spacing = 1.0;
     }},
    {"dead_shore[0].frame.stud_spacing", "0 mm", [](Job& j) { studs_of(j).spacing = 0.0; }},
    {"dead_shore[0].frame.stud_spacing", "90 mm, of studs 47 mm wide",
     [](Job& j) { studs_of(j).spacing = 90.0; }},
    {"dead_shore[0].frame.joist_level", "which leaves 0 mm",
     [](Job& j) { frame_of(j).joist_level = 150.0; }},
};
INSTANTIATE_TEST_SUITE_P(Studs, StudShoreFaults, ::testing::ValuesIn(on_studs));

TEST(ShoreFaults, SoundShoresHaveNone) {
  expect_no_fault(testing::shored_job());
  expect_no_fault(testing::stud_wall_job());
}

TEST(ShoreFaults, ARowMayReachOneMetreBeyondTheWallAndPropsToItsEnds) {
  Job job = testing::shored_job();
  frame_of(job).x = {-1000.0, 7000.0};
  frame_of(job).footing.sole.length = 8000.0;
  props_of(job).places = {-940.0, 3000.0, 6940.0};
  expect_no_fault(job);
}

TEST(ShoreFaults, ASuspendedFloorNeedsNoGround) {
  Job job = testing::shored_job();
  Footing& footing = frame_of(job).footing;
  footing.suspended_floor = "the kitchen floor";
  footing.ground = {};
  footing.subgrade_modulus = 0.0;
  expect_no_fault(job);
}

}  // namespace
}  // namespace deadshore::solver
