#include "solver/stages/stage_sequence.h"

#include "solver/cracks/cracks.h"
#include "solver/fem/one_thread.h"
#include "solver/fem/point_location.h"
#include "solver/stages/staged_wall.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <future>
#include <optional>

namespace deadshore::solver {

namespace {

/// Cracks and damage of each analysis, by movements since the first stage.
void add_damage(const Job& job, const mesh::QuadMesh& mesh, const StageResult& first,
                StageResult& stage) {
  for (std::size_t i = 0; i < stage.analyses.size(); ++i) {
    PanelResult& analysis = stage.analyses[i];
    if (!analysis.stands()) continue;
    if (analysis.model == MasonryModel::cracked) {
      analysis.cracks = cracks_of(job, mesh, analysis.fields);
    }
    analysis.damage = damage_of(job, mesh, analysis.fields, first.analyses[i].fields.displacement,
                                analysis.cracks);
  }
}

/// The uncracked wall at one stage.
struct Elastic {
  PanelResult result;
  StagedWall::Movement movement;
};

/// Takes the uncracked wall on by a stage on a thread of its own.
std::future<Elastic> begin_elastic(StagedWall& wall, const Stage& stage) {
  return std::async(std::launch::async, [&wall, &stage] {
    const OneThread one;
    Elastic elastic;
    elastic.result = wall.advance(stage);
    elastic.movement = wall.movement();
    return elastic;
  });
}

const PanelResult* standing_in(const StageResult& stage, MasonryModel model) {
  for (const PanelResult& analysis : stage.analyses) {
    if (analysis.model == model && analysis.stands()) return &analysis;
  }
  return nullptr;
}

/// How a stage moved the cracked wall on other elements; nothing where that is not known.
std::optional<StagedWall::Movement> movement_like(const StageRun* like, std::size_t stage,
                                                  const mesh::QuadMesh& mesh) {
  if (like == nullptr || stage >= like->stages.size()) return {};
  const PanelResult* now = standing_in(like->stages[stage], MasonryModel::cracked);
  if (now == nullptr) return {};
  std::vector<double> moved = now->fields.displacement;
  if (stage > 0) {
    const PanelResult* before = standing_in(like->stages[stage - 1], MasonryModel::cracked);
    if (before == nullptr) return {};
    std::ranges::transform(moved, before->fields.displacement, moved.begin(), std::minus());
  }
  return StagedWall::Movement{carry_over(like->mesh.quads, moved, mesh), {}, 0.0};
}

}  // namespace

std::vector<StageResult> run_stages(const Job& job, const std::vector<Stage>& stages,
                                    const mesh::WallMesh& mesh, const StageRun* like,
                                    const StageReport& report) {
  StagedWall uncracked(job, mesh, MasonryModel::uncracked);
  StagedWall cracked(job, mesh, MasonryModel::cracked);
  const std::vector<StageState> states = states_of(job, stages);
  std::vector<StageResult> results;
  if (stages.empty()) return results;
  // The uncracked wall is a stage ahead, since the cracked one is judged by it.
  std::future<Elastic> ahead = begin_elastic(uncracked, stages.front());
  const OneThread one;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    const auto tell = [&](int step, double) {
      const double within = 1.0 - std::exp(-0.1 * step);
      if (report) {
        report(stages[k].name,
               (static_cast<double>(k) + within) / static_cast<double>(stages.size()));
      }
    };
    tell(0, 0.0);
    StageResult result{stages[k].name, {}, stages[k].day, stages[k].operations, states[k], {}};
    Elastic elastic = ahead.get();
    if (k + 1 < stages.size()) ahead = begin_elastic(uncracked, stages[k + 1]);
    for (const MasonryModel model : job.analysis.masonry) {
      result.analyses.push_back(model == MasonryModel::uncracked
                                    ? std::move(elastic.result)
                                    : cracked.advance(stages[k], elastic.movement, tell,
                                                      movement_like(like, k, mesh.quads)));
    }
    if (stages.size() > 1) {
      add_damage(job, mesh.quads, results.empty() ? result : results.front(), result);
    }
    results.push_back(std::move(result));
    if (!results.back().stands()) break;
  }
  return results;
}

}  // namespace deadshore::solver
