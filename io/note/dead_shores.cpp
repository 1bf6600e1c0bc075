#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/job/shore_frame.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <string>
#include <variant>
#include <vector>

namespace deadshore::io {
namespace {

using solver::Check;
using solver::ShoreDesign;
using solver::ShoreFrame;

std::string quoted_name(const std::string& name) {
  return "\u201c" + name + "\u201d";
}

/// A place along the wall: "1.20".
std::string metres(double millimetres) {
  return two_decimals(millimetres / 1000.0);
}

std::string row_words(const ShoreFrame& frame) {
  return fmt::format(
      "along the wall from x = {} m to {} m, its middle {} mm from the wall\u2019s inner face",
      metres(frame.x.from), metres(frame.x.to), millimetres(frame.distance));
}

std::string joist_words(const ShoreFrame& frame) {
  return fmt::format(
      "span {} m from the wall to their far bearing; {} mm wide at {} mm; undersides {} m above "
      "the base",
      metres(frame.joist_span), millimetres(frame.joist_width), millimetres(frame.joist_spacing),
      metres(frame.joist_level));
}

std::string upright_words(const ShoreFrame& frame, const ShoreDesign& design) {
  const std::string set =
      fmt::format("{} mm long between sole and head plate", whole_millimetres(design.length));
  if (const auto* studs = std::get_if<solver::StudRow>(&frame.uprights)) {
    return fmt::format("studs, {}, at {} mm, {}; {}", made_of(solver::NeedleMember{studs->stud}),
                       millimetres(studs->spacing),
                       studs->nogging ? "noggings at mid-height" : "no noggings", set);
  }
  const auto& props = std::get<solver::PropRow>(frame.uprights);
  return fmt::format("props {}, plates {} mm square; {}", made_of(props.prop),
                     millimetres(props.base), set);
}

std::string sole_words(const ShoreFrame& frame) {
  return fmt::format("{}, {} m long, on {}, {}",
                     made_of(solver::NeedleMember{frame.footing.sole.timber}),
                     metres(frame.footing.sole.length), ground_words(frame.footing),
                     level_words(frame.floor_level));
}

Blocks made_of_table(std::size_t number, const ShoreFrame& frame, const ShoreDesign& design) {
  Table content{fmt::format("shore-{}", number), "", {"Dead shore", {quoted_name(design.name)}}};
  content.add({"Row", row_words(frame)});
  content.add({"Joists", joist_words(frame)});
  content.add({"Head plate", made_of(frame.head)});
  content.add({"Uprights", upright_words(frame, design)});
  content.add({"Sole plate", sole_words(frame)});
  return content;
}

std::string load_names(const solver::Job& job, const solver::DeadShore& shore) {
  std::vector<std::string> names;
  for (const solver::LoadId load : solver::loads_of(shore)) {
    names.push_back(quoted_name(name_of(job, target_of(load))));
  }
  return listed(names);
}

/// The load on the head plate with the lever in numbers.
Blocks load_words(const solver::Job& job, const solver::DeadShore& shore,
                  const ShoreDesign& design) {
  const ShoreFrame& frame = *shore.frame;
  const double on_plate =
      std::accumulate(design.loads.begin(), design.loads.end(), 0.0,
                      [](double sum, const auto& load) { return sum + load.characteristic(); });
  return Paragraph{fmt::format(
             "By moments about the joists\u2019 far bearing the shore takes {} / ({} \u2212 {}) = "
             "{} times what the wall loses: {} over the row is {} kN on the wall and {} kN on the "
             "head plate; with the plate\u2019s own weight {} kN on all uprights.",
             metres(frame.joist_span), metres(frame.joist_span), metres(frame.distance),
             fmt::format("{:.3f}", design.lever), load_names(job, shore),
             fine_kilonewtons(on_plate / design.lever), fine_kilonewtons(on_plate),
             fine_kilonewtons(design.total))} +
         Paragraph{
             "The shore is sized for the whole load, all of it off the wall, whatever its share in "
             "the analysis. This holds as long as the wall does not hold the joist ends down: "
             "tighten only until the joists just lift, and look at the ends."};
}

const Check* worst_check_of(const ShoreDesign& design, const std::string& member) {
  const Check* worst = nullptr;
  for (const Check& check : design.checks)
    if (check.member == member && (worst == nullptr || check.utilisation() > worst->utilisation()))
      worst = &check;
  return worst;
}

Table uprights_table(std::size_t number, const ShoreDesign& design) {
  Table content{
      fmt::format("shore-{}-uprights", number),
      "The largest load on each upright, unfactored, over all places of the joists; they need not "
      "come together",
      {"Upright", numeric("x m"), numeric("Load kN"), "Stands under", numeric("Worst used")}};
  for (const solver::UprightLoad& upright : design.uprights) {
    const Check* worst = worst_check_of(design, upright.mark);
    content.add({upright.mark, metres(upright.x), kilonewtons(upright.load),
                 upright.extra_for.empty() ? "the row" : quoted_name(upright.extra_for),
                 worst == nullptr ? "\u2013" : utilisation_words(*worst)},
                worst == nullptr ? RowKind::plain : row_kind_of(*worst));
  }
  return content;
}

Blocks plate_words(const ShoreDesign& design) {
  return Paragraph{fmt::format(
      "Head plate, unfactored: largest moment {} kNm, shear force {} kN, deflection {} mm. It is a "
      "continuous beam over uprights that only push; joists stand at the worst place on it, "
      "imposed load on every bay or on every other one, uprights rigid or giving as they and the "
      "ground do, and the worst of all counts. Loads at points count at their middles. Every check "
      "is in the chapter of member checks.",
      two_decimals(design.largest_moment / 1e6), kilonewtons(design.largest_shear),
      fine_millimetres(design.deflection))};
}

/// Where the head plate would tip.
Blocks no_figures(const ShoreDesign& design) {
  Blocks reasons;
  for (const Check& check : design.checks)
    reasons += callout(Severity::warning, "No load is given.", as_sentence(check.caution));
  return reasons;
}

Blocks advice_of(const ShoreDesign& design) {
  if (design.advice.empty()) return {};
  return bullets(design.advice);
}

}  // namespace

std::vector<std::string> shore_advice(const solver::JobResult& result) {
  std::vector<std::string> lines;
  for (const solver::ShoreDesign& design : result.shores) {
    for (const std::string& sentence : design.advice) {
      lines.push_back(
          fmt::format("Dead shore \u201c{}\u201d: {}", design.name, as_sentence(sentence)));
    }
  }
  return lines;
}

Chapter dead_shores_chapter(const solver::JobResult& result) {
  Blocks body;
  std::size_t number = 0;
  for (const ShoreDesign& design : result.shores) {
    const solver::DeadShore& shore = result.job.dead_shores.at(index_of(design.shore));
    if (!shore.frame) continue;
    ++number;
    body += made_of_table(number, *shore.frame, design);
    body += design.uprights.empty() ? no_figures(design)
                                    : load_words(result.job, shore, design) +
                                          uprights_table(number, design) + plate_words(design);
    body += advice_of(design);
  }
  if (number == 0) return {};
  return {"dead-shore-frames", "Dead shores", {}, body};
}

}  // namespace deadshore::io
