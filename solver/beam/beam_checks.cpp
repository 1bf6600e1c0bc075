#include "solver/beam/beam_checks.h"

#include "solver/beam/beam_case.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

namespace deadshore::solver {

namespace {

constexpr double least_bearing = 100.0;  // mm, steel on a padstone

/// Part of the hand load below which what a staged analysis gives the beam is marked as relief by
/// arching.
constexpr double relief = 0.5;

std::vector<Check> checks_under(const BeamDesign& design, const BeamCase& load) {
  std::vector<Check> checks = section_checks(design, load);
  std::vector<Check> bearings = bearing_checks(design, load);
  std::move(bearings.begin(), bearings.end(), std::back_inserter(checks));
  return checks;
}

const Check* find_same(const std::vector<Check>& checks, const Check& like) {
  const auto found = std::find_if(checks.begin(), checks.end(), [&](const Check& check) {
    return check.member == like.member && check.check == like.check;
  });
  return found == checks.end() ? nullptr : &*found;
}

/// Of each check the worst over all cases.
std::vector<Check> worst_of(const BeamDesign& design, const std::vector<BeamCase>& cases) {
  std::vector<Check> worst;
  for (const BeamCase& load : cases) {
    for (Check& check : checks_under(design, load)) {
      const auto known = std::find_if(worst.begin(), worst.end(), [&](const Check& other) {
        return other.member == check.member && other.check == check.check;
      });
      if (known == worst.end()) {
        worst.push_back(std::move(check));
      } else if (check.utilisation() > known->utilisation()) {
        *known = std::move(check);
      }
    }
  }
  return worst;
}

/// Says that a staged row must not be leant on where the full load decides.
void warn_of_relief(Check& staged, const Check& by_hand) {
  std::string warning;
  if (!by_hand.passes()) {
    warning = "fails under the full load by hand: relief by arching never passes a beam";
  } else if (staged.demand < relief * by_hand.demand) {
    warning = fmt::format(
        "only {:.0f}% of what the full load brings by hand, the rest arches past the beam: do not "
        "count on it",
        100.0 * staged.demand / by_hand.demand);
  } else {
    return;
  }
  staged.caution = staged.caution.empty() ? warning : warning + "; " + staged.caution;
}

/// Checks into which no load enters.
std::vector<Check> checks_of_shape(const PermanentBeam& beam) {
  Check length;
  length.check = "bearing length";
  length.clause = "common practice; NHBC Standards 6.5";
  length.demand = least_bearing;
  length.capacity = beam.bearing;
  length.unit = "mm";
  length.working = fmt::format("at least {:.0f} mm of steel on a padstone; {:.0f} mm given",
                               least_bearing, beam.bearing);
  std::vector<Check> checks = {length};
  return labelled(std::move(checks), beam.name, hand_stage);
}

bool places_beam(const StageResult& stage) {
  return std::ranges::count(stage.operations, Operation{Act::place, WorkPart::beam}) > 0;
}

/// Stages at which nobody knows what the beam carries, for the wall has no equilibrium.
std::vector<Check> unknown_stages(const JobResult& result) {
  std::vector<Check> unknown;
  bool placed = false;
  for (const StageResult& stage : result.stages) {
    placed = placed || places_beam(stage);
    for (const PanelResult& analysis : stage.analyses) {
      if (!placed || analysis.stands()) continue;
      const Check check = not_verified(
          fmt::format("load from the {} wall", to_string(analysis.model)), "none",
          "no equilibrium at this stage, so that no one knows what the beam then carries: " +
              analysis.no_equilibrium.value());
      for (Check& row : labelled({check}, result.job.beam->name, stage.name))
        unknown.push_back(std::move(row));
    }
  }
  return unknown;
}

}  // namespace

std::vector<Check> check_beam(const JobResult& result) {
  if (!result.job.beam) return {};
  const PermanentBeam& beam = *result.job.beam;
  if (beam.member.class_in_bending > 3)
    return labelled({not_verified("section class", "EN 1993-1-1 5.5",
                                  beam.member.section.name +
                                      ": buckles before it yields (class 4); take a thicker one")},
                    beam.name, hand_stage);
  const HandBeam hand = hand_beam(result.job);
  const BeamDesign design = design_of(result.job, hand);
  std::vector<Check> checks = checks_under(design, case_of(hand));
  std::vector<Check> staged = worst_of(design, staged_cases(result));
  std::erase_if(staged, [&](const Check& check) {
    return check.not_verified && find_same(checks, check) != nullptr;
  });
  for (Check& check : staged)
    if (const Check* by_hand = find_same(checks, check)) warn_of_relief(check, *by_hand);

  const auto add = [&](std::vector<Check> more) {
    std::move(more.begin(), more.end(), std::back_inserter(checks));
  };
  add(std::move(staged));
  add(checks_of_shape(beam));
  add(width_checks(design, case_of(hand)));
  add(unknown_stages(result));
  sort_worst_first(checks);
  return checks;
}

}  // namespace deadshore::solver
