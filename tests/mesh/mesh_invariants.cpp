#include "mesh_invariants.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace deadshore::mesh::testing {
namespace {

constexpr double tiny = 1e-6;  // mm

Point node_at(const QuadMesh& mesh, int node) {
  return mesh.nodes[static_cast<std::size_t>(node)];
}

double cross(Point o, Point a, Point b) {
  return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}

double distance(Point a, Point b) {
  return std::hypot(b.x - a.x, b.y - a.y);
}

void expect_anticlockwise(const QuadMesh& mesh) {
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const auto c = corners_of(mesh, quad);
    for (std::size_t k = 0; k < 4; ++k) {
      // Twice the Jacobian at a corner of a bilinear element, up to the factor 2.
      ASSERT_GT(cross(c[k], c[(k + 1) % 4], c[(k + 3) % 4]), 0.0)
          << "quad " << quad << " at x = " << c[0].x << ", y = " << c[0].y;
    }
  }
}

void expect_every_node_once(const QuadMesh& mesh) {
  std::vector<bool> used(mesh.nodes.size(), false);
  for (const int node : mesh.connectivity) used[static_cast<std::size_t>(node)] = true;
  EXPECT_EQ(std::ranges::count(used, false), 0) << "unused nodes";
  std::map<std::pair<long long, long long>, int> seen;
  for (const Point& p : mesh.nodes) ++seen[{std::llround(p.x * 1e5), std::llround(p.y * 1e5)}];
  EXPECT_EQ(seen.size(), mesh.nodes.size()) << "nodes in the same place";
}

/// Sides that one quad has to itself.
std::vector<Side> boundary_of(const QuadMesh& mesh) {
  std::map<std::pair<int, int>, std::vector<Side>> quads_at;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    for (int s = 0; s < 4; ++s) {
      const SideNodes along = nodes_along(mesh, {quad, s});
      quads_at[std::minmax(along.nodes[0], along.nodes[1])].push_back({quad, s});
    }
  }
  std::vector<Side> boundary;
  for (const auto& [ends, sides] : quads_at) {
    EXPECT_LE(sides.size(), 2U);
    if (sides.size() == 1) boundary.push_back(sides.front());
  }
  return boundary;
}

void expect_no_node_on_a_side(const QuadMesh& mesh, const std::vector<Side>& boundary) {
  for (const Side side : boundary) {
    const SideNodes along = nodes_along(mesh, side);
    const Point a = node_at(mesh, along.nodes[0]);
    const Point b = node_at(mesh, along.nodes[1]);
    for (const Side other : boundary) {
      const Point p = node_at(mesh, nodes_along(mesh, other).nodes[0]);
      const double via = distance(a, p) + distance(p, b);
      const bool is_end = distance(a, p) < tiny || distance(p, b) < tiny;
      ASSERT_TRUE(is_end || via > distance(a, b) + 1e-9)
          << "a node at x = " << p.x << ", y = " << p.y << " lies on another's side";
    }
  }
}

/// True if the masonry under the soffit is still there.
bool has_cut(const QuadMesh& mesh) {
  return std::ranges::any_of(mesh.region_of_quad, [&mesh](int region) {
    return mesh.regions[static_cast<std::size_t>(region)].kind == RegionKind::cut;
  });
}

void expect_ordered_chains(const QuadMesh& mesh, const std::vector<Side>& boundary) {
  const auto on_boundary = [&](Side side) {
    return std::ranges::any_of(boundary, [side](Side other) {
      return other.quad == side.quad && other.side == side.side;
    });
  };
  for (const ChainSides& chain : mesh.chains) {
    using enum ChainKind;
    const ChainKind kind = chain.chain.kind;
    const bool upright = kind == left_end || kind == right_end;
    double last = -HUGE_VAL;
    for (const Side side : chain.sides) {
      const SideNodes along = nodes_along(mesh, side);
      const Point a = node_at(mesh, along.nodes[0]);
      const Point b = node_at(mesh, along.nodes[1]);
      const double from = upright ? std::min(a.y, b.y) : std::min(a.x, b.x);
      EXPECT_GE(from, last - tiny) << in_words(chain.chain);
      last = upright ? std::max(a.y, b.y) : std::max(a.x, b.x);
    }
    const bool bounds = upright || kind == base_left || kind == base_right || kind == base_cut ||
                        kind == top || (kind == soffit && !has_cut(mesh)) || kind == opening_head ||
                        kind == opening_sill;
    EXPECT_TRUE(!bounds || std::ranges::all_of(chain.sides, on_boundary)) << in_words(chain.chain);
  }
}

void expect_midsides(const QuadMesh& mesh) {
  if (mesh.order != QuadOrder::eight_node) return;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    for (int s = 0; s < 4; ++s) {
      const SideNodes along = nodes_along(mesh, {quad, s});
      const Point a = node_at(mesh, along.nodes[0]);
      const Point b = node_at(mesh, along.nodes[1]);
      EXPECT_LT(distance(node_at(mesh, along.nodes[2]), {0.5 * (a.x + b.x), 0.5 * (a.y + b.y)}),
                tiny);
    }
  }
}

