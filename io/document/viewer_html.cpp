#include "io/document/built_in.h"
#include "io/document/html.h"

#include <fmt/format.h>

namespace deadshore::io {
namespace {

/// JSON that is the same in XML and in HTML, where the text of a script is taken as it stands.
Html embedded(const std::string& data) {
  std::string safe;
  for (const char letter : data) {
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
        "<button type=\"button\" class=\"spot{}{}\" data-support=\"{}\" "
        "style=\"left:{:.2f}%;top:{:.2f}%\">{}<span class=\"spot-load\"></span></button>\n",
        spot.is_needle ? " of-needle" : "", lower ? " lower" : "", escape_html(spot.name),
        100.0 * spot.across, 100.0 * spot.down,
        spot.is_needle ? fmt::format("<span class=\"spot-name\">{}</span> ", escape_html(spot.name))
                       : ""));
  }
  return buttons;
}

Html colours(const viz::StageViews& views) {
  std::string steps;
  for (const viz::ColourStep& step : views.scale) {
    steps += fmt::format("<li><span style=\"background:{}\"></span>{}</li>\n", step.colour,
                         escape_html(step.from));
  }
  return Html::trusted(
      "<p class=\"small\" id=\"viewer-scale-words\">Principal compression from, N/mm\u00b2; "
      "hatched masonry is loose, black lines are cracks</p>\n"
      "<ul class=\"colour-scale\" aria-labelledby=\"viewer-scale-words\">\n" +
      steps + "</ul>\n");
}

Html masonry_choice(const std::vector<std::string>& models) {
  if (models.size() < 2) return {};
  std::string choices;
  for (const std::string& model : models) {
    choices += fmt::format(
        "<label><input type=\"radio\" name=\"viewer-masonry\" value=\"{0}\"/> {0}</label>\n",
        escape_html(model));
  }
  return Html::trusted("<fieldset><legend>Masonry</legend>\n" + choices + "</fieldset>\n");
}

Html controls(const std::vector<std::string>& stages) {
  Html ticks;
  for (const std::string& stage : stages) {
    ticks += element("span", element("span", html_of(Text(stage))), "tick");
  }
  return Html::trusted(
             fmt::format("<div class=\"viewer-controls\">\n"
                         "<button type=\"button\" id=\"viewer-back\">\u2190 Back</button>\n"
                         "<div class=\"viewer-track\" style=\"--stages:{}\"><input type=\"range\" "
                         "id=\"viewer-slider\" min=\"0\" max=\"{}\" step=\"1\" value=\"0\" "
                         "aria-label=\"Stage of the work\"/>\n"
                         "<div class=\"ticks\" aria-hidden=\"true\">\n",
                         stages.size(), stages.size() - 1)) +
         ticks +
         Html::trusted(
             "</div></div>\n<button type=\"button\" id=\"viewer-on\">On \u2192</button>\n"
             "</div>\n");
}

/// Filled in by the script.
constexpr const char* chart_and_tables =
    "<div class=\"viewer-series\"><p id=\"viewer-chart-words\"></p><div "
    "id=\"viewer-chart\"></div><p class=\"small\">Point at a support, or step to it with the Tab "
    "key, to see it through all stages.</p></div>\n"
    "<div class=\"viewer-tables\"><table id=\"viewer-reactions\"><caption>What carries the wall, "
    "kN, characteristic</caption><thead><tr><th scope=\"col\">Support</th><th scope=\"col\" "
    "class=\"fig\">Load kN</th></tr></thead><tbody></tbody></table>\n"
    "<table id=\"viewer-facts\"><caption>What it does to the wall</caption><thead><tr><th "
    "scope=\"col\">What</th><th scope=\"col\">Found</th></tr></thead><tbody></tbody></table>\n"
    "</div>\n";

}  // namespace

Html html_of(const StageViewer& viewer) {
  return Html::trusted(
             "<div id=\"viewer\" class=\"screen-only\" hidden=\"hidden\">\n"
             "<h2 id=\"viewer-heading\">Through the stages</h2>\n") +
         controls(viewer.stages) + masonry_choice(viewer.models) +
         Html::trusted(
             "<output id=\"viewer-words\" aria-live=\"polite\" "
             "for=\"viewer-slider\"></output>\n<div class=\"viewer-body\">\n"
             "<div class=\"viewer-figure\"><div class=\"paper\"><div "
             "id=\"viewer-picture\"></div>\n") +
         spots(viewer.views) + Html::trusted("</div>\n") + colours(viewer.views) +
         Html::trusted("</div>\n") + Html::trusted(chart_and_tables) + Html::trusted("</div>\n") +
         pictures(viewer.views) + embedded(viewer.data) + script() + Html::trusted("</div>\n");
}

}  // namespace deadshore::io
