#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "io/results/json_numbers.h"
#include "io/results/work_words.h"
#include "solver/panel/support_reactions.h"
#include "solver/study/stage_facts.h"
#include "viz/stages/stage_views.h"
#include "viz/stages/support_series.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

/// The stages one over another on the screen: what the script of stage_viewer.js works on.
namespace deadshore::io {
namespace {

using solver::MasonryModel;
using solver::PanelResult;
using solver::StageResult;

Json fact(const char* key, const char* what, const std::string& found) {
  return {{"key", key}, {"what", what}, {"found", found}};
}

/// The worst check that could be made in the stage.
Json worst_check(const solver::JobResult& result, const StageResult& stage) {
  const auto worst = std::ranges::find_if(result.checks, [&](const solver::Check& check) {
    return check.stage == stage.name && !check.not_verified;
  });
  return fact("check", "Worst check of the stage",
              worst == result.checks.end() ? "every check is worse in another stage"
                                           : fmt::format("{}: {}, {}", utilisation_words(*worst),
                                                         worst->member, worst->check));
}

void add_of_cracked_masonry(const PanelResult& analysis, Json& facts) {
  facts.push_back(fact("crack", "Widest crack",
                       analysis.cracks.empty()
                           ? "none wider than a hair"
                           : fmt::format("{} mm, {}", fine_millimetres(analysis.cracks[0].width),
                                         analysis.cracks[0].where)));
  const double loose = analysis.loose_weight();
  facts.push_back(fact("loose", "Loose masonry",
                       loose > 0.0 ? loose_kilonewtons(loose) + " kN would fall" : "none"));
}

Json facts_of(const solver::JobResult& result, const StageResult& stage, MasonryModel model) {
  Json facts = Json::array();
  const PanelResult* analysis = find_analysis(stage, model);
  if (analysis == nullptr) return facts;
  if (!analysis->stands()) {
    facts.push_back(fact("equilibrium", "It does not stand", *analysis->no_equilibrium));
    return facts;
  }
  facts.push_back(
      fact("settlement", "Largest settlement", fine_millimetres(analysis->max_settlement) + " mm"));
  facts.push_back(fact("compression", "Largest compression",
                       two_decimals(analysis->max_compression) + " N/mm\u00b2"));
  if (analysis->damage)
    facts.push_back(fact("damage", "Damage, 0 to 5", analysis->damage->in_words));
  if (model == MasonryModel::cracked) add_of_cracked_masonry(*analysis, facts);
  if (stage.safety) {
    facts.push_back(fact("factor", "Factor without tension",
                         fmt::format("{} to {}", lower_factor_words(stage.safety->factor),
                                     upper_factor_words(stage.safety->upper_factor))));
  }
  facts.push_back(worst_check(result, stage));
  return facts;
}

const char* words_for(solver::SupportKind kind) {
  if (kind == solver::SupportKind::needle) return "needle";
  if (kind == solver::SupportKind::joists) return "joists";
  return solver::group_of(kind) == solver::SupportGroup::bases ? "base" : "beam end";
}

/// Loads as the note prints them; null where a support is not there.
Json supports_of(const solver::JobResult& result, MasonryModel model) {
  Json supports = Json::array();
  for (const viz::SupportSeries& series : viz::support_series(result, model)) {
    Json values = Json::array();
    for (const double value : series.values) {
      values.push_back(std::isfinite(value) ? Json(kilonewtons(value * 1e3)) : Json(nullptr));
    }
    supports.push_back(
        {{"name", series.name}, {"kind", words_for(series.support.kind)}, {"values", values}});
  }
  return supports;
}

std::size_t number_of(const solver::JobResult& result, const StageResult* stage) {
  return stage == nullptr ? 0 : static_cast<std::size_t>(stage - result.stages.data());
}

std::string data_of(const solver::JobResult& result) {
  Json data = {{"start", number_of(result, governing_stage(result))},
               {"models", Json::array()},
               {"stages", Json::array()},
               {"supports", Json::object()},
               {"facts", Json::object()}};
  for (const StageResult& stage : result.stages) {
    std::string done = as_sentence(done_in_words(result.job, stage.operations));
    done.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(done.front())));
    data["stages"].push_back(
        {{"name", stage.name}, {"day", significant(stage.day, 4)}, {"done", std::move(done)}});
  }
  for (const MasonryModel model : result.job.analysis.masonry) {
    const char* name = solver::to_string(model);
    data["models"].push_back(name);
    data["supports"][name] = supports_of(result, model);
    Json facts = Json::array();
    for (const StageResult& stage : result.stages) facts.push_back(facts_of(result, stage, model));
    data["facts"][name] = std::move(facts);
  }
  return data.dump(-1, ' ', false, Json::error_handler_t::replace);
}

bool can_be_shown(const solver::JobResult& result) {
  return is_staged(result) && std::ranges::all_of(result.job.analysis.masonry, [&](auto model) {
           return !viz::support_series(result, model).empty();
         });
}

}  // namespace

Blocks stage_viewer(const solver::JobResult& result) {
  if (!can_be_shown(result)) return {};
  StageViewer viewer{viz::draw_stage_views(result), {}, {}, data_of(result)};
  for (const StageResult& stage : result.stages) viewer.stages.push_back(stage.name);
  for (const MasonryModel model : result.job.analysis.masonry) {
    viewer.models.emplace_back(solver::to_string(model));
  }
  return viewer;
}

}  // namespace deadshore::io