void expect_true_aspect(const WallMesh& mesh) {
  double worst = 1.0;
  for (int quad = 0; quad < mesh.quads.quad_count(); ++quad) {
    const auto c = corners_of(mesh.quads, quad);
    const double across = distance(c[0], c[1]) + distance(c[2], c[3]);
    const double up = distance(c[1], c[2]) + distance(c[3], c[0]);
    worst = std::max({worst, across / up, up / across});
  }
  EXPECT_NEAR(mesh.worst_aspect, worst, 1e-9 * worst);
}

/// Area of a circular segment by its chord and rise.
double segment_area(double chord, double rise) {
  if (rise == 0.0) return 0.0;
  const double radius = (chord * chord / 4.0 + rise * rise) / (2.0 * rise);
  const double half_angle = std::asin(std::min(1.0, 0.5 * chord / radius));
  return radius * radius * half_angle - 0.5 * chord * (radius - rise);
}

}  // namespace

void expect_sound(const WallMesh& mesh) {
  expect_sound(mesh.quads);
  expect_true_aspect(mesh);
}

void expect_sound(const QuadMesh& quads) {
  ASSERT_GT(quads.quad_count(), 0);
  ASSERT_EQ(quads.connectivity.size(),
            static_cast<std::size_t>(quads.quad_count() * quads.nodes_per_quad()));
  for (const int region : quads.region_of_quad) {
    ASSERT_GE(region, 0);
    ASSERT_LT(region, static_cast<int>(quads.regions.size()));
  }
  expect_anticlockwise(quads);
  expect_every_node_once(quads);
  const std::vector<Side> boundary = boundary_of(quads);
  expect_no_node_on_a_side(quads, boundary);
  expect_ordered_chains(quads, boundary);
  expect_midsides(quads);
}

double total_area(const QuadMesh& mesh, int region) {
  double sum = 0.0;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const int here = mesh.region_of_quad[static_cast<std::size_t>(quad)];
    if (region < 0 || region == here) sum += area_of(mesh, quad);
  }
  return sum;
}

double exact_area(const WallShape& shape) {
  double area = -(shape.cut.right - shape.cut.left) * shape.cut.soffit;
  for (std::size_t k = 0; k + 1 < shape.top.size(); ++k) {
    const Point a = shape.top[k];
    const Point b = shape.top[k + 1];
    area += 0.5 * (a.y + b.y) * (b.x - a.x);
  }
  for (const Opening& opening : shape.openings) {
    const bool swallowed = opening.left >= shape.cut.left && opening.right() <= shape.cut.right &&
                           opening.crown() <= shape.cut.soffit;
    if (swallowed) continue;
    const double top = shape.top_at(opening.span().middle());
    if (opening.rise == 0.0 && opening.crown() >= top) {
      area -= opening.width * (top - opening.sill);
      continue;
    }
    area -=
        opening.width * (opening.height - opening.rise) + segment_area(opening.width, opening.rise);
  }
  return area;
}

std::string in_words(const Chain& chain) {
  return fmt::format("chain {}, number {}", static_cast<int>(chain.kind), chain.index);
}

double level_length(const QuadMesh& mesh, std::span<const Side> chain) {
  return level_length(mesh, chain, {-HUGE_VAL, HUGE_VAL});
}

double level_length(const QuadMesh& mesh, std::span<const Side> chain, Interval x) {
  double sum = 0.0;
  for (const Side side : chain) {
    const SideNodes along = nodes_along(mesh, side);
    const auto [from, to] =
        std::minmax({node_at(mesh, along.nodes[0]).x, node_at(mesh, along.nodes[1]).x});
    sum += std::max(0.0, std::min(to, x.to) - std::max(from, x.from));
  }
  return sum;
}

std::vector<Point> ends_of(const QuadMesh& mesh, std::span<const Side> chain) {
  std::vector<Point> ends;
  for (const Side side : chain) {
    const SideNodes along = nodes_along(mesh, side);
    for (int k = 0; k < 2; ++k) {
      ends.push_back(node_at(mesh, along.nodes[static_cast<std::size_t>(k)]));
    }
  }
  return ends;
}

bool has_upright(const QuadMesh& mesh, double x) {
  return std::ranges::any_of(mesh.nodes, [x](Point p) { return std::abs(p.x - x) < tiny; });
}

bool has_height(const QuadMesh& mesh, double y) {
  return std::ranges::any_of(mesh.nodes, [y](Point p) { return std::abs(p.y - y) < tiny; });
}

WallShape mirrored(const WallShape& shape) {
  WallShape other = shape;
  for (Point& p : other.top) p.x = shape.length - p.x;
  std::ranges::reverse(other.top);
  for (Opening& opening : other.openings) opening.left = shape.length - opening.right();
  other.cut.left = shape.length - shape.cut.right;
  other.cut.right = shape.length - shape.cut.left;
  return other;
}

}  // namespace deadshore::mesh::testing
