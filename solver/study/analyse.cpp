#include "solver/study/analyse.h"

#include "mesh/error.h"
#include "solver/compare/comparison.h"
#include "solver/model/error.h"
#include "solver/panel/wall_panel.h"
#include "solver/study/panel_study.h"

#include <fmt/format.h>

#include <cmath>

namespace deadshore::solver {

namespace {

/// Mesh lines may move by a tenth of an element, which changes the weight a little; more than this
/// part of all load is a fault in the mesh.
constexpr double load_tolerance = 0.02;

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

/// Analyses on elements twice as large; nothing where that mesh is too coarse for the wall.
std::vector<MeshEffect> find_mesh_effects(const Job& job, std::span<const PanelResult> fine,
                                          Stopwatch& stopwatch) {
  std::vector<MeshEffect> effects;
  try {
    const double size = 2.0 * job.analysis.mesh_size;
    const mesh::WallMesh coarse = mesh_of(job, size);
    PanelStudy study(job, coarse.quads);
    Stopwatch unused;
    for (const PanelResult& analysis : fine) {
      if (!analysis.stands()) continue;
      effects.push_back(mesh_effect(analysis, study.analyse(analysis.model, {}, unused), size));
    }
  } catch (const mesh::GeometryError&) {
    effects.clear();
  }
  stopwatch.lap("mesh effect");
  return effects;
}

}  // namespace

JobResult analyse(const Job& job, const Progress& progress) {
  const auto tell = [&](std::string_view phase, double fraction) {
    if (progress) progress(phase, fraction);
  };
  Stopwatch stopwatch;
  JobResult result;
  result.job = job;
  tell("hand method", 0.0);
  result.hand = spread_at_45_degrees(job);
  stopwatch.lap("hand method");
  tell("mesh", 0.02);
  result.mesh = mesh_of(job);
  stopwatch.lap("mesh");
  PanelStudy study(job, result.mesh.quads);
  stopwatch.lap("pattern and ordering");

  result.stages.push_back({"cut", {}});
  std::vector<PanelResult>& analyses = result.stages.front().analyses;
  for (const MasonryModel masonry : job.analysis.masonry) {
    const auto report = [&](MasonryModel model, int step, double) {
      const double start = model == MasonryModel::uncracked ? 0.05 : 0.15;
      tell(to_string(model), start + 0.55 * (1.0 - std::exp(-0.1 * step)));
    };
    analyses.push_back(study.analyse(masonry, report, stopwatch));
  }
  check_load_total(result);
  tell("why the methods differ", 0.75);
  result.comparison = compare(job, result.hand, analyses, ask_what_if(job, study));
  stopwatch.lap("why the methods differ");
  tell("mesh effect", 0.8);
  result.mesh_effects = find_mesh_effects(job, analyses, stopwatch);
  tell("done", 1.0);
  result.times = stopwatch.times();
  return result;
}

}  // namespace deadshore::solver
