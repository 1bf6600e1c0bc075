#include "solver/study/comparison.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace deadshore::solver {

namespace {

constexpr double telling_difference = 0.15;  // of the uncracked load: below it no reason is owed
constexpr double telling_part = 0.05;  // of the hand load: below it a cause is not worth naming

double kilonewtons(double newtons) {
  return newtons / 1000.0;
}

/// A support by name and what it gains when one set of forces is exchanged for another.
struct Gain {
  std::string name;
  double force = 0.0;
};

/// The support other than needle `self` that gains most (`sign` = 1) or loses most (-1).
Gain most_changed(const Job& job, std::size_t self, const SupportForces& before,
                  const SupportForces& after, double sign) {
  Gain most{"the left pier", after.base_left - before.base_left};
  const auto consider = [&](const std::string& name, double force) {
    if (sign * force > sign * most.force) most = {name, force};
  };
  consider("the right pier", after.base_right - before.base_right);
  for (std::size_t j = 0; j < job.needles.size(); ++j) {
    if (j != self) consider(job.needles[j].name, after.needles[j] - before.needles[j]);
  }
  return most;
}

SupportForces forces_of(const SpreadResult& hand) {
  SupportForces forces;
  for (const SpreadSum& needle : hand.needles) forces.needles.push_back(needle.total);
  forces.base_left = hand.left_pier.total;
  forces.base_right = hand.right_pier.total;
  return forces;
}

/// Everything the sentences about one needle are made from.
struct Case {
  const Job& job;
  const SpreadResult& hand;
  const WhatIf& what_if;
  std::size_t needle;

  [[nodiscard]] double by_hand() const { return hand.needles[needle].total; }
  [[nodiscard]] double least_worth_naming() const { return telling_part * by_hand(); }
};

/// What the wall's own stiffness does: hand load against the load on needles that do not give.
std::string deep_beam_sentence(const Case& c) {
  const double unyielding = c.what_if.unyielding.needles[c.needle];
  const double past = c.by_hand() - unyielding;
  if (std::abs(past) < c.least_worth_naming()) return {};
  const Gain other = most_changed(c.job, c.needle, forces_of(c.hand), c.what_if.unyielding,
                                  past > 0.0 ? 1.0 : -1.0);
  return fmt::format(
      "On needles that do not give it would take {:.1f} kN: the wall spans as a deep beam and {} "
      "{:.1f} kN, most of all {} {}. ",
      kilonewtons(unyielding), past > 0.0 ? "carries past it" : "brings it a further",
      kilonewtons(std::abs(past)), past > 0.0 ? "to" : "from", other.name);
}

/// What the needles' give does: load on unyielding needles against the load as given.
std::string yielding_sentence(const Case& c) {
  const double given = c.what_if.as_given.needles[c.needle];
  const double shed = c.what_if.unyielding.needles[c.needle] - given;
  if (std::abs(shed) < c.least_worth_naming()) return {};
  if (shed < 0.0) {
    return fmt::format("Its neighbours give, which brings it {:.1f} kN. ", kilonewtons(-shed));
  }
  return fmt::format("It gives {:.1f} mm, which sheds {:.1f} kN to stiffer supports. ",
                     given / c.job.needles[c.needle].stiffness, kilonewtons(shed));
}

double hand_share(const SpreadSum& sum, PointLoadId load) {
  double share = 0.0;
  for (const SpreadItem& item : sum.items) {
    if (item.thing == SpreadThing{load}) share += item.share;
  }
  return share;
}

std::string point_load_sentences(const Case& c) {
  std::string sentences;
  for (std::size_t i = 0; i < c.job.point_loads.size(); ++i) {
    const PointLoad& load = c.job.point_loads[i];
    const double whole = load.characteristic();
    if (whole <= 0.0) continue;
    const double by_hand = hand_share(c.hand.needles[c.needle], PointLoadId{i});
    const double by_elements =
        (c.what_if.as_given.needles[c.needle] - c.what_if.without_load[i].needles[c.needle]) /
        whole;
    if (std::abs(by_hand - by_elements) * whole < c.least_worth_naming()) continue;
    sentences +=
        fmt::format("Of \"{}\" ({:.1f} kN) the rule gives it {:.0f}%, finite elements {:.0f}%. ",
                    load.name, kilonewtons(whole), 100.0 * by_hand, 100.0 * by_elements);
  }
  return sentences;
}

std::string opening_sentence(const Case& c) {
  double over_openings = 0.0;
  for (const SpreadItem& item : c.hand.needles[c.needle].items) {
    if (item.over_opening) over_openings += item.load;
  }
  if (over_openings < 2.0 * c.least_worth_naming()) return {};
  return fmt::format("{:.1f} kN of its hand load stands over an opening and comes down at a jamb. ",
                     kilonewtons(over_openings));
}

std::string slack_sentence(const Case& c) {
  const double slack = c.job.needles[c.needle].slack;
  if (slack <= 0.0 || !c.what_if.without_slack) return {};
  return fmt::format(
      "It stands {:.1f} mm clear before it bears; tight under the wall it would take {:.1f} kN. ",
      slack, kilonewtons(c.what_if.without_slack->needles[c.needle]));
}

double cracked_share(const PanelResult& cracked) {
  std::size_t count = 0;
  for (const PlaneTensor& strain : cracked.fields.quad_crack_strain) {
    if (strain.xx != 0.0 || strain.yy != 0.0 || strain.xy != 0.0) ++count;
  }
  const std::size_t all = cracked.fields.quad_crack_strain.size();
  return all > 0 ? static_cast<double>(count) / static_cast<double>(all) : 0.0;
}

std::string cracking_sentence(const Case& c, const PanelResult& cracked) {
  const SupportForces& before = c.what_if.as_given;
  const SupportForces after = forces_of(cracked);
  const double change = after.needles[c.needle] - before.needles[c.needle];
  const Gain other = most_changed(c.job, c.needle, before, after, change > 0.0 ? -1.0 : 1.0);
  return fmt::format(
      "Cracks (in {:.0f}% of the elements) make the wall a weaker beam and move {:.1f} kN {} it, "
      "most "
      "of all {} {}. ",
      100.0 * cracked_share(cracked), kilonewtons(std::abs(change)), change > 0.0 ? "onto" : "off",
      change > 0.0 ? "from" : "to", other.name);
}

bool differs(double value, double reference) {
  return std::abs(value - reference) > telling_difference * std::max(std::abs(reference), 1.0);
}

}  // namespace

