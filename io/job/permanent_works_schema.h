#pragma once

#include "io/job/schema_parts.h"

#include <array>

/// The keys of what stays in the wall, of dead shores and of the order of work.
namespace deadshore::io::schema_parts {

inline constexpr std::array beam_keys{
    SchemaKey{.name = "name",
              .kind = text,
              .example = "kitchen beam",
              .fallback = "beam",
              .meaning = "What the permanent beam is called."},
    SchemaKey{.name = "section",
              .kind = text,
              .example = "UB 203x133x30",
              .required = true,
              .meaning = "A steel section of the tables."},
    choice_key("grade", false, "S275", "S235, S275, S355", "Grade of the steel."),
    SchemaKey{.name = "count",
              .kind = number,
              .example = "2",
              .fallback = "1",
              .range = "1 or 2",
              .meaning = "Sections side by side, bolted together."},
    required("bearing", length, "mm", "150 mm", "up to the padstone's length",
             "On the padstone at each end."),
    optional("restraint_spacing", length, "m", "1.2 m", "0 m", "0 or more",
             "Between what holds the top flange sideways; 0 is nothing between its bearings."),
    SchemaKey{.name = "deflection_ratio",
              .kind = number,
              .example = "500",
              .fallback = "500",
              .range = "above 0",
              .meaning = "The largest deflection under all load is the span over this."},
};

// Defaults: concrete C25/30, E_cm of EN 1992-1-1 Table 3.1 and unit weight of EN 1991-1-1 Table A.1
// (both from memory).
inline constexpr std::array padstone_keys{
    required("length", length, "mm", "440 mm", "up to the width of the narrower pier",
             "Along the wall, from the jamb into the pier."),
    required("depth", length, "mm", "215 mm", "above 0, down to the wall's base", "Upwards."),
    optional("E", stress, "N/mm2", "31000 N/mm2", "31000 N/mm2", "above 0",
             "Modulus of elasticity; by default that of concrete C25/30."),
    optional("strength", stress, "N/mm2", "25 N/mm2", "25 N/mm2", "above 0",
             "Characteristic compressive strength; by default that of concrete C25/30."),
    SchemaKey{.name = "nu",
              .kind = number,
              .example = "0.2",
              .fallback = "0.2",
              .range = "0 to below 0.5",
              .meaning = "Poisson's ratio."},
    optional("unit_weight", volume, "kN/m3", "25 kN/m3", "25 kN/m3", "0 or more", "Weight."),
};

// Defaults: sand and cement, 3 to 1, barely damp and rammed in (common practice; values from
// memory, on the soft and weak side). Hardening: s of EN 1992-1-1 3.1.2(6) for cement of class N.
inline constexpr std::array packing_keys{
    optional("thickness", length, "mm", "20 mm", "20 mm", "above 0",
             "Between the beam and the soffit."),
    optional("E", stress, "N/mm2", "10000 N/mm2", "10000 N/mm2", "above 0",
             "Modulus of elasticity at 28 days."),
    optional("strength", stress, "N/mm2", "20 N/mm2", "20 N/mm2", "above 0",
             "Characteristic compressive strength at 28 days."),
    SchemaKey{.name = "hardening",
              .kind = number,
              .example = "0.25",
              .fallback = "0.25",
              .range = "above 0",
              .meaning = "How the cement hardens, s of EN 1992-1-1 3.1.2(6): 0.20 rapid, 0.25 "
                         "normal, 0.38 slow."},
};

inline constexpr std::array dead_shore_keys{
    name_key("D1", "What the dead shore is called."),
    SchemaKey{.name = "carries",
              .kind = text,
              .example = "first floor",
              .required = true,
              .meaning = "The name of the line load or floor that it takes off the wall, with all "
                         "that stands on that "
                         "floor."},
    SchemaKey{.name = "share",
              .kind = number,
              .example = "0.8",
              .fallback = "1",
              .range = "0 to 1",
              .meaning = "Part of that load that it takes when tight."},
    optional("joist_gap", length, "mm", "5 mm", "", "0 or more",
             "With all three: how far the masonry drops before it bears on joist ends built into "
             "it, propped by the shore; without them the joists catch nothing."),
    optional("joist_stiffness", stiffness, "kN/mm", "2 kN/mm", "", "above 0",
             "With all three: load that pushes one propped joist end down by a unit of length."),
    optional("joist_spacing", length, "mm", "400 mm", "", "above 0",
             "With all three: between joists."),
};

inline constexpr std::array stage_keys{
    name_key("needles in", "What the stage is called."),
    SchemaKey{.name = "day",
              .kind = number,
              .example = "3",
              .range = "0 or more, and no less than that of the stage before",
              .meaning = "Days from the start of the work; by default those of the stage before."},
    SchemaKey{.name = "do",
              .kind = texts,
              .example = R"(["fit N1", "preload N1"])",
              .meaning = "What is done, in order: `fit`, `preload` or `release` a needle; `remove` "
                         "the cut, a lintel in it, or the pockets of the beam; `place padstones`, "
                         "`place beam`, `pack beam`; `tighten` or `slacken` a dead shore; `load "
                         "on` or `load off` with a load's name. `all` stands for every needle or "
                         "dead shore that this was not done to before."},
};

}  // namespace deadshore::io::schema_parts
