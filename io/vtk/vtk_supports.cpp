#include "io/vtk/vtk_supports.h"

#include "io/vtk/vtk_arrays.h"
#include "io/vtk/vtk_fields.h"
#include "solver/job/beam_places.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>
#include <vtkCellArray.h>
#include <vtkCellData.h>
#include <vtkPointData.h>
#include <vtkPoints.h>

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace deadshore::io {
namespace {

struct Support {
  std::string name;
  mesh::Point at;
};

/// The load that a dead shore takes off the wall; null where it has no such name.
const solver::LineLoad* load_of(const solver::Job& job, const solver::DeadShore& shore) {
  const auto load = std::ranges::find(job.line_loads, shore.carries, &solver::LineLoad::name);
  return load == job.line_loads.end() ? nullptr : &*load;
}

void add_staged(std::vector<Support>& supports, const solver::Job& job) {
  const mesh::Cut& cut = job.wall.cut;
  supports.push_back({"base under the cut", {0.5 * (cut.left + cut.right), 0.0}});
  for (const solver::DeadShore& shore : job.dead_shores) {
    const solver::LineLoad* load = load_of(job, shore);
    if (load == nullptr) continue;
    supports.push_back(
        {"joists on " + shore.name, {0.5 * (load->x.from + load->x.to), load->level}});
  }
  if (!job.beam) return;
  const solver::BeamPlaces places = solver::places_of_beam(job);
  const double underside = places.beam.y.from;
  supports.push_back({"beam left end", {places.supports.from, underside}});
  supports.push_back({"beam right end", {places.supports.to, underside}});
}

/// Needles in the job's order, then the two piers, then the two ends, then what only staged work
/// has: `reactions_of` and `hand_reactions` follow this order.
std::vector<Support> supports_of(const solver::Job& job, bool staged) {
  std::vector<Support> supports;
  const mesh::Cut& cut = job.wall.cut;
  for (const solver::Needle& needle : job.needles) {
    supports.push_back({needle.name, {needle.x, cut.soffit}});
  }
  const double length = job.wall.length;
  supports.push_back({"left pier", {0.5 * cut.left, 0.0}});
  supports.push_back({"right pier", {0.5 * (cut.right + length), 0.0}});
  if (job.left_end == solver::WallEnd::held) {
    supports.push_back({"left end", {0.0, 0.5 * (cut.soffit + job.wall.top_at(0.0))}});
  }
  if (job.right_end == solver::WallEnd::held) {
    supports.push_back({"right end", {length, 0.5 * (cut.soffit + job.wall.top_at(length))}});
  }
  if (staged) add_staged(supports, job);
  return supports;
}

/// A force on the wall, N.
struct Force {
  double x = 0.0;
  double y = 0.0;
};

/// In the order of `add_staged`.
void add_staged(std::vector<Force>& forces, const solver::Job& job,
                const solver::PanelResult& analysis) {
  forces.push_back({0.0, analysis.base_cut});
  for (const solver::DeadShore& shore : job.dead_shores) {
    if (load_of(job, shore) == nullptr) continue;
    const auto joist =
        std::ranges::find(analysis.joists, shore.name, &solver::JoistReaction::shore);
    forces.push_back({0.0, joist == analysis.joists.end() ? 0.0 : joist->force});
  }
  if (!analysis.beam) return;
  forces.push_back({0.0, analysis.beam->reaction_left});
  forces.push_back({0.0, analysis.beam->reaction_right});
}

std::vector<Force> reactions_of(const solver::Job& job, const solver::PanelResult& analysis,
                                bool staged) {
  std::vector<Force> forces;
  for (const solver::NeedleReaction& needle : analysis.needles) forces.push_back({0, needle.force});
  forces.push_back({0.0, analysis.base_left});
  forces.push_back({0.0, analysis.base_right});
  if (job.left_end == solver::WallEnd::held) forces.push_back({analysis.thrust_left, 0.0});
  if (job.right_end == solver::WallEnd::held) forces.push_back({-analysis.thrust_right, 0.0});
  if (staged) add_staged(forces, job, analysis);
  return forces;
}

std::vector<Force> hand_reactions(const solver::SpreadResult& hand) {
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
  void add_support(const Support& support) {
    const vtkIdType id = add_point(support.name, support.at);
    vertices_->InsertNextCell(1, &id);
    parts_->InsertNextValue(support.name);
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
  for (const Support& support : supports_of(job, staged)) shapes.add_support(support);
  if (staged && job.beam) {
    const solver::BeamPlaces places = solver::places_of_beam(job);
    shapes.add_face("beam", places.beam);
    for (const mesh::Box& stone : places.padstones) shapes.add_face("padstone", stone);
  }
  vtkSmartPointer<vtkPolyData> points = shapes.taken();
  add_reactions(points, "hand", hand_reactions(result.hand));
  for (const solver::StageResult& stage : result.stages) {
    for (const solver::PanelResult& analysis : stage.analyses) {
      if (!analysis.stands()) continue;
      const std::string label = fmt::format("{} {}", stage.name, solver::to_string(analysis.model));
      add_reactions(points, label, reactions_of(job, analysis, staged));
    }
  }
  return points;
}

}  // namespace deadshore::io
