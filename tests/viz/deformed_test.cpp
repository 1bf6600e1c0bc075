#include "figure_facts.h"
#include "made_up_job.h"
#include "made_up_stages.h"
#include "viz/drawings.h"
#include "viz/page/figure_list.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

namespace deadshore::viz {
namespace {

using solver::JobResult;
using testing::Contains;
using testing::Field;
using testing::HasSubstr;

/// Every node of the wall goes down as far as it is high, in thousandths, and no further sideways.
void squash(solver::PanelResult& panel, const mesh::QuadMesh& mesh, double thousandths) {
  panel.fields.displacement.clear();
  for (const mesh::Point& node : mesh.nodes)
    panel.fields.displacement.insert(panel.fields.displacement.end(),
                                     {0.0, -1e-3 * thousandths * node.y});
}

TEST(Deformed, IsDrawnARoundNumberOfTimesLargerUpToATwentiethOfTheWall) {
  JobResult result = made_up_result();
  const double size = std::max(result.job.wall.length, result.job.wall.height());
  for (const double most : {0.2, 1.0, 3.0}) {
    for (auto& panel : result.stages[0].analyses) squash(panel, result.mesh.quads, most);
    const double factor = movement_factor(result, std::array{std::size_t{0}});
    const double drawn = factor * 1e-3 * most * result.job.wall.height();
    EXPECT_LE(drawn, 0.05 * size * (1.0 + 1e-9));
    EXPECT_GT(drawn, 0.05 * size / 2.5 - 1e-9);
  }
}

TEST(Deformed, MarksTheLargestSettlementOfMasonryThatHolds) {
  JobResult result = made_up_result();
  solver::PanelResult& cracked = result.stages[0].analyses[1];
  squash(cracked, result.mesh.quads, 1.0);
  EXPECT_NEAR(largest_settlement(result, cracked), 5.2, 1e-9);
  // Loose masonry hangs on nothing: however far it goes counts for nothing.
  const auto& mesh = result.mesh.quads;
  for (int quad = 0; quad < mesh.quad_count(); ++quad)
    if (cracked.fields.quad_loose[quad] != 0) {
      const int node = mesh.nodes_of(quad)[0];
      if (std::abs(mesh.nodes[node].x - 3450.0) < 100.0 && mesh.nodes[node].y < 2400.0)
        cracked.fields.displacement[2 * node + 1] = -80.0;
    }
  EXPECT_NEAR(largest_settlement(result, cracked), 5.2, 1e-9);
  const Drawing drawing = deformed_wall(result, cracked, shown_stages(result)[0],
                                        movement_factor(result, std::array{std::size_t{0}}));
  EXPECT_THAT(lettering_of(drawing),
              Contains(Field(&Lettering::text, HasSubstr("largest settlement 5.2 mm"))));
}

TEST(Deformed, OfAStagedJobShowsWhatTheWorkDid) {
  JobResult result = made_up_staged_result();
  const auto& mesh = result.mesh.quads;
  for (auto& panel : result.stages.front().analyses) squash(panel, mesh, 0.3);
  for (auto& panel : result.stages[4].analyses) squash(panel, mesh, 0.5);
  EXPECT_NEAR(largest_settlement(result, result.stages[4].analyses[0]), 0.2 * 5.2, 1e-9);
}

TEST(Deformed, IsSoundWhereNothingOrNoNumberMoves) {
  JobResult result = made_up_result();
  for (const double value : {0.0, std::nan(""), HUGE_VAL}) {
    auto& panel = result.stages[0].analyses[0];
    panel.fields.displacement.assign(2 * result.mesh.quads.nodes.size(), value);
    const double factor = movement_factor(result, std::array{std::size_t{0}});
    EXPECT_TRUE(std::isfinite(factor));
    FigureList figures;
    figures.add(deformed_wall(result, panel, shown_stages(result)[0], factor), "deformed", "moved");
    expect_sound(figures.draw());
    EXPECT_EQ(largest_settlement(result, panel), 0.0);
  }
}

}  // namespace
}  // namespace deadshore::viz
