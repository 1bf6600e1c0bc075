#include "solver/study/mesh_error.h"

#include "solver/fem/job_mesh.h"
#include "solver/panel/support_reactions.h"
#include "tests/solver/invented_wall.h"
#include "tests/solver/staged_samples.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <vector>

namespace deadshore::solver {
namespace {

constexpr double factor = 2.6613;  // 3 / (2^1.089 - 1)

constexpr SupportId first_needle = support_of(NeedleId{0});

/// The changes of a wall with a needle, piers and a beam.
std::map<SupportId, double> errors_of(const PanelResult& fine, const PanelResult& coarse) {
  return mesh_error(testing::staged_wall_job(), fine, coarse);
}

PanelResult with_forces(double needle, double left, double right) {
  PanelResult result;
  result.needles = {{"N1", 1000.0, needle, 0.0, 1.0}};
  result.base_left = left;
  result.base_right = right;
  return result;
}

TEST(MeshError, IsTheSafeRichardsonEstimateOfTheLargestChange) {
  const auto errors = errors_of(with_forces(100.0, 50.0, 50.0), with_forces(110.0, 45.0, 45.0));
  EXPECT_NEAR(errors.at(first_needle), factor * 10.0, 1e-3);
}

TEST(MeshError, TakesNoSupportToHaveChangedLessThanTheRootMeanSquareOfItsLike) {
  const auto errors = errors_of(with_forces(100.0, 50.0, 50.0), with_forces(110.0, 40.0, 50.0));
  EXPECT_NEAR(errors.at(supports::right_pier), factor * std::sqrt(50.0), 1e-3);
}

TEST(MeshError, IsNotGivenForASupportThatCarriesNothing) {
  const PanelResult fine = with_forces(0.0, 50.0, 50.0);
  PanelResult bearing = fine;
  bearing.mesh_error = errors_of(fine, with_forces(0.0, 49.0, 51.0));
  const auto reactions = reactions_of(testing::staged_wall_job(), bearing);
  EXPECT_FALSE(find_reaction(reactions, first_needle)->mesh_error.has_value());
  EXPECT_EQ(find_reaction(reactions, supports::left_pier)->mesh_error,
            bearing.mesh_error.at(supports::left_pier));
}

TEST(MeshError, OfTheBeamsEndsIsKeptApartFromThatOfPiersAndNeedles) {
  PanelResult fine = with_forces(100.0, 50.0, 50.0);
  PanelResult coarse = with_forces(130.0, 35.0, 35.0);
  fine.beam.emplace();
  fine.beam->reaction_left = fine.beam->reaction_right = 20.0;
  coarse.beam.emplace();
  coarse.beam->reaction_left = coarse.beam->reaction_right = 21.0;
  EXPECT_NEAR(errors_of(fine, coarse).at(supports::beam_left_end), factor, 1e-3);
}

/// Walls that differ in what makes reactions hard to get right: cracks, free or held ends, soft or
/// hard needles, a slack one, elements of either kind.
std::vector<Job> walls() {
  std::vector<Job> all(5, invented_wall());
  all[1].analysis.element = mesh::QuadOrder::eight_node;
  all[2].masonry.tensile_strength = 0.03;
  all[2].left_end = all[2].right_end = WallEnd::held;
  all[2].analysis.element = mesh::QuadOrder::eight_node;
  for (Needle& needle : all[3].needles) needle.stiffness = 100e3;
  all[3].analysis.element = mesh::QuadOrder::eight_node;
  all[4].needles[1].slack = 0.5;
  return all;
}

/// Of a wall on elements of one size, with the reactions alone in view.
PanelResult analysed(const Job& job, MasonryModel model, double size) {
  return testing::at_once(job, mesh_of(job, size), model);
}

TEST(MeshError, BoundsTheChangeToElementsAQuarterAsLarge) {
  for (const Job& job : walls()) {
    for (const MasonryModel model : job.analysis.masonry) {
      PanelResult found = analysed(job, model, 200.0);
      found.mesh_error = mesh_error(job, found, analysed(job, model, 400.0));
      const std::vector<SupportReaction> better = reactions_of(job, analysed(job, model, 50.0));
      const std::vector<SupportReaction> supports = reactions_of(job, found);
      for (std::size_t k = 0; k < supports.size(); ++k) {
        if (supports[k].force == 0.0) continue;
        const double error = supports[k].mesh_error.value();
        EXPECT_LE(std::abs(supports[k].force - better[k].force), error)
            << to_string(model) << ' ' << label_of(job, supports[k].support);
        EXPECT_LT(error, 0.1 * found.load_total) << "a bound that says nothing";
      }
    }
  }
}

}  // namespace
}  // namespace deadshore::solver
