#include "io/vtk_supports.h"

#include "io/vtk_arrays.h"

#include <fmt/format.h>
#include <vtkCellArray.h>
#include <vtkPointData.h>
#include <vtkPoints.h>

#include <string>
#include <vector>

namespace deadshore::io {
namespace {

struct Support {
  std::string name;
  mesh::Point at;
};

/// Needles in the job's order, then the two piers, then the two ends: `reactions_of` and
/// `hand_reactions` follow this order.
std::vector<Support> supports_of(const solver::Job& job) {
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
  return supports;
}

/// A force on the wall, N.
struct Force {
  double x = 0.0;
  double y = 0.0;
};

std::vector<Force> reactions_of(const solver::Job& job, const solver::PanelResult& analysis) {
  std::vector<Force> forces;
  for (const solver::NeedleReaction& needle : analysis.needles) forces.push_back({0, needle.force});
  forces.push_back({0.0, analysis.base_left});
  forces.push_back({0.0, analysis.base_right});
  if (job.left_end == solver::WallEnd::held) forces.push_back({analysis.thrust_left, 0.0});
  if (job.right_end == solver::WallEnd::held) forces.push_back({-analysis.thrust_right, 0.0});
  return forces;
}

std::vector<Force> hand_reactions(const solver::SpreadResult& hand) {
  std::vector<Force> forces;
  for (const solver::SpreadSum& sum : hand.needles) forces.push_back({0.0, sum.total});
  forces.push_back({0.0, hand.left_pier.total});
  forces.push_back({0.0, hand.right_pier.total});
  return forces;
}

/// Supports without an entry in `forces` get zero.
void add_reactions(vtkPolyData* points, const std::string& label,
                   const std::vector<Force>& forces) {
  const vtkIdType count = points->GetNumberOfPoints();
  const auto array = double_array(fmt::format("reaction {} [kN]", label), {"x", "y", "z"}, count);
  for (std::size_t index = 0; index < forces.size(); ++index) {
    const Force& force = forces[index];
    array->SetTuple3(static_cast<vtkIdType>(index), force.x / 1e3, force.y / 1e3, 0.0);
  }
  points->GetPointData()->AddArray(array);
}

}  // namespace

vtkSmartPointer<vtkPolyData> support_points(const solver::JobResult& result) {
  vtkNew<vtkPoints> positions;
  positions->SetDataTypeToDouble();
  vtkNew<vtkCellArray> vertices;
  vtkNew<vtkStringArray> names;
  names->SetName("name");
  for (const Support& support : supports_of(result.job)) {
    const vtkIdType id = positions->InsertNextPoint(support.at.x, support.at.y, 0.0);
    vertices->InsertNextCell(1, &id);
    names->InsertNextValue(support.name);
  }
  auto points = vtkSmartPointer<vtkPolyData>::New();
  points->SetPoints(positions);
  points->SetVerts(vertices);
  points->GetPointData()->AddArray(names);

  add_reactions(points, "hand", hand_reactions(result.hand));
  for (const solver::StageResult& stage : result.stages) {
    for (const solver::PanelResult& analysis : stage.analyses) {
      if (!analysis.stands()) continue;
      const std::string label = fmt::format("{} {}", stage.name, solver::to_string(analysis.model));
      add_reactions(points, label, reactions_of(result.job, analysis));
    }
  }
  return points;
}

}  // namespace deadshore::io
