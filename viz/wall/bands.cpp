#include "viz/wall/bands.h"

#include "viz/drawings.h"
#include "viz/page/legend.h"
#include "viz/wall/panel_marks.h"
#include "viz/wall/works_marks.h"

#include <fmt/format.h>
#include <vtkBandedPolyDataContourFilter.h>
#include <vtkCellArray.h>
#include <vtkCellArrayIterator.h>
#include <vtkCellData.h>
#include <vtkDoubleArray.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPoints.h>
#include <vtkPolyData.h>
#include <vtkSmartPointer.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {

namespace {

/// Nodes round an element, anticlockwise.
std::vector<int> rim_of(const mesh::QuadMesh& mesh, int quad) {
  const auto nodes = mesh.nodes_of(quad);
  if (mesh.order == mesh::QuadOrder::four_node) return {nodes.begin(), nodes.end()};
  return {nodes[0], nodes[4], nodes[1], nodes[5], nodes[2], nodes[6], nodes[3], nodes[7]};
}

/// Triangles from each side of an element to its middle, with values at their corners. The filter
/// cannot take values that are not finite.
vtkSmartPointer<vtkPolyData> as_triangles(const mesh::QuadMesh& mesh,
                                          std::span<const double> values,
                                          std::span<const char> chosen) {
  const vtkNew<vtkPoints> points;
  points->SetDataTypeToDouble();
  const vtkNew<vtkDoubleArray> scalars;
  const vtkNew<vtkCellArray> triangles;
  const auto add = [&](double x, double y, double value) {
    scalars->InsertNextValue(value);
    return points->InsertNextPoint(x, y, 0.0);
  };
  for (int node = 0; node < mesh.node_count(); ++node)
    add(mesh.nodes[node].x, mesh.nodes[node].y, std::isfinite(values[node]) ? values[node] : 0.0);

  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    if (!chosen.empty() && chosen[quad] == 0) continue;
    const std::vector<int> rim = rim_of(mesh, quad);
    mesh::Point middle;
    double value = 0.0;
    int finite = 0;
    for (const int node : rim) {
      middle.x += mesh.nodes[node].x / static_cast<double>(rim.size());
      middle.y += mesh.nodes[node].y / static_cast<double>(rim.size());
      if (!std::isfinite(values[node])) continue;
      value += values[node];
      ++finite;
    }
    if (finite < 2) continue;
    const vtkIdType centre = add(middle.x, middle.y, value / finite);
    for (std::size_t i = 0; i < rim.size(); ++i) {
      const int a = rim[i];
      const int b = rim[(i + 1) % rim.size()];
      if (!std::isfinite(values[a]) || !std::isfinite(values[b])) continue;
      triangles->InsertNextCell({a, b, centre});
    }
  }
  auto surface = vtkSmartPointer<vtkPolyData>::New();
  surface->SetPoints(points);
  surface->SetPolys(triangles);
  surface->GetPointData()->SetScalars(scalars);
  return surface;
}

/// Levels just outside both the data and the levels asked for: without them the filter numbers its
/// bands by what it finds, and with far ones its tolerance (a part of their distance) grows.
std::vector<double> enclosed(std::span<const double> levels, vtkDataArray* scalars) {
  std::array<double, 2> range{};
  scalars->GetRange(range.data());
  const double low = std::min(range[0], levels.front());
  const double high = std::max(range[1], levels.back());
  const double beside = std::max(high - low, 1e-9);
  std::vector<double> all{low - beside};
  all.insert(all.end(), levels.begin(), levels.end());
  all.push_back(high + beside);
  return all;
}

RankedPolygons polygons_of(vtkPolyData* bands) {
  RankedPolygons polygons;
  vtkDataArray* ranks = bands->GetCellData()->GetScalars();
  const auto it = vtk::TakeSmartPointer(bands->GetPolys()->NewIterator());
  // Cell data run over vertices and lines first; the filter makes neither.
  vtkIdType cell = 0;
  std::vector<int> corners;
  for (it->GoToFirstCell(); !it->IsDoneWithTraversal(); it->GoToNextCell(), ++cell) {
    vtkIdType count = 0;
    const vtkIdType* ids = nullptr;
    it->GetCurrentCell(count, ids);
    corners.assign(ids, ids + count);
    polygons.add(corners, static_cast<int>(std::lround(ranks->GetComponent(cell, 0))));
  }
  return polygons;
}

using solver::Job;
using solver::JobResult;
using solver::PanelResult;

constexpr double bar_room = 58.0;  ///< at the right of the wall for the colour bar

