#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/study/envelope.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

/// One row of the loads table.
struct LoadLine {
  std::string name;
  std::string where;
  std::string dead;
  std::string imposed;
  std::string characteristic;
  double total = 0.0;  ///< N
};

/// What the hand method found of one solid over all supports: its face area and weight.
struct Solid {
  double area = 0.0;
  double weight = 0.0;
};

Solid sum_of(const solver::SpreadResult& hand, const solver::SpreadThing& thing) {
  std::vector<std::reference_wrapper<const solver::SpreadSum>> sums(hand.needles.begin(),
                                                                    hand.needles.end());
  sums.insert(sums.end(), {hand.left_pier, hand.right_pier});
  Solid solid;
  for (const solver::SpreadSum& sum : sums) {
    for (const solver::SpreadItem& item : sum.items) {
      if (item.thing != thing) continue;
      solid.area += item.area;
      solid.weight += item.load;
    }
  }
  return solid;
}

LoadLine self_weight(const std::string& name, const Solid& solid, double thickness,
                     double weight_per_volume) {
  const std::string worked =
      fmt::format("{} m\u00b2 \u00d7 {} m \u00d7 {}", square_metres(solid.area),
                  significant(thickness / 1e3, 4), unit_weight(weight_per_volume));
  const std::string dead = kilonewtons(solid.weight) + " kN";
  return {"Weight of " + name, worked, dead, "\u2013", dead, solid.weight};
}

std::vector<LoadLine> load_lines(const solver::JobResult& result) {
  const solver::Job& job = result.job;
  std::vector<LoadLine> lines;
  lines.push_back(self_weight("the masonry", sum_of(result.hand, solver::WallMasonry{}),
                              job.thickness, job.masonry.unit_weight));
  for (std::size_t i = 0; i < job.lintels.size(); ++i) {
    const solver::Lintel& lintel = job.lintels[i];
    const Solid solid = sum_of(result.hand, solver::LintelId{i});
    if (solid.area <= 0.0) continue;  // it comes out with the cut
    lines.push_back(self_weight(lintel.shape.name, solid, lintel.thickness, lintel.unit_weight));
  }
  const auto per_metre = [](double value) { return significant(value, 4) + " kN/m"; };
  for (const solver::LineLoad& load : job.line_loads) {
    lines.push_back({load.name, place_of(load), per_metre(load.dead), per_metre(load.imposed),
                     per_metre(load.characteristic()), load.characteristic() * load.x.length()});
  }
  for (const solver::PointLoad& load : job.point_loads) {
    lines.push_back({load.name, place_of(load), kilonewtons(load.dead) + " kN",
                     kilonewtons(load.imposed) + " kN", kilonewtons(load.characteristic()) + " kN",
                     load.characteristic()});
  }
  return lines;
}

/// What the analyses were loaded with on the wall as cut.
struct Analysed {
  std::string when;  ///< " in stage ...", where there are stages
  double off = 0.0;  ///< of the loads, N
  double total = 0.0;
};

/// None where no stage has the wall as the table has it: cut, and with nothing more done to it.
std::optional<Analysed> analysed_as_cut(const solver::JobResult& result) {
  for (const solver::StageResult& stage : result.stages) {
    const solver::StageState& state = stage.state;
    const bool as_cut = state.cut_out && !state.pockets_out && !state.beam;
    if (!as_cut || stage.analyses.empty()) continue;
    return Analysed{in_stage(result, stage), load_off(result.job, state),
                    stage.analyses.front().load_total};
  }
  return std::nullopt;
}

/// Says whether the table's sum is what the analyses were loaded with.
Blocks cross_check(double sum, const solver::JobResult& result) {
  constexpr double tolerance = 0.005;
  const std::optional<Analysed> analysed = analysed_as_cut(result);
  if (!analysed) return {};
  const bool all_on = analysed->off == 0.0;
  const std::string less =
      all_on ? ""
             : fmt::format(
                   ", less {} kN that is off the wall{} (on dead shores or taken away), which "
                   "leaves {} kN",
                   kilonewtons(analysed->off), analysed->when, kilonewtons(sum - analysed->off));
  const std::string figures = fmt::format(
      "The table adds up to {} kN{}; the analyses were loaded with {} kN{}.", kilonewtons(sum),
      less, kilonewtons(analysed->total), all_on ? analysed->when : " there");
  const bool agree =
      std::abs(sum - analysed->off - analysed->total) <= tolerance * std::abs(analysed->total);
  if (agree) return Paragraph{figures};
  return callout(Severity::alarm, "The loads do not agree.",
                 figures + " Find out why before using this note.");
}

}  // namespace

Chapter loads_chapter(const solver::JobResult& result) {
  Table content{"load-sum",
                "",
                {"Load", "Where", numeric("Dead"), numeric("Imposed"), numeric("Characteristic"),
                 numeric("Total kN")}};
  double sum = 0.0;
  for (const LoadLine& line : load_lines(result)) {
    content.add({line.name, line.where, line.dead, line.imposed, line.characteristic,
                 kilonewtons(line.total)});
    sum += line.total;
  }
  content.add({"All loads", "", "", "", "", kilonewtons(sum)}, RowKind::total);
  const Blocks opening =
      Paragraph{std::string("Characteristic loads: dead plus imposed with a load factor of 1.0. "
                            "Factor them as the code you work to asks.") +
                (is_staged(result) ? " The masonry is that of the wall as cut." : "")} +
      content;
  return {"loads", "Loads", opening, cross_check(sum, result)};
}

}  // namespace deadshore::io
