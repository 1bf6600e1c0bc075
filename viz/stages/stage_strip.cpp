#include "viz/drawings.h"
#include "viz/stages/stage_picture.h"
#include "viz/wall/bands.h"
#include "viz/wall/crack_map.h"
#include "viz/wall/panel_marks.h"
#include "viz/wall/works_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

using solver::Job;
using solver::JobResult;
using solver::PanelResult;

constexpr double landscape_width = 277.0 / 25.4 * 72.0;   ///< A4 on its side, less margins
constexpr double landscape_height = 180.0 / 25.4 * 72.0;  ///< leaves room for a caption
constexpr std::size_t stages_a_page = 15;
constexpr int most_columns = 5;  ///< narrower, and the texts at 7 points do not fit
constexpr double gap = 9.0;      ///< between cells
constexpr double line_height = 9.5;
constexpr double ground_room = 7.0;
const TextStyle fact_style{.size = 7.0};

/// One stage with what is written over it.
struct Cell {
  std::string title;
  std::string day;
  std::string facts;
  std::string more;
  StagePicture picture;
};

/// Cracked masonry where it is analysed: it is the one that cracks and comes loose.
const PanelResult* shown_panel(const solver::StageResult& stage) {
  const PanelResult* shown = nullptr;
  for (const PanelResult& panel : stage.analyses)
    if (shown == nullptr || panel.model == solver::MasonryModel::cracked) shown = &panel;
  return shown;
}

std::string needle_fact(const PanelResult& panel, const solver::StageState& works) {
  const solver::NeedleReaction* worst = nullptr;
  for (std::size_t i = 0; i < panel.needles.size() && i < works.needles.size(); ++i)
    if (solver::is_in(works.needles[i]) &&
        (worst == nullptr || panel.needles[i].force > worst->force))
      worst = &panel.needles[i];
  if (worst == nullptr) return "no needle in";
  return "most on " + worst->name + ": " + kilonewtons(worst->force);
}

/// The parts in one line; where it must be broken, between them.
std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) {
    if (!text.empty()) text += "\u00a0· ";
    for (const char letter : part) text += letter == ' ' ? "\u00a0" : std::string(1, letter);
  }
  return text;
}

std::string further_facts(const PanelResult& panel) {
  std::vector<std::string> parts;
  if (panel.beam) {
    const double ends = panel.beam->reaction_left + panel.beam->reaction_right;
    parts.push_back("beam ends " + kilonewtons(ends));
  }
  if (!panel.cracks.empty()) parts.push_back("crack " + crack_width(panel.cracks.front().width));
  if (const double loose = panel.loose_weight(); loose > 0.0)
    parts.push_back("loose " + kilonewtons(loose));
  return joined(parts);
}

Cell cell_of(const JobResult& result, std::size_t index, const ShownStage& shown,
             const BandScale& scale) {
  const solver::StageResult& stage = result.stages[index];
  Cell cell;
  cell.title = fmt::format("{}  {}", index + 1, stage.name);
  cell.day = fmt::format("day {}", short_number(stage.day));
  const PanelResult* panel = shown_panel(stage);
  cell.picture = stage_picture(result, panel, shown, scale);
  if (panel == nullptr) {
    cell.facts = "not analysed";
    return cell;
  }
  if (!panel->stands()) {
    cell.facts = "NO EQUILIBRIUM";
    return cell;
  }
  cell.facts = joined(
      {fmt::format("settles {:.1f} mm", panel->max_settlement), needle_fact(*panel, shown.works)});
  cell.more = further_facts(*panel);
  return cell;
}

/// Columns and the scale of all pictures.
struct Grid {
  int columns = 1;
  double cell_width = 0.0;
  double cell_height = 0.0;
  double texts_height = 0.0;
  double scale = 0.0;
};

TextStyle more_style(double width) {
  return {.size = 7.0, .width = width, .overflow = Overflow::wrap};
}

