#include "made_up_job.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace deadshore::viz {
namespace {

using solver::JobResult;
using solver::PanelResult;
using solver::PlaneTensor;

constexpr double length = 6000.0;
constexpr double height = 5200.0;
constexpr double thickness = 215.0;
constexpr double unit_weight = 19e-6;
constexpr double size = 50.0;

solver::Job made_up_job() {
  solver::Job job;
  job.title = "Invented: Mühle am Bach, Durchgang zur Werkstatt";
  job.wall.length = length;
  job.wall.top = {{0.0, height}, {length, height}};
  job.wall.openings = {{"stair window", 1100.0, 3300.0, 900.0, 1200.0, 0.0}};
  job.wall.lintels = {{"stone lintel", 0, 200.0, 150.0}};
  job.wall.cut = {1200.0, 4600.0, 2200.0};
  job.thickness = thickness;
  job.left_end = solver::WallEnd::held;
  job.masonry = {"soft brick in lime", unit_weight, 1500.0, 0.2, 2.4, 0.05};
  job.lintels = {{job.wall.lintels.front(), "stone", 25e-6, 20000.0, 0.2, thickness}};
  job.line_loads = {{"roof", height, false, {0.0, length}, 3.1, 2.2},
                    {"snow drift", height, false, {3000.0, length}, 0.0, 1.4},
                    {"floor joists", 2700.0, false, {0.0, length}, 2.4, 6.0}};
  job.point_loads = {{"purlin", 4200.0, 4500.0, 200.0, 6500.0, 4000.0}};
  job.needles = {{"N1", 1800.0, 152.0, 20000.0, 0.0, 0.0},
                 {"N2", 2900.0, 152.0, 20000.0, 0.0, 0.0},
                 {"N3", 4000.0, 152.0, 20000.0, 0.0, 0.0}};
  return job;
}

void add_radial(PlaneTensor& stress, mesh::Point from, mesh::Point to, double force) {
  const double dx = to.x - from.x;
  const double dy = to.y - from.y;
  const double r2 = std::max(dx * dx + dy * dy, 1600.0);
  if (dy < 0.0) return;
  const double radial = -2.0 * force / (std::numbers::pi * thickness) * dy / r2;
  stress.xx += radial * dx * dx / r2;
  stress.yy += radial * dy * dy / r2;
  stress.xy += radial * dx * dy / r2;
}

PlaneTensor stress_at(const JobResult& result, mesh::Point p, double share) {
  PlaneTensor stress;
  const bool over_cut = p.x > result.job.wall.cut.left && p.x < result.job.wall.cut.right;
  stress.yy = -0.5 * (over_cut ? std::clamp((p.y - 2200.0) / 2200.0, 0.0, 1.0) : 1.0) *
              (unit_weight * (height - p.y) + 5.3 / thickness);
  stress.xx = 0.04 * std::cos(p.x / length * std::numbers::pi);
  for (const solver::Needle& needle : result.job.needles)
    add_radial(stress, {needle.x, 2200.0}, p, share * 30e3);
  add_radial(stress, {1000.0, 0.0}, p, share * 70e3);
  add_radial(stress, {4800.0, 0.0}, p, share * 70e3);
  return stress;
}

PanelResult made_up_panel(const JobResult& result, solver::MasonryModel model, double share) {
  const mesh::QuadMesh& mesh = result.mesh.quads;
  PanelResult panel;
  panel.model = model;
  for (const solver::Needle& needle : result.job.needles)
    panel.needles.push_back({needle.name, needle.x, share * 30e3, 1.5 * share, 1.0});
  panel.base_left = 69.7e3;
  panel.base_right = 71.2e3;
  panel.thrust_left = 4.2e3;
  panel.load_total = 233.5e3;
  panel.max_compression = 1.32;
  for (const mesh::Point& node : mesh.nodes) {
    panel.fields.node_stress.push_back(stress_at(result, node, share));
    panel.fields.displacement.insert(panel.fields.displacement.end(),
                                     {node.y * 1e-3, -node.x * node.y * 1e-7});
  }
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const auto corners = mesh::corners_of(mesh, quad);
    const mesh::Point middle{0.5 * (corners[0].x + corners[2].x),
                             0.5 * (corners[0].y + corners[2].y)};
    panel.fields.quad_stress.push_back(stress_at(result, middle, share));
    panel.fields.quad_crack_strain.emplace_back();
    const bool loose = model == solver::MasonryModel::cracked && middle.y > 2200.0 &&
                       middle.y - 2200.0 < 400.0 - std::abs(middle.x - 3450.0);
    panel.fields.quad_loose.push_back(loose ? 1 : 0);
  }
  if (model == solver::MasonryModel::cracked) {
    solver::LoosePatch& patch = panel.loose.emplace_back();
    patch.weight = 0.65e3;
    patch.area = 160e3;
    patch.x = {3050.0, 3850.0};
    patch.y = {2200.0, 2600.0};
    patch.where = "between N2 and N3";
  }
  return panel;
}

}  // namespace

mesh::QuadMesh squares(int columns, int rows, double side, const std::vector<Hole>& holes) {
  mesh::QuadMesh mesh;
  mesh.regions = {mesh::Region{}};
  std::vector<int> number(static_cast<std::size_t>((columns + 1) * (rows + 1)), -1);
  const auto node = [&](int i, int j) {
    int& found = number[j * (columns + 1) + i];
    if (found < 0) {
      found = mesh.node_count();
      mesh.nodes.push_back({i * side, j * side});
    }
    return found;
  };
  for (int j = 0; j < rows; ++j)
    for (int i = 0; i < columns; ++i) {
      const mesh::Point middle{(i + 0.5) * side, (j + 0.5) * side};
      if (std::any_of(holes.begin(), holes.end(), [&](const Hole& hole) {
            return hole.x.contains(middle.x) && hole.y.contains(middle.y);
          }))
        continue;
      for (const int corner : {node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)})
        mesh.connectivity.push_back(corner);
      mesh.region_of_quad.push_back(0);
    }
  return mesh;
}

JobResult made_up_result() {
  JobResult result;
  result.job = made_up_job();
  const mesh::WallShape& wall = result.job.wall;
  const mesh::Opening& window = wall.openings.front();
  result.mesh.quads = squares(
      static_cast<int>(length / size), static_cast<int>(height / size), size,
      {{wall.cut.span(), {0.0, wall.cut.soffit}}, {window.span(), {window.sill, window.crown()}}});
  result.mesh.size = size;
  for (const solver::Needle& needle : result.job.needles) {
    const auto [left, right] = std::pair{needle.bearing().from, needle.bearing().to};
    const solver::SupportId support{solver::SupportKind::needle, result.hand.needles.size()};
    result.hand.needles.push_back({support,
                                   {},
                                   31.2e3,
                                   {{left, 2200.0},
                                    {right, 2200.0},
                                    {needle.x + 550.0, 2674.0},
                                    {needle.x + 550.0, height},
                                    {needle.x - 550.0, height},
                                    {needle.x - 550.0, 2674.0}}});
    result.comparison.push_back({needle.name, 31.2e3, 30.0e3, 24.0e3, ""});
  }
  result.stages = {{"cut",
                    {made_up_panel(result, solver::MasonryModel::uncracked, 1.0),
                     made_up_panel(result, solver::MasonryModel::cracked, 0.8)}}};
  result.stages[0].state =
      state_after(result.job, state_before(result.job), stage_at_once(result.job));
  return result;
}

}  // namespace deadshore::viz