/// Largest principal compression at each node, positive; NaN where the stress is, and where there
/// is no masonry.
std::vector<double> compression_at_nodes(const mesh::QuadMesh& mesh, const PanelResult& panel) {
  const std::vector<char> there = nodes_there(mesh, quads_there(mesh, panel.fields));
  std::vector<double> values(mesh.nodes.size(), std::nan(""));
  const auto& stress = panel.fields.node_stress;
  for (std::size_t i = 0; i < std::min(values.size(), stress.size()); ++i)
    if (there[i] != 0) values[i] = -solver::principal_of(stress[i]).minor;
  return values;
}

/// Steps from light at the foot to dark, the top one open.
void draw_colour_bar(Canvas& canvas, const Rect& room, const BandScale& scale,
                     const PanelResult& panel) {
  const TextStyle style{.size = 7.0};
  const double step = std::min(20.0, (room.height() - 60.0) / (scale.count + 1));
  const double foot = room.top + 22.0 + step * (scale.count + 1);
  canvas.text({room.left, room.top}, "compression\nN/mm²", style, {0.0, 0.0});
  for (int band = 0; band <= scale.count; ++band) {
    const Rect box{room.left, foot - (band + 1) * step, room.left + 14.0, foot - band * step};
    canvas.fill(box, band_tone(band, scale));
    canvas.outline(box, {.colour = quiet_ink, .width = 0.4});
    canvas.text({box.right + 4.0, box.bottom}, band_limit(band * scale.step, scale.step), style,
                {0.0, 0.5});
  }
  if (std::isfinite(panel.max_compression))
    canvas.text({room.left, foot + 7.0}, "largest\n" + fmt::format("{:.2f}", panel.max_compression),
                style, {0.0, 0.0});
}

/// "needles 60.0 kN, piers 140.9 kN": what carries the wall, as far as it does.
std::string carried_by(const PanelResult& panel, const solver::StageState& works) {
  double needles = 0.0;
  for (const solver::NeedleReaction& needle : panel.needles) needles += needle.force;
  std::string text = "piers " + kilonewtons(panel.base_left + panel.base_right);
  if (std::any_of(works.needles.begin(), works.needles.end(), solver::is_in))
    text = "needles " + kilonewtons(needles) + ", " + text;
  if (panel.base_cut != 0.0) text += ", base under the cut " + kilonewtons(panel.base_cut);
  double joists = 0.0;
  for (const solver::JoistReaction& reaction : panel.joists) joists += reaction.force;
  if (joists > 0.0) text += ", joists " + kilonewtons(joists);
  return text;
}

std::vector<LegendEntry> legend_of(const Job& job, const PanelResult& panel,
                                   const ShownStage& stage) {
  std::vector<LegendEntry> entries = {
      arrow_entry(reaction_pen(), true,
                  fmt::format("what carries the wall: {}, load in all {}",
                              carried_by(panel, stage.works), kilonewtons(panel.load_total)))};
  if (panel.beam && panel.beam->from_wall > 0.0)
    entries.push_back(arrow_entry(reaction_pen(), true,
                                  fmt::format("under the beam's ends, and on into the piers: "
                                              "{} of it from the wall",
                                              kilonewtons(panel.beam->from_wall))));
  if (!panel.loose.empty())
    entries.push_back(
        hatch_entry(loose_hatch(), "loose masonry: nothing holds it, it would fall (weight)"));
  if (job.left_end == solver::WallEnd::held || job.right_end == solver::WallEnd::held)
    entries.push_back(hatch_entry({.pen = {.colour = ink, .width = 0.5}, .spacing = 3.2},
                                  "end held from moving sideways, with its thrust"));
  const auto works_entries = works_legend(job, stage.works);
  entries.insert(entries.end(), works_entries.begin(), works_entries.end());
  return entries;
}

}  // namespace

BandScale even_scale(double value) {
  if (!(value > 0.0) || !std::isfinite(value)) return {1.0, 1};
  // The largest round step that still makes five bands.
  BandScale best;
  const double power = std::pow(10.0, std::floor(std::log10(value)) - 1.0);
  for (const double factor : {1.0, 2.0, 2.5, 5.0, 10.0, 20.0}) {
    const double step = factor * power;
    const int count = static_cast<int>(std::ceil(value / step - 1e-9));
    if (count >= 5) best = {step, count};
  }
  return best;
}

