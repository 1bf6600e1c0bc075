#pragma once

#include "mesh/quad_mesh.h"
#include "solver/panel/newton.h"
#include "solver/panel/panel_model.h"

#include <Eigen/Core>

#include <functional>
#include <span>
#include <vector>

/// Small meshes and loads for tests of the panel.
namespace deadshore::solver::testing {

/// Where a point (s, t) of the unit square goes, mm. Must keep orientation.
using GridMap = std::function<mesh::Point(double s, double t)>;

/// The chains of a `grid_mesh`: t = 0, s = 1, t = 1 and s = 0 of the unit square.
inline constexpr mesh::Chain bottom_edge{mesh::ChainKind::edge, 0};
inline constexpr mesh::Chain right_edge{mesh::ChainKind::edge, 1};
inline constexpr mesh::Chain top_edge{mesh::ChainKind::edge, 2};
inline constexpr mesh::Chain left_edge{mesh::ChainKind::edge, 3};

/// `columns` x `rows` elements over the mapped unit square. Mid-side nodes are mapped like corners,
/// so that sides of 8-node elements follow curves. One region, of masonry.
[[nodiscard]] mesh::QuadMesh grid_mesh(int columns, int rows, mesh::QuadOrder order,
                                       const GridMap& map);

/// Grid over a rectangle with its lower left corner at the origin.
[[nodiscard]] mesh::QuadMesh rectangle_mesh(int columns, int rows, mesh::QuadOrder order,
                                            double length, double height);

/// `rectangle_mesh` with straight sides and every inner corner moved by up to a quarter of an
/// element, always the same way for the same `seed`.
[[nodiscard]] mesh::QuadMesh distorted_mesh(int columns, int rows, mesh::QuadOrder order,
                                            double length, double height, unsigned seed);

/// Nodes along a chain, sorted, each once.
[[nodiscard]] std::vector<int> nodes_on(const mesh::QuadMesh& mesh, mesh::Chain chain);

/// The node nearest to a point.
[[nodiscard]] int node_at(const mesh::QuadMesh& mesh, mesh::Point point);

/// Force per area on a boundary at a point with outward normal `normal`, N/mm2.
using Traction = std::function<Eigen::Vector2d(mesh::Point at, const Eigen::Vector2d& normal)>;

/// Adds the nodal forces of a traction on a chain of straight or curved sides, by five Gauss points
/// a side.
void add_traction(const mesh::QuadMesh& mesh, mesh::Chain chain, double thickness,
                  const Traction& traction, Eigen::VectorXd& load);

/// Gives both displacements of each node by a field.
using Field = std::function<Eigen::Vector2d(mesh::Point)>;
[[nodiscard]] std::vector<Support> supports_at(const mesh::QuadMesh& mesh,
                                               std::span<const int> nodes, const Field& field);

/// Least-energy displacement from `model.start()`; fails the running test if Newton does not
/// converge.
[[nodiscard]] Eigen::VectorXd solve(PanelModel& model, const PanelLoading& loading);

/// Root of the integral of |u - exact|^2 over the mesh, by 4 x 4 Gauss points an element, mm2.
[[nodiscard]] double displacement_error(const mesh::QuadMesh& mesh, const Eigen::VectorXd& u,
                                        const Field& exact);

}  // namespace deadshore::solver::testing
