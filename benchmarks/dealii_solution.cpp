// The elastic problem in deal.II, as its tutorial step-8 does it: bilinear elements, constraints
// for the fixed displacements, its sparse direct solver. The gradients of each shape function are
// turned into stresses once for a Gauss point, and half of the symmetric element matrix is worked
// out: what a careful user would do.

#include "benchmarks/cpu_clock.h"
#include "benchmarks/elastic_problem.h"

#include <array>
#include <deal.II/base/quadrature_lib.h>
#include <deal.II/base/symmetric_tensor.h>
#include <deal.II/dofs/dof_handler.h>
#include <deal.II/dofs/dof_tools.h>
#include <deal.II/fe/fe_q.h>
#include <deal.II/fe/fe_system.h>
#include <deal.II/fe/fe_values.h>
#include <deal.II/grid/tria.h>
#include <deal.II/lac/affine_constraints.h>
#include <deal.II/lac/dynamic_sparsity_pattern.h>
#include <deal.II/lac/full_matrix.h>
#include <deal.II/lac/sparse_direct.h>
#include <deal.II/lac/sparse_matrix.h>
#include <deal.II/lac/vector.h>
#include <vector>

namespace deadshore::benchmarks {

namespace {

using dealii::types::global_dof_index;

void hand_over(const mesh::QuadMesh& mesh, dealii::Triangulation<2>& triangulation) {
  std::vector<dealii::Point<2>> vertices;
  vertices.reserve(mesh.nodes.size());
  for (const mesh::Point& node : mesh.nodes) vertices.emplace_back(node.x, node.y);
  std::vector<dealii::CellData<2>> cells(static_cast<std::size_t>(mesh.quad_count()));
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const auto nodes = mesh.nodes_of(quad);
    auto& corners = cells[static_cast<std::size_t>(quad)].vertices;
    corners.assign(4, 0);
    const std::array<std::size_t, 4> row_by_row = {0, 1, 3, 2};
    for (std::size_t i = 0; i < 4; ++i) {
      corners[i] = static_cast<unsigned>(nodes[row_by_row[i]]);
    }
  }
  triangulation.create_triangulation(vertices, cells, {});
}

/// d stress / d strain of plane stress.
dealii::SymmetricTensor<4, 2> plane_stress(double E, double nu) {
  dealii::SymmetricTensor<4, 2> stiffness;
  const double plane = E / (1.0 - nu * nu);
  stiffness[0][0][0][0] = stiffness[1][1][1][1] = plane;
  stiffness[0][0][1][1] = stiffness[1][1][0][0] = plane * nu;
  stiffness[0][1][0][1] = 0.5 * E / (1.0 + nu);
  return stiffness;
}

class DealiiWall {
 public:
  DealiiWall(const ElasticProblem& problem, const dealii::Triangulation<2>& triangulation)
      : problem_(problem), element_(dealii::FE_Q<2>(1), 2), numbering_(triangulation) {
    numbering_.distribute_dofs(element_);
    equation_.resize(2 * problem.mesh.nodes.size());
    for (const auto& cell : numbering_.active_cell_iterators()) {
      for (const unsigned vertex : cell->vertex_indices()) {
        for (unsigned c = 0; c < 2; ++c) {
          equation_[2 * cell->vertex_index(vertex) + c] = cell->vertex_dof_index(vertex, c);
        }
      }
    }
    for (const solver::Support& support : problem.supports) {
      constraints_.add_line(equation(support.node, support.component));
    }
    constraints_.close();
    dealii::DynamicSparsityPattern pattern(numbering_.n_dofs());
    dealii::DoFTools::make_sparsity_pattern(numbering_, pattern, constraints_, false);
    pattern_.copy_from(pattern);
    matrix_.reinit(pattern_);
    load_.reinit(numbering_.n_dofs());
  }

