#include "viz/view/scene_parts.h"

#include <vtkArrowSource.h>
#include <vtkCellData.h>
#include <vtkDataArray.h>
#include <vtkLineSource.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPolyDataMapper.h>
#include <vtkProperty.h>
#include <vtkSphereSource.h>
#include <vtkTubeFilter.h>

#include <cmath>
#include <numbers>

namespace deadshore::viz {
namespace {

vtkSmartPointer<vtkActor> actor_of(vtkPolyData* surface) {
  const vtkNew<vtkPolyDataMapper> mapper;
  mapper->SetInputData(surface);
  mapper->ScalarVisibilityOff();
  mapper->SetResolveCoincidentTopologyToPolygonOffset();  // lines lie over faces
  auto actor = vtkSmartPointer<vtkActor>::New();
  actor->SetMapper(mapper);
  actor->GetProperty()->SetInterpolationToFlat();
  return actor;
}

void paint(vtkActor* actor, Colour colour) {
  actor->GetProperty()->SetColor(colour.red, colour.green, colour.blue);
}

/// Mostly as it is on the legend, with a little light so that shapes are seen.
void light_a_little(vtkActor* actor) {
  actor->GetProperty()->SetAmbient(0.75);
  actor->GetProperty()->SetDiffuse(0.25);
}

}  // namespace

vtkSmartPointer<vtkLookupTable> tones_of(const FieldScale& scale) {
  auto table = vtkSmartPointer<vtkLookupTable>::New();
  table->SetNumberOfTableValues(scale.bands);
  for (int band = 0; band < scale.bands; ++band) {
    const Colour tone = tone_of(scale, band);
    table->SetTableValue(band, tone.red, tone.green, tone.blue);
  }
  table->SetTableRange(scale.from, scale.to());
  return table;
}

vtkSmartPointer<vtkActor> plain_actor(vtkPolyData* surface, Colour colour) {
  auto actor = actor_of(surface);
  paint(actor, colour);
  light_a_little(actor);
  return actor;
}

vtkSmartPointer<vtkActor> banded_actor(vtkPolyData* surface, const ShownField& field) {
  auto actor = plain_actor(surface, plain_masonry);
  vtkFieldData* fields = field.at_cells ? static_cast<vtkFieldData*>(surface->GetCellData())
                                        : static_cast<vtkFieldData*>(surface->GetPointData());
  if (fields->GetArray(field.array.c_str()) == nullptr) return actor;
  const FieldScale scale = scale_of(field);
  vtkMapper* mapper = actor->GetMapper();
  mapper->ScalarVisibilityOn();
  if (field.at_cells) {
    mapper->SetScalarModeToUseCellFieldData();
  } else {
    mapper->SetScalarModeToUsePointFieldData();
    mapper->InterpolateScalarsBeforeMappingOn();  // sharp bands within an element
  }
  mapper->SelectColorArray(field.array.c_str());
  const vtkSmartPointer<vtkLookupTable> tones = tones_of(scale);
  tones->SetVectorModeToComponent();
  tones->SetVectorComponent(field.component);
  mapper->SetLookupTable(tones);
  mapper->SetScalarRange(scale.from, scale.to());
  return actor;
}

vtkSmartPointer<vtkActor> line_actor(vtkPolyData* lines, Colour colour, double width) {
  auto actor = actor_of(lines);
  paint(actor, colour);
  actor->GetProperty()->LightingOff();
  actor->GetProperty()->SetLineWidth(static_cast<float>(width));
  actor->PickableOff();
  return actor;
}

vtkSmartPointer<vtkActor> bar_actor(const std::array<double, 3>& from,
                                    const std::array<double, 3>& to, double radius, Colour colour) {
  const vtkNew<vtkLineSource> line;
  line->SetPoint1(from.data());
  line->SetPoint2(to.data());
  const vtkNew<vtkTubeFilter> tube;
  tube->SetInputConnection(line->GetOutputPort());
  tube->SetRadius(radius);
  tube->SetNumberOfSides(16);
  tube->CappingOn();
  tube->Update();
  auto actor = actor_of(tube->GetOutput());
  paint(actor, colour);
  actor->GetProperty()->SetInterpolationToGouraud();
  actor->GetProperty()->SetAmbient(0.35);
  actor->GetProperty()->SetDiffuse(0.65);
  return actor;
}

vtkSmartPointer<vtkActor> ball_actor(const std::array<double, 3>& at, double radius,
                                     Colour colour) {
  const vtkNew<vtkSphereSource> ball;
  ball->SetCenter(at.data());
  ball->SetRadius(radius);
  ball->SetThetaResolution(24);
  ball->SetPhiResolution(16);
  ball->Update();
  return plain_actor(ball->GetOutput(), colour);
}

vtkSmartPointer<vtkActor> arrow_actor(const std::array<double, 3>& tip,
                                      const std::array<double, 2>& along, double length,
                                      double radius, Colour colour) {
  const vtkNew<vtkArrowSource> arrow;  // from 0 to 1 along x
  const double head = std::min(0.45, 5.0 * radius / length);
  arrow->SetTipLength(head);
  arrow->SetTipRadius(2.4 * radius / length);
  arrow->SetShaftRadius(radius / length);
  arrow->SetTipResolution(24);
  arrow->SetShaftResolution(16);
  arrow->Update();
  auto actor = plain_actor(arrow->GetOutput(), colour);
  actor->SetScale(length);
  actor->RotateZ(std::atan2(along[1], along[0]) * 180.0 / std::numbers::pi);
  actor->SetPosition(tip[0] - length * along[0], tip[1] - length * along[1], tip[2]);
  return actor;
}

}  // namespace deadshore::viz
