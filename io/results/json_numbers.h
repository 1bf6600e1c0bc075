#pragma once

#include "mesh/plane.h"

#include <nlohmann/json.hpp>

#include <string_view>

/// Numbers as results.json has them.
namespace deadshore::io {

using Json = nlohmann::ordered_json;

/// Ten significant digits: more is rounding noise. \throws std::domain_error if it is not finite
[[nodiscard]] double rounded(double value, std::string_view what);

[[nodiscard]] double kilonewtons(double newtons, std::string_view what);

/// From N mm.
[[nodiscard]] double kilonewton_metres(double newton_mm, std::string_view what);

/// [from, to], mm.
[[nodiscard]] Json range_of(const mesh::Interval& interval);

/// Null where it is infinite: nothing can buckle, or there is no capacity.
[[nodiscard]] Json finite_or_null(double value);

}  // namespace deadshore::io