Grid grid_with(const mesh::WallShape& wall, const std::vector<Cell>& cells, int columns,
               double height) {
  Grid grid;
  grid.columns = columns;
  const double rows = std::ceil(static_cast<double>(cells.size()) / columns);
  grid.cell_width = (landscape_width - 8.0 + gap) / columns - gap;
  double more = 0.0;
  for (const Cell& cell : cells)
    if (!cell.more.empty())
      more = std::max(more, text_size(cell.more, more_style(grid.cell_width)).height);
  grid.texts_height = 2.0 * line_height + more + 3.0;
  const double high = height / rows - grid.texts_height - ground_room - gap;
  grid.scale = std::min((grid.cell_width - 2.0) / wall.length, high / wall.height());
  grid.cell_height = grid.texts_height + ground_room + grid.scale * wall.height() + gap;
  return grid;
}

/// The grid with the largest pictures in `height` for every page full of stages.
Grid best_grid(const mesh::WallShape& wall, const std::vector<Cell>& cells, double height) {
  const double pages = std::ceil(static_cast<double>(cells.size()) / stages_a_page);
  const int most = std::clamp(static_cast<int>(cells.size()), 1, most_columns);
  Grid best;
  for (int columns = 1; columns <= most; ++columns) {
    const Grid grid = grid_with(wall, cells, columns, pages * height);
    if (grid.scale > best.scale) best = grid;
  }
  return best;
}

void write_facts(Canvas& canvas, const Cell& cell, const Rect& box) {
  const double day = text_size(cell.day, fact_style).width;
  canvas.text({box.left, box.top}, cell.title,
              {.size = 7.5, .bold = true, .width = box.width() - day - 6.0}, {0.0, 0.0});
  canvas.text({box.right, box.top + 0.5}, cell.day, {.size = 7.0, .colour = quiet_ink}, {1.0, 0.0});
  TextStyle style = fact_style;
  style.width = box.width();
  style.bold = !cell.picture.stands;
  canvas.text({box.left, box.top + line_height}, cell.facts, style, {0.0, 0.0});
  if (!cell.more.empty())
    canvas.text({box.left, box.top + 2.0 * line_height}, cell.more, more_style(box.width()),
                {0.0, 0.0});
}

void draw_cell(Canvas& canvas, const Cell& cell, const Job& job, const Rect& box, const Grid& grid,
               const BandScale& scale) {
  const double drawn_scale = grid.scale;
  write_facts(canvas, cell, box);
  WallView view;
  view.scale = drawn_scale;
  view.origin = {box.middle().x - 0.5 * drawn_scale * job.wall.length,
                 box.top + grid.texts_height + drawn_scale * job.wall.height()};
  draw_stage_picture(canvas, view, cell.picture, job, scale);
}

constexpr double bar_height = 21.0;

/// The scale as a level row of steps with their limits under them; returns its right end.
double draw_level_bar(Canvas& canvas, PagePoint at, const BandScale& scale) {
  const std::string words = "compression, N/mm²";
  const double first = at.x + text_size(words, fact_style).width + 8.0;
  canvas.text({at.x, at.y}, words, fact_style, {0.0, 0.0});
  constexpr double step = 34.0;
  for (int band = 0; band <= scale.count; ++band) {
    const Rect box{first + band * step, at.y + 1.0, first + (band + 1) * step, at.y + 9.0};
    canvas.fill(box, band_tone(band, scale));
    canvas.outline(box, {.colour = quiet_ink, .width = 0.4});
    canvas.text({box.left, box.bottom + 0.5}, band_limit(band * scale.step, scale.step), fact_style,
                {band == 0 ? 0.0 : 0.5, 0.0});
  }
  return first + (scale.count + 1) * step;
}

/// All that is in place at some stage.
solver::StageState ever_there(const std::vector<ShownStage>& stages) {
  solver::StageState all;
  for (const ShownStage& stage : stages) {
    all.padstones = all.padstones || stage.works.padstones;
    all.beam = all.beam || stage.works.beam;
    if (stage.works.packed_on) all.packed_on = stage.works.packed_on;
    all.shore_tight.resize(stage.works.shore_tight.size(), 0);
    for (std::size_t i = 0; i < stage.works.shore_tight.size(); ++i)
      if (stage.works.shore_tight[i] != 0) all.shore_tight[i] = 1;
  }
  return all;
}

