#include "io/sheet/sheet.h"

#include "io/note/html.h"
#include "io/note/inline_svg.h"
#include "io/sheet/sheet_style.h"
#include "io/sheet/sheet_tables.h"
#include "io/sheet/site_steps.h"
#include "viz/figures.h"

#include <algorithm>
#include <array>
#include <vector>

namespace deadshore::io {
namespace {

Html head_of(const std::string& title) {
  return element("head", Html::trusted("<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" "
                                       "content=\"width=device-width, initial-scale=1\"/>\n") +
                             element("title", text("Site sheet: " + title)) +
                             element("style", Html::trusted(std::string(sheet_style))));
}

/// Repeated at the top of every page.
Html running_head(const std::string& title) {
  return element(
      "thead",
      element("tr",
              element("th", element("div",
                                    element("span", text("Site sheet \u00b7 " + title)) +
                                        element("span", text("deadshore " DEADSHORE_VERSION
                                                             " \u00b7 goes with the design note")),
                                    "running"))));
}

Html picture(const solver::JobResult& result) {
  std::vector<viz::SiteMark> marks;
  for (const solver::MonitoringMark& mark : result.monitoring.marks) {
    marks.push_back({mark_name(marks.size()), mark.at});
  }
  return element("div",
                 inline_svg(viz::site_elevation_svg(result, marks), "sheet-",
                            "The wall as cut, with its needles and the marks to watch. mm"),
                 "picture");
}

Html alarm(const std::vector<SiteStep>& steps) {
  if (!std::ranges::all_of(steps, &SiteStep::stands)) {
    return paragraph("DO NOT BEGIN.",
                     "In this order of work the wall comes to a step in which it does not stand.",
                     "alarm");
  }
  const auto past_stop = [](const SiteStep& step) { return step.movement.past_stop; };
  if (std::ranges::any_of(steps, past_stop)) {
    return paragraph("Ask the engineer first.",
                     "Where the stop value says \u201cask\u201d, the movement expected is itself "
                     "past what the rule below allows. Nobody begins that step before the engineer "
                     "has set a value.",
                     "alarm");
  }
  return {};
}

Html monitoring_rules(const solver::Monitoring& monitoring) {
  const auto is_known = [](const solver::StageMovement& stage) { return stage.stop_at > 0.0; };
  std::vector<std::string> rules;
  if (std::ranges::any_of(monitoring.stages, is_known)) {
    rules.push_back(stop_rule(monitoring.slight_damage));
    rules.emplace_back(
        "Movement counts from the reading before step 2. Up by more than 1 mm when "
        "jacking: stop too.");
  } else {
    rules.emplace_back(
        "No movement is known for this order of work: the engineer sets the stop "
        "values before it begins.");
  }
  rules.emplace_back("Read every mark before and after each step, and each morning.");
  return bullets(rules);
}

Html cautions() {
  static const std::array<std::string, 4> lines = {
      "Walls fall without warning and kill. Nobody works to this sheet before a structural "
      "engineer has checked it and both permits are signed.",
      "At a stop value, a new crack, a noise, a loose needle: everyone out, tighten nothing under "
      "the wall, ring the engineer.",
      "Nobody in the rooms above, beside or under; a fence on both sides; gas, water and "
      "electricity in the wall proved dead; asbestos looked for.",
      "Local rules, building control and the engineer come before this sheet."};
  return bullets(lines);
}

Html titled(std::string_view heading, const Html& body) {
  return element("div", element("h2", text(heading)) + body, "keep");
}

}  // namespace

std::string sheet_html(const solver::JobResult& result) {
  const std::vector<SiteStep> steps = site_steps(result);
  const std::string& title = result.job.title;
  const Html beside_picture = sheet_schedule(result) +
                              titled("Weights and times", sheet_facts(result)) +
                              sheet_marks(result);
  const Html top = element("h1", text(title)) + alarm(steps) +
                   element("div", picture(result) + element("div", beside_picture), "columns");
  const Html watching = element("div",
                                titled("When to stop", monitoring_rules(result.monitoring)) +
                                    titled("People can be hurt", cautions()),
                                "columns even");
  const Html content =
      top + titled("Order of work", Html()) + sheet_steps(steps) + watching + sheet_signatures();
  const Html page = running_head(title) + element("tbody", element("tr", element("td", content)));
  const Html body = element("body", element("table", page, "sheet"));
  return "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\">\n" +
         (head_of(title) + body).str() + "</html>\n";
}

}  // namespace deadshore::io
