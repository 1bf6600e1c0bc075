#include "solver/panel/complete_result.h"

#include "solver/job/error.h"
#include "solver/panel/loose_masonry.h"
#include "solver/panel/recovery.h"

#include <fmt/format.h>

#include <algorithm>

namespace deadshore::solver {

namespace {

constexpr double equilibrium_tolerance = 1e-8;  // reactions less loads, over loads

/// Part of all load on the residual stiffness below which no trial for loose masonry is made: it is
/// less than the weight of a brick.
constexpr double least_residual_load = 1e-4;

/// Newton steps of the trial that confirms that a wall falls, after one of a single step said so.
constexpr int steps_to_confirm = 40;

/// Whether a region is of the wall's masonry: lintels and padstones are not.
bool is_masonry(const Job& job, const PanelLoading& loading, int region) {
  const std::size_t r = static_cast<std::size_t>(region);
  return r == 0 || (r > job.lintels.size() && loading.materials[r].E == job.masonry.E);
}

/// Largest settlement and compression outside loose masonry.
void add_extremes(const Job& job, const mesh::QuadMesh& mesh, const PanelLoading& loading,
                  PanelResult& result) {
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const std::size_t q = static_cast<std::size_t>(quad);
    if (result.fields.quad_loose[q] != 0) continue;
    const double compression = -principal_of(result.fields.quad_stress[q]).minor;
    if (is_masonry(job, loading, mesh.region_of_quad[q])) {
      result.max_compression = std::max(result.max_compression, compression);
    }
    for (const int node : mesh.nodes_of(quad)) {
      const double settlement = -result.fields.displacement[2 * static_cast<std::size_t>(node) + 1];
      result.max_settlement = std::max(result.max_settlement, settlement);
    }
  }
}

}  // namespace

void require_converged(const NewtonReport& report, MasonryModel masonry) {
  if (report.converged) return;
  throw SolveError(
      fmt::format("the {} analysis did not settle in {} steps (out of balance by {:.1e} of the "
                  "load)",
                  to_string(masonry), report.iterations, report.residual));
}

void complete_result(const Job& job, PanelModel& model, const PanelLoading& loading,
                     const Eigen::VectorXd& u, double reference_movement, PanelResult& result) {
  result.fields = fields_of(model, loading, u);
  add_reactions(job, model, loading, u, result);
  if (!(result.equilibrium_error <= equilibrium_tolerance)) {
    throw SolveError(fmt::format("the {} analysis is out of equilibrium by {:.1e} of the load",
                                 to_string(result.model), result.equilibrium_error));
  }
  if (result.model == MasonryModel::cracked) {
    result.residual_load = load_on_residual(model, loading, u);
    if (reference_movement > 0.0 &&
        result.residual_load > least_residual_load * result.load_total) {
      judge_trial(job, model, loading, cut_residual(model, loading, u), reference_movement, result);
      if (!result.stands()) {
        result.no_equilibrium.reset();
        judge_trial(job, model, loading, cut_residual(model, loading, u, steps_to_confirm),
                    reference_movement, result);
      }
    }
  }
  add_extremes(job, model.mesh(), loading, result);
}

}  // namespace deadshore::solver
