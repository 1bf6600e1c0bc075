#include "solver/study/sensitivity_study.h"

#include "mesh/error.h"
#include "solver/job/error.h"
#include "solver/panel/condensed_wall.h"
#include "solver/panel/wall_panel.h"
#include "solver/study/panel_study.h"
#include "solver/study/reaction_brackets.h"

#include <algorithm>

namespace deadshore::solver {

namespace {

constexpr double largest_size = 400.0;  // mm, of elements that find changes

std::vector<SupportReaction> listed(const Job& job, const CondensedWall::Reactions& reactions) {
  PanelResult result;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    result.needles.push_back({job.needles[i].name, job.needles[i].x, reactions.beds[i], 0.0, 0.0});
  }
  result.base_left = reactions.base_left;
  result.base_right = reactions.base_right;
  return reactions_of(job, result);
}

/// The uncracked wall under every change, condensed once for each stiffness of its masonry.
void condense(const Job& job, const mesh::WallMesh& mesh, std::span<const Change> changes,
              ChangedReactions& reactions) {
  PanelModel model(mesh.quads, supports_of(job, mesh.quads));
  const auto loading = [&](const Job& variant) {
    return loading_of(variant, model, MasonryModel::uncracked);
  };
  const PanelLoading unchanged = loading(job);
  const CondensedWall wall(model, unchanged);
  reactions.unchanged = listed(job, wall.on(unchanged.beds));
  for (std::size_t c = 0; c < changes.size(); ++c) {
    const Change& change = changes[c];
    if (!change.touches(MasonryModel::uncracked)) continue;
    const PanelLoading changed = loading(change.job);
    const auto answer = change.what == Unsure::masonry_stiffness
                            ? CondensedWall(model, changed).on(changed.beds)
                            : wall.on(changed.beds);
    reactions.changed[c] = listed(job, answer);
  }
}

/// The cracked wall under every change, each solution starting from that of the job as given.
void crack(const Job& job, const mesh::WallMesh& mesh, std::span<const Change> changes,
           ChangedReactions& reactions) {
  PanelStudy study(job, mesh.quads);
  Stopwatch unused;
  const auto solve = [&](const Job& variant, const Eigen::VectorXd& start) {
    return study.analyse(variant, MasonryModel::cracked, start, {}, unused);
  };
  const PanelResult unchanged = solve(job, {});
  if (!unchanged.stands()) return;
  reactions.unchanged = reactions_of(job, unchanged);
  const std::vector<double>& moved = unchanged.fields.displacement;
  const Eigen::VectorXd start =
      Eigen::Map<const Eigen::VectorXd>(moved.data(), static_cast<Eigen::Index>(moved.size()));
  for (std::size_t c = 0; c < changes.size(); ++c) {
    try {
      const PanelResult changed = solve(changes[c].job, start);
      if (changed.stands()) reactions.changed[c] = reactions_of(job, changed);
    } catch (const SolveError&) {  // no answer: it is named among those that fall
    }
  }
}

}  // namespace

double what_if_size(const AnalysisOptions& analysis) {
  const double twice = 2.0 * analysis.mesh_size;
  if (analysis.element == mesh::QuadOrder::four_node) return twice;
  return std::max(twice, std::min(2.0 * twice, largest_size));
}

std::vector<Sensitivity> sensitivity_at_once(const Job& job, const mesh::WallMesh& mesh,
                                             std::span<const PanelResult> found) {
  const std::vector<Change> changes = changes_of(job);
  std::vector<Sensitivity> sensitivities;
  for (const PanelResult& analysis : found) {
    if (!analysis.stands()) continue;
    const bool cracked = analysis.model == MasonryModel::cracked;
    ChangedReactions reactions{analysis.model, StageId{0}, reactions_of(job, analysis), {}, {}};
    reactions.changed.resize(changes.size());
    double size = mesh.size;
    try {
      if (cracked) {
        const mesh::WallMesh larger = mesh_of(job, what_if_size(job.analysis));
        size = larger.size;
        crack(job, larger, changes, reactions);
      } else {
        condense(job, mesh, changes, reactions);
      }
    } catch (const mesh::GeometryError&) {  // too coarse for this wall
    } catch (const SolveError&) {
    }
    if (reactions.unchanged.empty()) continue;
    sensitivities.push_back(brackets_of(reactions, changes));
    sensitivities.back().mesh_size = size;
    sensitivities.back().by_differences = size != mesh.size;
  }
  return sensitivities;
}

}  // namespace deadshore::solver
