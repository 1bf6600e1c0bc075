#include "solver/spread/strips.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

namespace deadshore::solver {

namespace {

// Cuts `solid` into masonry and lintels.
void add_pieces(const Job& job, double x, mesh::Interval solid, int over,
                std::vector<ColumnPiece>& column) {
  if (solid.length() <= 0.0) return;
  std::vector<ColumnPiece> lintels;
  for (std::size_t i = 0; i < job.lintels.size(); ++i) {
    const mesh::LintelExtent extent = mesh::extent_of(job.lintels[i].shape, job.wall);
    if (!extent.x.contains(x)) continue;
    const mesh::Interval part{std::max(extent.y.from, solid.from), std::min(extent.y.to, solid.to)};
    if (part.length() > 0.0) lintels.push_back({part, static_cast<int>(i), over});
  }
  std::sort(lintels.begin(), lintels.end(),
            [](const ColumnPiece& a, const ColumnPiece& b) { return a.y.from < b.y.from; });
  double from = solid.from;
  for (const ColumnPiece& lintel : lintels) {
    if (lintel.y.from > from) column.push_back({{from, lintel.y.from}, -1, over});
    column.push_back(lintel);
    from = lintel.y.to;
  }
  if (solid.to > from) column.push_back({{from, solid.to}, -1, over});
}

// Heights at which something changes along a level line.
std::vector<double> levels_of(const Job& job) {
  std::vector<double> levels;
  for (const mesh::Opening& opening : job.wall.openings) levels.push_back(opening.sill);
  for (const Lintel& lintel : job.lintels) {
    const mesh::Interval y = mesh::extent_of(lintel.shape, job.wall).y;
    levels.insert(levels.end(), {y.from, y.to});
  }
  for (const LineLoad& load : job.line_loads) levels.push_back(load.level);
  for (const PointLoad& load : job.point_loads) levels.push_back(load.level);
  return levels;
}

void add_ends(mesh::Interval x, std::vector<double>& edges) {
  edges.insert(edges.end(), {x.from, x.to});
}

// Where the line that rises at 45 degrees from (`foot`, soffit) towards `direction` (+1 right, -1
// left) meets the levels and the outline.
void add_crossings(const Job& job, const std::vector<double>& levels, double foot, double direction,
                   std::vector<double>& edges) {
  const double soffit = job.wall.cut.soffit;
  for (const double level : levels)
    if (level > soffit) edges.push_back(foot + direction * (level - soffit));

  const auto above_line = [&](mesh::Point p) { return p.y - soffit - direction * (p.x - foot); };
  for (std::size_t i = 1; i < job.wall.top.size(); ++i) {
    const mesh::Point from = job.wall.top[i - 1];
    const mesh::Point to = job.wall.top[i];
    const double at_from = above_line(from);
    const double at_to = above_line(to);
    if ((at_from < 0.0) == (at_to < 0.0)) continue;
    edges.push_back(from.x + (to.x - from.x) * at_from / (at_from - at_to));
  }
}

// Points and weights on [-1, 1]; Abramowitz & Stegun (1964), table 25.4.
constexpr double root_3_5 = 0.774596669241483377;
constexpr std::array<double, 3> gauss_point = {-root_3_5, 0.0, root_3_5};
constexpr std::array<double, 3> gauss_weight = {5.0 / 9.0, 8.0 / 9.0, 5.0 / 9.0};

}  // namespace

std::vector<ColumnPiece> column_at(const Job& job, const std::vector<mesh::Opening>& openings,
                                   double x) {
  std::vector<int> here;
  for (std::size_t i = 0; i < openings.size(); ++i)
    if (openings[i].span().contains(x)) here.push_back(static_cast<int>(i));
  std::sort(here.begin(), here.end(),
            [&](int a, int b) { return openings[a].sill < openings[b].sill; });

  std::vector<ColumnPiece> column;
  double from = job.wall.cut.span().contains(x) ? job.wall.cut.soffit : 0.0;
  int over = -1;
  for (const int i : here) {
    add_pieces(job, x, {from, openings[i].sill}, over, column);
    from = openings[i].head(x);
    over = i;
  }
  add_pieces(job, x, {from, job.wall.top_at(x)}, over, column);
  return column;
}

std::vector<double> strip_edges(const Job& job, const Supports& supports) {
  std::vector<double> edges = {0.0, job.wall.length};
  add_ends(job.wall.cut.span(), edges);
  for (const mesh::Point& point : job.wall.top) edges.push_back(point.x);
  for (const mesh::Opening& opening : job.wall.openings) add_ends(opening.span(), edges);
  for (const Lintel& lintel : job.lintels)
    add_ends(mesh::extent_of(lintel.shape, job.wall).x, edges);
  for (const LineLoad& load : job.line_loads) add_ends(load.x, edges);
  for (const PointLoad& load : job.point_loads) add_ends(load.span(), edges);

  const std::vector<double> levels = levels_of(job);
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const mesh::Interval bearing = job.needles[i].bearing();
    add_ends(supports.reach_of(static_cast<int>(i)), edges);
    add_ends(bearing, edges);
    add_crossings(job, levels, bearing.from, -1.0, edges);
    add_crossings(job, levels, bearing.to, 1.0, edges);
  }

  std::erase_if(edges, [&](double x) { return !(x >= 0.0 && x <= job.wall.length); });
  return mesh::distinct_places(std::move(edges));
}

std::vector<Station> stations_over(mesh::Interval strip, bool curved) {
  std::vector<Station> stations;
  const double half = 0.5 * strip.length();
  const int panels = curved ? 64 : 1;
  for (int panel = 0; panel < panels; ++panel) {
    for (std::size_t i = 0; i < gauss_point.size(); ++i) {
      const double u = (2 * panel + 1 + gauss_point[i]) / panels - 1.0;
      const double weight = gauss_weight[i] / panels;
      // x = (3u - u^3)/2 crowds towards the ends, where a round head may rise uprightly: the square
      // root in its height becomes smooth in u.
      const double x = curved ? 0.5 * u * (3.0 - u * u) : u;
      const double slope = curved ? 1.5 * (1.0 - u * u) : 1.0;
      stations.push_back({strip.middle() + half * x, half * weight * slope});
    }
  }
  return stations;
}

}  // namespace deadshore::solver
