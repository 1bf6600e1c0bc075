#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/beam/beam_checks.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <array>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using solver::BeamResult;
using solver::HandBeam;
using solver::PanelResult;
using solver::PermanentBeam;

constexpr std::array<double, 6> ages = {1.0, 2.0, 3.0, 7.0, 14.0, 28.0};  // days

Table beam_table(const PermanentBeam& beam) {
  Table content{"beam-given", "", {"Permanent beam", {fmt::format("\u201c{}\u201d", beam.name)}}};
  const solver::SteelMember& member = beam.member;
  content.add(
      {"Section", fmt::format("{} \u00d7 {} in {}, class {} in bending; {} kN/m in all", beam.count,
                              member.section.name, solver::to_string(member.grade),
                              member.class_in_bending, two_decimals(beam.weight()))});
  content.add({"Bearing", fmt::format("{} mm at each end", millimetres(beam.bearing))});
  content.add({"Held sideways", beam.restraint_spacing > 0.0
                                    ? fmt::format("at its top flange every {} mm",
                                                  millimetres(beam.restraint_spacing))
                                    : "at its bearings alone"});
  const solver::Padstone& stone = beam.padstone;
  content.add(
      {"Padstones",
       fmt::format("{} mm along the wall, {} mm deep, E {} N/mm\u00b2, strength {} N/mm\u00b2",
                   millimetres(stone.length), millimetres(stone.depth), significant(stone.E, 5),
                   significant(stone.strength, 3))});
  const solver::DryPacking& packing = beam.packing;
  content.add(
      {"Dry packing", fmt::format("{} mm; at 28 days E {} N/mm\u00b2, strength {} N/mm\u00b2",
                                  millimetres(packing.thickness), significant(packing.E, 5),
                                  significant(packing.strength, 3))});
  return content;
}

Table packing_table(const solver::DryPacking& packing) {
  Table content{"packing-by-age", "How the packing hardens, EN 1992-1-1 3.1.2(6)", {"Age, days"}};
  std::vector<Text> shares = {"Part of its 28-day strength, %"};
  std::vector<Text> strengths = {"Strength, N/mm\u00b2"};
  for (const double age : ages) {
    content.columns.push_back(numeric(whole_millimetres(age)));
    const double strength = solver::strength_at(packing, age);
    shares.push_back(whole_millimetres(100.0 * strength / packing.strength));
    strengths.push_back(three_figures(strength));
  }
  content.add(shares);
  content.add(strengths);
  return content;
}

/// The largest of one quantity over the stages of one model, and where.
struct Largest {
  double value = solver::not_known;
  std::string stage;
};

Largest largest_of(const solver::JobResult& result, solver::MasonryModel model,
                   double BeamResult::*quantity) {
  Largest largest;
  for (const solver::StageResult& stage : result.stages) {
    for (const PanelResult& analysis : stage.analyses) {
      if (analysis.model != model || !analysis.stands() || !analysis.beam) continue;
      const double value = *analysis.beam.*quantity;
      if (!(value <= largest.value)) largest = {value, stage.name};
    }
  }
  return largest;
}

/// A row of hand against staged: what is compared, the hand sum's, and where to find it staged.
struct BeamMeasure {
  std::string name;
  double by_hand = 0.0;
  double BeamResult::*staged;
  std::string (*words)(double);  ///< of a value in N and mm
};

std::string kilonewton_metres(double newton_mm) {
  return two_decimals(newton_mm / 1e6);
}

std::string cell_of(const Largest& largest, const BeamMeasure& measure) {
  if (largest.stage.empty()) return "\u2013";
  return fmt::format("{} ({})", measure.words(largest.value), largest.stage);
}

Table hand_against_staged(const solver::JobResult& result, const HandBeam& hand) {
  const std::vector<BeamMeasure> measures = {
      {"Moment kNm", hand.largest_moment, &BeamResult::largest_moment, kilonewton_metres},
      {"Shear kN", hand.largest_shear, &BeamResult::largest_shear, kilonewtons},
      {"Deflection mm", hand.deflection, &BeamResult::sag, fine_millimetres},
      {"Left reaction kN", hand.reaction_left, &BeamResult::reaction_left, kilonewtons},
      {"Right reaction kN", hand.reaction_right, &BeamResult::reaction_right, kilonewtons}};
  Table content{"beam-hand",
                "The beam by hand and in the stage that gives it most, characteristic",
                {"What", numeric("Hand, everything above")}};
  for (const solver::MasonryModel model : result.job.analysis.masonry) {
    content.columns.push_back(numeric(fmt::format("Staged, {}", solver::to_string(model))));
  }
  for (const BeamMeasure& measure : measures) {
    std::vector<Text> cells = {measure.name, measure.words(measure.by_hand)};
    for (const solver::MasonryModel model : result.job.analysis.masonry) {
      cells.push_back(cell_of(largest_of(result, model, measure.staged), measure));
    }
    content.add(std::move(cells));
  }
  return content;
}

Blocks stage_table(const solver::JobResult& result, solver::MasonryModel model) {
  Table content{fmt::format("beam-{}", solver::to_string(model)),
                fmt::format("The beam stage by stage with {}", masonry_phrase(model)),
                {"Stage", numeric("From the wall kN"), numeric("Left kN"), numeric("Right kN"),
                 numeric("Moment kNm"), numeric("Shear kN"), numeric("Sag mm"),
                 numeric("Packing N/mm\u00b2"), numeric("Its strength N/mm\u00b2")}};
  for (const solver::StageResult& stage : result.stages) {
    for (const PanelResult& analysis : stage.analyses) {
      if (analysis.model != model || !analysis.stands() || !analysis.beam) continue;
      const BeamResult& beam = *analysis.beam;
      const bool packed = beam.packing_strength > 0.0;
      content.add({stage.name, kilonewtons(beam.from_wall), kilonewtons(beam.reaction_left),
                   kilonewtons(beam.reaction_right), two_decimals(beam.largest_moment / 1e6),
                   kilonewtons(beam.largest_shear), fine_millimetres(beam.sag),
                   packed ? three_figures(beam.packing_pressure) : "\u2013",
                   packed ? three_figures(beam.packing_strength) : "\u2013"});
    }
  }
  return content.rows.empty() ? Blocks() : content;
}

}  // namespace

Chapter beam_chapter(const solver::JobResult& result, FigureShelf& figures) {
  if (!result.job.beam) return {};
  const PermanentBeam& beam = *result.job.beam;
  const HandBeam hand = solver::hand_beam(result.job);
  Blocks body = packing_table(beam.packing);
  body += Paragraph{fmt::format(
      "By hand the beam is a simple beam of {} mm between the middles of its bearings under "
      "everything above it: {} kN, {} kN of it permanent, its own weight included.",
      whole_millimetres(hand.span), kilonewtons(hand.load), kilonewtons(hand.dead))};
  body += hand_against_staged(result, hand);
  body += Paragraph{strong("Arching is not relied on.") + " " +
                    "The stages show how much the wall seems to carry past the beam by itself. "
                    "That relief lasts only as long as nothing disturbs the masonry and the piers "
                    "take its thrust, so the beam, its padstones and the piers are checked under "
                    "the full hand load as well, and must pass both."};
  for (const solver::MasonryModel model : result.job.analysis.masonry) {
    body += stage_table(result, model);
  }
  body += figures.take("beam");
  return {"beam", "The permanent beam", beam_table(beam), body};
}

}  // namespace deadshore::io
