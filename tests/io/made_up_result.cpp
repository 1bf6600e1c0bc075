#include "tests/io/made_up_result.h"

#include <cmath>
#include <limits>

namespace deadshore::io::test {
namespace {

constexpr int columns = 8;
constexpr int rows = 6;
constexpr double size = 500.0;

solver::Job made_up_job() {
  solver::Job job;
  job.title = "Invented wall";
  job.wall.length = columns * size;
  job.wall.top = {{0.0, rows * size}, {columns * size, rows * size}};
  job.wall.openings = {{"window", 1500.0, 2000.0, 500.0, 500.0, 0.0}};
  job.wall.lintels = {{"window lintel", "window", 500.0, 0.0}};
  job.wall.cut = {1000.0, 3000.0, 1500.0};
  job.thickness = 250.0;
  job.right_end = solver::WallEnd::held;
  job.masonry = {"soft brick", 20e-6, 1500.0, 0.2, 2.4, 0.05};
  job.lintels = {{job.wall.lintels.front(), "concrete", 24e-6, 30e3, 0.2, 250.0}};
  job.line_loads = {{"floor", 2500.0, false, {0.0, 4000.0}, 6.0, 4.0}};
  job.point_loads = {{"purlin", 3500.0, 2750.0, 200.0, 3000.0, 1500.0}};
  job.needles = {{"N1", 1500.0, 150.0, 20e3, 0.0, 0.0}, {"N2", 2500.0, 150.0, 20e3, 1.0, 0.0}};
  return job;
}

bool is_hole(int column, int row) {
  const bool cut = column >= 2 && column < 6 && row < 3;
  const bool window = column == 3 && row == 4;
  return cut || window;
}

mesh::WallMesh made_up_mesh() {
  mesh::WallMesh wall;
  wall.size = size;
  wall.remarks = {"The line of the floor was moved by 3 mm."};
  wall.quads.regions = {"masonry", "window lintel"};
  for (int row = 0; row <= rows; ++row) {
    for (int column = 0; column <= columns; ++column) {
      wall.quads.nodes.push_back({column * size, row * size});
    }
  }
  const auto node = [](int column, int row) { return row * (columns + 1) + column; };
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      if (is_hole(column, row)) continue;
      for (const int corner : {node(column, row), node(column + 1, row), node(column + 1, row + 1),
                               node(column, row + 1)}) {
        wall.quads.connectivity.push_back(corner);
      }
      wall.quads.region_of_quad.push_back(column == 3 && row == 5 ? 1 : 0);
    }
  }
  return wall;
}

solver::PanelFields made_up_fields(const mesh::QuadMesh& mesh) {
  solver::PanelFields fields;
  for (const mesh::Point& node : mesh.nodes) {
    fields.displacement.push_back(1e-4 * node.x);
    fields.displacement.push_back(-5e-4 * node.y);
    fields.node_stress.push_back({-1e-4 * node.x, -2e-4 * node.y, 0.05});
  }
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    fields.quad_stress.push_back({0.0, -0.01 * quad, 0.0});
    fields.quad_crack_strain.push_back({1e-4 * quad, 0.0, 0.0});
    fields.quad_loose.push_back(quad == 20 ? 1 : 0);
  }
  return fields;
}

/// The hand sums: needles 30 and 20, piers 22.5 and 24, nothing picks up 3.5; 100 kN in all.
solver::SpreadResult made_up_hand() {
  solver::SpreadResult hand;
  hand.needles = {{"N1",
                   {{"masonry", 2.6e6, 0.325, 13e3},
                    {"window lintel", 0.25e6, 1.0, 1.5e3},
                    {"floor", 0.0, 0.3875, 15.5e3, true}},
                   30e3,
                   {}},
                  {"N2", {{"masonry", 2.0e6, 0.25, 10e3}, {"floor", 0.0, 0.25, 10e3}}, 20e3, {}}};
  hand.left_pier = {
      "left pier", {{"masonry", 3.2e6, 0.4, 16e3}, {"floor", 0.0, 0.1625, 6.5e3}}, 22.5e3, {}};
  hand.right_pier = {
      "right pier",
      {{"masonry", 2.3e6, 0.2875, 11.5e3}, {"floor", 0.0, 0.2, 8e3}, {"purlin", 0.0, 1.0, 4.5e3}},
      24e3,
      {}};
  hand.unassigned = {"no needle", {{"masonry", 0.7e6, 0.0875, 3.5e3}}, 3.5e3, {}};
  hand.load_total = 100e3;
  return hand;
}

solver::PanelResult made_up_analysis(solver::MasonryModel model, const mesh::QuadMesh& mesh) {
  const bool cracked = model == solver::MasonryModel::cracked;
  solver::PanelResult analysis;
  analysis.model = model;
  analysis.needles = {{"N1", 1500.0, cracked ? 24.55e3 : 21.3e3, cracked ? 1.2275 : 1.065, 1.0},
                      {"N2", 2500.0, cracked ? 26.05e3 : 18.7e3, cracked ? 2.3025 : 1.935, 0.75}};
  analysis.base_left = cracked ? 23.4e3 : 28e3;
  analysis.base_right = cracked ? 26e3 : 32e3;
  analysis.thrust_right = 5.25e3;
  analysis.load_total = 100e3;
  analysis.equilibrium_error = 3e-11;
  analysis.residual = 4e-9;
  analysis.iterations = cracked ? 14 : 2;
  analysis.max_settlement = cracked ? 2.41 : 1.97;
  analysis.max_compression = 1.15;
  analysis.fields = made_up_fields(mesh);
  if (cracked) {
    analysis.residual_load = 420.0;
    analysis.loose = {{1250.0,
                       0.25e6,
                       {2000.0, 2500.0},
                       {1500.0, 2000.0},
                       "over the cut between N1 and N2; a needle at x = 2250 mm would hold it"}};
  }
  return analysis;
}

}  // namespace

solver::JobResult made_up_result() {
  solver::JobResult result;
  result.job = made_up_job();
  result.mesh = made_up_mesh();
  result.hand = made_up_hand();
  result.stages = {{"cut",
                    {made_up_analysis(solver::MasonryModel::uncracked, result.mesh.quads),
                     made_up_analysis(solver::MasonryModel::cracked, result.mesh.quads)}}};
  result.mesh_effects = {{solver::MasonryModel::uncracked, 1000.0, {0.004, -0.003}, 0.001, 0.001},
                         {solver::MasonryModel::cracked, 1000.0, {0.011, -0.009}, 0.002, 0.002}};
  result.comparison = {
      {"N1", 30e3, 21.3e3, 24.55e3, "It gives 1.2 mm and sheds load to the left pier."},
      {"N2", 20e3, 18.7e3, 26.05e3, "Cracking leans the wall on it."}};
  result.times = {{"analysis", 1.23}};
  return result;
}

solver::JobResult made_up_result_that_falls(const std::string& reason) {
  constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
  solver::JobResult result = made_up_result();
  solver::PanelResult& cracked = result.stages.front().analyses.back();
  cracked.no_equilibrium = reason;
  for (solver::NeedleReaction& needle : cracked.needles) {
    needle.force = needle.settlement = needle.contact = nothing;
  }
  cracked.base_left = cracked.base_right = cracked.thrust_right = nothing;
  cracked.equilibrium_error = cracked.residual = cracked.residual_load = nothing;
  cracked.max_settlement = cracked.max_compression = nothing;
  for (solver::NeedleComparison& needle : result.comparison) needle.cracked = nothing;
  result.mesh_effects.pop_back();
  return result;
}

}  // namespace deadshore::io::test
