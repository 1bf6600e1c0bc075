#include "io/note/sections.h"
#include "io/note/wording.h"
#include "io/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace deadshore::io {
namespace {

using solver::PanelResult;
using solver::StageResult;
using solver::StageState;

constexpr std::size_t most_columns = 8;
constexpr std::size_t most_cracks = 12;

/// What is done to some things one after the other.
struct Doing {
  std::string acts;  ///< "fit and preload"
  std::vector<std::string> things;
};

/// Operations in their order, what is done to one thing in a row put together.
std::vector<Doing> doings_of(std::span<const solver::Operation> operations) {
  std::vector<Doing> doings;
  for (std::size_t first = 0; first < operations.size();) {
    const std::string& thing = operations[first].what;
    std::vector<std::string> acts;
    std::size_t next = first;
    for (; next < operations.size() && operations[next].what == thing; ++next) {
      acts.emplace_back(solver::to_string(operations[next].act));
    }
    const std::string joined = listed(acts);
    if (doings.empty() || doings.back().acts != joined) doings.push_back({joined, {}});
    doings.back().things.push_back(thing);
    first = next;
  }
  return doings;
}

/// "tighten floor shore; fit and preload N1, N2 and N3"
std::string done_in_words(std::span<const solver::Operation> operations) {
  std::string words;
  for (const Doing& doing : doings_of(operations)) {
    if (!words.empty()) words += "; ";
    words += fmt::format("{} {}", doing.acts, listed(doing.things));
  }
  return words.empty() ? "nothing yet" : words;
}

std::string needle_words(const StageFacts& facts) {
  if (facts.needle.empty()) return "\u2013";
  return fmt::format("{} {}", facts.needle, kilonewtons(facts.needle_load));
}

std::string damage_words(const solver::Damage* damage) {
  return damage == nullptr ? "\u2013" : std::to_string(category_of(*damage));
}

RowKind kind_of(const StageFacts& facts) {
  const bool worrying = facts.loose_weight > 0.0 || facts.factor < 1.0;
  return worrying ? RowKind::unverified : RowKind::plain;
}

Html work_table(const solver::JobResult& result) {
  Table content{"stages-of-work",
                "The worst of all analyses of each stage; loads in kN, characteristic",
                {{"Stage"},
                 {"Day", true},
                 {"What is done"},
                 {"Worst needle", true},
                 {"Settles mm", true},
                 {"Widest crack mm", true},
                 {"Damage", true},
                 {"Loose kN", true},
                 {"Factor", true}},
                {}};
  for (const StageResult& stage : result.stages) {
    const StageFacts facts = facts_of(stage);
    const std::string done = done_in_words(stage.operations);
    if (!facts.stands) {
      content.add({stage.name, significant(stage.day, 4), done, "DOES NOT STAND: see the summary"},
                  RowKind::fails);
      continue;
    }
    content.add({stage.name, significant(stage.day, 4), done, needle_words(facts),
                 fine_millimetres(facts.settlement), fine_millimetres(facts.widest_crack),
                 damage_words(facts.damage), fine_kilonewtons(facts.loose_weight),
                 factor_words(facts.factor)},
                kind_of(facts));
  }
  return table(content) +
         paragraph(
             "Damage: category 0 (negligible) to 5 (very severe) of the masonry above the soffit, "
             "since the first stage. Loose: masonry that would fall, by the cracked analysis. "
             "Factor: on all loads, if masonry bears no tension. A dash: not known.",
             "small");
}

/// A column of the reactions' table; NaN where the support is not there at that stage.
struct SupportColumn {
  std::string heading;
  std::function<double(const PanelResult&, const StageState&)> force;
};
using SupportColumns = std::vector<SupportColumn>;

SupportColumns needle_columns(const solver::Job& job) {
  SupportColumns columns;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    columns.push_back({job.needles[i].name, [i](const PanelResult& a, const StageState& state) {
                         return is_in(state.needles.at(i)) ? a.needles.at(i).force : not_known;
                       }});
  }
  return columns;
}

SupportColumn joist_column(const std::string& shore) {
  return {"joists on " + shore, [shore](const PanelResult& analysis, const StageState&) {
            const auto joist =
                std::ranges::find(analysis.joists, shore, &solver::JoistReaction::shore);
            return joist == analysis.joists.end() ? not_known : joist->force;
          }};
}

SupportColumn beam_column(const char* heading, double solver::BeamResult::*reaction) {
  return {heading, [reaction](const PanelResult& a, const StageState&) {
            return a.beam ? *a.beam.*reaction : not_known;
          }};
}

