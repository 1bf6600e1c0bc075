#include "solver/study/panel_study.h"

#include "solver/model/error.h"
#include "solver/panel/loose_masonry.h"
#include "solver/panel/recovery.h"
#include "solver/panel/wall_panel.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

constexpr double equilibrium_tolerance = 1e-8;

/// Below this part of all load on the residual stiffness, nothing can be loose: a single brick.
constexpr double least_residual_load = 1e-4;

double largest_movement(const Eigen::VectorXd& u) {
  double largest = 0.0;
  for (Eigen::Index node = 0; 2 * node < u.size(); ++node) {
    largest = std::max(largest, u.segment<2>(2 * node).norm());
  }
  return largest;
}

/// Largest settlement and compression outside loose masonry.
void add_extremes(const mesh::QuadMesh& mesh, PanelResult& result) {
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const std::size_t q = static_cast<std::size_t>(quad);
    if (result.fields.quad_loose[q] != 0) continue;
    const double compression = -principal_of(result.fields.quad_stress[q]).minor;
    if (mesh.region_of_quad[q] == 0) {
      result.max_compression = std::max(result.max_compression, compression);
    }
    for (const int node : mesh.nodes_of(quad)) {
      const double settlement = -result.fields.displacement[2 * static_cast<std::size_t>(node) + 1];
      result.max_settlement = std::max(result.max_settlement, settlement);
    }
  }
}

}  // namespace

PanelStudy::PanelStudy(const Job& job, const mesh::QuadMesh& mesh)
    : model_(mesh, supports_of(job, mesh)), uncracked_(model_.start()) {}

Eigen::VectorXd PanelStudy::solve(const PanelLoading& loading, const Eigen::VectorXd& start,
                                  const std::function<void(int, double)>& progress,
                                  PanelResult& result) {
  Eigen::VectorXd u = start;
  const NewtonReport report = minimise(model_, loading, u, {}, progress);
  result.iterations = report.iterations;
  result.residual = report.residual;
  if (!report.converged) {
    throw SolveError(fmt::format(
        "the {} analysis did not settle in {} steps (out of balance by {:.1e} of the load)",
        to_string(result.model), report.iterations, report.residual));
  }
  return u;
}

const Eigen::VectorXd& PanelStudy::uncracked_displacement(const Job& job, const Report& report,
                                                          PanelResult& result) {
  const PanelLoading loading = loading_of(job, model_, MasonryModel::uncracked);
  uncracked_ = solve(
      loading, uncracked_,
      [&](int step, double residual) {
        if (report) report(MasonryModel::uncracked, step, residual);
      },
      result);
  return uncracked_;
}

PanelResult PanelStudy::analyse(const Job& job, MasonryModel masonry, const Eigen::VectorXd& start,
                                const Report& report, Stopwatch& stopwatch) {
  PanelResult result;
  result.model = MasonryModel::uncracked;
  Eigen::VectorXd u = uncracked_displacement(job, report, result);
  const double reference_movement = largest_movement(u);
  stopwatch.lap("uncracked");
  result.model = masonry;
  const PanelLoading loading = loading_of(job, model_, masonry);
  if (masonry == MasonryModel::cracked) {
    u = solve(
        loading, start.size() > 0 ? start : u,
        [&](int step, double residual) {
          if (report) report(MasonryModel::cracked, step, residual);
        },
        result);
    stopwatch.lap("cracked");
  }
  result.fields = fields_of(model_, loading, u);
  add_reactions(job, model_, loading, u, result);
  if (!(result.equilibrium_error <= equilibrium_tolerance)) {
    throw SolveError(fmt::format("the {} analysis is out of equilibrium by {:.1e} of the load",
                                 to_string(masonry), result.equilibrium_error));
  }
  stopwatch.lap("stresses and reactions");
  if (masonry == MasonryModel::cracked) {
    result.residual_load = load_on_residual(model_, loading, u);
    if (result.residual_load > least_residual_load * result.load_total) {
      judge_trial(job, model_, loading, cut_residual(model_, loading, u), reference_movement,
                  result);
    }
    stopwatch.lap("loose masonry");
  }
  add_extremes(model_.mesh(), result);
  return result;
}

PanelResult PanelStudy::uncracked_reactions(const Job& job) {
  PanelResult result;
  const PanelLoading loading = loading_of(job, model_, MasonryModel::uncracked);
  add_reactions(job, model_, loading, solve(loading, uncracked_, {}, result), result);
  return result;
}

}  // namespace deadshore::solver
