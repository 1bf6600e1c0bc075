#pragma once

#include "io/job/schema_parts.h"

#include <array>

/// The keys of the house: what stands on the wall, and is taken down onto it.
namespace deadshore::io::schema_parts {

constexpr SchemaKey share_key(std::string_view fallback, std::string_view meaning) {
  return {.name = "share",
          .kind = number,
          .example = "0.5",
          .fallback = fallback,
          .range = "above 0, up to 1",
          .meaning = meaning};
}

constexpr SchemaKey layers_key(std::string_view name, bool is_required, std::string_view example,
                               std::string_view meaning) {
  return {.name = name,
          .kind = layers,
          .example = example,
          .required = is_required,
          .meaning = meaning};
}

inline constexpr SchemaKey on_key{.name = "on",
                                  .kind = text,
                                  .example = "first floor",
                                  .required = true,
                                  .meaning =
                                      "The name of the floor or loft whose joists it stands "
                                      "on; they must bear on the wall."};

inline constexpr SchemaKey joists_key =
    choice_key("joists", false, "onto the wall", "onto the wall, along the wall",
               "Whether joists bear on the wall or run beside it, so that only a strip does.");
inline constexpr SchemaKey joist_span_key =
    required("span", length, "m", "3.8 m", "above 0",
             "From this wall to the joists' other bearing; the width of the strip where they run "
             "along the wall.");
inline constexpr SchemaKey floor_share_key =
    share_key("0.5", "Part of the load over the span that this wall takes.");
inline constexpr SchemaKey floor_level_key =
    required("level", length, "m", "2.7 m", "on masonry", "Where joists come into the wall.");
inline constexpr SchemaKey dead_key =
    optional("dead", stress, "kN/m2", "0.6 kN/m2", "", "0 or more",
             "In place of `build_up`: all of its own weight.");

inline constexpr std::array floor_keys{
    name_key("first floor", "What the floor is called; the load it brings has this name too."),
    floor_level_key,
    from_key,
    to_key,
    joists_key,
    joist_span_key,
    floor_share_key,
    layers_key("build_up", false, R"([["softwood", "22 mm"], "plasterboard and skim"])",
               "What it is made of, joists too."),
    dead_key,
    SchemaKey{.name = "use",
              .kind = text,
              .example = "domestic",
              .meaning = "A use of the tables, which gives the imposed load."},
    optional("imposed", stress, "kN/m2", "1.5 kN/m2", "", "0 or more",
             "In place of `use`: the imposed load."),
    optional("movable_partitions", stress, "kN/m2", "0.5 kN/m2", "0 kN/m2", "0 or more",
             "Imposed load for light partitions that may be moved, EN 1991-1-1 6.3.1.2(8)."),
};

inline constexpr std::array loft_keys{
    name_key("loft", "What the loft is called; the load it brings has this name too."),
    floor_level_key,
    from_key,
    to_key,
    joists_key,
    joist_span_key,
    floor_share_key,
    layers_key("build_up", false, R"(["plasterboard and skim", ["insulation", "0.05 kN/m2"]])",
               "What it is made of, joists too."),
    dead_key,
    SchemaKey{.name = "boarded",
              .kind = flag,
              .example = "true",
              .meaning = "Whether it is boarded for storage, which gives the imposed load."},
    optional("imposed", stress, "kN/m2", "0.25 kN/m2", "", "0 or more",
             "In place of `boarded`: the imposed load."),
};

inline constexpr std::array roof_keys{
    name_key("roof", "What the slope is called; the load it brings has this name too."),
    level_or_top("Where rafters bear on the wall; \"top\" follows the wall's top edge."),
    from_key,
    to_key,
    required("pitch", angle, "degrees", "35 degrees", "0 to below 90 degrees",
             "Of the slope, from level."),
    optional("run", length, "m", "2.1 m", "0 m", "0 or more",
             "On plan, from this wall to where rafters bear next; 0 where none bear on it."),
    share_key("0.5", "Part of the load over the run that this wall takes."),
    optional("overhang", length, "mm", "300 mm", "0 mm", "0 or more",
             "On plan, of the eaves beyond the wall."),
    layers_key("coverings", true,
               R"(["interlocking concrete tiles", "battens", ["rafters", "0.1 kN/m2"]])",
               "What the slope is made of, rafters too, per area of slope."),
    layers_key("ceiling", false, R"(["plasterboard and skim"])",
               "A ceiling that hangs on it, per area on plan."),
    optional("access", stress, "kN/m2", "0.6 kN/m2", "", "0 or more",
             "Imposed load of those who mend the roof, on plan; by default that of its pitch. It "
             "never acts with snow."),
    optional("ground_snow", stress, "kN/m2", "0.5 kN/m2", "", "0 or more",
             "Snow on the ground, of the place's map; the pitch says how much lies on the roof."),
    SchemaKey{.name = "snow_zone",
              .kind = number,
              .example = "3",
              .range = "1 to 5",
              .meaning = "In place of `ground_snow`, in the United Kingdom: the zone of its map; "
                         "with `altitude`."},
    optional("altitude", length, "m", "80 m", "", "",
             "Of the site above the sea, with `snow_zone`."),
    optional("snow", stress, "kN/m2", "0.4 kN/m2", "", "0 or more",
             "In place of `ground_snow`: snow on the roof, on plan."),
};

inline constexpr std::array purlin_keys{
    name_key("left purlin", "What the purlin is called; the load it brings has this name too."),
    required("x", length, "m", "2.6 m", "inside the wall", "Its middle, from the left end."),
    required("level", length, "m", "6.2 m", "on masonry", "Where it bears on the wall."),
    required("bearing", length, "mm", "100 mm", "above 0", "The length of wall it bears on."),
    required("width", length, "m", "2.4 m", "above 0", "Of the roof that it carries, on plan."),
    required("span", length, "m", "3.5 m", "above 0", "To its other bearing."),
    share_key("0.5", "Part of the load over the span that this wall takes."),
};

inline constexpr std::array partition_keys{
    name_key("bathroom wall",
             "What the partition is called; the load it brings has this name too."),
    on_key,
    choice_key("runs", true, "", "along the wall, across the wall",
               "Beside the wall, or away from it."),
    optional("distance", length, "m", "1.2 m", "", "0 or more, up to the floor's span",
             "From the wall's inner face to its middle where it runs along the wall, else to its "
             "near end, by default 0."),
    optional("from", length, "m", "0 m", "", "inside the wall",
             "Where it begins, if it runs along the wall; by default the wall's left end."),
    optional("to", length, "m", "6 m", "", "inside the wall",
             "Where it ends, if it runs along the wall; by default the wall's right end."),
    optional("place", length, "m", "2.6 m", "", "inside the wall",
             "Its middle, from the wall's left end, if it runs across."),
    optional("length", length, "m", "3 m", "", "above 0",
             "From its near end inwards, if it runs across."),
    optional("bearing", length, "mm", "400 mm", "", "above 0",
             "The length of wall that takes its load, if it runs across: the joists under it."),
    required("height", length, "m", "2.4 m", "above 0", "Of the partition."),
    optional("openings", area, "m2", "1.6 m2", "0 m2", "0 or more, below its face",
             "Area of doors in it."),
    layers_key("build_up", true, R"(["stud partition, plasterboard"])", "What it is made of."),
};

inline constexpr std::array upper_wall_keys{
    name_key("gable", "What the wall is called; the load it brings has this name too."),
    level_or_top("Where it stands on the wall; \"top\" follows the wall's top edge."),
    from_key,
    to_key,
    required("height", length, "m", "2.5 m", "above 0", "Of the wall, on average."),
    optional("openings", area, "m2", "1.4 m2", "0 m2", "0 or more, below its face",
             "Area of windows and doors in it."),
    layers_key("build_up", true, R"([["brickwork", "215 mm"], ["lime mortar", "15 mm"]])",
               "Masonry and finishes."),
};

inline constexpr std::array chimney_keys{
    name_key("chimney breast", "What the chimney is called; the load it brings has this name too."),
    required("x", length, "m", "3.1 m", "inside the wall", "Its middle, from the left end."),
    required("level", length, "m", "2.7 m", "on masonry",
             "From where it stands on the wall: all of it above counts."),
    required("width", length, "m", "1.4 m", "above 0", "Of the breast, along the wall."),
    required("projection", length, "mm", "350 mm", "above 0",
             "Of the breast, from the face of the wall."),
    required("height", length, "m", "3.6 m", "above 0", "Of the breast above its level."),
    optional("stack_width", length, "m", "0.9 m", "0 m", "0 or more", "Of the stack."),
    optional("stack_depth", length, "m", "0.6 m", "0 m", "0 or more", "Of the stack."),
    optional("stack_height", length, "m", "1.5 m", "0 m", "0 or more",
             "Of the stack above the breast; 0 where it is gone."),
    SchemaKey{.name = "solid",
              .kind = number,
              .example = "0.8",
              .fallback = "1",
              .range = "above 0, up to 1",
              .meaning = "Part of breast and stack that is masonry, the rest being flues."},
    SchemaKey{.name = "material",
              .kind = text,
              .example = "old brickwork in lime",
              .meaning = "A material of the tables, which gives the unit weight."},
    optional("unit_weight", volume, "kN/m3", "19 kN/m3", "", "above 0",
             "In place of `material`: weight of the masonry."),
    share_key("1", "Part of its weight that this wall takes."),
};

inline constexpr std::array contents_keys{
    name_key("bath", "What it is called; the load it brings has this name too."),
    on_key,
    required("x", length, "m", "1.8 m", "inside the wall", "Its middle, from the left end."),
    required("distance", length, "m", "0.6 m", "0 or more, up to the floor's span",
             "From the wall's inner face to its middle."),
    required("bearing", length, "mm", "700 mm", "above 0",
             "The length of wall that takes its load: the joists under it."),
    required("weight", weight, "kN", "3.2 kN", "above 0",
             "Full of what it holds, as a force or as a mass; taken as imposed."),
};

}  // namespace deadshore::io::schema_parts
