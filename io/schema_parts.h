#pragma once

#include "io/schema.h"

/// Short ways to write down keys of the schema.
namespace deadshore::io::schema_parts {

using enum KeyKind;

constexpr SchemaKey name_key(std::string_view example, std::string_view meaning) {
  return {.name = "name", .kind = text, .example = example, .required = true, .meaning = meaning};
}

constexpr SchemaKey required(std::string_view name, Dimension dimension, std::string_view unit,
                             std::string_view example, std::string_view range,
                             std::string_view meaning) {
  return {.name = name,
          .kind = quantity,
          .dimension = dimension,
          .usual_unit = unit,
          .example = example,
          .required = true,
          .range = range,
          .meaning = meaning};
}

constexpr SchemaKey optional(std::string_view name, Dimension dimension, std::string_view unit,
                             std::string_view example, std::string_view fallback,
                             std::string_view range, std::string_view meaning) {
  return {.name = name,
          .kind = quantity,
          .dimension = dimension,
          .usual_unit = unit,
          .example = example,
          .fallback = fallback,
          .range = range,
          .meaning = meaning};
}

constexpr SchemaKey choice_key(std::string_view name, bool is_required, std::string_view fallback,
                               std::string_view choices, std::string_view meaning) {
  return {.name = name,
          .kind = choice,
          .example = fallback,
          .required = is_required,
          .fallback = fallback,
          .choices = choices,
          .meaning = meaning};
}

inline constexpr auto length = Dimension::length;
inline constexpr auto force = Dimension::force;
inline constexpr auto line = Dimension::force_per_length;
inline constexpr auto volume = Dimension::force_per_volume;
inline constexpr auto stress = Dimension::stress;
inline constexpr auto stiffness = Dimension::stiffness;
inline constexpr auto area = Dimension::area;
inline constexpr auto angle = Dimension::angle;
inline constexpr auto weight = Dimension::weight;

}  // namespace deadshore::io::schema_parts
