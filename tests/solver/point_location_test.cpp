#include "solver/fem/point_location.h"

#include "solver/fem/job_mesh.h"
#include "tests/solver/grid_mesh.h"
#include "tests/solver/invented_wall.h"

#include <gtest/gtest.h>

namespace deadshore::solver {
namespace {

mesh::WallMesh mesh_with(mesh::QuadOrder order, double size) {
  Job job = invented_wall();
  job.wall.top = {{0.0, 4800.0}, {3000.0, 5600.0}, {6000.0, 4800.0}};
  job.line_loads.pop_back();
  job.analysis.element = order;
  return mesh_of(job, size);
}

Eigen::VectorXd linear_field(const mesh::QuadMesh& mesh) {
  Eigen::VectorXd u(2 * mesh.node_count());
  for (int node = 0; node < mesh.node_count(); ++node) {
    const mesh::Point& p = mesh.nodes[static_cast<std::size_t>(node)];
    u.segment<2>(2 * node) << 1.0 + 2e-4 * p.x - 3e-4 * p.y, -2.0 + 1e-4 * p.x + 5e-4 * p.y;
  }
  return u;
}

TEST(QuadFinder, SharesGiveBackThePointThatTheyWereAskedFor) {
  for (const mesh::QuadOrder order : {mesh::QuadOrder::four_node, mesh::QuadOrder::eight_node}) {
    const mesh::QuadMesh mesh = testing::distorted_mesh(3, 3, order, 30.0, 30.0, 7);
    const QuadFinder finder(mesh);
    const auto here = finder.shares_at({12.0, 7.0});
    ASSERT_TRUE(here);
    mesh::Point sum;
    for (std::size_t i = 0; i < here->nodes.size(); ++i) {
      const mesh::Point& node = mesh.nodes[static_cast<std::size_t>(here->nodes[i])];
      sum.x += here->shares[i] * node.x;
      sum.y += here->shares[i] * node.y;
    }
    EXPECT_NEAR(sum.x, 12.0, 1e-9);
    EXPECT_NEAR(sum.y, 7.0, 1e-9);
    EXPECT_FALSE(finder.shares_at({31.0, 7.0}));
  }
}

TEST(QuadFinder, WhatIsNotChosenIsNotThere) {
  const mesh::QuadMesh mesh = testing::rectangle_mesh(3, 1, mesh::QuadOrder::four_node, 30.0, 10.0);
  const std::vector<char> chosen = {0, 1, 1};
  const QuadFinder finder(mesh, chosen);
  EXPECT_EQ(finder.find({5.0, 5.0}), -1);
  EXPECT_EQ(finder.find({15.0, 5.0}), 1);
  EXPECT_EQ(finder.nearest_shares({5.0, 5.0}).nodes.data(), mesh.nodes_of(1).data());
}

TEST(CarryOver, LinearFieldIsCarriedExactlyBetweenMeshesOfAGable) {
  for (const mesh::QuadOrder from : {mesh::QuadOrder::four_node, mesh::QuadOrder::eight_node}) {
    for (const mesh::QuadOrder to : {mesh::QuadOrder::four_node, mesh::QuadOrder::eight_node}) {
      const mesh::WallMesh coarse = mesh_with(from, 200.0);
      const mesh::WallMesh fine = mesh_with(to, 90.0);
      const Eigen::VectorXd u = linear_field(coarse.quads);
      const Eigen::VectorXd carried =
          carry_over(coarse.quads, {u.data(), u.data() + u.size()}, fine.quads);
      EXPECT_LT((carried - linear_field(fine.quads)).lpNorm<Eigen::Infinity>(), 1e-9);
    }
  }
}

TEST(CarryOver, NodeOutsideTakesTheNearestElement) {
  const mesh::WallMesh coarse = mesh_with(mesh::QuadOrder::four_node, 200.0);
  const Eigen::VectorXd u = linear_field(coarse.quads);
  mesh::QuadMesh lone;
  lone.nodes = {{-5.0, 1000.0}, {6005.0, 1000.0}};
  const Eigen::VectorXd carried = carry_over(coarse.quads, {u.data(), u.data() + u.size()}, lone);
  mesh::QuadMesh clamped = lone;
  clamped.nodes = {{0.0, 1000.0}, {6000.0, 1000.0}};
  EXPECT_LT((carried - linear_field(clamped)).lpNorm<Eigen::Infinity>(), 1e-9);
}

}  // namespace
}  // namespace deadshore::solver
