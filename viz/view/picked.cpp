#include "viz/view/picked.h"

#include "viz/view/point_values.h"
#include "viz/view/vtk_reading.h"

#include <fmt/format.h>
#include <vtkCellData.h>
#include <vtkPointData.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <string_view>

namespace deadshore::viz {
namespace {

std::vector<std::string> supports_in(const ShownResult& result) {
  std::vector<std::string> names = texts_of(result.supports->GetPointData(), "name");
  const auto count = static_cast<std::size_t>(result.supports->GetNumberOfVerts());
  names.resize(std::min(names.size(), count));  // the corners of faces come after them
  return names;
}

std::vector<std::string> parts_in(const ShownResult& result) {
  if (!result.needles) return {};
  return texts_of(result.needles->GetCellData(), "part");
}

bool is_among(const std::vector<std::string>& names, const std::string& name) {
  return std::ranges::find(names, name) != names.end();
}

std::optional<double> number_in(std::string_view text) {
  while (text.starts_with(' ')) text.remove_prefix(1);
  while (text.ends_with(' ')) text.remove_suffix(1);
  double value = 0.0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), value);
  const bool whole = end.ec == std::errc{} && end.ptr == text.data() + text.size();
  return whole && std::isfinite(value) ? std::optional(value) : std::nullopt;
}

std::optional<PickedWall> place_in(const std::string& text) {
  const std::size_t comma = text.find(',');
  if (comma == std::string::npos) return std::nullopt;
  const auto x = number_in(std::string_view(text).substr(0, comma));
  const auto y = number_in(std::string_view(text).substr(comma + 1));
  if (!x || !y) return std::nullopt;
  return PickedWall{*x, *y};
}

/// What is said of each kind of thing at one stage under one analysis.
struct Saying {
  const ShownResult& result;
  const ShownWall& wall;
  PickedAt at;

  std::vector<std::string> operator()(const PickedNothing& /*nothing*/) const { return {}; }
  std::vector<std::string> operator()(const PickedWall& place) const {
    const auto found = place_at(wall.grid, place.x, place.y);
    if (found) return point_text(wall.grid, *found);
    return {fmt::format("Wall at x {:.0f} mm, y {:.0f} mm", place.x, place.y),
            "No masonry is there in this stage."};
  }
  std::vector<std::string> operator()(const PickedSupport& support) const {
    return support_text(result.answers, support.name, at);
  }
  std::vector<std::string> operator()(const PickedProp& prop) const {
    return prop_text(result.answers, prop.name);
  }
  std::vector<std::string> operator()(const PickedBeam& /*beam*/) const {
    return beam_text(result.answers, at);
  }
};

}  // namespace

Picked picked_by_name(const ShownResult& result, const std::string& text) {
  const std::vector<std::string> supports = supports_in(result);
  const std::vector<std::string> parts = parts_in(result);
  if (is_among(supports, text)) return PickedSupport{text};
  if (is_among(parts, text)) return PickedProp{text};
  if (text == "beam") return PickedBeam{};
  if (const auto place = place_in(text)) return *place;
  std::vector<std::string> names = supports;
  std::ranges::copy_if(parts, std::back_inserter(names),
                       [&](const std::string& part) { return !is_among(supports, part); });
  throw std::invalid_argument(fmt::format(
      "nothing is called \"{}\"; there are {}, beam, or X,Y in mm", text, fmt::join(names, ", ")));
}

std::vector<std::string> picked_text(const Picked& picked, const ShownResult& result,
                                     std::size_t stage, std::size_t analysis) {
  return std::visit(
      Saying{result, result.wall(stage, analysis), PickedAt{stage, result.analyses.at(analysis)}},
      picked);
}

std::string needle_of(const ShownResult& result, const std::string& part) {
  std::string longest;
  for (const std::string& name : supports_in(result)) {
    const bool owns = part == name || part.starts_with(name + " ");
    if (owns && name.size() > longest.size()) longest = name;
  }
  return longest;
}

}  // namespace deadshore::viz
