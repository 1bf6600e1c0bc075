#pragma once

#include "solver/job/needle_frame_fields.h"
#include "solver/job/permanent_works.h"
#include "solver/job/stage.h"

#include <array>

/// The keys of what stays in the wall, of dead shores and of the order of work.
namespace deadshore::solver::fields {

inline constexpr std::array beam_fields{
    text<&PermanentBeam::name>("name", with_default, "kitchen beam",
                               "What the permanent beam is called."),
    by_hand<PermanentBeam>(
        text("section", required, "UB 203x133x30", "A steel section of the tables.")),
    grade<PermanentBeam>("Grade of the steel."),
    quantity<&PermanentBeam::count>("count", with_default, number,
                                    {.least = 1.0, .most = 2.0, .whole = true}, "2",
                                    "Sections side by side, bolted together."),
    quantity<&PermanentBeam::bearing>("bearing", required, mm,
                                      positive.within("up to the padstone's length"), "150 mm",
                                      "On the padstone at each end."),
    quantity<&PermanentBeam::plate_thickness>(
        "plate_thickness", with_default, mm, not_negative, "12 mm",
        "A plate on the top flange, as wide as the wall is thick; 0 is none."),
    quantity<&PermanentBeam::separator_spacing>("separator_spacing", with_default, m, not_negative,
                                                "0.9 m",
                                                "With two sections: between the separators that "
                                                "bolt them together, the first at a bearing; 0 "
                                                "is not known."),
    quantity<&PermanentBeam::bolt_diameter>("bolt_diameter", with_default, mm,
                                            {.least = 12.0, .most = 30.0}, "16 mm",
                                            "Of the two bolts of grade 8.8 at each separator."),
    quantity<&PermanentBeam::restraint_spacing>("restraint_spacing", with_default, m, not_negative,
                                                "1.2 m",
                                                "Between what holds the top flange sideways; 0 is "
                                                "nothing between its bearings."),
    quantity<&PermanentBeam::deflection_ratio>(
        "deflection_ratio", with_default, number, positive, "500",
        "The largest deflection under all load is the span over this."),
};
inline constexpr Table<PermanentBeam> beam{"beam", single, optional,
                                           "The permanent beam under the soffit.", beam_fields};

inline constexpr std::array padstone_fields{
    quantity<&Padstone::length>("length", required, mm,
                                positive.within("up to the width of the narrower pier"), "440 mm",
                                "Along the wall, from the jamb into the pier."),
    quantity<&Padstone::depth>("depth", required, mm, positive.within("down to the wall's base"),
                               "215 mm", "Upwards."),
    quantity<&Padstone::E>("E", with_default, N_per_mm2, solid_E, "31000 N/mm2",
                           "Modulus of elasticity; by default that of concrete C25/30."),
    quantity<&Padstone::strength>(
        "strength", with_default, N_per_mm2, solid_strength, "25 N/mm2",
        "Characteristic compressive strength; by default that of concrete C25/30."),
    quantity<&Padstone::nu>("nu", with_default, number, poisson, "0.2", "Poisson's ratio."),
    quantity<&Padstone::unit_weight>("unit_weight", with_default, kN_per_m3, solid_weight,
                                     "25 kN/m3", "Weight."),
};
inline constexpr Table<Padstone> padstone{"beam.padstone", single, required,
                                          "What the beam bears on, at both ends.", padstone_fields};

inline constexpr std::array packing_fields{
    quantity<&DryPacking::thickness>("thickness", with_default, mm, positive, "20 mm",
                                     "Between the beam and the soffit."),
    quantity<&DryPacking::E>("E", with_default, N_per_mm2, solid_E, "10000 N/mm2",
                             "Modulus of elasticity at 28 days."),
    quantity<&DryPacking::strength>("strength", with_default, N_per_mm2, solid_strength, "20 N/mm2",
                                    "Characteristic compressive strength at 28 days."),
    quantity<&DryPacking::hardening>("hardening", with_default, number, positive, "0.25",
                                     "How the cement hardens, s of EN 1992-1-1 3.1.2(6): 0.20 "
                                     "rapid, 0.25 normal, 0.38 slow."),
    quantity<&DryPacking::temperature>("temperature", optional, number,
                                       {.least = 5.0, .most = 35.0}, "10",
                                       "On site while it hardens, in degrees Celsius: at 5 it "
                                       "takes twice as long as at 20. Without "
                                       "it 20 is taken, and young packing is not verified."),
};
inline constexpr Table<DryPacking> packing{"beam.packing", single, optional,
                                           "Dry packing between the beam and the soffit.",
                                           packing_fields};

constexpr bool has_joist_ends(const DeadShore& shore) {
  return shore.joist_ends.has_value();
}

inline constexpr std::array dead_shore_fields{
    text<&DeadShore::name>("name", required, "D1", "What the dead shore is called."),
    by_hand<DeadShore>(text("carries", required, "first floor",
                            "The name of the line load or floor that it takes off the wall, with "
                            "all that stands on that floor.")),
    quantity<&DeadShore::share>("share", with_default, number, zero_to_one, "0.8",
                                "Part of that load that it takes when tight."),
    quantity<&DeadShore::joist_ends, value_of, &DeadShore::JoistEnds::gap>(
        "joist_gap", required, mm, not_negative, "5 mm",
        "With all three: how far the masonry drops before it bears on joist ends built into it, "
        "propped by the shore; without them the joists catch nothing.")
        .when(has_joist_ends),
    quantity<&DeadShore::joist_ends, value_of, &DeadShore::JoistEnds::stiffness>(
        "joist_stiffness", required, kN_per_mm, positive, "2 kN/mm",
        "With all three: load that pushes one propped joist end down by a unit of length.")
        .when(has_joist_ends),
    quantity<&DeadShore::joist_ends, value_of, &DeadShore::JoistEnds::spacing>(
        "joist_spacing", required, mm, positive, "400 mm", "With all three: between joists.")
        .when(has_joist_ends),
};
inline constexpr Table<DeadShore> dead_shore{
    "dead_shore", list, optional, "Props under the joists of a floor, that take it off the wall.",
    dead_shore_fields};

inline constexpr std::array stage_fields{
    text<&Stage::name>("name", required, "needles in", "What the stage is called."),
    quantity<&Stage::day>("day", optional, number,
                          not_negative.within("and no less than that of the stage before"), "3",
                          "Days from the start of the work; by default those of the stage before."),
    by_hand<Stage>(
        {.name = "do",
         .kind = KeyKind::texts,
         .example = R"(["fit N1", "preload N1"])",
         .meaning =
             "What is done, in order: `fit`, `preload` or `release` a needle; `remove` the cut, a "
             "lintel in it, or the pockets of the beam; `place padstones`, `place beam`, `pack "
             "beam`; `tighten` or `slacken` a dead shore; `load on` or `load off` with a load's "
             "name. `all` stands for every needle or dead shore that this was not done to "
             "before."}),
};
inline constexpr Table<Stage> stage{
    "stage", list, optional,
    "A stage of the work, in order; without any, the usual ones of `deadshore stages`.",
    stage_fields};

}  // namespace deadshore::solver::fields