  void assemble() {
    const dealii::QGauss<2> quadrature(2);
    dealii::FEValues<2> values(
        element_, quadrature,
        dealii::update_values | dealii::update_gradients | dealii::update_JxW_values);
    const dealii::FEValuesExtractors::Vector movement(0);
    const auto stiffness = plane_stress(problem_.material.E, problem_.material.nu);
    const double thickness = problem_.material.thickness;
    const double weight = problem_.material.unit_weight * thickness;
    const unsigned count = element_.n_dofs_per_cell();
    dealii::FullMatrix<double> cell_matrix(count, count);
    dealii::Vector<double> cell_load(count);
    std::vector<global_dof_index> equations(count);
    std::vector<dealii::SymmetricTensor<2, 2>> strain(count);
    for (const auto& cell : numbering_.active_cell_iterators()) {
      values.reinit(cell);
      cell_matrix = 0.0;
      cell_load = 0.0;
      for (const unsigned point : values.quadrature_point_indices()) {
        const double volume = values.JxW(point) * thickness;
        for (unsigned i = 0; i < count; ++i) {
          strain[i] = values[movement].symmetric_gradient(i, point);
        }
        for (unsigned i = 0; i < count; ++i) {
          const dealii::SymmetricTensor<2, 2> stress = volume * (stiffness * strain[i]);
          for (unsigned j = 0; j <= i; ++j) cell_matrix(i, j) += stress * strain[j];
          if (element_.system_to_component_index(i).first == 1) {
            cell_load(i) -= weight * values.shape_value(i, point) * values.JxW(point);
          }
        }
      }
      for (unsigned i = 0; i < count; ++i) {
        for (unsigned j = i + 1; j < count; ++j) cell_matrix(i, j) = cell_matrix(j, i);
      }
      cell->get_dof_indices(equations);
      constraints_.distribute_local_to_global(cell_matrix, cell_load, equations, matrix_, load_);
    }
    add_springs();
    add_nodal_loads();
  }

  void factorise() { solver_.initialize(matrix_); }

  void solve() {
    displacement_ = load_;
    solver_.solve(displacement_);
    constraints_.distribute(displacement_);
  }

  [[nodiscard]] Eigen::VectorXd displacement() const {
    Eigen::VectorXd u(static_cast<Eigen::Index>(equation_.size()));
    for (std::size_t k = 0; k < equation_.size(); ++k) {
      u(static_cast<Eigen::Index>(k)) = displacement_(equation_[k]);
    }
    return u;
  }

 private:
  [[nodiscard]] global_dof_index equation(int node, int component) const {
    return equation_[2 * static_cast<std::size_t>(node) + static_cast<std::size_t>(component)];
  }

  void add_springs() {
    for (const solver::ContactBed& bed : problem_.beds) {
      for (const solver::ContactPoint& point : bed.points) {
        const double stiffness = point.stiffness * point.length;
        for (const solver::LinearForm::Term& a : point.form.active_terms()) {
          for (const solver::LinearForm::Term& b : point.form.active_terms()) {
            matrix_.add(equation(a.node(), a.component()), equation(b.node(), b.component()),
                        stiffness * a.coefficient * b.coefficient);
          }
        }
      }
    }
  }

  void add_nodal_loads() {
    for (std::size_t k = 0; k < equation_.size(); ++k) {
      const double force = problem_.load(static_cast<Eigen::Index>(k));
      if (force != 0.0 && !constraints_.is_constrained(equation_[k])) load_(equation_[k]) += force;
    }
  }

  const ElasticProblem& problem_;
  dealii::FESystem<2> element_;
  dealii::DoFHandler<2> numbering_;
  std::vector<global_dof_index> equation_;  ///< of each node's two displacements
  dealii::AffineConstraints<double> constraints_;
  dealii::SparsityPattern pattern_;
  dealii::SparseMatrix<double> matrix_;
  dealii::Vector<double> load_;
  dealii::Vector<double> displacement_;
  dealii::SparseDirectUMFPACK solver_;
};

}  // namespace

ElasticSolution solve_with_dealii(const ElasticProblem& problem) {
  dealii::Triangulation<2> triangulation;
  hand_over(problem.mesh, triangulation);
  ElasticSolution solution;
  const double start = cpu_seconds();
  DealiiWall wall(problem, triangulation);
  const double set_up = cpu_seconds();
  wall.assemble();
  const double assembled = cpu_seconds();
  wall.factorise();
  const double factorised = cpu_seconds();
  wall.solve();
  const double solved = cpu_seconds();
  solution.times = {set_up - start, assembled - set_up, factorised - assembled,
                    solved - factorised};
  solution.displacement = wall.displacement();
  return solution;
}

}  // namespace deadshore::benchmarks
