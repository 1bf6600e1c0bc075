#include "solver/study/needle_coupling.h"

#include "solver/job/error.h"
#include "solver/needle/bracing_checks.h"
#include "solver/needle/needle_advice.h"
#include "solver/study/envelope.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

namespace deadshore::solver {

namespace {

template <class Load>
double dead_part(const Load& load) {
  return load.characteristic() > 0.0 ? load.dead / load.characteristic() : 1.0;
}

/// Part of a thing's weight that is permanent.
double dead_part(const Job& job, const SpreadThing& thing) {
  if (const auto* line = std::get_if<LineLoadId>(&thing)) {
    return dead_part(job.line_loads.at(index_of(*line)));
  }
  if (const auto* point = std::get_if<PointLoadId>(&thing)) {
    return dead_part(job.point_loads.at(index_of(*point)));
  }
  return 1.0;  // masonry and lintels
}

/// Part of a needle's hand load that is permanent.
double dead_share(const Job& job, const SpreadSum& sum) {
  double dead = 0.0;
  for (const SpreadItem& item : sum.items) dead += dead_part(job, item.thing) * item.load;
  return sum.total > 0.0 ? dead / sum.total : 1.0;
}

/// Height of masonry over a needle: up to the first opening, or the top.
double masonry_height(const Job& job, double x) {
  double top = job.wall.top_at(x);
  for (const mesh::Opening& opening : job.wall.openings) {
    const bool above = opening.span().contains(x) && opening.sill > job.wall.cut.soffit;
    if (above) top = std::min(top, opening.sill);
  }
  return top - job.wall.cut.soffit;
}

/// Part of a needle's hand load that is not the wall's own weight.
double share_of_loads(const SpreadSum& sum) {
  double loads = 0.0;
  for (const SpreadItem& item : sum.items)
    if (item.area <= 0.0) loads += item.load;
  return sum.total > 0.0 ? loads / sum.total : 0.0;
}

/// Clear wall beside a needle's bearing, halved towards a neighbour.
MasonryAbove masonry_above(const Job& job, const SpreadResult& hand, std::size_t which) {
  const mesh::Interval bearing = job.needles[which].bearing();
  MasonryAbove masonry;
  masonry.f_k = job.masonry.compressive_strength;
  masonry.bearing_width = job.needles[which].bearing_width;
  masonry.share_of_loads = share_of_loads(hand.needles[which]);
  masonry.near_side = bearing.from;
  masonry.far_side = job.wall.length - bearing.to;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    if (i == which) continue;
    const mesh::Interval other = job.needles[i].bearing();
    if (other.to <= bearing.from) {
      masonry.near_side = std::min(masonry.near_side, 0.5 * (bearing.from - other.to));
    } else {
      masonry.far_side = std::min(masonry.far_side, 0.5 * (other.from - bearing.to));
    }
  }
  masonry.height = masonry_height(job, job.needles[which].x);
  return masonry;
}

/// Stiffness under a load, or where the frame does not stand under it under the largest part of it,
/// halved again and again, under which it does: that it is overloaded is a check's to say.
double stiffness_standing(const NeedleFrame& frame, const NeedleSite& site, double load) {
  constexpr int most_halvings = 12;
  for (int halvings = 0;; ++halvings) {
    try {
      return needle_stiffness(frame, site, load);
    } catch (const SolveError&) {
      if (halvings == most_halvings || !(load > 0.0)) throw;
      load *= 0.5;
    }
  }
}

/// What a needle's props add to the rows on both sides of the wall.
void add_to_rows(const NeedleFrame& frame, const NeedleAnswer& answer,
                 std::vector<PropRowLoad>& rows) {
  for (std::size_t i = 0; i < frame.props.size(); ++i) {
    const auto row = std::ranges::find(rows, frame.props[i].side, &PropRowLoad::side);
    row->total += answer.props[i].load;
    row->largest = std::max(row->largest, answer.props[i].load);
    ++row->count;
  }
}

/// None where the frame does not stand under the load.
std::optional<NeedleAnswer> answer_of(const NeedleFrame& frame, const NeedleSite& site,
                                      double load) {
  try {
    return analyse_needle(frame, site, {load, 1.0});
  } catch (const SolveError&) {
    return std::nullopt;
  }
}

}  // namespace

NeedleSite site_of(const Job& job) {
  return {job.thickness, job.wall.cut.soffit};
}

double update_stiffness(Job& job, const std::vector<double>& loads) {
  double change = 0.0;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    Needle& needle = job.needles[i];
    if (!needle.frame) continue;
    const double stiffness =
        stiffness_standing(job.needle_frames[*needle.frame], site_of(job), loads[i]);
    change = std::max(change, std::abs(stiffness - needle.stiffness) / stiffness);
    needle.stiffness = stiffness;
  }
  return change;
}

void design_needles(const Job& job, JobResult& result) {
  const std::vector<EnvelopedLoad> envelope = envelope_of(result);
  if (envelope.empty()) return;
  std::map<std::size_t, std::size_t> most_loaded;  // frame to its place in needle_designs
  std::vector<PropRowLoad> rows = {{PropSide::inside}, {PropSide::outside}};
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    if (!job.needles[i].frame) continue;
    const std::size_t kind = *job.needles[i].frame;
    const NeedleFrame& frame = job.needle_frames[kind];
    const EnvelopedLoad& largest = envelope[i];
    const NeedleDemand demand{job.needles[i].name, largest.method, name_of(result, largest.stage),
                              largest.load, dead_share(job, result.hand.needles[i])};
    const auto checks = check_needle(frame, site_of(job), demand,
                                     masonry_above(job, result.hand, i), job.check_rules);
    result.checks.insert(result.checks.end(), checks.begin(), checks.end());
    const std::optional<NeedleAnswer> answer = answer_of(frame, site_of(job), demand.load);
    if (!answer) continue;  // its one check says so
    result.needle_designs.push_back({NeedleId{i}, demand, *answer, checks, {}});
    add_to_rows(frame, *answer, rows);
    const std::size_t place = result.needle_designs.size() - 1;
    const auto known = most_loaded.find(kind);
    if (known == most_loaded.end() ||
        result.needle_designs[known->second].demand.load < demand.load) {
      most_loaded[kind] = place;
    }
  }
  for (Check& check : check_bracing(job.bracing, rows)) result.checks.push_back(std::move(check));
  for (const auto& [kind, place] : most_loaded) {
    NeedleDesign& design = result.needle_designs[place];
    design.advice = advise(job.needle_frames[kind], site_of(job), design.demand,
                           masonry_above(job, result.hand, index_of(design.needle)),
                           job.check_rules, {job.section_choices, job.prop_choices});
  }
  sort_worst_first(result.checks);
}

}  // namespace deadshore::solver
