// A dead shore's head plate, studs and load against outside sources.
// (a) Three-moment equation of Clapeyron for a continuous beam on unyielding supports, with even
//     load and point loads in unequal spans (any textbook of structures; from memory). It is solved
//     here for itself: M1 L1 + 2 M2 (L1 + L2) + M3 L2 = -6 (A1 a1 / L1 + A2 b2 / L2), with the
//     areas of the simple beams' moment diagrams. Accepted: 1e-6 of the largest moment, the give of
//     the supports that stand for unyielding ones.
// (b) Standard coefficients of equal spans under even load (tables of continuous beams; from
//     memory): 2 spans: support moment 0.125 w L2, reactions 0.375, 1.25, 0.375 w L; 3 spans: 0.100
//     w L2, 0.4, 1.1, 1.1, 0.4 w L.
// (c) EN 1995-1-1 worked example of a stud, read in stored pages: 38 x 100 C16, 2750 mm x 0.85,
//     8.91 kN, k_mod 0.6: lambda 80.97, lambda_rel 1.45, k_c 0.40, utilisation 0.74.
// (d) Statics of a joist that bears on the shore and at its far end.

#include "solver/shoring/head_plate.h"
#include "solver/shoring/shore_design.h"
#include "solver/shoring/shore_loads.h"
#include "solver/shoring/stud_checks.h"
#include "tests/published/comparison.h"
#include "tests/solver/shore_samples.h"

#include <Eigen/Dense>
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <variant>
#include <vector>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source clapeyron{Field::dead_shores, Certainty::derived,
                           "Three-moment equation (Clapeyron 1857)"};
constexpr Source tables{Field::dead_shores, Certainty::memory, "Tables of continuous beams"};
constexpr Source worked{Field::dead_shores, Certainty::read,
                        "Worked example of a stud, EN 1995-1-1 6.3.2"};
constexpr Source en1995{Field::dead_shores, Certainty::by_hand, "EN 1995-1-1 6.1.5"};
constexpr Source statics{Field::dead_shores, Certainty::derived, "Statics"};

/// A plate rigid in shear over supports that do not give, its ends on the outer ones.
HeadPlate plate_over(const std::vector<double>& supports, double weight) {
  HeadPlate plate;
  plate.x = {supports.front(), supports.back()};
  plate.E = 11000.0;
  plate.A = 15000.0;
  plate.I = 28.125e6;
  plate.weight = weight;
  for (const double x : supports) plate.supports.push_back({x, {}});
  return plate;
}

/// (a): moments over the supports, sagging positive.
std::vector<double> three_moments(const std::vector<double>& supports, double weight,
                                  const std::vector<PlateForce>& forces) {
  const std::size_t bays = supports.size() - 1;
  const auto length = [&](std::size_t bay) { return supports[bay + 1] - supports[bay]; };
  // Six times area times arm over length of a bay's simple moment diagram, arm from the left or
  // the right: w L^3 / 4, and P a (L^2 - a^2) / L with `a` from that same end.
  const auto term = [&](std::size_t bay, bool from_left) {
    const double l = length(bay);
    double sum = weight * l * l * l / 4.0;
    for (const PlateForce& force : forces) {
      if (force.x <= supports[bay] || force.x >= supports[bay + 1]) continue;
      const double a = from_left ? force.x - supports[bay] : supports[bay + 1] - force.x;
      sum += force.force * a * (l * l - a * a) / l;
    }
    return sum;
  };
  const auto inner = static_cast<Eigen::Index>(bays - 1);
  Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(inner, inner);
  Eigen::VectorXd right(inner);
  for (Eigen::Index i = 0; i < inner; ++i) {
    const auto left_bay = static_cast<std::size_t>(i);
    matrix(i, i) = 2.0 * (length(left_bay) + length(left_bay + 1));
    if (i > 0) matrix(i, i - 1) = length(left_bay);
    if (i + 1 < inner) matrix(i, i + 1) = length(left_bay + 1);
    right(i) = -term(left_bay, true) - term(left_bay + 1, false);
  }
  const Eigen::VectorXd solved = matrix.partialPivLu().solve(right);
  std::vector<double> moments = {0.0};
  moments.insert(moments.end(), solved.data(), solved.data() + solved.size());
  moments.push_back(0.0);
  return moments;
}

