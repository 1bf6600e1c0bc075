// Edges that a drawing puts in one line come out some units of round-off apart when they are summed
// from inches. They count as one place (mesh::same_place) to the mesher, the hand sums and the
// frames alike, and nothing searches for ever between them. No outside source: the answers are held
// against those of the same wall with its edges in line to the last bit.
#include "mesh/plane.h"
#include "solver/beam/beam_checks.h"
#include "solver/fem/job_mesh.h"
#include "solver/loads/house_loads.h"
#include "solver/spread/spread.h"
#include "tests/solver/beam_samples.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>
#include <vector>

namespace deadshore::solver {
namespace {

constexpr double inch = 25.4;

TEST(DistinctPlaces, AreInOrderAndNoNearerThanOnePlace) {
  EXPECT_EQ(mesh::distinct_places({5.0, 1.0, 1.0 + 1e-7, 5.0 - 1e-9, 3.0}),
            (std::vector<double>{1.0, 3.0, 5.0 - 1e-9}));
  EXPECT_EQ(mesh::distinct_places({2.0, 2.0}), (std::vector<double>{2.0}));
  EXPECT_TRUE(mesh::distinct_places({}).empty());
}

Lintel stone_lintel(double bearing) {
  Lintel lintel;
  lintel.shape = {"lintel", 0, 6.0 * inch, bearing};
  lintel.unit_weight = 25e-6;
  lintel.E = 20000.0;
  lintel.nu = 0.2;
  lintel.thickness = 215.0;
  return lintel;
}

double all_forces(const HandBeam& hand) {
  return hand.reaction_left + hand.reaction_right;
}

// The right end of the lintel is at 97 + 32 + 6 = 135 in, as is the left edge of what bears 8 in
// wide at 139 in; in mm the two sums differ by round-off.
TEST(HandBeam, EndsWhereALintelAndALoadMeetToRoundOff) {
  Job job = testing::beam_job();
  job.wall.openings = {{"window", 97.0 * inch, 120.0 * inch, 32.0 * inch, 40.0 * inch, 0.0}};
  job.lintels = {stone_lintel(6.0 * inch)};
  job.wall.lintels = {job.lintels[0].shape};
  job.point_loads = {{"purlin", 139.0 * inch, 175.0 * inch, 8.0 * inch, 6000.0, 4000.0}};
  const double lintel_end = mesh::extent_of(job.lintels[0].shape, job.wall).x.to;
  ASSERT_NE(lintel_end, job.point_loads[0].span().from);
  ASSERT_NEAR(lintel_end, job.point_loads[0].span().from, 1e-9);
  const HandBeam hand = hand_beam(job);
  EXPECT_NEAR(all_forces(hand), hand.load, 1e-9 * hand.load);
}

/// A wall in inches on which edges of lintel, window, loads and bearings fall in line by chance.
/// With `apart`, each edge is moved by less than `mesh::same_place`, as a sum of lengths might be.
class InchWall {
 public:
  explicit InchWall(unsigned seed) : chance_(seed), moves_(seed + 1000U) {}

  Job in_line() { return make(false); }
  Job apart() { return make(true); }

 private:
  int pick(int from, int to) { return std::uniform_int_distribution<int>(from, to)(chance_); }

  /// `inches` from the wall's left end, in mm.
  double place(int inches, bool apart) {
    static constexpr double moves[] = {0.0, 5e-13, -5e-13, 4e-12, -4e-12, 1e-9, -1e-9, 2e-7, -2e-7};
    const double move = moves[std::uniform_int_distribution<int>(0, 8)(moves_)];
    return inches * inch + (apart ? move : 0.0);
  }

  mesh::Interval stretch(int from, int to, bool apart) {
    const double left = place(from, apart);
    return {left, place(to, apart)};
  }

