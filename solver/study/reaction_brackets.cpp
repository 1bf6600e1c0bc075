#include "solver/study/reaction_brackets.h"

#include "solver/result/sensitivity_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

Change by_factor(const Job& job, Unsure what, double factor) {
  Change change{what, {}, fmt::format("{} x {}", to_string(what), factor), job};
  switch (what) {
    case Unsure::masonry_stiffness:
      change.job.masonry.E *= factor;
      break;
    case Unsure::tensile_strength:
      change.job.masonry.tensile_strength *= factor;
      break;
    case Unsure::needle_stiffness:
      for (Needle& needle : change.job.needles) needle.stiffness *= factor;
      break;
    case Unsure::packing:
      break;
  }
  return change;
}

double force_of(const std::vector<SupportReaction>& reactions, SupportId support) {
  const SupportReaction* found = find_reaction(reactions, support);
  return found == nullptr ? 0.0 : found->force;
}

/// Widens the bracket of what is changed, or begins it.
void widen(SupportSensitivity& support, const Change& change, double force) {
  auto bracket = std::ranges::find(support.brackets, change.what, &ReactionBracket::what);
  if (bracket == support.brackets.end()) {
    support.brackets.push_back({change.what, support.reaction, support.reaction, {}});
    bracket = std::prev(support.brackets.end());
  }
  const double furthest =
      std::max(support.reaction - bracket->least, bracket->most - support.reaction);
  if (std::abs(force - support.reaction) > furthest) bracket->needle = change.needle;
  bracket->least = std::min(bracket->least, force);
  bracket->most = std::max(bracket->most, force);
}

}  // namespace

std::vector<Change> changes_of(const Job& job) {
  std::vector<Change> changes;
  for (const Unsure what :
       {Unsure::masonry_stiffness, Unsure::tensile_strength, Unsure::needle_stiffness}) {
    if (what == Unsure::tensile_strength && job.masonry.tensile_strength == 0.0) continue;
    for (const double factor : {least_factor, greatest_factor}) {
      changes.push_back(by_factor(job, what, factor));
    }
  }
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    Change change{Unsure::packing, NeedleId{i}, range_in_words(job, Unsure::packing, NeedleId{i}),
                  job};
    change.job.needles[i].slack += packing_loss;
    changes.push_back(std::move(change));
  }
  return changes;
}

Sensitivity brackets_of(const ChangedReactions& reactions, std::span<const Change> changes) {
  Sensitivity sensitivity;
  sensitivity.model = reactions.model;
  if (reactions.unchanged.empty()) return sensitivity;
  for (const SupportReaction& reaction : reactions.found) {
    if (reaction.force == 0.0) continue;
    sensitivity.supports.push_back({reaction.support, reactions.stage, reaction.force, {}});
  }
  for (std::size_t c = 0; c < changes.size(); ++c) {
    const std::vector<SupportReaction>& changed = reactions.changed[c];
    if (!changes[c].touches(reactions.model)) continue;
    if (changed.empty()) {
      sensitivity.falls.push_back(changes[c].words);
      continue;
    }
    for (SupportSensitivity& support : sensitivity.supports) {
      const double change =
          force_of(changed, support.support) - force_of(reactions.unchanged, support.support);
      widen(support, changes[c], std::max(0.0, support.reaction + change));
    }
  }
  return sensitivity;
}

}  // namespace deadshore::solver
