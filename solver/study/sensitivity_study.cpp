#include "solver/study/sensitivity_study.h"

#include "mesh/error.h"
#include "solver/fem/one_thread.h"
#include "solver/job/error.h"
#include "solver/stages/staged_wall.h"
#include "solver/study/coupled_stages.h"
#include "solver/study/reaction_brackets.h"

#include <algorithm>
#include <atomic>
#include <future>

namespace deadshore::solver {

namespace {

constexpr double largest_size = 400.0;  // mm, of elements that find changes

using Movement = StagedWall::Movement;
using StagedReactions = std::vector<std::vector<SupportReaction>>;

/// A later stage is looked at only where its needles carry so much more, as a part.
constexpr double worth_a_stage = 0.001;

/// A job taken through the stages under both models.
struct Walk {
  StagedReactions uncracked;
  StagedReactions cracked;
  std::vector<Movement> uncracked_movement;
  std::vector<Movement> cracked_movement;
};

/// What all walks have in common.
struct Course {
  std::span<const Stage> stages;  ///< as far as they are walked
  const mesh::WallMesh& mesh;
  bool cracked = false;  ///< whether that model is asked for
};

/// Movements from which to begin a stage of cracked masonry: those of `like`, judged by the
/// uncracked wall's.
Movement start_of(const Walk& like, std::size_t stage, double uncracked_largest) {
  if (stage >= like.cracked_movement.size()) return like.uncracked_movement[stage];
  Movement start = like.cracked_movement[stage];
  start.largest = uncracked_largest;
  return start;
}

/// `like` is the walk of the job as given, if that is known; `same_uncracked` says that the change
/// makes no difference to the uncracked wall. Ends where the wall has no answer.
Walk walk(const Job& job, const Course& course, const Walk* like, bool same_uncracked) {
  Walk walk;
  StagedWall uncracked(job, course.mesh, MasonryModel::uncracked);
  StagedWall cracked(job, course.mesh, MasonryModel::cracked);
  try {
    for (std::size_t k = 0; k < course.stages.size(); ++k) {
      if (same_uncracked) {
        walk.uncracked_movement.push_back(like->uncracked_movement[k]);
      } else {
        const PanelResult result = uncracked.advance(course.stages[k]);
        walk.uncracked.push_back(reactions_of(job, result));
        walk.uncracked_movement.push_back(uncracked.movement());
      }
      if (!course.cracked) continue;
      const Movement start = like != nullptr
                                 ? start_of(*like, k, walk.uncracked_movement[k].largest)
                                 : walk.uncracked_movement[k];
      const PanelResult result = cracked.advance(course.stages[k], start);
      if (!result.stands()) return walk;
      walk.cracked.push_back(reactions_of(job, result));
      walk.cracked_movement.push_back(cracked.movement());
    }
  } catch (const SolveError&) {
  }
  return walk;
}

/// Each change by itself, two at a time: they have nothing to do with each other.
std::vector<Walk> walk_all(const std::vector<Change>& changes, const Course& course,
                           const Walk& unchanged) {
  std::vector<Walk> walks(changes.size());
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    const OneThread one;
    for (std::size_t c = next++; c < changes.size(); c = next++) {
      const bool same_uncracked = !changes[c].touches(MasonryModel::uncracked);
      if (same_uncracked && !course.cracked) continue;
      walks[c] = walk(changes[c].job, course, &unchanged, same_uncracked);
    }
  };
  auto other = std::async(std::launch::async, work);
  work();
  other.get();
  return walks;
}

/// Up to the stage in which the needles together carry most under either model.
std::size_t stages_to_walk(std::span<const StageResult> found) {
  double most = 0.0;
  std::size_t count = 0;
  for (std::size_t k = 0; k < found.size(); ++k) {
    if (!found[k].stands()) break;
    for (const PanelResult& analysis : found[k].analyses) {
      double sum = 0.0;
      for (const NeedleReaction& needle : analysis.needles) sum += needle.force;
      if (sum <= most * (1.0 + worth_a_stage)) continue;
      most = sum;
      count = k + 1;
    }
  }
  return count;
}

mesh::WallMesh larger_mesh(const Job& job, const mesh::WallMesh& own) {
  try {
    return mesh_of_run(job, what_if_size(job.analysis));
  } catch (const mesh::GeometryError&) {  // too coarse for this wall
    return own;
  }
}

Sensitivity sensitivity_of(const Job& job, MasonryModel model, const std::vector<Change>& changes,
                           const StageResult& stage, std::size_t stages, const Walk& unchanged,
                           const std::vector<Walk>& walks) {
  const auto arrived = [stages](const StagedReactions& walked) { return walked.size() == stages; };
  const auto reactions = model == MasonryModel::uncracked ? &Walk::uncracked : &Walk::cracked;
  ChangedReactions all{model, StageId{stages - 1}, {}, {}, {}};
  for (const PanelResult& analysis : stage.analyses) {
    if (analysis.model == model) all.found = reactions_of(job, analysis);
  }
  if (arrived(unchanged.*reactions)) all.unchanged = (unchanged.*reactions).back();
  for (const Walk& walk : walks) {
    all.changed.push_back(arrived(walk.*reactions) ? (walk.*reactions).back()
                                                   : std::vector<SupportReaction>{});
  }
  return brackets_of(all, changes);
}

/// The same course for several models, on one mesh: cracked walls begin from uncracked ones.
void add_sensitivities(const Job& job, const std::vector<MasonryModel>& models,
                       std::span<const Stage> stages, const StageResult& looked_at,
                       const mesh::WallMesh& mesh, std::vector<Sensitivity>& sensitivities) {
  const Course course{stages, mesh, std::ranges::count(models, MasonryModel::cracked) > 0};
  const Walk unchanged = walk(job, course, nullptr, false);
  if (unchanged.uncracked_movement.size() < stages.size()) return;
  const std::vector<Change> changes = changes_of(job);
  const std::vector<Walk> walks = walk_all(changes, course, unchanged);
  for (const MasonryModel model : models) {
    Sensitivity sensitivity =
        sensitivity_of(job, model, changes, looked_at, stages.size(), unchanged, walks);
    sensitivity.mesh_size = mesh.size;
    if (!sensitivity.supports.empty()) sensitivities.push_back(std::move(sensitivity));
  }
}

}  // namespace

double what_if_size(const AnalysisOptions& analysis) {
  const double twice = 2.0 * analysis.mesh_size;
  if (analysis.element == mesh::QuadOrder::four_node) return twice;
  return std::max(twice, std::min(2.0 * twice, largest_size));
}

std::vector<Sensitivity> sensitivities_of(const Job& job, const std::vector<Stage>& stages,
                                          std::span<const StageResult> found,
                                          const mesh::WallMesh& mesh) {
  const std::size_t count = stages_to_walk(found);
  if (count == 0) return {};
  const mesh::WallMesh larger = larger_mesh(job, mesh);
  const std::span<const Stage> walked = std::span(stages).first(count);
  std::vector<Sensitivity> sensitivities;
  if (stages.size() > 1) {
    add_sensitivities(job, job.analysis.masonry, walked, found[count - 1], larger, sensitivities);
  } else {
    for (const MasonryModel model : job.analysis.masonry) {
      add_sensitivities(job, {model}, walked, found[count - 1],
                        model == MasonryModel::uncracked ? mesh : larger, sensitivities);
    }
  }
  for (Sensitivity& sensitivity : sensitivities) {
    sensitivity.by_differences = sensitivity.mesh_size != mesh.size;
  }
  return sensitivities;
}

}  // namespace deadshore::solver
