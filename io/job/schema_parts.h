#pragma once

#include "io/job/schema.h"

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

/// A level on the wall, or its top edge.
constexpr SchemaKey level_or_top(std::string_view meaning) {
  return {.name = "level",
          .kind = quantity_or_top,
          .dimension = length,
          .usual_unit = "m",
          .example = "5.4 m",
          .required = true,
          .range = "on masonry",
          .meaning = meaning};
}

inline constexpr SchemaKey from_key = optional("from", length, "m", "0 m", "", "inside the wall",
                                               "Where it begins; by default the wall's left end.");
inline constexpr SchemaKey to_key = optional("to", length, "m", "6 m", "", "inside the wall",
                                             "Where it ends; by default the wall's right end.");

/// Keys of a sole and of what it presses on, alike for needles and dead shores.
inline constexpr SchemaKey sole_timber_key{.name = "sole_timber",
                                           .kind = text,
                                           .example = "C24",
                                           .fallback = "C24",
                                           .meaning = "Strength class of the sole plate."};
inline constexpr SchemaKey ground_key{.name = "ground",
                                      .kind = text,
                                      .example = "stiff clay",
                                      .meaning = "The ground under the sole, of the tables."};
inline constexpr SchemaKey ground_bearing_key =
    optional("ground_bearing", stress, "kN/m2", "150 kN/m2", "", "above 0",
             "In place of `ground`: what it may bear, for unfactored loads.");
inline constexpr SchemaKey subgrade_modulus_key =
    optional("subgrade_modulus", volume, "MN/m3", "30 MN/m3", "", "above 0",
             "Pressure that settles the ground by a unit of length; by default that of the kind of "
             "ground, where there is one.");

}  // namespace deadshore::io::schema_parts
