#include "viz/view/solids.h"
#include "viz/view/vtk_reading.h"

#include <fmt/format.h>
#include <vtkDataArray.h>
#include <vtkPointData.h>

#include <algorithm>
#include <cmath>

namespace deadshore::viz {
namespace {

constexpr double nothing = 5e-4;  // kN: it would be shown as 0.00

vtkDataArray* reactions_in(const ShownResult& result, std::size_t stage, std::size_t analysis) {
  const std::string name =
      fmt::format("reaction {} {} [kN]", result.stages.at(stage), result.analyses.at(analysis));
  return result.supports->GetPointData()->GetArray(name.c_str());
}

std::array<double, 2> force_in(vtkDataArray* reactions, vtkIdType id) {
  if (reactions == nullptr || reactions->GetNumberOfComponents() < 2) return {0.0, 0.0};
  const std::array<double, 2> force = {reactions->GetComponent(id, 0),
                                       reactions->GetComponent(id, 1)};
  const bool known = std::isfinite(force[0]) && std::isfinite(force[1]);
  return known ? force : std::array<double, 2>{0.0, 0.0};
}

}  // namespace

std::vector<SupportArrow> support_arrows(const ShownResult& result, std::size_t stage,
                                         std::size_t analysis) {
  vtkDataArray* reactions = reactions_in(result, stage, analysis);
  const std::vector<std::string> names = texts_of(result.supports->GetPointData(), "name");
  std::vector<SupportArrow> arrows;
  for (vtkIdType id = 0; id < result.supports->GetNumberOfVerts(); ++id) {
    const std::string& name = names.at(static_cast<std::size_t>(id));
    const std::array<double, 2> force = force_in(reactions, id);
    const bool idle = std::hypot(force[0], force[1]) < nothing;
    const std::string needle = needle_called(result.answers, name);
    if (needle.empty() ? idle : !needle_is_in(result.answers, stage, needle)) continue;
    const double* at = result.supports->GetPoint(id);
    arrows.push_back({name, {at[0], at[1], 0.5 * result.thickness}, force, !needle.empty()});
  }
  std::ranges::stable_sort(arrows, {}, [](const SupportArrow& arrow) { return arrow.at[0]; });
  return arrows;
}

double largest_reaction(const ShownResult& result) {
  double largest = 0.0;
  for (std::size_t stage = 0; stage < result.stages.size(); ++stage) {
    for (std::size_t analysis = 0; analysis < result.analyses.size(); ++analysis) {
      vtkDataArray* reactions = reactions_in(result, stage, analysis);
      for (vtkIdType id = 0; id < result.supports->GetNumberOfVerts(); ++id) {
        const std::array<double, 2> force = force_in(reactions, id);
        largest = std::max(largest, std::hypot(force[0], force[1]));
      }
    }
  }
  return largest;
}

}  // namespace deadshore::viz
