#include "viz/view/shown_field.h"

#include "viz/wall/bands.h"

#include <fmt/format.h>
#include <vtkCellData.h>
#include <vtkDataArray.h>
#include <vtkPointData.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace deadshore::viz {
namespace {

struct NameAndUnit {
  std::string name;
  std::string unit;
};

NameAndUnit split(const std::string& array) {
  const std::size_t open = array.rfind(" [");
  if (open == std::string::npos || !array.ends_with(']')) return {array, ""};
  return {array.substr(0, open), array.substr(open + 2, array.size() - open - 3)};
}

vtkDataArray* array_of(vtkUnstructuredGrid* grid, const ShownField& field) {
  vtkFieldData* fields = field.at_cells ? static_cast<vtkFieldData*>(grid->GetCellData())
                                        : static_cast<vtkFieldData*>(grid->GetPointData());
  return fields->GetArray(field.array.c_str());
}

/// Marks are whole numbers: what is loose, which material.
bool is_a_mark(vtkDataArray* array) {
  return array->GetDataType() != VTK_DOUBLE && array->GetDataType() != VTK_FLOAT;
}

void add_fields(std::vector<ShownField>& found, vtkFieldData* fields, bool at_cells) {
  for (int i = 0; i < fields->GetNumberOfArrays(); ++i) {
    vtkDataArray* array = fields->GetArray(i);
    if (array == nullptr || is_a_mark(array)) continue;
    const auto [name, unit] = split(array->GetName());
    const int components = array->GetNumberOfComponents();
    if (components > 1 && (unit.empty() || at_cells)) continue;
    for (int component = 0; component < components; ++component) {
      const char* part = array->GetComponentName(component);
      const std::string suffix = components == 1 ? "" : fmt::format(" {}", part ? part : "");
      if (suffix == " z") continue;  // out of the wall's plane
      const bool known = std::ranges::any_of(found, [&](const ShownField& field) {
        return field.array == array->GetName() && field.component == component;
      });
      if (!known) found.push_back({array->GetName(), component, at_cells, name + suffix, unit});
    }
  }
}

int rank_of(const ShownField& field) {
  static constexpr std::array<std::string_view, 5> first = {
      "principal stress, minor", "principal stress, major", "displacement y", "displacement x",
      "largest crack strain"};
  return static_cast<int>(std::ranges::find(first, field.name) - first.begin());
}

/// Widens the range to what lies between the outermost hundredths: the peak in a sharp corner is
/// one of the mesh and would leave the rest in one band.
void widen(ShownField& field, vtkDataArray* array) {
  std::vector<double> values(static_cast<std::size_t>(array->GetNumberOfTuples()));
  for (std::size_t i = 0; i < values.size(); ++i) {
    values[i] = array->GetComponent(static_cast<vtkIdType>(i), field.component);
  }
  if (values.empty()) return;
  const auto part = static_cast<std::ptrdiff_t>(values.size() / 100);
  const auto low = values.begin() + part;
  std::ranges::nth_element(values, low);
  field.lowest = std::min(field.lowest, *low);
  const auto high = values.end() - 1 - part;
  std::ranges::nth_element(values, high);
  field.highest = std::max(field.highest, *high);
}

}  // namespace

std::vector<ShownField> fields_of(const ShownResult& result) {
  std::vector<ShownField> fields;
  for (const ShownWall& wall : result.walls) {
    add_fields(fields, wall.grid->GetPointData(), false);
    add_fields(fields, wall.grid->GetCellData(), true);
  }
  std::ranges::stable_sort(fields, {}, rank_of);
  for (ShownField& field : fields) {
    for (const ShownWall& wall : result.walls) {
      if (vtkDataArray* array = array_of(wall.grid, field)) widen(field, array);
    }
  }
  return fields;
}

FieldScale scale_of(const ShownField& field) {
  FieldScale scale;
  const double low = std::min(field.lowest, 0.0);
  const double high = std::max(field.highest, 0.0);
  scale.step = even_scale(high - low).step;
  const double first = std::floor(low / scale.step + 1e-9);
  const double last = std::ceil(high / scale.step - 1e-9);
  scale.from = first * scale.step;
  scale.bands = std::max(1, static_cast<int>(last - first));
  scale.dark_at_lowest = -low > high;
  return scale;
}

Colour tone_of(const FieldScale& scale, int band) {
  constexpr double palest = 0.03;  // paler than this a wall is lost on the paper
  const double share = scale.bands < 2 ? 0.0 : static_cast<double>(band) / (scale.bands - 1);
  return compression_tone(palest + (1.0 - palest) * (scale.dark_at_lowest ? 1.0 - share : share));
}

std::string limit_text(double value, const FieldScale& scale) {
  int decimals = 0;
  const double tolerance = 1e-6;
  for (double step = scale.step; decimals < 9; step *= 10.0, ++decimals) {
    if (std::abs(step - std::round(step)) < tolerance * step) break;
  }
  if (decimals > 5) return fmt::format("{:.1e}", value);
  const std::string text = fmt::format("{:.{}f}", value, decimals);
  return text.starts_with('-') && text.find_first_not_of("-0.") == std::string::npos
             ? text.substr(1)
             : text;
}

std::string title_of(const ShownField& field) {
  return field.unit.empty() ? field.name : fmt::format("{} [{}]", field.name, field.unit);
}

}  // namespace deadshore::viz
