#include "io/vtk/vtk_arrays.h"
#include "io/vtk/vtk_fields.h"
#include "io/vtk/vtk_parts.h"
#include "solver/job/beam_places.h"
#include "solver/panel/support_reactions.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>
#include <vtkCellArray.h>
#include <vtkCellData.h>
#include <vtkPointData.h>
#include <vtkPoints.h>

#include <array>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace deadshore::io {
namespace {

/// All that may hold the wall up or push it: needles, piers, held ends, and what only staged work
/// has.
std::vector<solver::SupportId> supports_of(const solver::Job& job, bool staged) {
  std::vector<solver::SupportId> supports;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    supports.push_back(support_of(solver::NeedleId{i}));
  }
  supports.insert(supports.end(), {solver::supports::left_pier, solver::supports::right_pier});
  if (job.left_end == solver::WallEnd::held) supports.push_back(solver::supports::left_end);
  if (job.right_end == solver::WallEnd::held) supports.push_back(solver::supports::right_end);
  if (!staged) return supports;
  supports.push_back(solver::supports::base_under_cut);
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i) {
    supports.push_back(support_of(solver::ShoreId{i}));
  }
  if (job.beam) {
    supports.insert(supports.end(),
                    {solver::supports::beam_left_end, solver::supports::beam_right_end});
  }
  return supports;
}

/// How high a support stands, mm.
double level_of(const solver::Job& job, solver::SupportId support) {
  const double soffit = job.wall.cut.soffit;
  switch (support.kind) {
    case solver::SupportKind::needle:
      return soffit;
    case solver::SupportKind::left_end:
      return 0.5 * (soffit + job.wall.top_at(0.0));
    case solver::SupportKind::right_end:
      return 0.5 * (soffit + job.wall.top_at(job.wall.length));
    case solver::SupportKind::joists:
      return job.line_loads.at(index_of(job.dead_shores.at(support.index).carries)).level;
    case solver::SupportKind::beam_left_end:
    case solver::SupportKind::beam_right_end:
      return solver::places_of_beam(job).beam.y.from;
    default:
      return 0.0;
  }
}

/// A force on the wall, N.
struct Force {
  double x = 0.0;
  double y = 0.0;
};

std::vector<Force> forces_on(const solver::Job& job, const solver::PanelResult& analysis,
                             std::span<const solver::SupportId> supports) {
  const std::vector<solver::SupportReaction> reactions = reactions_of(job, analysis);
  std::vector<Force> forces;
  for (const solver::SupportId support : supports) {
    Force& force = forces.emplace_back();
    if (support == solver::supports::left_end) force.x = analysis.thrust_left;
    if (support == solver::supports::right_end) force.x = -analysis.thrust_right;
    if (const auto* reaction = find_reaction(reactions, support)) force.y = reaction->force;
  }
  return forces;
}

std::vector<Force> hand_forces(const solver::SpreadResult& hand) {
  std::vector<Force> forces;
  for (const solver::SpreadSum& sum : hand.needles) forces.push_back({0.0, sum.total});
  forces.push_back({0.0, hand.left_pier.total});
  forces.push_back({0.0, hand.right_pier.total});
  return forces;
}

/// The field of one stage and model, or of the hand method.
std::string reaction_name(const std::string& label) {
  constexpr std::string_view stands_for = "STAGE MODEL";
  std::string name = vtk_fields::reaction.name;
  return name.replace(name.find(stands_for), stands_for.size(), label);
}

/// Supports without an entry in `forces` get zero.
void add_reactions(vtkPolyData* points, const std::string& label,
                   const std::vector<Force>& forces) {
  const vtkIdType count = points->GetNumberOfPoints();
  const auto array = double_array(reaction_name(label), {"x", "y", "z"}, count);
  for (std::size_t index = 0; index < forces.size(); ++index) {
    const Force& force = forces[index];
    array->SetTuple3(static_cast<vtkIdType>(index), force.x / 1e3, force.y / 1e3, 0.0);
  }
  points->GetPointData()->AddArray(array);
}

/// Points with a vertex each, and beam and padstones as faces after them.
class Shapes {
 public:
  Shapes() {
    positions_->SetDataTypeToDouble();
    names_->SetName(vtk_fields::support_name.name);
    parts_->SetName(vtk_fields::part.name);
  }
  void add_support(const std::string& name, mesh::Point at) {
    const vtkIdType id = add_point(name, at);
    vertices_->InsertNextCell(1, &id);
    parts_->InsertNextValue(name);
  }
  void add_face(const std::string& name, const mesh::Box& face) {
    const std::array<vtkIdType, 4> ids = {
        add_point(name, {face.x.from, face.y.from}), add_point(name, {face.x.to, face.y.from}),
        add_point(name, {face.x.to, face.y.to}), add_point(name, {face.x.from, face.y.to})};
    faces_->InsertNextCell(4, ids.data());
    parts_->InsertNextValue(name);
  }
  [[nodiscard]] vtkSmartPointer<vtkPolyData> taken() const {
    auto shapes = vtkSmartPointer<vtkPolyData>::New();
    shapes->SetPoints(positions_);
    shapes->SetVerts(vertices_);
    shapes->GetPointData()->AddArray(names_);
    if (faces_->GetNumberOfCells() > 0) {
      shapes->SetPolys(faces_);
      shapes->GetCellData()->AddArray(parts_);
    }
    return shapes;
  }

 private:
  vtkIdType add_point(const std::string& name, const mesh::Point& at) {
    names_->InsertNextValue(name);
    return positions_->InsertNextPoint(at.x, at.y, 0.0);
  }
  vtkNew<vtkPoints> positions_;
  vtkNew<vtkCellArray> vertices_;
  vtkNew<vtkCellArray> faces_;
  vtkNew<vtkStringArray> names_;  ///< of points
  vtkNew<vtkStringArray> parts_;  ///< of cells: vertices first, then faces, as VTK counts them
};

}  // namespace

vtkSmartPointer<vtkPolyData> support_points(const solver::JobResult& result) {
  const solver::Job& job = result.job;
  const bool staged = is_staged(result);
  Shapes shapes;
  const std::vector<solver::SupportId> supports = supports_of(job, staged);
  for (const solver::SupportId support : supports) {
    shapes.add_support(label_of(job, support), {place_of(job, support), level_of(job, support)});
  }
  if (staged && job.beam) {
    const solver::BeamPlaces places = solver::places_of_beam(job);
    shapes.add_face("beam", places.beam);
    for (const mesh::Box& stone : places.padstones) shapes.add_face("padstone", stone);
  }
  vtkSmartPointer<vtkPolyData> points = shapes.taken();
  add_reactions(points, "hand", hand_forces(result.hand));
  for (const solver::StageResult& stage : result.stages) {
    for (const solver::PanelResult& analysis : stage.analyses) {
      if (!analysis.stands()) continue;
      const std::string label = fmt::format("{} {}", stage.name, solver::to_string(analysis.model));
      add_reactions(points, label, forces_on(job, analysis, supports));
    }
  }
  return points;
}

}  // namespace deadshore::io
