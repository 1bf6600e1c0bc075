#include "solver/piers/pier_cuts.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace deadshore::solver {

namespace {

constexpr double same_row = 20.0;  // mm between levels that are cut once
constexpr double no_gap = 1.0;     // mm

/// An element that a level crosses.
struct Crossed {
  mesh::Interval x;
  double stress = 0.0;  ///< mean upright stress, N/mm2, tension positive

  [[nodiscard]] double push(double thickness) const { return -stress * x.length() * thickness; }
};

/// Where a level crosses an element; empty where it does not.
mesh::Interval crossing(const std::array<mesh::Point, 4>& corners, double level) {
  mesh::Interval x{1e30, -1e30};
  for (std::size_t i = 0; i < 4; ++i) {
    const mesh::Point a = corners[i];
    const mesh::Point b = corners[(i + 1) % 4];
    if ((a.y <= level) == (b.y <= level)) continue;
    const double at = a.x + (b.x - a.x) * (level - a.y) / (b.y - a.y);
    x = {std::min(x.from, at), std::max(x.to, at)};
  }
  return x;
}

bool is_out(const PanelResult& analysis, int quad) {
  const auto& out = analysis.fields.quad_out;
  return !out.empty() && out[static_cast<std::size_t>(quad)] != 0;
}

std::vector<double> levels_of_rows(const mesh::QuadMesh& mesh, const PanelResult& analysis) {
  std::vector<double> levels;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    if (is_out(analysis, quad)) continue;
    double sum = 0.0;
    for (const mesh::Point corner : mesh::corners_of(mesh, quad)) sum += corner.y;
    levels.push_back(0.25 * sum);
  }
  std::sort(levels.begin(), levels.end());
  std::vector<double> apart;
  for (const double level : levels)
    if (apart.empty() || level > apart.back() + same_row) apart.push_back(level);
  return apart;
}

/// Force and moment of elements side by side; within each the stress runs as between its
/// neighbours.
PierCut cut_through(const std::vector<Crossed>& run, double level, double thickness) {
  PierCut cut{level, {run.front().x.from, run.back().x.to}};
  const double middle = cut.x.middle();
  for (std::size_t i = 0; i < run.size(); ++i) {
    const Crossed& left = run[i > 0 ? i - 1 : i];
    const Crossed& right = run[std::min(i + 1, run.size() - 1)];
    const double apart = right.x.middle() - left.x.middle();
    const double slope = apart > 0.0 ? (right.stress - left.stress) / apart : 0.0;
    const double width = run[i].x.length();
    cut.force += run[i].push(thickness);
    cut.moment += run[i].push(thickness) * (run[i].x.middle() - middle) -
                  slope * width * width * width / 12.0 * thickness;
  }
  return cut;
}

}  // namespace

std::vector<PierCut> pier_cuts(const mesh::QuadMesh& mesh, const PanelResult& analysis,
                               double thickness) {
  std::vector<PierCut> cuts;
  for (const double level : levels_of_rows(mesh, analysis)) {
    std::vector<Crossed> crossed;
    for (int quad = 0; quad < mesh.quad_count(); ++quad) {
      if (is_out(analysis, quad)) continue;
      const mesh::Interval x = crossing(mesh::corners_of(mesh, quad), level);
      if (x.length() <= 0.0) continue;
      crossed.push_back({x, analysis.fields.quad_stress[static_cast<std::size_t>(quad)].yy});
    }
    std::sort(crossed.begin(), crossed.end(),
              [](const Crossed& a, const Crossed& b) { return a.x.from < b.x.from; });
    std::vector<Crossed> run;
    for (const Crossed& element : crossed) {
      if (!run.empty() && element.x.from > run.back().x.to + no_gap) {
        cuts.push_back(cut_through(run, level, thickness));
        run.clear();
      }
      run.push_back(element);
    }
    if (!run.empty()) cuts.push_back(cut_through(run, level, thickness));
  }
  return cuts;
}

}  // namespace deadshore::solver
