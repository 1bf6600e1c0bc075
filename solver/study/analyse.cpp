#include "solver/study/analyse.h"

#include "mesh/error.h"
#include "solver/compare/comparison.h"
#include "solver/model/error.h"
#include "solver/panel/wall_panel.h"
#include "solver/study/carry_over.h"
#include "solver/study/needle_coupling.h"
#include "solver/study/panel_study.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

/// Mesh lines may move by a tenth of an element, which changes the weight a little; more than this
/// part of all load is a fault in the mesh.
constexpr double load_tolerance = 0.02;

constexpr double coupling_tolerance = 1e-4;  // change of a needle's stiffness
constexpr int most_coupling_passes = 20;

double relative_change(double fine, double coarse) {
  return fine != 0.0 ? (fine - coarse) / fine : 0.0;
}

MeshEffect mesh_effect(const PanelResult& fine, const PanelResult& coarse, double coarse_size) {
  MeshEffect effect;
  effect.model = fine.model;
  effect.coarse_size = coarse_size;
  effect.base_left_change = relative_change(fine.base_left, coarse.base_left);
  effect.base_right_change = relative_change(fine.base_right, coarse.base_right);
  for (std::size_t i = 0; i < fine.needles.size(); ++i) {
    effect.needle_change.push_back(relative_change(fine.needles[i].force, coarse.needles[i].force));
  }
  return effect;
}

std::vector<double> hand_loads(const SpreadResult& hand) {
  std::vector<double> loads;
  for (const SpreadSum& needle : hand.needles) loads.push_back(needle.total);
  return loads;
}

WhatIf ask_what_if(const Job& job, PanelStudy& study) {
  const auto forces = [&](const Job& variant) {
    return forces_of(study.uncracked_reactions(variant));
  };
  WhatIf what_if;
  what_if.as_given = forces(job);
  what_if.unyielding = forces(with_unyielding_needles(job));
  bool any_slack = false;
  for (const Needle& needle : job.needles) any_slack = any_slack || needle.slack > 0.0;
  if (any_slack) what_if.without_slack = forces(without_slack(job));
  for (std::size_t i = 0; i < job.point_loads.size(); ++i) {
    what_if.without_load.push_back(forces(without_point_load(job, i)));
  }
  return what_if;
}

void check_load_total(const JobResult& result) {
  for (const PanelResult& analysis : result.stages.front().analyses) {
    const double by_hand = result.hand.load_total;
    if (std::abs(analysis.load_total - by_hand) > load_tolerance * by_hand) {
      throw SolveError(fmt::format(
          "the finite elements weigh {:.2f} kN where the hand sum of all loads is {:.2f} kN",
          analysis.load_total / 1000.0, by_hand / 1000.0));
    }
  }
}

/// The job on elements twice as large: for the mesh effect, and as a start for the finer mesh.
struct CoarseStudy {
  mesh::WallMesh mesh;
  std::vector<PanelResult> analyses;  ///< fewer than asked for where the mesh is too coarse
};

/// Wall and needle frames in turn until they agree, for one masonry model. The frames' stiffnesses
/// are left in `job`.
PanelResult analyse_coupled(Job& job, PanelStudy& study, MasonryModel masonry,
                            Eigen::VectorXd start, const PanelStudy::Report& report,
                            Stopwatch& stopwatch) {
  for (int pass = 1; pass <= most_coupling_passes; ++pass) {
    PanelResult result = study.analyse(job, masonry, start, report, stopwatch);
    result.coupling_passes = pass;
    if (!result.stands()) return result;
    const double change = update_stiffness(job, forces_of(result).needles);
    stopwatch.lap("needle frames");
    if (change <= coupling_tolerance) return result;
    start = Eigen::Map<const Eigen::VectorXd>(
        result.fields.displacement.data(),
        static_cast<Eigen::Index>(result.fields.displacement.size()));
  }
  throw SolveError(
      fmt::format("wall and needle frames do not agree after {} passes", most_coupling_passes));
}

CoarseStudy study_coarse(Job job, Stopwatch& stopwatch) {
  CoarseStudy coarse;
  try {
    coarse.mesh = mesh_of(job, 2.0 * job.analysis.mesh_size);
    PanelStudy study(job, coarse.mesh.quads);
    Stopwatch unused;
    for (const MasonryModel masonry : job.analysis.masonry) {
      coarse.analyses.push_back(analyse_coupled(job, study, masonry, {}, {}, unused));
    }
  } catch (const mesh::GeometryError&) {  // too coarse for this wall: the fine mesh decides alone
  } catch (const SolveError&) {
  }
  stopwatch.lap("coarse mesh, for the mesh effect");
  return coarse;
}

Eigen::VectorXd start_from(const CoarseStudy& coarse, MasonryModel model,
                           const mesh::QuadMesh& fine) {
  const PanelResult* analysis = find_standing(coarse.analyses, model);
  if (analysis == nullptr) return {};
  return carry_over(coarse.mesh.quads, analysis->fields.displacement, fine);
}

}  // namespace

JobResult analyse(const Job& job, const Progress& progress) {
  double furthest = 0.0;
  const auto tell = [&](std::string_view phase, double fraction) {
    furthest = std::max(furthest, fraction);
    if (progress) progress(phase, furthest);
  };
  Stopwatch stopwatch;
  JobResult result;
  Job coupled = job;
  tell("hand method", 0.0);
  result.hand = spread_at_45_degrees(job);
  stopwatch.lap("hand method");
  update_stiffness(coupled, hand_loads(result.hand));
  stopwatch.lap("needle frames");
  tell("coarse mesh", 0.02);
  const CoarseStudy coarse = study_coarse(coupled, stopwatch);
  tell("mesh", 0.15);
  result.mesh = mesh_of(job);
  stopwatch.lap("mesh");
  PanelStudy study(job, result.mesh.quads);
  stopwatch.lap("pattern and ordering");

  result.stages.push_back(StageResult{"cut", {}});
  std::vector<PanelResult>& analyses = result.stages.front().analyses;
  for (const MasonryModel masonry : job.analysis.masonry) {
    const auto report = [&](MasonryModel model, int step, double) {
      const double start = model == MasonryModel::uncracked ? 0.15 : 0.2;
      tell(to_string(model), start + 0.6 * (1.0 - std::exp(-0.1 * step)));
    };
    const Eigen::VectorXd start = start_from(coarse, masonry, result.mesh.quads);
    analyses.push_back(analyse_coupled(coupled, study, masonry, start, report, stopwatch));
    const PanelResult* same = find_standing(coarse.analyses, masonry);
    if (same == nullptr || !analyses.back().stands()) continue;
    result.mesh_effects.push_back(mesh_effect(analyses.back(), *same, coarse.mesh.size));
  }
  check_load_total(result);
  tell("why the methods differ", 0.85);
  result.job = coupled;
  result.comparison = compare(coupled, result.hand, analyses, ask_what_if(coupled, study));
  stopwatch.lap("why the methods differ");
  tell("needle checks", 0.95);
  design_needles(coupled, result);
  stopwatch.lap("needle checks");
  tell("done", 1.0);
  result.times = stopwatch.times();
  return result;
}

}  // namespace deadshore::solver
