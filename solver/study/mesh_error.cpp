#include "solver/study/mesh_error.h"

#include "solver/panel/support_reactions.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

constexpr double corner_order = 2.0 * 0.5445;
constexpr double safety_on_two_meshes = 3.0;

struct MeshChange {
  SupportReaction fine;
  double size = 0.0;  ///< of the change from the larger elements, N
};

std::vector<MeshChange> mesh_changes_of(const Job& job, const PanelResult& fine,
                                        const PanelResult& coarse) {
  const std::vector<SupportReaction> before = reactions_of(job, coarse);
  std::vector<MeshChange> changes;
  for (const SupportReaction& now : reactions_of(job, fine)) {
    const SupportReaction* same = find_reaction(before, now.support);
    if (same == nullptr || (now.force == 0.0 && same->force == 0.0)) continue;
    changes.push_back({now, std::abs(now.force - same->force)});
  }
  return changes;
}

double root_mean_square(const std::vector<MeshChange>& changes, SupportGroup group) {
  double sum = 0.0;
  int count = 0;
  for (const MeshChange& change : changes) {
    if (change.fine.group() != group) continue;
    sum += change.size * change.size;
    ++count;
  }
  return count > 0 ? std::sqrt(sum / count) : 0.0;
}

}  // namespace

std::map<SupportId, double> mesh_error(const Job& job, const PanelResult& fine,
                                       const PanelResult& coarse) {
  const double factor = safety_on_two_meshes / (std::exp2(corner_order) - 1.0);
  const std::vector<MeshChange> changes = mesh_changes_of(job, fine, coarse);
  std::map<SupportId, double> errors;
  for (const MeshChange& change : changes) {
    errors[change.fine.support] =
        factor * std::max(change.size, root_mean_square(changes, change.fine.group()));
  }
  return errors;
}

}  // namespace deadshore::solver