bool any_released(const std::vector<ShownStage>& stages) {
  return std::any_of(stages.begin(), stages.end(), [](const ShownStage& stage) {
    const auto& needles = stage.works.needles;
    return std::count(needles.begin(), needles.end(), solver::NeedleState::released) > 0;
  });
}

std::vector<LegendEntry> legend_of(const Job& job, const std::vector<ShownStage>& stages,
                                   const std::vector<Cell>& cells) {
  std::vector<LegendEntry> entries;
  const auto needle = [](const Rect& box) {
    const double x = box.middle().x;
    return Rect{x - 4.5, box.top, x + 4.5, box.bottom};
  };
  if (!job.needles.empty())
    entries.push_back(
        {[needle](Canvas& canvas, const Rect& box) { draw_needle_section(canvas, needle(box)); },
         "needle in"});
  if (any_released(stages))
    entries.push_back({[needle](Canvas& canvas, const Rect& box) {
                         canvas.outline(needle(box), taken_away_pen());
                       },
                       "needle taken out"});
  const auto works = works_legend(job, ever_there(stages));
  entries.insert(entries.end(), works.begin(), works.end());
  if (std::any_of(cells.begin(), cells.end(),
                  [](const Cell& cell) { return !cell.picture.loose.empty(); }))
    entries.push_back(hatch_entry(loose_hatch(), "loose masonry: nothing holds it"));
  return entries;
}

}  // namespace

Drawing stage_strip(const JobResult& result, const BandScale& scale) {
  const Job& job = result.job;
  const std::vector<ShownStage> stages = shown_stages(result);
  std::vector<Cell> cells;
  for (std::size_t i = 0; i < stages.size(); ++i)
    cells.push_back(cell_of(result, i, stages[i], scale));
  const std::vector<LegendEntry> legend = legend_of(job, stages, cells);
  const double legend_room = bar_height + legend_height(legend, landscape_width - 8.0) + 2.0;
  const double top = heading_height + 3.0;
  const Grid grid = best_grid(job.wall, cells, landscape_height - top - legend_room);
  const double rows = std::ceil(static_cast<double>(cells.size()) / grid.columns);
  const Size size{landscape_width, top + rows * grid.cell_height + legend_room};
  const bool any_crack = std::any_of(cells.begin(), cells.end(),
                                     [](const Cell& cell) { return !cell.picture.cracks.empty(); });
  const bool cracked = std::count(job.analysis.masonry.begin(), job.analysis.masonry.end(),
                                  solver::MasonryModel::cracked) > 0;
  const auto model = cracked ? solver::MasonryModel::cracked : solver::MasonryModel::uncracked;

  return {size, [=](Canvas& canvas) {
            draw_heading(canvas,
                         "Stages of the work: principal compression, " + masonry_words(model),
                         job.title, landscape_width);
            for (std::size_t i = 0; i < cells.size(); ++i) {
              const int cell = static_cast<int>(i);
              const int column = cell % grid.columns;
              const int row = cell / grid.columns;
              const double left = 4.0 + column * (grid.cell_width + gap);
              const double over = top + row * grid.cell_height;
              draw_cell(canvas, cells[i], job,
                        {left, over, left + grid.cell_width, over + grid.cell_height}, grid, scale);
            }
            const double bar_end =
                draw_level_bar(canvas, {4.0, size.height - legend_room}, scale) + 24.0;
            if (any_crack)
              draw_legend(canvas, crack_legend(), {bar_end, size.height - legend_room},
                          landscape_width - bar_end);
            draw_legend(canvas, legend, {4.0, size.height - legend_room + bar_height},
                        landscape_width - 8.0);
          }};
}

}  // namespace deadshore::viz
