#include "viz/view/scene.h"

#include "viz/view/point_values.h"
#include "viz/view/scene_parts.h"
#include "viz/view/solids.h"
#include "viz/view/vtk_reading.h"

#include <fmt/format.h>
#include <vtkBoundingBox.h>
#include <vtkCamera.h>
#include <vtkCellArray.h>
#include <vtkCellData.h>
#include <vtkCellPicker.h>
#include <vtkDataArray.h>
#include <vtkIdList.h>
#include <vtkMatrix4x4.h>
#include <vtkPointData.h>
#include <vtkProperty.h>

#include <algorithm>
#include <cmath>

namespace deadshore::viz {
namespace {

constexpr double bar_radius = 55.0;  // mm; the files give a needle's axis alone
constexpr double prop_radius = 32.0;
constexpr double ball_radius = 45.0;

constexpr Colour bar_tone{0.34, 0.38, 0.44};
constexpr Colour prop_tone{0.47, 0.52, 0.58};
constexpr Colour pressing{0.0, 0.40, 0.68};  // arrows

/// Longest arrow, as a part of the wall's width.
constexpr double arrow_share = 0.10;

double width_of(const std::array<double, 6>& bounds) {
  return bounds[1] - bounds[0];
}

std::array<double, 6> bounds_of(const ShownResult& result) {
  vtkBoundingBox box;
  for (const ShownWall& wall : result.walls) box.AddBounds(wall.grid->GetBounds());
  std::array<double, 6> bounds{};
  box.GetBounds(bounds.data());
  const double below = 1.6 * arrow_share * width_of(bounds);  // arrows and labels under the base
  box.AddPoint(bounds[0], bounds[2] - below, -0.5 * result.thickness);
  box.AddPoint(bounds[0], bounds[2], 0.5 * result.thickness);
  if (result.needles) box.AddBounds(result.needles->GetBounds());
  box.GetBounds(bounds.data());
  return bounds;
}

/// Points that must be in sight: the corners of the wall with room for what is said beneath it, and
/// the ends of needles and props.
std::vector<std::array<double, 3>> outermost_of(const ShownResult& result) {
  vtkBoundingBox box;
  for (const ShownWall& wall : result.walls) box.AddBounds(wall.grid->GetBounds());
  std::vector<std::array<double, 3>> points;
  const double below = 1.5 * arrow_share * box.GetLength(0);
  for (const double x : {box.GetBound(0), box.GetBound(1)}) {
    for (const double z : {-0.5 * result.thickness, 0.5 * result.thickness}) {
      points.push_back({x, box.GetBound(2) - below, z});
      points.push_back({x, box.GetBound(3), z});
    }
  }
  for (vtkIdType id = 0; result.needles && id < result.needles->GetNumberOfPoints(); ++id) {
    std::array<double, 3> at{};
    result.needles->GetPoint(id, at.data());
    points.push_back(at);
  }
  return points;
}

/// From -1 to 1 across the renderer's part of the window, and up it.
struct Extent {
  double left = 1e9;
  double right = -1e9;
  double bottom = 1e9;
  double top = -1e9;
};

Extent extent_of(const std::vector<std::array<double, 3>>& points, vtkCamera* camera,
                 double aspect) {
  Extent extent;
  vtkMatrix4x4* project = camera->GetCompositeProjectionTransformMatrix(aspect, -1.0, 1.0);
  for (const std::array<double, 3>& at : points) {
    const std::array<double, 4> point = {at[0], at[1], at[2], 1.0};
    std::array<double, 4> seen{};
    project->MultiplyPoint(point.data(), seen.data());
    extent.left = std::min(extent.left, seen[0] / seen[3]);
    extent.right = std::max(extent.right, seen[0] / seen[3]);
    extent.bottom = std::min(extent.bottom, seen[1] / seen[3]);
    extent.top = std::max(extent.top, seen[1] / seen[3]);
  }
  return extent;
}

/// The wall, or what is marked of it, is not lost in the lines of the mesh.
void show_mesh_lines(vtkActor* wall) {
  wall->GetProperty()->EdgeVisibilityOn();
  wall->GetProperty()->SetEdgeColor(0.45, 0.45, 0.48);
  wall->GetProperty()->SetLineWidth(1.0F);
}

std::string arrow_text(const SupportArrow& arrow) {
  const double size = std::hypot(arrow.force[0], arrow.force[1]);
  return fmt::format("{}\n{:.2f} kN", arrow.name, size);
}

/// Of the needle's line, or of the prop's.
bool is_picked(const Picked& picked, const std::string& name) {
  const auto* support = std::get_if<PickedSupport>(&picked);
  const auto* prop = std::get_if<PickedProp>(&picked);
  return (support != nullptr && support->name == name) || (prop != nullptr && prop->name == name);
}

}  // namespace

Scene::Scene(const ShownResult& result, const std::vector<ShownField>& fields)
    : result_(result),
      fields_(fields),
      labels_(over_),
      bounds_(bounds_of(result)),
      outermost_(outermost_of(result)) {
  renderer_->SetBackground(backdrop.red, backdrop.green, backdrop.blue);
  over_->SetLayer(1);
  over_->InteractiveOff();
  over_->SetActiveCamera(renderer_->GetActiveCamera());
}

void Scene::add(vtkActor* actor, const Picked& is) {
  renderer_->AddActor(actor);
  pickable_.push_back({actor, is});
}

void Scene::add_wall(const ShownWall& wall, const ViewState& state) {
  const double thickness = result_.thickness;
  const auto solid = wall_solid(wall.grid, thickness, state.magnification);
  const auto actor = state.field ? banded_actor(solid, fields_.at(*state.field))
                                 : plain_actor(solid, plain_masonry);
  if (state.mesh_lines) show_mesh_lines(actor);
  add(actor, PickedWall{});
  if (state.magnification > 0.0) {
    const auto built = wall_outline(wall.grid, thickness - 6.0, 0.0);
    renderer_->AddActor(line_actor(built, Colour{0.62, 0.64, 0.67}, 1.0));
  }
  renderer_->AddActor(
      line_actor(wall_outline(wall.grid, thickness, state.magnification), ink, 1.6));
  renderer_->AddActor(
      line_actor(loose_crosses(wall.grid, thickness, state.magnification), alarm, 2.0));
}

void Scene::add_frames(const ViewState& state) {
  const std::vector<std::string> parts = texts_of(result_.needles->GetCellData(), "part");
  vtkIdType cell = 0;
  for (const std::string& part : parts) {
    const vtkNew<vtkIdList> ids;
    result_.needles->GetCellPoints(cell++, ids);
    const std::string needle = needle_of(result_, part);
    const std::string name = needle_called(result_.answers, needle);
    if (ids->GetNumberOfIds() < 2 || !needle_is_in(result_.answers, state.stage, name)) continue;
    std::array<double, 3> from{};
    std::array<double, 3> to{};
    result_.needles->GetPoint(ids->GetId(0), from.data());
    result_.needles->GetPoint(ids->GetId(ids->GetNumberOfIds() - 1), to.data());
    const bool is_needle = part == needle;
    add(bar_actor(from, to, is_needle ? bar_radius : prop_radius, is_needle ? bar_tone : prop_tone),
        is_needle ? Picked(PickedSupport{part}) : Picked(PickedProp{part}));
  }
}

/// A needle whose frame is not known: a bar through the wall.
void Scene::add_bare_needle(const std::array<double, 3>& at) {
  const double reach = 1.5 * result_.thickness;
  renderer_->AddActor(bar_actor({at[0], at[1] - bar_radius, -reach},
                                {at[0], at[1] - bar_radius, reach}, bar_radius, bar_tone));
}

void Scene::add_beam(const ShownWall& wall, const ViewState& state) {
  const auto beam = beam_solid(result_, wall, state.magnification);
  if (beam == nullptr) return;
  const auto actor = plain_actor(beam, Colour{0.45, 0.55, 0.64});
  actor->GetProperty()->SetAmbient(0.4);
  actor->GetProperty()->SetDiffuse(0.6);
  add(actor, PickedBeam{});
}

void Scene::add_mark(const ShownWall& wall, const ViewState& state, const PickedWall& place) {
  const auto found = place_at(wall.grid, place.x, place.y);
  if (!found) return;
  const std::array<double, 2> moved = movement_at(wall.grid, *found);
  const double x = place.x + state.magnification * moved[0];
  const double y = place.y + state.magnification * moved[1];
  for (const double side : {-0.5, 0.5}) {
    const auto ball =
        ball_actor({x, y, side * result_.thickness}, 0.7 * ball_radius, Colour{0.0, 0.55, 0.75});
    ball->PickableOff();
    renderer_->AddActor(ball);
  }
}

void Scene::show(const ViewState& state, const Picked& picked) {
  renderer_->RemoveAllViewProps();
  over_->RemoveAllViewProps();
  labels_.clear();
  pickable_.clear();
  const ShownWall& wall = result_.wall(state.stage, state.analysis);
  add_wall(wall, state);
  if (result_.needles) add_frames(state);
  add_beam(wall, state);
  if (const auto* place = std::get_if<PickedWall>(&picked)) add_mark(wall, state, *place);
  add_reactions(state, picked);
}

void Scene::add_reactions(const ViewState& state, const Picked& picked) {
  const double longest = arrow_share * width_of(bounds_);
  const double largest = std::max(largest_reaction(result_), 1e-9);
  for (const SupportArrow& arrow : support_arrows(result_, state.stage, state.analysis)) {
    const bool chosen = is_picked(picked, arrow.name);
    const Colour colour = chosen ? tension : pressing;
    add(ball_actor(arrow.at, ball_radius, colour), PickedSupport{arrow.name});
    const bool framed = result_.needles != nullptr;
    if (arrow.is_needle && !framed) add_bare_needle(arrow.at);
    if (!state.reactions) continue;
    const double size = std::hypot(arrow.force[0], arrow.force[1]);
    const std::array<double, 2> along =
        size > 0.0 ? std::array<double, 2>{arrow.force[0] / size, arrow.force[1] / size}
                   : std::array<double, 2>{0.0, 1.0};
    const double length = std::max(longest * size / largest, 3.0 * ball_radius);
    if (size > 0.0) {
      over_->AddActor(
          arrow_actor(arrow.at, along, length, 0.35 * ball_radius, chosen ? tension : pressing));
    }
    const bool upright = std::abs(along[1]) > 0.5;
    labels_.add({arrow.at[0] - along[0] * length, arrow.at[1] - along[1] * length, arrow.at[2]},
                arrow_text(arrow), chosen ? alarm : ink,
                upright ? Anchor{0.5, -0.05} : Anchor{along[0] > 0.0 ? 1.0 : 0.0, 0.5});
  }
}

void Scene::look_along(const std::array<double, 3>& from, double aspect) {
  vtkCamera* camera = renderer_->GetActiveCamera();
  std::array<double, 3> middle{};
  vtkBoundingBox(bounds_.data()).GetCenter(middle.data());
  constexpr double angle = 20.0;  // degrees: little distortion
  camera->SetViewAngle(angle);
  camera->SetViewUp(0.0, 1.0, 0.0);
  camera->SetFocalPoint(middle.data());
  const double far_enough = 4.0 * vtkBoundingBox(bounds_.data()).GetDiagonalLength();
  camera->SetPosition(middle[0] + far_enough * from[0], middle[1] + far_enough * from[1],
                      middle[2] + far_enough * from[2]);
  renderer_->ResetCameraClippingRange(bounds_.data());
  // Twice, since what is moved to the middle is seen a little otherwise.
  for (int pass = 0; pass < 2; ++pass) {
    const Extent seen = extent_of(outermost_, camera, aspect);
    camera->SetWindowCenter(camera->GetWindowCenter()[0] + 0.5 * (seen.left + seen.right),
                            camera->GetWindowCenter()[1] + 0.5 * (seen.bottom + seen.top));
    camera->Zoom(0.92 * 2.0 / std::max({seen.right - seen.left, seen.top - seen.bottom, 1e-9}));
  }
}

void Scene::look_from_the_side(double aspect) {
  look_along({0.42, 0.20, 0.88}, aspect);
}

void Scene::look_from_the_front(double aspect) {
  look_along({0.0, 0.0, 1.0}, aspect);
}

Picked Scene::picked_at(int x, int y, const ViewState& state) {
  const vtkNew<vtkCellPicker> picker;
  picker->SetTolerance(0.003);
  if (picker->Pick(x, y, 0.0, renderer_) == 0) return PickedNothing{};
  const auto found = std::ranges::find(pickable_, picker->GetActor(),
                                       [](const Pickable& one) { return one.actor.GetPointer(); });
  if (found == pickable_.end()) return PickedNothing{};
  if (!std::holds_alternative<PickedWall>(found->is)) return found->is;

  vtkUnstructuredGrid* grid = result_.wall(state.stage, state.analysis).grid;
  vtkDataArray* numbers = picker->GetDataSet()->GetCellData()->GetArray("element");
  const auto cell = static_cast<vtkIdType>(numbers->GetTuple1(picker->GetCellId()));
  std::array<double, 3> at{};
  picker->GetPickPosition(at.data());
  const std::array<double, 2> built =
      as_built(grid, place_in_cell(grid, cell, at[0], at[1], state.magnification));
  return PickedWall{built[0], built[1]};
}

}  // namespace deadshore::viz
