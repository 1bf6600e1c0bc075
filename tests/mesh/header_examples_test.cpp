// The examples in the headers of mesh/, as they stand there: `header_examples` compares the two.
#include "mesh/wall_mesher.h"

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <string>

namespace deadshore::mesh {
namespace {

TEST(HeaderExamples, MeshAWallWithAWindow) {
  testing::internal::CaptureStdout();
  WallShape wall;
  wall.length = 3000.0;
  wall.top = {{0.0, 2400.0}, {3000.0, 2400.0}};
  wall.openings = {{"window", 1000.0, 1400.0, 1000.0, 600.0}};  // left, sill, width, height
  wall.cut = {700.0, 2300.0, 1000.0};                           // left, right, soffit
  const Interval needle{1424.0, 1576.0};                        // where one will bear
  const WallMesh made = mesh_wall(wall, {}, {&needle, 1}, {.size = 100.0});
  double area = 0.0;
  for (int quad = 0; quad < made.quads.quad_count(); ++quad) area += area_of(made.quads, quad);
  fmt::print("{:.2f} m2 in {} elements, {} sides of soffit\n", area / 1e6, made.quads.quad_count(),
             made.quads.sides_of(ChainKind::soffit).size());
  // 3 m x 2.4 m less the window's 0.6 m2 and the cut's 1.6 m2.
  EXPECT_EQ(testing::internal::GetCapturedStdout(),
            "5.00 m2 in 516 elements, 18 sides of soffit\n");
}

}  // namespace
}  // namespace deadshore::mesh