TEST(ContinuousHeadPlate, MomentsFollowTheThreeMomentEquation) {
  const std::vector<double> supports = {0.0, 900.0, 2100.0, 2900.0, 3950.0};
  const std::vector<PlateForce> forces = {{300.0, 2.0e3},  {750.0, 3.5e3},  {1500.0, 8.0e3},
                                          {2400.0, 2.5e3}, {3000.0, 1.0e3}, {3600.0, 6.0e3}};
  const double weight = 1.5;
  const std::vector<double> due = three_moments(supports, weight, forces);
  const PlateAnswer answer = analyse_head_plate(plate_over(supports, weight), forces);
  ASSERT_EQ(answer.over_support.size(), due.size());
  const double largest = std::abs(*std::ranges::min_element(due));
  ASSERT_GT(largest, 1e5);
  EXPECT_NEAR(answer.over_support.front(), 0.0, 1e-6 * largest);
  EXPECT_NEAR(answer.over_support.back(), 0.0, 1e-6 * largest);
  for (std::size_t i = 1; i + 1 < due.size(); ++i)
    verify({clapeyron,
            fmt::format("head plate, four bays, six joists: moment over support {}", i + 1),
            due[i] / 1e6, answer.over_support[i] / 1e6, 1e-6 * largest / 1e6, "kNm"});
}

TEST(ContinuousHeadPlate, TwoEqualSpansUnderEvenLoad) {
  const double w = 4.0;
  const double l = 1100.0;
  const PlateAnswer answer = analyse_head_plate(plate_over({0.0, l, 2.0 * l}, w), {});
  verify({tables, "head plate of two equal bays: moment over the middle", 0.125 * w * l * l / 1e6,
          answer.hogging / 1e6, 1e-5 * w * l * l / 1e6, "kNm"});
  verify({tables, "head plate of two equal bays: moment in a bay", 9.0 / 128.0 * w * l * l / 1e6,
          answer.sagging / 1e6, 1e-5 * w * l * l / 1e6, "kNm"});
  EXPECT_NEAR(answer.largest_shear, 0.625 * w * l, 1e-5 * w * l);
  EXPECT_NEAR(answer.reactions[0], 0.375 * w * l, 1e-5 * w * l);
  verify({tables, "head plate of two equal bays: middle prop", 1.25 * w * l / 1e3,
          answer.reactions[1] / 1e3, 1e-5 * w * l / 1e3, "kN"});
}

TEST(ContinuousHeadPlate, ThreeEqualSpansUnderEvenLoad) {
  const double w = 4.0;
  const double l = 1100.0;
  const PlateAnswer answer = analyse_head_plate(plate_over({0.0, l, 2.0 * l, 3.0 * l}, w), {});
  verify({tables, "head plate of three equal bays: moment over a prop", 0.1 * w * l * l / 1e6,
          answer.hogging / 1e6, 1e-5 * w * l * l / 1e6, "kNm"});
  EXPECT_NEAR(answer.reactions[0], 0.4 * w * l, 1e-5 * w * l);
  verify({tables, "head plate of three equal bays: second prop", 1.1 * w * l / 1e3,
          answer.reactions[1] / 1e3, 1e-5 * w * l / 1e3, "kN"});
}

// 5 w L^4 / (384 E I), any textbook; the deflection is looked at at 16 places of which the middle
// is one.
TEST(ContinuousHeadPlate, OneBayDeflectsAsASimpleBeam) {
  const double w = 4.0;
  const double l = 1100.0;
  const HeadPlate plate = plate_over({0.0, l}, w);
  const PlateAnswer answer = analyse_head_plate(plate, {});
  const double due = 5.0 * w * std::pow(l, 4) / (384.0 * plate.E * plate.I);
  verify({tables, "head plate of one bay: deflection", due, answer.deflection, 1e-4 * due, "mm"});
  EXPECT_DOUBLE_EQ(answer.deflection_span, l);
}

