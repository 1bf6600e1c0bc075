// What comes out, against sums by hand.
#include "solver/site/removed_masonry.h"

#include "tests/solver/fault_cases.h"
#include "tests/solver/invented_wall.h"
#include "tests/solver/sample_sections.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>
#include <vector>

namespace deadshore::solver {
namespace {

using ::testing::Pointwise;

constexpr double rounding = 1e-6;  // of an area of a few m2 in mm2

MATCHER(IsNear, "is the same but for rounding") {
  return std::abs(std::get<0>(arg) - std::get<1>(arg)) < rounding;
}

// A cut of 2.0 x 1.5 m with a window of 0.6 x 0.6 m and its lintel, 0.9 m long and 150 mm deep; 1
// m2 of the wall weighs 5 kN.
Job window_in_cut() {
  Job job;
  job.title = "an invented wall";
  job.wall.length = 4000.0;
  job.wall.top = {{0.0, 3000.0}, {4000.0, 3000.0}};
  job.wall.openings = {{"window", 1200.0, 600.0, 600.0, 600.0, 0.0}};
  job.wall.lintels = {{"window lintel", 0, 150.0, 150.0}};
  job.wall.cut = {1000.0, 3000.0, 1500.0};
  job.thickness = 250.0;
  job.masonry = {"brick", 20e-6, 1500.0, 0.2, 2.4, 0.05};
  job.lintels = {{job.wall.lintels[0], "concrete", 24e-6, 30e3, 0.2, 250.0}};
  job.needles = {{"N1", 2000.0, 150.0, 20e3, 0.0, 0.0}};
  job.removal.course_height = 300.0;
  return job;
}

Job arch_in_cut(double rise) {
  Job job = window_in_cut();
  job.lintels.clear();
  job.wall.lintels.clear();
  job.wall.openings = {{"archway", 1400.0, 0.0, 800.0, 1200.0, rise}};
  return job;
}

std::vector<double> areas_of(const auto& parts) {
  std::vector<double> areas;
  for (const auto& part : parts) areas.push_back(part.area);
  return areas;
}

double sum_of(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

TEST(RemovedMasonry, CoursesComeFromTheTopDownLessWindowAndLintel) {
  const RemovedMasonry removed = removed_masonry(window_in_cut());
  EXPECT_THAT(areas_of(removed.courses),
              Pointwise(IsNear(), {2000.0 * 300.0 - 900.0 * 150.0, 1400.0 * 300.0, 1400.0 * 300.0,
                                   2000.0 * 300.0, 2000.0 * 300.0}));
  EXPECT_EQ(removed.courses.front().y.to, 1500.0);
  EXPECT_EQ(removed.courses.back().y.from, 0.0);
  EXPECT_NEAR(removed.courses.front().weight, 2325.0, rounding);  // 0.465 m2 at 5 kN/m2
}

TEST(RemovedMasonry, StripsGoFromLeftToRight) {
  const RemovedMasonry removed = removed_masonry(window_in_cut());
  const double beside_window = 500.0 * 1500.0 - 300.0 * 600.0 - 450.0 * 150.0;
  EXPECT_THAT(areas_of(removed.strips),
              Pointwise(IsNear(), {beside_window, beside_window, 750e3, 750e3}));
  EXPECT_EQ(removed.strips.front().x.from, 1000.0);
  EXPECT_EQ(removed.strips.back().x.to, 3000.0);
}

TEST(RemovedMasonry, LastCourseAndLastStripAreWhatIsLeft) {
  Job job = window_in_cut();
  job.removal.course_height = 400.0;
  job.removal.strip_width = 600.0;
  const RemovedMasonry removed = removed_masonry(job);
  ASSERT_EQ(removed.courses.size(), 4U);
  EXPECT_NEAR(removed.courses.back().y.length(), 300.0, rounding);
  ASSERT_EQ(removed.strips.size(), 4U);
  EXPECT_NEAR(removed.strips.back().x.length(), 200.0, rounding);
}

TEST(RemovedMasonry, CoursesAndStripsAddUpToTheAreaOfTheCut) {
  const double whole = 2000.0 * 1500.0;
  for (const double course : {75.0, 65.0, 113.0, 1e4}) {
    for (const double strip : {500.0, 337.0, 1e4}) {
      for (Job job : {window_in_cut(), arch_in_cut(0.0), arch_in_cut(120.0), arch_in_cut(400.0)}) {
        job.removal.course_height = course;
        job.removal.strip_width = strip;
        const RemovedMasonry removed = removed_masonry(job);
        const double by_courses = sum_of(areas_of(removed.courses));
        EXPECT_NEAR(by_courses, sum_of(areas_of(removed.strips)), 1e-9 * whole);
        EXPECT_LT(by_courses, whole);
      }
    }
  }
}

TEST(RemovedMasonry, FollowsARoundHead) {
  // Straight jambs up to 0.8 m, then half a circle of 0.4 m.
  const RemovedMasonry removed = removed_masonry(arch_in_cut(400.0));
  const double hole = 800.0 * 800.0 + 0.5 * std::numbers::pi * 400.0 * 400.0;
  EXPECT_NEAR(sum_of(areas_of(removed.courses)), 3e6 - hole, 1e-9 * 3e6);
}

TEST(RemovedMasonry, ClipsACourseWhereItPassesThroughAnArch) {
  // The course from 0.9 to 1.2 m: of the half circle, what is more than 0.1 m above its centre.
  const RemovedMasonry removed = removed_masonry(arch_in_cut(400.0));
  const double above = 400.0 * 400.0 * std::acos(0.25) - 100.0 * std::sqrt(400.0 * 400.0 - 1e4);
  EXPECT_NEAR(removed.courses[1].area, 2000.0 * 300.0 - above, 1e-9 * 3e6);
}

TEST(RemovedMasonry, CountsOnlyThePartOfAnOpeningInsideTheCut) {
  Job job = arch_in_cut(400.0);
  job.wall.openings[0].left = 600.0;  // its middle on the cut's left jamb
  const double half = 0.5 * (800.0 * 800.0 + 0.5 * std::numbers::pi * 400.0 * 400.0);
  EXPECT_NEAR(sum_of(areas_of(removed_masonry(job).strips)), 3e6 - half, 1e-9 * 3e6);
}

TEST(RemovedMasonry, LeavesOutAWindowAboveTheSoffit) {
  Job job = window_in_cut();
  job.wall.openings[0].sill = 1600.0;
  const RemovedMasonry removed = removed_masonry(job);
  EXPECT_TRUE(removed.lintels.empty());
  EXPECT_NEAR(sum_of(areas_of(removed.courses)), 3e6, rounding);
}

TEST(RemovedMasonry, BreaksALintelIntoAsFewPiecesAsTwoPeopleLift) {
  // 900 x 150 x 250 mm at 24 kN/m3: 810 N.
  Job job = window_in_cut();
  const RemovedMasonry removed = removed_masonry(job);
  ASSERT_EQ(removed.lintels.size(), 1U);
  EXPECT_NEAR(removed.lintels[0].weight, 810.0, rounding);
  EXPECT_EQ(removed.lintels[0].length, 900.0);
  EXPECT_EQ(removed.lintels[0].pieces, 2);
  EXPECT_NEAR(removed.lintels[0].piece_weight, 405.0, rounding);
  EXPECT_FALSE(removed.lintels[0].one_person);

  job.removal.two_person_lift = 810.0;
  EXPECT_EQ(removed_masonry(job).lintels[0].pieces, 1);
  job.removal.two_person_lift = 809.0;
  EXPECT_EQ(removed_masonry(job).lintels[0].pieces, 2);
  job.removal.one_person_lift = job.removal.two_person_lift = 270.0;  // a third of it
  EXPECT_EQ(removed_masonry(job).lintels[0].pieces, 3);
  EXPECT_TRUE(removed_masonry(job).lintels[0].one_person);
}

TEST(RemovedMasonry, CountsPocketsWithWhatPadstonesReplace) {
  Job job = window_in_cut();
  PermanentBeam beam;
  beam.name = "beam";
  beam.member = steel_member(testing::ub_254x31, SteelGrade::s275);
  beam.bearing = 150.0;
  beam.padstone = {300.0, 215.0, 30e3, 0.2, 24e-6, 20.0};
  beam.packing = {25.0, 15e3, 12.0, 0.25};
  job.beam = beam;
  const double pocket = 150.0 * (beam.member.section.h + 25.0) + 300.0 * 215.0;
  const double without = removed_masonry(window_in_cut()).weight;
  const RemovedMasonry removed = removed_masonry(job);
  EXPECT_NEAR(removed.pockets_weight, 2.0 * pocket * 0.005, rounding);
  EXPECT_NEAR(removed.weight, without + removed.pockets_weight, rounding);
}

TEST(RemovedMasonry, TotalsAreMasonryLintelsAndPockets) {
  const RemovedMasonry removed = removed_masonry(window_in_cut());
  const double masonry = 3e6 - 600.0 * 600.0 - 900.0 * 150.0;
  EXPECT_NEAR(removed.weight, masonry * 0.005 + 810.0, rounding);
  EXPECT_NEAR(removed.solid_volume, (masonry + 900.0 * 150.0) * 250.0, 1e-3);
  EXPECT_DOUBLE_EQ(removed.loose_volume, 1.5 * removed.solid_volume);
}

class RemovalFaults : public ::testing::TestWithParam<BadJob> {};

TEST_P(RemovalFaults, AreFound) {
  expect_fault(invented_wall(), GetParam());
}

const BadJob bad_removals[] = {
    {"removal.course_height", "0 mm", [](Job& j) { j.removal.course_height = 0.0; }},
    {"removal.course_height", "nan",
     [](Job& j) { j.removal.course_height = std::numeric_limits<double>::quiet_NaN(); }},
    {"removal.strip_width", "49 mm", [](Job& j) { j.removal.strip_width = 49.0; }},
    {"removal.strip_width", "inf",
     [](Job& j) { j.removal.strip_width = std::numeric_limits<double>::infinity(); }},
    {"removal.one_person_lift", "0 N", [](Job& j) { j.removal.one_person_lift = 0.0; }},
    {"removal.two_person_lift", "200 N, where one person lifts 250 N",
     [](Job& j) { j.removal.two_person_lift = 200.0; }},
    {"removal.bulking", "0.9", [](Job& j) { j.removal.bulking = 0.9; }}};
INSTANTIATE_TEST_SUITE_P(Numbers, RemovalFaults, ::testing::ValuesIn(bad_removals));

TEST(RemovalOptions, PassAtTheirLeast) {
  Job job = invented_wall();
  job.removal = {10.0, 50.0, 300.0, 300.0, 1.0};
  expect_no_fault(job);
}

}  // namespace
}  // namespace deadshore::solver
