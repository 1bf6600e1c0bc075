#pragma once

#include "solver/job/needle_frame_fields.h"
#include "solver/job/shore_frame.h"

#include <array>

/// The keys of what a dead shore is made of.
namespace deadshore::solver::fields {

using mesh::Interval;

constexpr bool has_timber_head(const ShoreFrame& frame) {
  return std::holds_alternative<TimberMember>(frame.head);
}
constexpr bool is_on_props(const ShoreFrame& frame) {
  return std::holds_alternative<PropRow>(frame.uprights);
}
constexpr bool is_on_studs(const ShoreFrame& frame) {
  return std::holds_alternative<StudRow>(frame.uprights);
}

inline constexpr std::array shore_frame_fields{
    quantity<&ShoreFrame::distance>("distance", required, mm,
                                    any.within("above 0, within the joists' span"), "700 mm",
                                    "From the wall's inner face to the head plate's middle."),
    quantity<&ShoreFrame::x, &Interval::from>(
        "from", required, m, any.within("up to 1 m beyond the wall"), "1 m",
        "Where the row begins, the side of its first joist, along the wall."),
    quantity<&ShoreFrame::x, &Interval::to>(
        "to", required, m, any.within("up to 1 m beyond the wall"), "4.2 m", "Where the row ends."),
    quantity<&ShoreFrame::joist_span>("joist_span", required, m, span_of_house, "3.8 m",
                                      "From the wall to the joists' far bearing."),
    quantity<&ShoreFrame::joist_width>("joist_width", required, mm,
                                       positive.within("up to the joists' spacing"), "50 mm",
                                       "Of each joist, on the head plate."),
    quantity<&ShoreFrame::joist_spacing>("joist_spacing", optional, mm, positive, "400 mm",
                                         "Between joists; by default that of the dead shore."),
    quantity<&ShoreFrame::joist_level>("joist_level", required, m,
                                       any.within("well above the floor"), "2.5 m",
                                       "Underside of the joists, above the wall's base."),
    quantity<&ShoreFrame::floor_level>("floor_level", with_default, mm,
                                       any.within("well below the joists"), "0 mm",
                                       "What the sole stands on, above the wall's base."),
    by_hand<ShoreFrame>(text("section", optional, "UC 152x152x23",
                             "The head plate as a steel section of the tables.")),
    by_hand<ShoreFrame>(text("timber", optional, "C24",
                             "The head plate as a piece of timber of this strength class.")),
    grade<ShoreFrame>("Grade of a steel head plate."),
    quantity<&ShoreFrame::head, as<TimberMember>, &TimberMember::section, &TimberSection::b>(
        "width", required, mm, positive, "100 mm",
        "With `timber`: the head plate across the wall's length.")
        .when(has_timber_head),
    quantity<&ShoreFrame::head, as<TimberMember>, &TimberMember::section, &TimberSection::h>(
        "depth", required, mm, positive, "150 mm", "With `timber`: upwards.")
        .when(has_timber_head),
    duration<ShoreFrame>("How long the shortest load on its timber lasts; imposed load on floors "
                         "is medium term."),
    service_class<ShoreFrame>(
        "How damp its timber is: 1 heated room, 2 under cover, 3 in the open."),
    by_hand<ShoreFrame>(
        text("prop", optional, "B30",
             "Props of the tables: their class and their longest extension in dm.")),
    by_hand<ShoreFrame>(quantities("places", optional, m, "rising, within the row, two or more",
                                   R"(["1.2 m", "2.2 m", "3.2 m"])",
                                   "With `prop`: where each stands along the wall; by default "
                                   "places are proposed.")),
    quantity<&ShoreFrame::uprights, as<PropRow>, &PropRow::most_apart>(
        "most_apart", optional, m, positive_or_none, "1 m",
        "With `prop` and no `places`: the largest spacing to propose; by default the largest that "
        "passes, up to 1.2 m.")
        .when(is_on_props),
    quantity<&ShoreFrame::uprights, as<PropRow>, &PropRow::base>(
        "prop_base", with_default, mm, positive, "120 mm",
        "With `prop`: side of its square plates, foot and head.")
        .when(is_on_props),
    by_hand<ShoreFrame>(text("stud", optional, "C16",
                             "In place of `prop`: a stud wall, of studs of this strength class.")),
    quantity<&ShoreFrame::uprights, as<StudRow>, &StudRow::stud, &TimberMember::section,
             &TimberSection::b>("stud_width", required, mm, positive, "47 mm",
                                "With `stud`: of each stud along the row.")
        .when(is_on_studs),
    quantity<&ShoreFrame::uprights, as<StudRow>, &StudRow::stud, &TimberMember::section,
             &TimberSection::h>("stud_depth", required, mm, positive, "100 mm",
                                "With `stud`: of each stud across the row.")
        .when(is_on_studs),
    quantity<&ShoreFrame::uprights, as<StudRow>, &StudRow::spacing>(
        "stud_spacing", required, mm, positive, "400 mm", "With `stud`: between studs.")
        .when(is_on_studs),
    choice<&ShoreFrame::uprights, as<StudRow>, &StudRow::nogging>(
        "noggings", optional, no_or_yes,
        "With `stud`: whether noggings hold studs along the row at mid-height.")
        .by_default("no")
        .when(is_on_studs),
    quantity<&ShoreFrame::footing, &Footing::sole, &SolePlate::timber, &TimberMember::section,
             &TimberSection::b>("sole_width", required, mm, positive.within("at least `prop_base`"),
                                "225 mm", "Sole plate across the grain."),
    quantity<&ShoreFrame::footing, &Footing::sole, &SolePlate::timber, &TimberMember::section,
             &TimberSection::h>("sole_thickness", required, mm, positive, "75 mm",
                                "Sole plate upwards."),
    quantity<&ShoreFrame::footing, &Footing::sole, &SolePlate::length>(
        "sole_length", optional, m, any.within("at least that of the row"), "4 m",
        "Sole plate along the row, as far beyond it at both ends; by default as long."),
    strength_class<ShoreFrame>("sole_timber", "Strength class of the sole plate."),
    ground<ShoreFrame>(),
    ground_bearing<ShoreFrame>(),
    text<&ShoreFrame::footing, &Footing::suspended_floor>(
        "suspended_floor", optional, "kitchen floor, timber joists",
        "In place of `ground`: the floor it stands on, which somebody else has to verify."),
    subgrade_modulus<ShoreFrame>(),
};
inline constexpr Table<ShoreFrame> shore_frame{
    "dead_shore.frame", single, optional,
    "What the dead shore is made of: a head plate on props or studs.", shore_frame_fields};

}  // namespace deadshore::solver::fields
