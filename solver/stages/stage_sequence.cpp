#include "solver/stages/stage_sequence.h"

#include "solver/cracks/cracks.h"
#include "solver/stages/staged_wall.h"

#include <algorithm>
#include <cmath>

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

}  // namespace

std::vector<StageResult> run_stages(const Job& job, const std::vector<Stage>& stages,
                                    const mesh::WallMesh& whole, const StageReport& report) {
  StagedWall uncracked(job, whole, MasonryModel::uncracked);
  StagedWall cracked(job, whole, MasonryModel::cracked);
  std::vector<StageResult> results;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    const auto tell = [&](int step, double) {
      const double within = 1.0 - std::exp(-0.1 * step);
      if (report) {
        report(stages[k].name,
               (static_cast<double>(k) + within) / static_cast<double>(stages.size()));
      }
    };
    StageResult result{stages[k].name, {}, stages[k].day, stages[k].operations, {}};
    PanelResult elastic = uncracked.advance(stages[k], 0.0, tell);
    for (const MasonryModel model : job.analysis.masonry) {
      result.analyses.push_back(
          model == MasonryModel::uncracked
              ? elastic
              : cracked.advance(stages[k], uncracked.largest_movement(), tell));
    }
    add_damage(job, whole.quads, results.empty() ? result : results.front(), result);
    results.push_back(std::move(result));
    if (!std::ranges::all_of(results.back().analyses, &PanelResult::stands)) break;
  }
  return results;
}

}  // namespace deadshore::solver
