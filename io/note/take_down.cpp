#include "io/note/chapters.h"
#include "io/note/wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>

namespace deadshore::io {
namespace {

using solver::Action;
using solver::TakeDownLine;

std::string quantity_of(const TakeDownLine& line) {
  switch (line.measure) {
    case solver::Measure::area:
      return square_metres(line.quantity) + " m\u00b2";
    case solver::Measure::volume:
      return three_figures(line.quantity / 1e9) + " m\u00b3";
    case solver::Measure::pieces:
      return significant(line.quantity, 4);
  }
  return "";
}

std::string unit_load_of(const TakeDownLine& line) {
  switch (line.measure) {
    case solver::Measure::area:
      return significant(line.unit_load * 1e3, 4) + " kN/m\u00b2";
    case solver::Measure::volume:
      return unit_weight(line.unit_load);
    case solver::Measure::pieces:
      return fine_kilonewtons(line.unit_load) + " kN";
  }
  return "";
}

/// Snow and access never act together: the smaller of an element's two is not counted.
bool is_counted(Action action, const solver::ActionSums& sums) {
  if (action == Action::snow) return sums.snow > sums.roof_access;
  if (action == Action::roof_access) return sums.roof_access >= sums.snow;
  return true;
}

/// "(2.6 m + 0.3 m) x 5.2 m / cos 30 deg" in the note's signs, with the source behind it.
std::string working_of(const TakeDownLine& line) {
  std::string words = line.working;
  const auto replace_all = [&](std::string_view plain, std::string_view sign) {
    for (std::size_t at = words.find(plain); at != std::string::npos; at = words.find(plain, at)) {
      words.replace(at, plain.size(), sign);
      at += sign.size();
    }
  };
  replace_all(" x ", " \u00d7 ");
  replace_all(" deg", "\u00b0");
  if (!words.empty()) words += " \u00b7 ";
  return with_raised_powers(words + line.source);
}

void add_line(const TakeDownLine& line, const solver::ActionSums& sums, Table& content) {
  const std::string load = fine_kilonewtons(line.total);
  const std::string imposed = is_counted(line.action, sums) ? load : "(" + load + ")";
  const bool dead = line.action == Action::dead;
  content.add({line.item, quantity_of(line), unit_load_of(line), significant(line.share, 4),
               dead ? load : "", dead ? "" : imposed});
  content.add({working_of(line)}, RowKind::working);
}

Table lines_table(const solver::TakeDown& taken) {
  Table content{"take-down-lines",
                "Quantity \u00d7 unit load \u00d7 share = load; under each, how the quantity comes "
                "about, and where the unit load is from",
                {"Part", numeric("Quantity"), numeric("Unit load"), numeric("Share"),
                 numeric("Dead kN"), numeric("Imposed kN")}};
  content.dense = true;
  for (const solver::TakenDown& part : taken.loads) {
    content.add({part.element}, RowKind::heading);
    for (const TakeDownLine& line : taken.lines) {
      if (line.element == part.element) add_line(line, part.sums, content);
    }
    content.add({"Sum of " + part.element, "", "", "", fine_kilonewtons(part.sums.dead),
                 fine_kilonewtons(part.sums.imposed())},
                RowKind::total);
  }
  return content;
}

std::string place_on_wall(const solver::TakenDown& part) {
  if (part.line) {
    return place_of(solver::LineLoad{
        .name = "", .level = part.level, .follows_top = part.follows_top, .x = part.x});
  }
  return place_of(solver::PointLoad{
      .name = "", .x = part.x.middle(), .level = part.level, .bearing = part.x.length()});
}

/// The load as the wall gets it.
std::string becomes(const solver::TakenDown& part, double newtons) {
  return part.line ? significant(newtons / part.x.length(), 4) + " kN/m"
                   : fine_kilonewtons(newtons) + " kN";
}

Table sums_table(const solver::TakeDown& taken) {
  Table content{"take-down-sums",
                "What the wall gets of each",
                {"Load", "Where", numeric("Dead"), numeric("Imposed"), numeric("Dead kN"),
                 numeric("Imposed kN")}};
  double imposed = 0.0;
  for (const solver::TakenDown& part : taken.loads) {
    content.add({part.element, place_on_wall(part), becomes(part, part.sums.dead),
                 becomes(part, part.sums.imposed()), fine_kilonewtons(part.sums.dead),
                 fine_kilonewtons(part.sums.imposed())});
    imposed += part.sums.imposed();
  }
  content.add({"All of the house", "", "", "", fine_kilonewtons(taken.total().dead),
               fine_kilonewtons(imposed)},
              RowKind::total);
  return content;
}

Table combinations_table(const solver::ActionSums& total) {
  const solver::CombinedSums sums = solver::combined(total);
  Table content{"take-down-combinations",
                "All of the house on the wall, put together by EN 1990 with every variable action "
                "leading in turn",
                {"Sum", numeric("kN")}};
  content.add({"Dead", fine_kilonewtons(total.dead)});
  content.add({"Imposed on floors", fine_kilonewtons(total.floor_imposed)});
  content.add({"Access to roofs", fine_kilonewtons(total.roof_access)});
  content.add({"Snow", fine_kilonewtons(total.snow)});
  content.add({"Service: characteristic, factor 1.0", fine_kilonewtons(sums.service)});
  content.add({"(6.10)", fine_kilonewtons(sums.eq_6_10)});
  content.add({"(6.10a)", fine_kilonewtons(sums.eq_6_10a)});
  content.add({"(6.10b)", fine_kilonewtons(sums.eq_6_10b)});
  return content;
}

}  // namespace

Chapter take_down_chapter(const solver::JobResult& result) {
  const solver::TakeDown& taken = result.take_down;
  if (taken.loads.empty()) return {};
  std::string rules =
      "What the house brings down to the wall, by statics of joists simply supported at both ends. "
      "Characteristic loads.";
  if (!result.job.house.roofs.empty()) {
    rules +=
        " Snow and access to a roof never act together (EN 1991-1-1 3.3.2(1)): of the two the "
        "larger counts for each slope, and the other stands in brackets.";
  }
  const Blocks body = lines_table(taken) + sums_table(taken) + combinations_table(taken.total()) +
                      Paragraph{
                          "What the job does not describe is not in this sum. Open up and see what "
                          "bears on the wall, which way joists run and what they are covered with.",
                          Tone::small};
  return {"take-down", "Take-down", Paragraph{rules}, body};
}

}  // namespace deadshore::io