const PanelResult* find_standing(std::span<const PanelResult> analyses, MasonryModel model) {
  for (const PanelResult& analysis : analyses) {
    if (analysis.model == model && analysis.stands()) return &analysis;
  }
  return nullptr;
}

SupportForces forces_of(const PanelResult& result) {
  SupportForces forces;
  for (const NeedleReaction& needle : result.needles) forces.needles.push_back(needle.force);
  forces.base_left = result.base_left;
  forces.base_right = result.base_right;
  return forces;
}

Job with_unyielding_needles(const Job& job) {
  Job variant = job;
  for (Needle& needle : variant.needles) {
    needle.stiffness *= 1000.0;
    needle.slack = 0.0;
    needle.preload = 0.0;
  }
  return variant;
}

Job without_slack(const Job& job) {
  Job variant = job;
  for (Needle& needle : variant.needles) needle.slack = 0.0;
  return variant;
}

Job without_point_load(const Job& job, std::size_t index) {
  Job variant = job;
  variant.point_loads[index].dead = 0.0;
  variant.point_loads[index].imposed = 0.0;
  return variant;
}

std::vector<NeedleComparison> compare(const Job& job, const SpreadResult& hand,
                                      std::span<const PanelResult> analyses,
                                      const WhatIf& what_if) {
  const PanelResult* uncracked = find_standing(analyses, MasonryModel::uncracked);
  const PanelResult* cracked = find_standing(analyses, MasonryModel::cracked);
  std::vector<NeedleComparison> comparison;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const Case c{job, hand, what_if, i};
    NeedleComparison row;
    row.needle = job.needles[i].name;
    row.hand = c.by_hand();
    row.uncracked = uncracked != nullptr ? uncracked->needles[i].force : not_known;
    row.cracked = cracked != nullptr ? cracked->needles[i].force : not_known;
    row.unyielding = what_if.unyielding.needles[i];
    const double elastic = what_if.as_given.needles[i];
    if (differs(row.hand, elastic)) {
      row.reason += slack_sentence(c) + deep_beam_sentence(c) + yielding_sentence(c) +
                    point_load_sentences(c) + opening_sentence(c);
    }
    if (cracked != nullptr && differs(row.cracked, elastic)) {
      row.reason += cracking_sentence(c, *cracked);
    }
    while (!row.reason.empty() && row.reason.back() == ' ') row.reason.pop_back();
    comparison.push_back(row);
  }
  return comparison;
}

}  // namespace deadshore::solver