TEST(ShoreStud, TheWorkedExampleComesOut) {
  ShoreFrame frame;
  frame.x = {0.0, 4000.0};
  frame.joist_level = 0.85 * 2750.0 + 150.0;  // the example's effective length, clear
  frame.head = TimberMember{{100.0, 100.0}, testing::timber_c24()};
  frame.footing.sole.timber = {{100.0, 50.0}, testing::timber_c24()};
  StudRow studs;
  studs.stud = {{38.0, 100.0}, testing::timber_c16(), LoadDuration::permanent};
  studs.nogging = true;  // else it would bend along the row first
  frame.uprights = studs;
  const std::vector<Upright> row = {
      {"S1", 1000.0, {}, 1}, {"S2", 1400.0, {}, 1}, {"S3", 1800.0, {}, 1}};
  CheckRules rules;
  rules.basis = partial_factors();
  const Check compression = check_stud(frame, row, 1, 8910.0, rules).front();
  // The example holds the stud along the row by its sheathing; noggings alone leave half its
  // length, over which a stud of 38 mm is the more slender: 1168.75 / (38 / sqrt 12) = 106.5.
  EXPECT_NE(compression.working.find("lambda 106.5"), std::string::npos) << compression.working;
  std::get<StudRow>(frame.uprights).stud.section.b = 51.0;  // as slender both ways at 50 mm
  const Check across = check_stud(frame, row, 1, 8910.0 * 51.0 / 38.0, rules).front();
  EXPECT_NE(across.working.find("lambda 81.0, lambda_rel 1.45"), std::string::npos)
      << across.working;
  verify({worked, "stud as slender as 38x100 C16: utilisation", 0.74, across.utilisation(), 0.005,
          "-"});
}

// (b) of en_1995_timber_test.cpp and reference sums: C24, k_mod 0.8: 2.5 x 0.8 / 1.3 = 1.538
// N/mm2, so that 100 x 47 mm with 30 mm on both sides and k_c90 1.25 carry 1.923 x 107 x 100 =
// 20.58 kN, and an end stud without spread outwards 1.923 x 77 x 100 = 14.81 kN.
TEST(ShoreStud, BearsOnASoftwoodSoleWithItsSpreadButNotBeyondTheEnd) {
  const Job job = testing::stud_wall_job();
  const ShoreFrame& frame = *job.dead_shores[0].frame;
  const std::vector<Upright> row = {
      {"S1", 1023.5, {}, 1}, {"S2", 1423.5, {}, 1}, {"S3", 4976.5, {}, 1}};
  CheckRules rules;
  rules.basis = partial_factors();
  const auto capacity = [&](std::size_t which) {
    for (const Check& check : check_stud(frame, row, which, 10e3, rules))
      if (check.check == "bearing on the sole") return 10.0 / check.utilisation();
    return 0.0;
  };
  verify({en1995, "stud on a C24 sole, inside: load", 20.58, capacity(1), 0.01, "kN"});
  verify({en1995, "stud on a C24 sole, at its end: load", 14.81, capacity(0), 0.01, "kN"});
}

// (d): moments about the far bearing, 4.0 m from the wall; the shore is 0.8 m from the wall.
TEST(ShoreLever, IsTheJoistsSpanOverItsDistanceToTheFarBearing) {
  const Job job = testing::shored_job();
  const ShoreDesign design = design_shores(job).front();
  EXPECT_DOUBLE_EQ(design.lever, 4.0 / 3.2);
  double on_plate = 0.0;
  for (const HeadLoad& load : design.loads) on_plate += load.characteristic();
  verify({statics, "joists over a shore 0.8 m from the wall: load on its plate", 25.0,
          on_plate / 1e3, 1e-6 * on_plate / 1e3, "kN"});  // 5 kN/m on the row's 4 m
}

}  // namespace
}  // namespace deadshore::solver
