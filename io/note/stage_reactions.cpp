#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/panel/support_reactions.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace deadshore::io {
namespace {

using solver::PanelResult;
using solver::StageResult;
using solver::StageState;

constexpr std::size_t most_columns = 8;

/// A column of the reactions' table: a support, or all loads.
using SupportColumn = std::optional<solver::SupportId>;
using SupportColumns = std::vector<SupportColumn>;

SupportColumns needle_columns(const solver::Job& job) {
  SupportColumns columns;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    columns.emplace_back(support_of(solver::NeedleId{i}));
  }
  return columns;
}

/// All but the needles.
SupportColumns other_columns(const solver::Job& job) {
  SupportColumns columns = {solver::supports::left_pier, solver::supports::right_pier,
                            solver::supports::base_under_cut};
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i) {
    if (job.dead_shores[i].joist_ends) columns.emplace_back(support_of(solver::ShoreId{i}));
  }
  columns.emplace_back();
  if (job.beam)
    columns.insert(columns.end(),
                   {solver::supports::beam_left_end, solver::supports::beam_right_end});
  return columns;
}

std::string heading_of(const solver::Job& job, const SupportColumn& column) {
  return column ? label_of(job, *column) : "load in all";
}

/// Whether a support may carry something at a stage.
bool is_there(const StageState& state, solver::SupportId support) {
  if (support.kind == solver::SupportKind::needle) return is_in(state.needles.at(support.index));
  return support != solver::supports::base_under_cut || !state.cut_out;
}

/// A support's force with what the mesh may be wrong by; a dash where the support is not there.
std::string force_words(const std::vector<solver::SupportReaction>& reactions,
                        const StageState& state, solver::SupportId support) {
  if (!is_there(state, support)) return kilonewtons(solver::not_known);
  const solver::SupportReaction* reaction = find_reaction(reactions, support);
  if (reaction == nullptr) {
    return kilonewtons(support == solver::supports::base_under_cut ? 0.0 : solver::not_known);
  }
  return kilonewtons(reaction->force, reaction->mesh_error.value_or(solver::not_known));
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

Table reactions_table(const solver::JobResult& result, solver::MasonryModel model,
                      const SupportColumns& columns, std::size_t number) {
  Table content{fmt::format("reactions-{}-{}", solver::to_string(model), number),
                fmt::format("Reactions with {}, kN, characteristic", masonry_phrase(model)),
                {"Stage"}};
  for (const SupportColumn& column : columns) {
    content.columns.push_back(numeric(heading_of(result.job, column)));
  }
  for (const StageResult& stage : result.stages) {
    const PanelResult* analysis = find_analysis(stage, model);
    if (analysis == nullptr) continue;
    if (!analysis->stands()) {
      content.add({stage.name, "no equilibrium"}, RowKind::fails);
      continue;
    }
    std::vector<Text> cells = {stage.name};
    const std::vector<solver::SupportReaction> reactions = reactions_of(result.job, *analysis);
    for (const SupportColumn& column : columns) {
      cells.push_back(column ? force_words(reactions, stage.state, *column)
                             : kilonewtons(analysis->load_total));
    }
    content.add(std::move(cells));
  }
  return content;
}

Blocks reactions_tables(const solver::JobResult& result, solver::MasonryModel model) {
  Blocks tables;
  std::size_t number = 0;
  for (const SupportColumns& columns : support_tables(result.job)) {
    tables += reactions_table(result, model, columns, ++number);
  }
  return tables;
}

}  // namespace

Blocks stage_reactions(const solver::JobResult& result) {
  Blocks body = Heading{"What each support carries"};
  for (const solver::MasonryModel model : result.job.analysis.masonry) {
    body += reactions_tables(result, model);
  }
  const std::string of_beam = result.job.beam
                                  ? " The beam stands on the piers: what its ends carry is in the "
                                    "piers\u2019 figures already, its own weight with it."
                                  : "";
  return body + Paragraph{
                    "Needles, piers, the base under the cut and joists add up to the load in all. "
                    "A dash: not there at that stage." +
                        of_beam,
                    Tone::small};
}

}  // namespace deadshore::io