std::vector<Region> regions_above(const mesh::QuadMesh& mesh, std::span<const double> node_values,
                                  std::span<const double> levels, std::span<const char> chosen) {
  const auto surface = as_triangles(mesh, node_values, chosen);
  std::vector<Region> regions(levels.size() + 1);
  if (surface->GetNumberOfPolys() == 0 || levels.empty()) return regions;

  const std::vector<double> limits = enclosed(levels, surface->GetPointData()->GetScalars());
  const vtkNew<vtkBandedPolyDataContourFilter> filter;
  filter->SetInputData(surface);
  filter->SetNumberOfContours(static_cast<int>(limits.size()));
  for (std::size_t k = 0; k < limits.size(); ++k) filter->SetValue(static_cast<int>(k), limits[k]);
  filter->SetScalarModeToIndex();
  filter->ClippingOn();
  filter->Update();

  vtkPolyData* bands = filter->GetOutput();
  std::vector<mesh::Point> points(static_cast<std::size_t>(bands->GetNumberOfPoints()));
  for (std::size_t i = 0; i < points.size(); ++i) {
    std::array<double, 3> position{};
    bands->GetPoint(static_cast<vtkIdType>(i), position.data());
    points[i] = {position[0], position[1]};
  }
  const auto nested = nested_rings(polygons_of(bands), static_cast<int>(regions.size()));
  for (std::size_t k = 0; k < regions.size(); ++k)
    for (const auto& numbers : nested[k]) {
      Ring ring = ring_through(numbers, points);
      if (ring.size() >= 3) regions[k].push_back(std::move(ring));
    }
  return regions;
}

BandScale compression_scale(const JobResult& result) {
  double reach = 0.0;
  for (const solver::StageResult& stage : result.stages)
    for (const PanelResult& panel : stage.analyses) {
      if (!panel.stands()) continue;
      std::vector<double> values = compression_at_nodes(result.mesh.quads, panel);
      std::erase_if(values, [](double value) { return !std::isfinite(value); });
      if (values.empty()) continue;
      const auto rank = values.begin() + static_cast<std::ptrdiff_t>(0.99 * (values.size() - 1));
      std::nth_element(values.begin(), rank, values.end());
      reach = std::max(reach, *rank);
    }
  return even_scale(reach);
}

std::string band_limit(double value, double step) {
  const int decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 6);
  const bool half = std::abs(step * std::pow(10.0, decimals) -
                             std::round(step * std::pow(10.0, decimals))) > 1e-6;
  return fmt::format("{:.{}f}", value, decimals + (half ? 1 : 0));
}

Colour band_tone(int band, const BandScale& scale) {
  return compression_tone(static_cast<double>(band) / scale.count);
}

std::vector<Region> band_regions(const mesh::QuadMesh& mesh, const PanelResult& panel,
                                 const BandScale& scale) {
  std::vector<double> levels;
  for (int k = 1; k <= scale.count; ++k) levels.push_back(k * scale.step);
  return regions_above(mesh, compression_at_nodes(mesh, panel), levels,
                       quads_there(mesh, panel.fields));
}

Drawing compression_bands(const JobResult& result, const PanelResult& panel,
                          const ShownStage& stage, const BandScale& scale) {
  const Job& job = result.job;
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const std::vector<LegendEntry> legend = legend_of(job, panel, stage);
  const double legend_room = legend_height(legend, page_width - 8.0);
  Margins margins = reaction_margins(job);
  margins.right += bar_room;
  margins.bottom += legend_room + 4.0;
  const WallPage page = fit_wall(job.wall, margins);
  const std::vector<Region> bands = band_regions(mesh, panel, scale);
  const Region outline = region_of(mesh, quads_there(mesh, panel.fields));

  return {
      page.size, [=](Canvas& canvas) {
        const WallView& view = page.view;
        LabelRoom room({0.0, 0.0, page.size.width, page.size.height});
        draw_heading(canvas,
                     heading_with("Principal compression, " + masonry_words(panel.model), stage),
                     job.title);
        for (int k = 0; k <= scale.count; ++k) canvas.fill(view.at(bands[k]), band_tone(k, scale));
        draw_lintels_there(canvas, view, job.wall, stage.works, LintelStyle::outline);
        draw_loose(canvas, view, mesh, panel);
        canvas.outline(view.at(outline), {.colour = ink, .width = 0.9});
        draw_ground(canvas, view, job.wall);
        draw_held_ends(canvas, view, job);
        draw_permanent_works(canvas, view, job, stage.works);
        draw_dead_shores(canvas, view, job, stage.works, &panel, room);
        draw_reactions(canvas, view, job, panel, stage.works, room);
        label_loose(canvas, view, panel, room);
        const Rect bar{page_width - bar_room, view.down(job.wall.height()), page_width,
                       view.down(0.0)};
        draw_colour_bar(canvas, bar, scale, panel);
        draw_legend(canvas, legend, {4.0, page.size.height - legend_room - 2.0}, page_width - 8.0);
      }};
}

}  // namespace deadshore::viz
