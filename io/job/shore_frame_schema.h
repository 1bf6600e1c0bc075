#pragma once

#include "io/job/schema_parts.h"

#include <array>

/// The keys of what a dead shore is made of.
namespace deadshore::io::schema_parts {

inline constexpr std::array shore_frame_keys{
    required("distance", length, "mm", "700 mm", "above 0, within the joists' span",
             "From the wall's inner face to the head plate's middle."),
    required("from", length, "m", "1 m", "up to 1 m beyond the wall",
             "Where the row begins, the side of its first joist, along the wall."),
    required("to", length, "m", "4.2 m", "up to 1 m beyond the wall", "Where the row ends."),
    required("joist_span", length, "m", "3.8 m", "above 0",
             "From the wall to the joists' far bearing."),
    required("joist_width", length, "mm", "50 mm", "above 0, up to the joists' spacing",
             "Of each joist, on the head plate."),
    optional("joist_spacing", length, "mm", "400 mm", "", "above 0",
             "Between joists; by default that of the dead shore."),
    required("joist_level", length, "m", "2.5 m", "well above the floor",
             "Underside of the joists, above the wall's base."),
    optional("floor_level", length, "mm", "0 mm", "0 mm", "well below the joists",
             "What the sole stands on, above the wall's base."),
    SchemaKey{.name = "section",
              .kind = text,
              .example = "UC 152x152x23",
              .meaning = "The head plate as a steel section of the tables."},
    SchemaKey{.name = "timber",
              .kind = text,
              .example = "C24",
              .meaning = "The head plate as a piece of timber of this strength class."},
    choice_key("grade", false, "S275", "S235, S275, S355", "Grade of a steel head plate."),
    optional("width", length, "mm", "100 mm", "", "above 0",
             "With `timber`: the head plate across the wall's length."),
    optional("depth", length, "mm", "150 mm", "", "above 0", "With `timber`: upwards."),
    choice_key("duration", false, "medium term",
               "permanent, long term, medium term, short term, instantaneous",
               "How long the shortest load on its timber lasts; imposed load on floors is medium "
               "term."),
    choice_key("service_class", false, "2", "1, 2, 3",
               "How damp its timber is: 1 heated room, 2 under cover, 3 in the open."),
    SchemaKey{.name = "prop",
              .kind = text,
              .example = "B30",
              .meaning = "Props of the tables: their class and their longest extension in dm."},
    SchemaKey{.name = "places",
              .kind = quantities,
              .dimension = length,
              .usual_unit = "m",
              .example = R"(["1.2 m", "2.2 m", "3.2 m"])",
              .range = "rising, within the row, two or more",
              .meaning = "With `prop`: where each stands along the wall; by default places are "
                         "proposed."},
    optional("most_apart", length, "m", "1 m", "", "above 0",
             "With `prop` and no `places`: the largest spacing to propose; by default the largest "
             "that passes, up to 1.2 m."),
    optional("prop_base", length, "mm", "120 mm", "120 mm", "above 0",
             "With `prop`: side of its square plates, foot and head."),
    SchemaKey{.name = "stud",
              .kind = text,
              .example = "C16",
              .meaning = "In place of `prop`: a stud wall, of studs of this strength class."},
    optional("stud_width", length, "mm", "47 mm", "", "above 0",
             "With `stud`: of each stud along the row."),
    optional("stud_depth", length, "mm", "100 mm", "", "above 0",
             "With `stud`: of each stud across the row."),
    optional("stud_spacing", length, "mm", "400 mm", "", "above 0", "With `stud`: between studs."),
    choice_key("noggings", false, "no", "no, yes",
               "With `stud`: whether noggings hold studs along the row at mid-height."),
    required("sole_width", length, "mm", "225 mm", "at least `prop_base`",
             "Sole plate across the grain."),
    required("sole_thickness", length, "mm", "75 mm", "above 0", "Sole plate upwards."),
    optional("sole_length", length, "m", "4 m", "", "at least that of the row",
             "Sole plate along the row, as far beyond it at both ends; by default as long."),
    sole_timber_key,
    ground_key,
    ground_bearing_key,
    SchemaKey{.name = "suspended_floor",
              .kind = text,
              .example = "kitchen floor, timber joists",
              .meaning = "In place of `ground`: the floor it stands on, which somebody else has to "
                         "verify."},
    subgrade_modulus_key,
};

}  // namespace deadshore::io::schema_parts