  Job make(bool apart) {
    Job job = testing::beam_job();
    job.wall.length = 240.0 * inch;
    job.wall.top = {{0.0, 200.0 * inch}, {job.wall.length, 200.0 * inch}};
    const mesh::Interval cut = stretch(60, 180, apart);
    job.wall.cut = {cut.from, cut.to, 96.0 * inch};
    const int window = pick(17, 27) * 4;
    const int width = pick(6, 10) * 4;
    const int bearing = pick(1, 2) * 4;
    const mesh::Interval jambs = stretch(window, window + width, apart);
    job.wall.openings = {{"window", jambs.from, 120.0 * inch, jambs.length(), 40.0 * inch, 0.0}};
    job.lintels = {stone_lintel(bearing * inch)};
    job.wall.lintels = {job.lintels[0].shape};
    const mesh::Interval floor = stretch(pick(0, 15) * 4, window + width + bearing, apart);
    job.line_loads = {{"floor", 110.0 * inch, false, floor, 6.0, 3.0},
                      {"roof", 0.0, true, {0.0, job.wall.length}, 3.0, 1.0}};
    const mesh::Interval left = stretch(window - bearing - 8, window - bearing, apart);
    const mesh::Interval right =
        stretch(window + width + bearing, window + width + bearing + 8, apart);
    job.point_loads = {{"left", left.middle(), 190.0 * inch, left.length(), 5000.0, 2000.0},
                       {"right", right.middle(), 190.0 * inch, right.length(), 4000.0, 1000.0}};
    job.beam->bearing = 8.0 * inch;
    job.beam->padstone.length = 16.0 * inch;
    for (const int x : {64, window, window + width, 164}) {
      const mesh::Interval needle = stretch(x, x + 4, apart);
      job.needles.push_back({fmt::format("N{}", job.needles.size() + 1), needle.middle(),
                             needle.length(), 2e4, 0.0, 0.0});
    }
    return job;
  }

  std::mt19937 chance_;
  std::mt19937 moves_;
};

class EdgesToRoundOff : public ::testing::TestWithParam<unsigned> {
 protected:
  const Job in_line_ = InchWall(GetParam()).in_line();
  const Job apart_ = InchWall(GetParam()).apart();
};

TEST_P(EdgesToRoundOff, MakeASoundJob) {
  EXPECT_TRUE(find_faults(in_line_).empty()) << find_faults(in_line_).at(0).key;
  EXPECT_TRUE(find_faults(apart_).empty()) << find_faults(apart_).at(0).key;
}

TEST_P(EdgesToRoundOff, ChangeNoHandSumOfTheBeam) {
  const HandBeam in_line = hand_beam(in_line_);
  const HandBeam apart = hand_beam(apart_);
  EXPECT_NEAR(all_forces(apart), apart.load, 1e-9 * apart.load);
  EXPECT_NEAR(apart.load, in_line.load, 1e-8 * in_line.load);
  EXPECT_NEAR(apart.largest_moment, in_line.largest_moment, 1e-8 * in_line.largest_moment);
  EXPECT_NEAR(apart.largest_shear, in_line.largest_shear, 1e-8 * in_line.largest_shear);
  EXPECT_NEAR(apart.deflection, in_line.deflection, 1e-8 * in_line.deflection);
}

TEST_P(EdgesToRoundOff, ChangeNoShareOfTheHandMethod) {
  const SpreadResult in_line = spread_at_45_degrees(in_line_);
  const SpreadResult apart = spread_at_45_degrees(apart_);
  double sum = apart.left_pier.total + apart.right_pier.total;
  ASSERT_EQ(apart.needles.size(), 4U);
  for (std::size_t i = 0; i < 4; ++i) {
    sum += apart.needles[i].total;
    EXPECT_NEAR(apart.needles[i].total, in_line.needles[i].total, 1e-8 * in_line.load_total);
  }
  EXPECT_NEAR(sum, apart.load_total, 1e-9 * apart.load_total);
}

TEST_P(EdgesToRoundOff, GiveTheSameMeshWithAllLoadOnIt) {
  const mesh::WallMesh in_line = mesh_of(in_line_, 150.0);
  const mesh::WallMesh apart = mesh_of(apart_, 150.0);
  EXPECT_EQ(apart.quads.node_count(), in_line.quads.node_count());
  const double due = loads_of(in_line_, in_line.quads).sum();
  const double found = loads_of(apart_, apart.quads).sum();
  EXPECT_NEAR(found, due, 1e-8 * std::abs(due));
}

INSTANTIATE_TEST_SUITE_P(OnChanceWalls, EdgesToRoundOff, ::testing::Range(1U, 41U));

}  // namespace
}  // namespace deadshore::solver
