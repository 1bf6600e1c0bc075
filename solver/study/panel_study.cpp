#include "solver/study/panel_study.h"

#include "solver/panel/complete_result.h"
#include "solver/panel/recovery.h"
#include "solver/panel/wall_panel.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

double largest_movement(const Eigen::VectorXd& u) {
  double largest = 0.0;
  for (Eigen::Index node = 0; 2 * node < u.size(); ++node) {
    largest = std::max(largest, u.segment<2>(2 * node).norm());
  }
  return largest;
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
  require_converged(report, result.model);
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
  complete_result(job, model_, loading, u, reference_movement, result);
  stopwatch.lap("stresses and reactions");
  return result;
}

PanelResult PanelStudy::uncracked_reactions(const Job& job) {
  PanelResult result;
  const PanelLoading loading = loading_of(job, model_, MasonryModel::uncracked);
  add_reactions(job, model_, loading, solve(loading, uncracked_, {}, result), result);
  return result;
}

}  // namespace deadshore::solver
