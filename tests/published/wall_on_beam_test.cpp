// A masonry wall on an elastic beam: composite action against the approximate formulas of Stafford
// Smith & Riddington, "The composite behaviour of elastic wall-beam systems", Proc. ICE 63 (1977)
// 377-391, as carried on by Hendry, Sinha & Davies, Design of Masonry Structures (both from memory,
// not checked against a copy):
//   M = W L / (4 (E_w t L^3 / (E I))^(1/3)),  sigma_max = 1.63 (W / (L t)) (E_w t L^3 / (E I))^0.28
// for walls of height at least 0.6 L. The paper offers them as upper values to design by, so ours
// must lie below them, and no further than half of the moment and a third of the peak stress. The
// bed here passes no shear; the wall's own lower edge is the tie of the arch.

#include "solver/panel/newton.h"
#include "solver/panel/panel_model.h"
#include "tests/published/comparison.h"
#include "tests/solver/grid_mesh.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source composite{Field::no_tension, Certainty::memory,
                           "Stafford Smith & Riddington 1977, upper values to design by"};

constexpr double span = 3000.0;
constexpr double height = 2400.0;
constexpr double thickness = 215.0;
constexpr double wall_E = 3000.0;
constexpr double line_load = 30.0;  // N/mm, in all span * line_load = W

struct Composite {
  double moment = 0.0;   ///< largest in the beam, N mm
  double stress = 0.0;   ///< largest between wall and beam, N/mm2
  double carried = 0.0;  ///< all that passes from wall to beam, N
};

ContactBed bed_between(const mesh::QuadMesh& mesh, const BeamLine& beam) {
  ContactBed bed;
  for (const mesh::Side side : mesh.sides_of(testing::bottom_edge)) {
    for (const SidePoint& side_point : points_on_side(mesh, side, {0.0, span})) {
      ContactPoint& point = bed.points.emplace_back();
      point.x = side_point.position.x;
      point.length = side_point.length;
      point.stiffness = 1e6;
      add_rise(side_point, point.form, -1.0);
      add_rise(beam, point.x, point.form);
    }
  }
  return bed;
}

Composite wall_on_beam(double EI) {
  const int columns = 48;
  const mesh::QuadMesh mesh =
      testing::rectangle_mesh(columns, 40, mesh::QuadOrder::eight_node, span, height);
  const BeamLine beam = make_beam_line(mesh.node_count(), 0.0, span, 62.5, EI, 1e12, 0.0);
  const ContactBed bed = bed_between(mesh, beam);
  const std::vector<Support> supports{{beam.first_node, 1, 0.0},
                                      {beam.first_node + beam.node_count() - 1, 1, 0.0},
                                      {testing::node_at(mesh, {0.5 * span, 0.5 * height}), 0, 0.0}};
  PanelModel model(mesh, supports, beam, std::span(&bed, 1));
  PanelLoading loading;
  loading.materials.push_back({wall_E, 0.15, 0.0, thickness, {}});
  loading.beds.push_back(bed);
  loading.load = Eigen::VectorXd::Zero(2 * model.node_count());
  testing::add_traction(
      mesh, testing::top_edge, thickness,
      [](mesh::Point, const Eigen::Vector2d&) {
        return Eigen::Vector2d(0.0, -line_load / thickness);
      },
      loading.load);
  const Eigen::VectorXd u = testing::solve(model, loading);
  Composite found;
  for (const ContactPoint& point : bed.points) {
    found.carried += point.force(u);
    found.stress = std::max(found.stress, point.force(u) / (point.length * thickness));
  }
  for (double x = 25.0; x < span; x += 25.0) {
    double moment = 0.5 * found.carried * x;  // the two ends carry half each, by symmetry
    for (const ContactPoint& point : bed.points) {
      if (point.x < x) moment -= point.force(u) * (x - point.x);
    }
    found.moment = std::max(found.moment, moment);
  }
  return found;
}

class WallOnBeam : public ::testing::TestWithParam<double> {};

// E_w t L^3 / (E I): 1879 is a 254x146x31 UB under the wall; the others lie to either side of
// it.
INSTANTIATE_TEST_SUITE_P(RelativeStiffness, WallOnBeam, ::testing::Values(600.0, 1879.0, 4000.0));

TEST_P(WallOnBeam, CarriesTheWallByArchingAsStaffordSmithAndRiddingtonSay) {
  const double ratio = GetParam();
  const Composite found = wall_on_beam(wall_E * thickness * span * span * span / ratio);
  const double W = line_load * span;
  EXPECT_NEAR(found.carried, W, 1e-6 * W);
  const double moment = W * span / (4.0 * std::cbrt(ratio));
  const double stress = 1.63 * W / (span * thickness) * std::pow(ratio, 0.28);
  verify({composite,
          fmt::format("wall on a beam, stiffness ratio {}: moment", ratio),
          moment / 1e6,
          found.moment / 1e6,
          {0.5 * moment / 1e6, 0.05 * moment / 1e6},
          "kNm"});
  verify({composite,
          fmt::format("wall on a beam, stiffness ratio {}: peak stress", ratio),
          stress,
          found.stress,
          {stress * 2.0 / 3.0, 0.0},
          "N/mm2"});
  EXPECT_LT(found.moment, 0.35 * W * span / 8.0);  // far less than without arching
}

TEST(WallOnBeam, AStifferBeamTakesMoreMoment) {
  const double EI = wall_E * thickness * span * span * span / 1879.0;
  EXPECT_GT(wall_on_beam(4.0 * EI).moment, 1.3 * wall_on_beam(EI).moment);
}

}  // namespace
}  // namespace deadshore::solver
