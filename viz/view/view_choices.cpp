#include "viz/view/view_choices.h"

#include <vtkDataArray.h>
#include <vtkPointData.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

double largest_movement(vtkDataArray* movements) {
  double largest = 0.0;
  for (vtkIdType i = 0; movements != nullptr && i < movements->GetNumberOfTuples(); ++i) {
    largest =
        std::max(largest, std::hypot(movements->GetComponent(i, 0), movements->GetComponent(i, 1)));
  }
  return largest;
}

}  // namespace

ViewChoices choices_of(const ShownResult& result, const std::vector<ShownField>& fields) {
  double largest = 0.0;
  double size = 0.0;
  for (const ShownWall& wall : result.walls) {
    std::array<double, 6> bounds{};
    wall.grid->GetBounds(bounds.data());
    size = std::max({size, bounds[1] - bounds[0], bounds[3] - bounds[2]});
    largest = std::max(largest,
                       largest_movement(wall.grid->GetPointData()->GetArray("displacement [mm]")));
  }
  ViewChoices choices{result.stages, result.analyses, {}, fitting_magnification(largest, size)};
  for (const ShownField& field : fields) choices.fields.push_back(title_of(field));
  return choices;
}

}  // namespace deadshore::viz