/// All but the needles.
SupportColumns other_columns(const solver::Job& job) {
  SupportColumns columns = {
      {"left pier", [](const PanelResult& a, const StageState&) { return a.base_left; }},
      {"right pier", [](const PanelResult& a, const StageState&) { return a.base_right; }},
      {"under the cut", [](const PanelResult& a, const StageState& state) {
         return state.is_out(solver::cut_region) ? not_known : a.base_cut;
       }}};
  for (const solver::DeadShore& shore : job.dead_shores) {
    if (shore.joist_ends) columns.push_back(joist_column(shore.name));
  }
  columns.push_back(
      {"load in all", [](const PanelResult& a, const StageState&) { return a.load_total; }});
  if (job.beam) {
    columns.push_back(beam_column("beam, left", &solver::BeamResult::reaction_left));
    columns.push_back(beam_column("beam, right", &solver::BeamResult::reaction_right));
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
  const std::vector<StageState> states = states_of(result);
  for (std::size_t i = 0; i < result.stages.size(); ++i) {
    const StageResult& stage = result.stages[i];
    const PanelResult* analysis = find_analysis(stage, model);
    if (analysis == nullptr) continue;
    if (!analysis->stands()) {
      content.add({stage.name, "no equilibrium"}, RowKind::fails);
      continue;
    }
    std::vector<std::string> cells = {stage.name};
    for (const SupportColumn& column : columns) {
      cells.push_back(kilonewtons(column.force(*analysis, states[i])));
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

Html reactions(const solver::JobResult& result) {
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

std::string end_words(const mesh::Point& end) {
  return fmt::format("{}, {}", whole_millimetres(end.x), whole_millimetres(end.y));
}

bool is_cracking_analysed(const solver::Job& job) {
  return std::ranges::count(job.analysis.masonry, solver::MasonryModel::cracked) > 0;
}

Html cracks(const solver::JobResult& result) {
  if (!is_cracking_analysed(result.job)) return {};
  const Html heading = element("h3", text("Cracks"));
  const StageAnalysis widest = worst_analysis(
      result, solver::MasonryModel::cracked,
      [](const PanelResult& a) { return a.cracks.empty() ? 0.0 : a.cracks.front().width; });
  if (widest.analysis == nullptr || widest.analysis->cracks.empty()) {
    return heading + paragraph("No crack wider than a hair in any stage.");
  }
  const std::vector<solver::Crack>& found = widest.analysis->cracks;
  Table content{"cracks",
                fmt::format("Widest first, in stage \u201c{}\u201d, which has the widest; places "
                            "are x and height in mm",
                            widest.stage->name),
                {{"Where"},
                 {"Width mm", true},
                 {"Length mm", true},
                 {"From", true},
                 {"To", true},
                 {"From level \u00b0", true}},
                {}};
  for (std::size_t i = 0; i < std::min(found.size(), most_cracks); ++i) {
    const solver::Crack& crack = found[i];
    content.add({crack.where, fine_millimetres(crack.width), whole_millimetres(crack.length),
                 end_words(crack.from), end_words(crack.to), whole_millimetres(crack.angle)});
  }
  const std::string more =
      found.size() > most_cracks
          ? fmt::format("There are {} more, none wider. ", found.size() - most_cracks)
          : "";
  return heading + table(content) +
         paragraph(more +
                       "Widths come from the strain over elements of a continuous material: they "
                       "tell where and about how wide, not each crack by itself.",
                   "small");
}

Html damage(const solver::JobResult& result) {
  const auto [stage, worst] = worst_damage(result);
  if (worst == nullptr) return {};
  return element("h3", text("Damage to the masonry that stays")) +
         paragraph(fmt::format(
             "Worst in stage \u201c{}\u201d: category {} by strain (largest tensile strain {} %, "
             "deflection ratio {} %) and {} by crack width (widest {} mm). {}",
             stage->name, worst->by_strain, significant(100.0 * worst->tensile_strain, 2),
             significant(100.0 * worst->deflection_ratio, 2), worst->by_width,
             fine_millimetres(worst->widest_crack), as_sentence(worst->in_words))) +
         paragraph(
             "Categories by limiting tensile strain: Burland, Broms and de Mello 1977; Boscardin "
             "and Cording 1989.",
             "small");
}

/// Says where the work ends, if a stage does not stand.
Html end_of_work(const solver::JobResult& result) {
  if (result.stages.empty() || facts_of(result.stages.back()).stands) return {};
  const std::string failed = result.stages.back().name;
  const std::size_t count = result.stages.size();
  const std::string safe = count < 2
                               ? "No stage before it was analysed."
                               : fmt::format("The last stage in which it stands is \u201c{}\u201d.",
                                             result.stages[count - 2].name);
  return paragraph(fmt::format("The wall does not stand in stage \u201c{}\u201d.", failed),
                   safe + " Nothing after it was analysed: the stages that follow are not here.",
                   "alarm");
}

}  // namespace

Html stages_section(const solver::JobResult& result) {
  if (!is_staged(result)) return {};
  const Html body =
      paragraph(
          "The work in its order. Each stage starts from the state the one before left: what is "
          "added comes in stress-free, what is taken out gives its load to what is left.") +
      end_of_work(result) + work_table(result) + reactions(result) + cracks(result) +
      damage(result);
  return section("stages", "Stages of the work", body);
}

}  // namespace deadshore::io
