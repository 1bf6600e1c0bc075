#include "io/note/inline_svg.h"
#include "io/note/sections.h"
#include "io/note/viewer_script.h"
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
    facts.push_back(fact("factor", "Factor without tension", factor_words(stage.safety->factor)));
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

Json data_of(const solver::JobResult& result) {
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
  return data;
}

/// JSON that is the same in XML and in HTML, where the text of a script is taken as it stands.
Html embedded(const Json& data) {
  std::string safe;
  for (const char letter : data.dump(-1, ' ', false, Json::error_handler_t::replace)) {
    if (letter == '<' || letter == '>' || letter == '&') {
      safe += fmt::format("\\u{:04x}", static_cast<int>(letter));
    } else {
      safe += letter;
    }
  }
  return Html::trusted("<script id=\"viewer-data\" type=\"application/json\">" + safe +
                       "</script>\n");
}

/// In comments to the script, so that the page is XML too.
Html script() {
  return Html::trusted("<script>\n//<![CDATA[\n" + std::string(viewer_script()) +
                       "//]]>\n</script>\n");
}

Html pictures(const viz::StageViews& views) {
  Html templates;
  for (const viz::StageView& view : views.views) {
    const std::string id = fmt::format("view-{}-{}", view.stage + 1, solver::to_string(view.model));
    templates += Html::trusted(fmt::format("<template id=\"{}\">", id)) +
                 inline_svg(view.svg, id + "-", "The wall at this stage: principal compression") +
                 Html::trusted("</template>\n");
  }
  return templates;
}

/// Whether the buttons of neighbouring needles would cover each other on a phone.
bool are_tight(const std::vector<viz::SupportSpot>& spots) {
  constexpr double room = 0.1;  // of the picture's width: 34 px on a phone
  for (std::size_t i = 1; i < spots.size(); ++i) {
    const bool needles = spots[i - 1].is_needle && spots[i].is_needle;
    if (needles && spots[i].across - spots[i - 1].across < room) return true;
  }
  return false;
}

/// Buttons over the picture, where each needle and pier is; on two levels where they are tight.
Html spots(const viz::StageViews& views) {
  Html buttons;
  const bool two_levels = are_tight(views.spots);
  int number = 0;
  for (const viz::SupportSpot& spot : views.spots) {
    const bool lower = two_levels && spot.is_needle && number++ % 2 == 1;
    buttons += Html::trusted(fmt::format(
        "<button type=\"button\" class=\"spot{}{}\" data-support=\"{}\" style=\"left:{:.2f}%;"
        "top:{:.2f}%\">{}<span class=\"spot-load\"></span></button>\n",
        spot.is_needle ? " of-needle" : "", lower ? " lower" : "", escape_html(spot.name),
        100.0 * spot.across, 100.0 * spot.down,
        spot.is_needle ? fmt::format("<span class=\"spot-name\">{}</span> ", escape_html(spot.name))
                       : ""));
  }
  return buttons;
}

Html colours(const viz::StageViews& views) {
  Html steps;
  for (const viz::ColourStep& step : views.scale) {
    steps += Html::trusted(fmt::format("<li><span style=\"background:{}\"></span>{}</li>\n",
                                       step.colour, escape_html(step.from)));
  }
  return Html::trusted(
             "<p class=\"small\" id=\"viewer-scale-words\">Principal compression from, "
             "N/mm\u00b2; hatched masonry is loose, black lines are cracks</p>\n"
             "<ul class=\"colour-scale\" aria-labelledby=\"viewer-scale-words\">\n") +
         steps + Html::trusted("</ul>\n");
}

Html masonry_choice(const solver::Job& job) {
  if (job.analysis.masonry.size() < 2) return {};
  Html choices;
  for (const MasonryModel model : job.analysis.masonry) {
    choices += Html::trusted(
        fmt::format("<label><input type=\"radio\" name=\"viewer-masonry\" value=\"{0}\"/> {0}"
                    "</label>\n",
                    solver::to_string(model)));
  }
  return Html::trusted("<fieldset><legend>Masonry</legend>\n") + choices +
         Html::trusted("</fieldset>\n");
}

Html controls(const solver::JobResult& result) {
  Html ticks;
  for (const StageResult& stage : result.stages) {
    ticks += element("span", element("span", text(stage.name)), "tick");
  }
  return Html::trusted(
             fmt::format("<div class=\"viewer-controls\">\n"
                         "<button type=\"button\" id=\"viewer-back\">\u2190 Back</button>\n"
                         "<div class=\"viewer-track\" style=\"--stages:{}\"><input type=\"range\" "
                         "id=\"viewer-slider\" min=\"0\" "
                         "max=\"{}\" step=\"1\" value=\"0\" aria-label=\"Stage of the work\"/>\n"
                         "<div class=\"ticks\" aria-hidden=\"true\">\n",
                         result.stages.size(), result.stages.size() - 1)) +
         ticks +
         Html::trusted(
             "</div></div>\n<button type=\"button\" id=\"viewer-on\">On \u2192</button>\n"
             "</div>\n");
}

Html tables() {
  return Html::trusted(
      "<table id=\"viewer-reactions\"><caption>What carries the wall, kN, characteristic</caption>"
      "<thead><tr><th scope=\"col\">Support</th><th scope=\"col\" class=\"fig\">Load kN</th></tr>"
      "</thead><tbody></tbody></table>\n"
      "<table id=\"viewer-facts\"><caption>What it does to the wall</caption>"
      "<thead><tr><th scope=\"col\">What</th><th scope=\"col\">Found</th></tr></thead>"
      "<tbody></tbody></table>\n");
}

Html chart() {
  return Html::trusted(
      "<div class=\"viewer-series\"><p id=\"viewer-chart-words\"></p>"
      "<div id=\"viewer-chart\"></div>"
      "<p class=\"small\">Point at a support, or step to it with the Tab key, to see it through "
      "all "
      "stages.</p></div>\n");
}

bool can_be_shown(const solver::JobResult& result) {
  return is_staged(result) && std::ranges::all_of(result.job.analysis.masonry, [&](auto model) {
           return !viz::support_series(result, model).empty();
         });
}

}  // namespace

Html stage_viewer(const solver::JobResult& result) {
  if (!can_be_shown(result)) return {};
  const viz::StageViews views = viz::draw_stage_views(result);
  const Html figure =
      Html::trusted(
          "<div class=\"viewer-figure\"><div class=\"paper\"><div id=\"viewer-picture\">"
          "</div>\n") +
      spots(views) + Html::trusted("</div>\n") + colours(views) + Html::trusted("</div>\n");
  return Html::trusted(
             "<div id=\"viewer\" class=\"screen-only\" hidden=\"hidden\">\n"
             "<h2 id=\"viewer-heading\">Through the stages</h2>\n") +
         controls(result) + masonry_choice(result.job) +
         Html::trusted(
             "<output id=\"viewer-words\" aria-live=\"polite\" "
             "for=\"viewer-slider\"></output>\n<div class=\"viewer-body\">\n") +
         figure + chart() + element("div", tables(), "viewer-tables") + Html::trusted("</div>\n") +
         pictures(views) + embedded(data_of(result)) + script() + Html::trusted("</div>\n");
}

}  // namespace deadshore::io
