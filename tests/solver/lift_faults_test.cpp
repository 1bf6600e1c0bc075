// What find_faults refuses of how a beam goes up, at which key, and what it lets pass. No outside
// source.
#include "tests/solver/fault_cases.h"
#include "tests/solver/lift_samples.h"

#include <gtest/gtest.h>

#include <limits>

namespace deadshore::solver {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

class LiftFaults : public ::testing::TestWithParam<BadJob> {};

TEST_P(LiftFaults, AreFoundAtTheirKeyFirst) {
  expect_fault(testing::lift_job(), GetParam());
}

INSTANTIATE_TEST_SUITE_P(
    Lift, LiftFaults,
    ::testing::Values(
        BadJob{"lift", "not in the job", [](Job& job) { job.beam.reset(); }},
        BadJob{"lift.lifter", "no lifter", [](Job& job) { job.lifting->lifters.clear(); }},
        BadJob{"lift.clearance", "-1 mm", [](Job& job) { job.lifting->clearance = -1.0; }},
        BadJob{"lift.needle_underside", "inf",
               [](Job& job) { job.lifting->needle_underside = infinity; }},
        BadJob{"lift.dynamic_factor", "0.9", [](Job& job) { job.lifting->dynamic_factor = 0.9; }},
        BadJob{"lift.dynamic_factor", "0", [](Job& job) { job.lifting->dynamic_factor = 0.0; }},
        BadJob{"lift.pocket_left", "224 mm, for a bearing of 225 mm",
               [](Job& job) { job.lifting->pocket_left = 224.0; }},
        BadJob{"lift.pocket_right", "for a bearing",
               [](Job& job) { job.lifting->pocket_right = 0.0; }},
        BadJob{"lift.pocket_right", "the right pier is 1.5 m wide",
               [](Job& job) { job.lifting->pocket_right = 1501.0; }},
        BadJob{"lift.room_right", "begins at 500 mm",
               [](Job& job) { job.lifting->room_right = 500.0; }},
        BadJob{"lift.floor_level", "comes to 2.1236 m",
               [](Job& job) { job.lifting->floor_level = 2200.0; }}));

INSTANTIATE_TEST_SUITE_P(
    Lifters, LiftFaults,
    ::testing::Values(BadJob{"lift.lifter[0].at", "-1 mm from the left end of a beam 3.45 m long",
                             [](Job& job) { job.lifting->lifters[0].at = -1.0; }},
                      BadJob{"lift.lifter[1].at", "3.451 m",
                             [](Job& job) { job.lifting->lifters[1].at = 3451.0; }},
                      BadJob{"lift.lifter[1].name", "also the name at lift.lifter[0].name",
                             [](Job& job) { job.lifting->lifters[1].name = "L1"; }},
                      BadJob{"lift.lifter[0].name", "no name",
                             [](Job& job) { job.lifting->lifters[0].name = ""; }},
                      BadJob{"lift.lifter[0].width", "0 mm",
                             [](Job& job) { job.lifting->lifters[0].width = 0.0; }},
                      BadJob{"lift.lifter[0].load_distance", "-5 mm",
                             [](Job& job) { job.lifting->lifters[0].load_distance = -5.0; }},
                      BadJob{"lift.lifter[0].own_weight", "0 kgf",
                             [](Job& job) { job.lifting->lifters[0].tipping->own_weight = 0.0; }},
                      BadJob{"lift.lifter[0].capacity", "loads at 1 distances",
                             [](Job& job) { job.lifting->lifters[0].capacity.rows.pop_back(); }},
                      BadJob{"lift.lifter[0].capacity.distance[1]", "400 mm after 400 mm",
                             [](Job& job) {
                               job.lifting->lifters[0].capacity.rows[1].distance = 400.0;
                             }},
                      BadJob{"lift.lifter[0].capacity.load[1]", "0 kN", [](Job& job) {
                               job.lifting->lifters[0].capacity.rows[1].load = 0.0;
                             }}));

INSTANTIATE_TEST_SUITE_P(
    Stands, LiftFaults,
    ::testing::Values(
        BadJob{"lift.stand[1].at", "4 m", [](Job& job) { job.lifting->stands[1].at = 4000.0; }},
        BadJob{"lift.stand[0].name", "also the name at lift.lifter[0].name",
               [](Job& job) { job.lifting->stands[0].name = "L1"; }},
        BadJob{"lift.stand[0].legs", "0", [](Job& job) { job.lifting->stands[0].legs = 0; }},
        BadJob{"lift.stand[0].width", "0 mm", [](Job& job) { job.lifting->stands[0].width = 0.0; }},
        BadJob{"lift.stand[0].leg_width", "-47 mm",
               [](Job& job) { job.lifting->stands[0].leg.section.b = -47.0; }},
        BadJob{"lift.stand[0].leg_length", "0 mm",
               [](Job& job) { job.lifting->stands[0].leg_length = 0.0; }},
        BadJob{"lift.stand[0].fixing.number", "0",
               [](Job& job) { job.lifting->stands[0].fixing.number = 0; }},
        BadJob{"lift.stand[0].fixing.capacity", "0 kN",
               [](Job& job) { job.lifting->stands[0].fixing.capacity = 0.0; }},
        BadJob{"lift.stand[0].fixing.diameter", "8.5 mm",
               [](Job& job) { job.lifting->stands[0].fixing.diameter = 8.5; }},
        BadJob{"lift.stand[0].fixing.penetration", "0 mm",
               [](Job& job) { job.lifting->stands[0].fixing.penetration = 0.0; }}));

class LiftThatMakesSense : public ::testing::TestWithParam<GoodJob> {};

TEST_P(LiftThatMakesSense, IsLetThrough) {
  Job job = testing::lift_job();
  GetParam().change(job);
  expect_no_fault(job);
}

INSTANTIATE_TEST_SUITE_P(
    Lift, LiftThatMakesSense,
    ::testing::Values(GoodJob{"as it is", [](Job&) {}},
                      GoodJob{"no stands: a check that fails, not a fault",
                              [](Job& job) { job.lifting->stands.clear(); }},
                      GoodJob{"pockets as deep as the bearing, and as the pier",
                              [](Job& job) {
                                job.lifting->pocket_left = 225.0;
                                job.lifting->pocket_right = 1500.0;
                              }},
                      GoodJob{"a lifter at the very end",
                              [](Job& job) { job.lifting->lifters[0].at = 0.0; }},
                      GoodJob{"clashes: needles below the beam",
                              [](Job& job) { job.lifting->needle_underside = 0.0; }},
                      GoodJob{"a fixing with a given capacity alone", [](Job& job) {
                                job.lifting->stands[0].fixing = {.number = 4, .capacity = 500.0};
                              }}));

}  // namespace
}  // namespace deadshore::solver
