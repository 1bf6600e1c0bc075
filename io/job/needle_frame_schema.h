#pragma once

#include "io/job/schema_parts.h"

#include <array>

/// The keys of needle frames and of the rules they are checked by.
namespace deadshore::io::schema_parts {

inline constexpr std::array needle_frame_keys{
    SchemaKey{.name = "section",
              .kind = text,
              .example = "UC 152x152x23",
              .meaning = "The needle as a steel section of the tables."},
    SchemaKey{.name = "kind",
              .kind = choice,
              .example = "I",
              .choices = "I, channel, rectangular hollow, circular hollow",
              .meaning = "The needle as a steel section by its dimensions."},
    SchemaKey{.name = "timber",
              .kind = text,
              .example = "C24",
              .meaning = "The needle as a piece of timber of this strength class."},
    choice_key("grade", false, "S275", "S235, S275, S355", "Grade of a steel needle."),
    optional("h", length, "mm", "152 mm", "", "above 0",
             "With `kind`: depth; diameter of a circular hollow section."),
    optional("b", length, "mm", "152 mm", "", "above 0",
             "With `kind`: width; not for a circular hollow section."),
    optional("tw", length, "mm", "5.8 mm", "", "above 0",
             "With `kind`: thickness of the web; the wall of a hollow section."),
    optional("tf", length, "mm", "6.8 mm", "", "above 0",
             "With `kind`: thickness of the flanges; not for a hollow section."),
    optional("r", length, "mm", "7.6 mm", "0 mm", "0 or more",
             "With `kind`: root radius; not for a hollow section."),
    optional("width", length, "mm", "100 mm", "", "above 0", "With `timber`: along the wall."),
    optional("depth", length, "mm", "225 mm", "", "above 0", "With `timber`: upwards."),
    choice_key("duration", false, "medium term",
               "permanent, long term, medium term, short term, instantaneous",
               "How long the shortest load on a needle or sole of timber lasts; imposed load on "
               "floors is medium term."),
    choice_key("service_class", false, "2", "1, 2, 3",
               "How damp a needle of timber is: 1 heated room, 2 under cover, 3 in the open; soles "
               "are taken as 3 outside and 2 inside."),
    optional("overhang", length, "mm", "150 mm", "150 mm", "above 0",
             "Needle beyond its last prop, or the wall's face, at each end."),
    optional("packing_thickness", length, "mm", "25 mm", "0 mm", "0 or more",
             "Packing between the needle and the soffit."),
    optional("packing_E", stress, "N/mm2", "5000 N/mm2", "", "above 0",
             "With packing: its modulus of elasticity along the load."),
    optional("packing_strength", stress, "N/mm2", "10 N/mm2", "", "above 0",
             "With packing: its characteristic compressive strength."),
    SchemaKey{.name = "leaves",
              .kind = stretches,
              .example = R"([["0 mm", "102 mm"], ["152 mm", "252 mm"]])",
              .range = "inside the wall's thickness, clear of one another",
              .meaning = "What bears on the needle, from the wall's outer face inwards; by default "
                         "the whole thickness."},
};

inline constexpr std::array needle_prop_keys{
    SchemaKey{.name = "mark",
              .kind = text,
              .example = "tail",
              .meaning = "What the prop is called; by default \"inner\" or \"outer\" by its side."},
    choice_key("side", true, "", "inside, outside", "The side of the wall it stands on."),
    choice_key("acts", false, "up", "up, down",
               "Whether it carries the needle or holds its tail down."),
    required("distance", length, "mm", "600 mm", "so that its base clears the wall",
             "From the wall's face to its middle."),
    optional("level", length, "mm", "-150 mm", "0 mm", "below the needle",
             "The ground under its sole, above the wall's base; for a prop that acts down, what it "
             "is wedged against."),
    SchemaKey{.name = "prop",
              .kind = text,
              .example = "B35",
              .required = true,
              .meaning = "A prop of the tables: its class and its longest extension in dm."},
    required("sole_width", length, "mm", "225 mm", "at least `prop_base`",
             "Sole plate across the grain."),
    required("sole_thickness", length, "mm", "75 mm", "above 0", "Sole plate upwards."),
    required("sole_length", length, "mm", "900 mm", "at least `prop_base`",
             "Sole plate along the grain, this prop's share of it."),
    sole_timber_key,
    optional("prop_base", length, "mm", "120 mm", "120 mm", "above 0",
             "Side of the prop's square plates, foot and head."),
    ground_key,
    ground_bearing_key,
    SchemaKey{.name = "suspended_floor",
              .kind = text,
              .example = "kitchen floor, timber joists",
              .meaning = "In place of `ground`: the floor it stands on or is wedged against, which "
                         "somebody else has to verify."},
    subgrade_modulus_key,
};

inline constexpr std::array capacity_keys{
    SchemaKey{.name = "source",
              .kind = text,
              .example = "supplier's sheet of March",
              .required = true,
              .meaning = "Where the figures come from."},
    SchemaKey{.name = "extension",
              .kind = quantities,
              .dimension = length,
              .usual_unit = "m",
              .example = R"(["2 m", "3 m"])",
              .required = true,
              .range = "rising, at least two",
              .meaning = "Extensions."},
    SchemaKey{.name = "load",
              .kind = quantities,
              .dimension = force,
              .usual_unit = "kN",
              .example = R"(["30 kN", "20 kN"])",
              .required = true,
              .range = "one for each extension",
              .meaning = "Safe loads at these extensions."},
};

inline constexpr std::array check_keys{
    choice_key("basis", false, "partial factors", "partial factors, permissible stresses",
               "Whether loads and strengths are factored, or strengths alone."),
    choice_key("combination", false, "6.10", "6.10, 6.10a or 6.10b",
               "With partial factors: the combination of EN 1990."),
    SchemaKey{.name = "gamma_G",
              .kind = number,
              .example = "1.35",
              .fallback = "1.35",
              .range = "above 0",
              .meaning = "With partial factors: on permanent loads."},
    SchemaKey{.name = "gamma_Q",
              .kind = number,
              .example = "1.5",
              .fallback = "1.5",
              .range = "above 0",
              .meaning = "With partial factors: on imposed loads."},
    SchemaKey{.name = "gamma_masonry",
              .kind = number,
              .example = "3",
              .range = "above 0",
              .meaning = "What the strength of masonry is divided by; by default 3 with partial "
                         "factors and 4.5 with permissible stresses."},
    choice_key("prop_basis", false, "lower of both",
               "lower of both, EN 1065, CIRIA TN79, supplier table",
               "Where safe loads of props come from; a supplier's table goes first in \"lower of "
               "both\"."),
};

}  // namespace deadshore::io::schema_parts
