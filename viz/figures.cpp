#include "viz/figures.h"

#include "viz/drawings.h"
#include "viz/panel_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

namespace deadshore::viz {
namespace {

constexpr int png_width = 1600;

Figure figure_of(const Drawing& drawing, const std::string& name, const std::string& caption) {
  return {name, caption, to_svg(drawing), to_png(drawing, png_width)};
}

/// A stage's name as part of a file's: letters and digits, the rest as hyphens.
std::string file_word(std::string name) {
  for (char& letter : name)
    if (std::isalnum(static_cast<unsigned char>(letter)) == 0) letter = '-';
  return name;
}

std::string compression_caption(const solver::PanelResult& panel) {
  std::string caption =
      fmt::format("Principal compression with {}, and what needles and piers carry.",
                  masonry_words(panel.model));
  if (!panel.loose.empty()) {
    double weight = 0.0;
    for (const solver::LoosePatch& patch : panel.loose) weight += patch.weight;
    caption += fmt::format(" Hatched masonry, {} in all, hangs on nothing and would fall.",
                           kilonewtons(weight));
  }
  return caption;
}

void add_panel_figures(std::vector<Figure>& figures, const solver::JobResult& result,
                       const solver::PanelResult& panel, const BandScale& scale,
                       const std::string& ending) {
  const std::string end = std::string(solver::to_string(panel.model)) + ending;
  if (!panel.stands()) {
    figures.push_back(figure_of(
        runaway(result, panel), "compression-" + end,
        fmt::format(
            "With {} the wall has no equilibrium: the shape in which it would go. There are "
            "no stresses and no reactions to show.",
            masonry_words(panel.model))));
    return;
  }
  figures.push_back(figure_of(compression_bands(result, panel, scale), "compression-" + end,
                              compression_caption(panel)));
  figures.push_back(figure_of(
      load_flow(result, panel, full_length_stress(result)), "load-flow-" + end,
      fmt::format("Where the load flows with {}: principal stresses, and over them the 45-degree "
                  "spreads that the hand method takes.",
                  masonry_words(panel.model))));
}

/// The most loaded of the needles that stand on this frame; null where there is none.
const solver::NeedleDesign* worst_design(const solver::JobResult& result, std::size_t frame) {
  const solver::NeedleDesign* worst = nullptr;
  for (const solver::NeedleDesign& design : result.needle_designs)
    for (const solver::Needle& needle : result.job.needles)
      if (needle.name == design.demand.needle && needle.frame == frame &&
          (worst == nullptr || design.answer.wall_load > worst->answer.wall_load))
        worst = &design;
  return worst;
}

std::string needle_caption(const solver::NeedleDesign& design) {
  return fmt::format(
      "The cross-section at {} with {} from the wall, unfactored: needle, props and ground to "
      "scale, and the needle's bending moment, shear force and deflection.",
      design.demand.needle, kilonewtons(design.answer.wall_load));
}

/// A name that no figure has: frames of nearly the same name, or one called "loads", differ by a
/// number.
std::string free_name(const std::string& name, const std::vector<Figure>& figures) {
  std::string candidate = name;
  const auto is_taken = [&](const Figure& figure) { return figure.name == candidate; };
  for (int number = 2; std::any_of(figures.begin(), figures.end(), is_taken); ++number)
    candidate = fmt::format("{}-{}", name, number);
  return candidate;
}

}  // namespace

std::vector<Figure> draw_figures(const solver::JobResult& result) {
  std::vector<Figure> figures;
  figures.push_back(figure_of(elevation(result), "elevation",
                              "The wall as cut, with its needles, loads and dimensions."));
  const BandScale scale = compression_scale(result);
  for (const solver::StageResult& stage : result.stages)
    for (const solver::PanelResult& panel : stage.analyses)
      add_panel_figures(figures, result, panel, scale,
                        result.stages.size() > 1 ? "-" + file_word(stage.name) : "");
  if (!result.comparison.empty())
    figures.push_back(figure_of(needle_bars(result), "needle-loads",
                                "Load on each needle: by hand and by analysis."));
  for (std::size_t i = 0; i < result.job.needle_frames.size(); ++i)
    if (const solver::NeedleDesign* design = worst_design(result, i))
      figures.push_back(
          figure_of(needle_frame(result, *design),
                    free_name("needle-" + file_word(result.job.needle_frames[i].name), figures),
                    needle_caption(*design)));
  return figures;
}

}  // namespace deadshore::viz
