#include "io/note/sections.h"
#include "io/note/wording.h"
#include "solver/study/mesh_error.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace deadshore::io {
namespace {

using solver::PanelResult;
using solver::StageResult;
using solver::StageState;

constexpr std::size_t most_columns = 8;

/// A column of the reactions' table; NaN where the support is not there at that stage.
struct SupportColumn {
  std::string heading;
  std::function<double(const PanelResult&, const StageState&)> force;
  std::string support = heading;  ///< by the name that its mesh error has
};
using SupportColumns = std::vector<SupportColumn>;

SupportColumns needle_columns(const solver::Job& job) {
  SupportColumns columns;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    columns.push_back({job.needles[i].name, [i](const PanelResult& a, const StageState& state) {
                         return is_in(state.needles.at(i)) ? a.needles.at(i).force
                                                           : solver::not_known;
                       }});
  }
  return columns;
}

SupportColumn joist_column(const std::string& shore) {
  return {"joists on " + shore, [shore](const PanelResult& analysis, const StageState&) {
            const auto joist =
                std::ranges::find(analysis.joists, shore, &solver::JoistReaction::shore);
            return joist == analysis.joists.end() ? solver::not_known : joist->force;
          }};
}

SupportColumn beam_column(const char* heading, const char* support,
                          double solver::BeamResult::*reaction) {
  return {heading,
          [reaction](const PanelResult& a, const StageState&) {
            return a.beam ? *a.beam.*reaction : solver::not_known;
          },
          support};
}

/// All but the needles.
SupportColumns other_columns(const solver::Job& job) {
  SupportColumns columns = {
      {"left pier", [](const PanelResult& a, const StageState&) { return a.base_left; }},
      {"right pier", [](const PanelResult& a, const StageState&) { return a.base_right; }},
      {"under the cut",
       [](const PanelResult& a, const StageState& state) {
         return state.is_out(solver::cut_region) ? solver::not_known : a.base_cut;
       },
       "base under the cut"}};
  for (const solver::DeadShore& shore : job.dead_shores) {
    if (shore.joist_ends) columns.push_back(joist_column(shore.name));
  }
  columns.push_back(
      {"load in all", [](const PanelResult& a, const StageState&) { return a.load_total; }});
  if (job.beam) {
    columns.push_back(
        beam_column("beam, left", "beam left end", &solver::BeamResult::reaction_left));
    columns.push_back(
        beam_column("beam, right", "beam right end", &solver::BeamResult::reaction_right));
  }
  return columns;
}

/// In parts of about the same width that fit the page.
std::vector<SupportColumns> split(const SupportColumns& columns) {
  std::vector<SupportColumns> tables;
  const std::size_t parts = (columns.size() + most_columns - 1) / most_columns;
  auto first = columns.begin();
  for (std::size_t part = 1; part <= parts; ++part) {
    const auto last = columns.begin() + static_cast<std::ptrdiff_t>(columns.size() * part / parts);
    tables.emplace_back(first, last);
    first = last;
  }
  return tables;
}

/// One table where that fits the page, else needles apart from the rest.
std::vector<SupportColumns> support_tables(const solver::Job& job) {
  SupportColumns needles = needle_columns(job);
  const SupportColumns others = other_columns(job);
  if (needles.size() + others.size() <= most_columns) {
    needles.insert(needles.end(), others.begin(), others.end());
    return {needles};
  }
  std::vector<SupportColumns> tables = split(needles);
  for (SupportColumns& table : split(others)) tables.push_back(std::move(table));
  return tables;
}

Html reactions_table(const solver::JobResult& result, solver::MasonryModel model,
                     const SupportColumns& columns, std::size_t number) {
  Table content{fmt::format("reactions-{}-{}", solver::to_string(model), number),
                fmt::format("Reactions with {}, kN, characteristic", masonry_phrase(model)),
                {{"Stage"}},
                {}};
  for (const SupportColumn& column : columns) content.columns.push_back({column.heading, true});
  for (const StageResult& stage : result.stages) {
    const PanelResult* analysis = find_analysis(stage, model);
    if (analysis == nullptr) continue;
    if (!analysis->stands()) {
      content.add({stage.name, "no equilibrium"}, RowKind::fails);
      continue;
    }
    std::vector<std::string> cells = {stage.name};
    for (const SupportColumn& column : columns) {
      cells.push_back(kilonewtons(column.force(*analysis, stage.state),
                                  solver::mesh_error_of(*analysis, column.support)));
    }
    content.add(std::move(cells));
  }
  return table(content);
}

Html reactions_of(const solver::JobResult& result, solver::MasonryModel model) {
  Html tables;
  std::size_t number = 0;
  for (const SupportColumns& columns : support_tables(result.job)) {
    tables += reactions_table(result, model, columns, ++number);
  }
  return tables;
}

}  // namespace

Html stage_reactions(const solver::JobResult& result) {
  Html body = element("h3", text("What each support carries"));
  for (const solver::MasonryModel model : result.job.analysis.masonry) {
    body += reactions_of(result, model);
  }
  const std::string of_beam =
      result.job.beam ? " The beam stands on the piers: what its ends carry is in the piers\u2019 "
                        "figures already, its own weight with it."
                      : "";
  return body + paragraph(
                    "Needles, piers, the base under the cut and joists add up to the load in "
                    "all. A dash: not there at that stage." +
                        of_beam,
                    "small");
}

}  // namespace deadshore::io
