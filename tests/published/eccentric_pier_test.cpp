// Rectangular pier without tensile strength under an eccentric load, plane sections: e.g. J.
// Heyman, The Stone Skeleton (1995), and every text on footings; the sum is by equilibrium alone.
// Inside the middle third (e <= b/6): P/(b t) (1 +- 6 e/b). Outside: a triangle over 3 (b/2 - e)
// with edge stress 2 P/(3 t (b/2 - e)). b 215 mm, 30 kN per metre of t. Accepted (calculated from
// the formula): e 50 -> 0.3478 N/mm2 over 172.5 mm; e 80 -> 0.7273 over 82.5 mm.

#include "solver/panel/recovery.h"
#include "tests/published/comparison.h"
#include "tests/solver/grid_mesh.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source statics{Field::no_tension, Certainty::derived,
                         "Statics of plane sections, e.g. Heyman 1995"};

using mesh::QuadMesh;
using mesh::QuadOrder;

constexpr double b = 215.0;
constexpr double t = 1000.0;
constexpr double P = 30e3;
constexpr double nu = 0.01;
constexpr double height = 430.0;

struct Fineness {
  QuadOrder order;
  int count;  ///< elements across and up
};

Eigen::VectorXd solve_to_round_off(PanelModel& model, const PanelLoading& loading) {
  Eigen::VectorXd u = model.start();
  NewtonOptions options;
  options.tolerance = 1e-8;  // the stiff plate's own round-off lies just above the default
  options.patience = 0;      // a crack along the whole pier wanders under plain steps
  const NewtonReport report = minimise(model, loading, u, options);
  EXPECT_TRUE(report.converged) << "residual " << report.residual;
  return u;
}

/// A stiff head plate brings the load in, `e` right of the middle, and Poisson's ratio is next to
/// nothing: both ends of the pier stay plane, as the formula wants. (Clamped ends that stop a real
/// Poisson's ratio would pull sideways on a material that cannot pull.)
class EccentricPier : public ::testing::TestWithParam<Fineness> {
 protected:
  struct Section {
    std::vector<double> x;
    std::vector<double> stress;
  };

  /// Upright stress at mid-height, left to right, compression negative.
  [[nodiscard]] static Section mid_height(double e) {
    const auto [order, count] = GetParam();
    QuadMesh mesh = testing::rectangle_mesh(count, count, order, b, height);
    mesh.regions.push_back({mesh::RegionKind::block, 0});  // a stiff head plate
    const int plate = count / 6 * count;                   // elements in the top sixth
    std::fill(mesh.region_of_quad.end() - plate, mesh.region_of_quad.end(), 1);
    PanelModel model(mesh,
                     testing::supports_at(mesh, testing::nodes_on(mesh, testing::bottom_edge),
                                          [](mesh::Point) { return Eigen::Vector2d::Zero(); }));
    PanelLoading loading{{{1500.0, nu, 0.0, t, 0.0}, {1.5e5, nu, 0.0, t, {}}},
                         {},
                         Eigen::VectorXd::Zero(2 * mesh.node_count())};
    testing::add_traction(
        mesh, testing::top_edge, t,
        [&](mesh::Point p, const Eigen::Vector2d&) {
          return Eigen::Vector2d(0.0, -P / (b * t) * (1.0 + 12.0 * e * (p.x - 0.5 * b) / (b * b)));
        },
        loading.load);
    const PanelFields fields = fields_of(model, loading, solve_to_round_off(model, loading));
    Section section;
    for (int i = 0; i <= count; ++i) {
      const double x = b * i / count;
      section.x.push_back(x);
      section.stress.push_back(
          fields.node_stress[static_cast<std::size_t>(testing::node_at(mesh, {x, 0.5 * height}))]
              .yy);
    }
    return section;
  }
};
INSTANTIATE_TEST_SUITE_P(Orders, EccentricPier,
                         ::testing::Values(Fineness{QuadOrder::four_node, 36},
                                           Fineness{QuadOrder::eight_node, 18}));

std::string words(const Fineness& fineness, double e) {
  return fmt::format("pier 215 mm, {}-node, 30 kN at e {} mm: edge stress",
                     static_cast<int>(fineness.order), e);
}

TEST_P(EccentricPier, InsideTheMiddleThirdStressIsLinear) {
  const double e = 20.0;
  const Section section = mid_height(e);
  for (std::size_t i = 0; i < section.x.size(); ++i) {
    const double expected = -P / (b * t) * (1.0 + 12.0 * e * (section.x[i] - 0.5 * b) / (b * b));
    EXPECT_NEAR(section.stress[i], expected, 0.005 * P / (b * t)) << "at " << section.x[i] << " mm";
  }
  verify({statics, words(GetParam(), e), P / (b * t) * (1.0 + 6.0 * e / b), -section.stress.back(),
          0.005 * P / (b * t), "N/mm2"});
}

TEST_P(EccentricPier, OutsideTheMiddleThirdStressIsATriangle) {
  struct Triangle {
    double e, edge, length;
  };
  for (const Triangle triangle : {Triangle{50.0, 0.3478, 172.5}, Triangle{80.0, 0.7273, 82.5}}) {
    const Section section = mid_height(triangle.e);
    for (std::size_t i = 0; i < section.x.size(); ++i) {
      const double from_tip = std::max(0.0, section.x[i] - (b - triangle.length));
      EXPECT_NEAR(-section.stress[i], triangle.edge * from_tip / triangle.length,
                  0.02 * triangle.edge)
          << "e " << triangle.e << ", at " << section.x[i] << " mm";
    }
    verify({statics, words(GetParam(), triangle.e), triangle.edge, -section.stress.back(),
            0.02 * triangle.edge, "N/mm2"});
  }
}

}  // namespace
}  // namespace deadshore::solver
