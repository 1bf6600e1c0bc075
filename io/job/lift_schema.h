#pragma once

#include "io/job/schema_parts.h"

#include <array>

/// The keys of how the permanent beam goes up.
namespace deadshore::io::schema_parts {

inline constexpr std::array lift_keys{
    choice_key("side", true, "", "inside, outside", "The side of the wall the beam comes from."),
    choice_key("entry", false, "sideways", "sideways, endways",
               "Through the wall's face into both pockets at once, or one end into its pocket past "
               "its place and back into the other."),
    optional("clearance", length, "mm", "25 mm", "25 mm", "0 or more",
             "To have on every side of what moves, so twice in a gap."),
    required("needle_underside", length, "m", "2.55 m", "",
             "The needles' underside above the wall's base, as they stand on site."),
    required("pocket_left", length, "mm", "200 mm", "the bearing up to the pier's width",
             "The pocket in the left pier, from the jamb, with the part that is filled again."),
    required("pocket_right", length, "mm", "200 mm", "the bearing up to the pier's width",
             "The same at the right."),
    optional("floor_level", length, "mm", "-150 mm", "0 mm", "below the beam",
             "What lifters stand on, above the wall's base."),
    required("room_left", length, "m", "-0.5 m", "",
             "Along the wall, where the room begins in which the beam is brought up to it."),
    required("room_right", length, "m", "6.5 m", "beyond `room_left`", "Where that room ends."),
    SchemaKey{.name = "dynamic_factor",
              .kind = number,
              .example = "1.25",
              .fallback = "1.25",
              .range = "1 or more",
              .meaning = "On the weight while it moves."},
    choice_key("sections", false, "one at a time", "one at a time, together",
               "How the sections of a doubled beam go up."),
};

inline constexpr std::array lifter_keys{
    name_key("L1", "What the lifter is called."),
    required("at", length, "mm", "900 mm", "along the beam",
             "The middle of its forks, from the beam's left end."),
    required("load_distance", length, "mm", "500 mm", "0 or more",
             "From its mast or column to the beam's middle."),
    required("width", length, "mm", "600 mm", "above 0", "Its base, along the wall."),
    optional("own_weight", force, "kgf", "90 kgf", "", "above 0",
             "With all three, for tipping over its front feet: what it weighs."),
    optional("weight_behind", length, "mm", "400 mm", "", "above 0",
             "With all three: from the front feet's edge back to the middle of its weight."),
    optional("load_beyond", length, "mm", "150 mm", "", "below 0 for within the feet",
             "With all three: from that edge out to the beam's middle."),
};

inline constexpr std::array lifter_capacity_keys{
    SchemaKey{.name = "source",
              .kind = text,
              .example = "plate on the lifter",
              .required = true,
              .meaning = "Where the figures come from."},
    SchemaKey{.name = "distance",
              .kind = quantities,
              .dimension = length,
              .usual_unit = "mm",
              .example = R"(["350 mm", "600 mm"])",
              .required = true,
              .range = "rising, at least two",
              .meaning = "Distances of the load's middle from its mast or column."},
    SchemaKey{.name = "load",
              .kind = quantities,
              .dimension = force,
              .usual_unit = "kgf",
              .example = R"(["225 kgf", "160 kgf"])",
              .required = true,
              .range = "one for each distance",
              .meaning = "What it may lift there."},
};

inline constexpr std::array stand_keys{
    name_key("S1", "What the stand is called."),
    required("at", length, "mm", "400 mm", "along the beam",
             "Its middle, from the beam's left end."),
    required("width", length, "mm", "300 mm", "above 0", "Over its legs, along the wall."),
    required("depth", length, "mm", "600 mm", "above 0",
             "Over its legs, through the wall; half of it to each side of the wall's middle."),
    SchemaKey{.name = "legs",
              .kind = number,
              .example = "4",
              .fallback = "2",
              .range = "a whole number, 1 or more",
              .meaning = "Legs that share its load evenly."},
    SchemaKey{.name = "leg_timber",
              .kind = text,
              .example = "C24",
              .fallback = "C24",
              .meaning = "Strength class of the legs and of what is fixed to them."},
    required("leg_width", length, "mm", "47 mm", "above 0", "A leg's section, one way."),
    required("leg_depth", length, "mm", "97 mm", "above 0", "A leg's section, the other way."),
    required("leg_length", length, "m", "1.8 m", "above 0",
             "Of a leg between what holds it sideways."),
    choice_key("service_class", false, "2", "1, 2, 3",
               "How damp it is: 1 heated room, 2 under cover, 3 in the open."),
};

inline constexpr std::array fixing_keys{
    SchemaKey{.name = "number",
              .kind = number,
              .example = "8",
              .required = true,
              .range = "a whole number, 1 or more",
              .meaning = "Nails, screws or bolts of one stand."},
    optional("capacity", force, "kN", "1.2 kN", "", "above 0",
             "The usable load of one, given outright, for loads that are not factored."),
    optional("diameter", length, "mm", "3.35 mm", "", "up to 8 mm",
             "In place of `capacity`: of a smooth round nail, or the effective one of a screw."),
    optional("tensile_strength", stress, "N/mm2", "600 N/mm2", "600 N/mm2", "above 0",
             "With `diameter`: f_u of its wire."),
    optional("side_thickness", length, "mm", "38 mm", "", "above 0",
             "With `diameter`: of the timber under its head."),
    optional("penetration", length, "mm", "52 mm", "", "above 0",
             "With `diameter`: how far it goes into the other timber."),
    choice_key("predrilled", false, "no", "no, yes", "With `diameter`: whether holes are drilled."),
};

}  // namespace deadshore::io::schema_parts
