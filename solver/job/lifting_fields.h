#pragma once

#include "solver/job/lifting.h"
#include "solver/job/needle_frame_fields.h"

#include <array>

/// The keys of how the permanent beam goes up.
namespace deadshore::solver::fields {

inline constexpr std::array<Word, 2> beam_entries{
    {{"sideways", BeamEntry::sideways}, {"endways", BeamEntry::endways}}};
inline constexpr std::array<Word, 2> section_orders{{{"one at a time", true}, {"together", false}}};

inline constexpr Range count_range{.least = 1.0, .most = 1000.0, .whole = true};

inline constexpr std::array lift_fields{
    choice<&Lifting::side>("side", required, wall_sides,
                           "The side of the wall the beam comes from."),
    choice<&Lifting::entry>("entry", with_default, beam_entries,
                            "Through the wall's face into both pockets at once, or one end into "
                            "its pocket past its place and back into the other."),
    quantity<&Lifting::clearance>("clearance", with_default, mm, not_negative, "25 mm",
                                  "To have on every side of what moves, so twice in a gap."),
    quantity<&Lifting::needle_underside>(
        "needle_underside", required, m, any, "2.55 m",
        "The needles' underside above the wall's base, as they stand on site."),
    quantity<&Lifting::pocket_left>("pocket_left", required, mm,
                                    any.within("the bearing up to the pier's width"), "200 mm",
                                    "The pocket in the left pier, from the jamb, with the part "
                                    "that is filled again."),
    quantity<&Lifting::pocket_right>("pocket_right", required, mm,
                                     any.within("the bearing up to the pier's width"), "200 mm",
                                     "The same at the right."),
    quantity<&Lifting::floor_level>("floor_level", with_default, mm, any.within("below the beam"),
                                    "-150 mm", "What lifters stand on, above the wall's base."),
    quantity<&Lifting::room_left>("room_left", required, m, any, "-0.5 m",
                                  "Along the wall, where the room begins in which the beam is "
                                  "brought up to it."),
    quantity<&Lifting::room_right>("room_right", required, m, any.within("beyond `room_left`"),
                                   "6.5 m", "Where that room ends."),
    quantity<&Lifting::dynamic_factor>("dynamic_factor", with_default, number,
                                       {.least = 1.0, .reason = "what moves never weighs less"},
                                       "1.25", "On the weight while it moves."),
    choice<&Lifting::one_at_a_time>("sections", with_default, section_orders,
                                    "How the sections of a doubled beam go up."),
};
inline constexpr Table<Lifting> lift{"lift", single, optional, "How the permanent beam goes up.",
                                     lift_fields};

constexpr bool may_tip(const Lifter& lifter) {
  return lifter.tipping.has_value();
}

inline constexpr std::array lifter_fields{
    text<&Lifter::name>("name", required, "L1", "What the lifter is called."),
    quantity<&Lifter::at>("at", required, mm, any.within("along the beam"), "900 mm",
                          "The middle of its forks, from the beam's left end."),
    quantity<&Lifter::load_distance>("load_distance", required, mm, not_negative, "500 mm",
                                     "From its mast or column to the beam's middle."),
    quantity<&Lifter::width>("width", required, mm, positive, "600 mm",
                             "Its base, along the wall."),
    quantity<&Lifter::tipping, value_of, &Lifter::Tipping::own_weight>(
        "own_weight", required, kgf, positive, "90 kgf",
        "With all three, for tipping over its front feet: what it weighs.")
        .when(may_tip),
    quantity<&Lifter::tipping, value_of, &Lifter::Tipping::weight_behind>(
        "weight_behind", required, mm, positive, "400 mm",
        "With all three: from the front feet's edge back to the middle of its weight.")
        .when(may_tip),
    quantity<&Lifter::tipping, value_of, &Lifter::Tipping::load_beyond>(
        "load_beyond", required, mm, any.within("below 0 for within the feet"), "150 mm",
        "With all three: from that edge out to the beam's middle.")
        .when(may_tip),
};
inline constexpr Table<Lifter> lifter{"lift.lifter", list, required,
                                      "What the beam is lifted with.", lifter_fields};

inline constexpr std::array lifter_capacity_fields{
    text<&ForkTable::source>("source", required, "plate on the lifter",
                             "Where the figures come from."),
    by_hand<ForkTable>(quantities("distance", required, mm, "rising, at least two",
                                  R"(["350 mm", "600 mm"])",
                                  "Distances of the load's middle from its mast or column.")),
    by_hand<ForkTable>(quantities("load", required, kgf, "one for each distance",
                                  R"(["225 kgf", "160 kgf"])", "What it may lift there.")),
};
inline constexpr Table<ForkTable> lifter_capacity{"lift.lifter.capacity", single, required,
                                                  "What the lifter may lift, from its plate.",
                                                  lifter_capacity_fields};

inline constexpr std::array stand_fields{
    text<&Stand::name>("name", required, "S1", "What the stand is called."),
    quantity<&Stand::at>("at", required, mm, any.within("along the beam"), "400 mm",
                         "Its middle, from the beam's left end."),
    quantity<&Stand::width>("width", required, mm, positive, "300 mm",
                            "Over its legs, along the wall."),
    quantity<&Stand::depth>(
        "depth", required, mm, positive, "600 mm",
        "Over its legs, through the wall; half of it to each side of the wall's middle."),
    quantity<&Stand::legs>("legs", with_default, number, count_range, "4",
                           "Legs that share its load evenly."),
    strength_class<Stand>("leg_timber", "Strength class of the legs and of what is fixed to them."),
    quantity<&Stand::leg, &TimberMember::section, &TimberSection::b>(
        "leg_width", required, mm, positive, "47 mm", "A leg's section, one way."),
    quantity<&Stand::leg, &TimberMember::section, &TimberSection::h>(
        "leg_depth", required, mm, positive, "97 mm", "A leg's section, the other way."),
    quantity<&Stand::leg_length>("leg_length", required, m, positive, "1.8 m",
                                 "Of a leg between what holds it sideways."),
    service_class<Stand>("How damp it is: 1 heated room, 2 under cover, 3 in the open."),
};
inline constexpr Table<Stand> stand{"lift.stand", list, optional,
                                    "What holds the beam while it waits; two or more are due.",
                                    stand_fields};

constexpr bool is_worked_out(const Fixing& fixing) {
  return !fixing.capacity.has_value();
}

inline constexpr std::array fixing_fields{
    quantity<&Fixing::number>("number", required, number, count_range, "8",
                              "Nails, screws or bolts of one stand."),
    quantity<&Fixing::capacity>(
        "capacity", optional, kN, positive, "1.2 kN",
        "The usable load of one, given outright, for loads that are not factored."),
    quantity<&Fixing::diameter>("diameter", required, mm,
                                {.least = 0.0,
                                 .most = 8.0,
                                 .above_least = true,
                                 .reason = "for bolts give their usable load as the capacity"},
                                "3.35 mm",
                                "In place of `capacity`: of a smooth round nail, or the effective "
                                "one of a screw.")
        .when(is_worked_out),
    quantity<&Fixing::tensile_strength>("tensile_strength", with_default, N_per_mm2, positive,
                                        "600 N/mm2", "With `diameter`: f_u of its wire.")
        .when(is_worked_out),
    quantity<&Fixing::side_thickness>("side_thickness", required, mm, positive, "38 mm",
                                      "With `diameter`: of the timber under its head.")
        .when(is_worked_out),
    quantity<&Fixing::penetration>("penetration", required, mm, positive, "52 mm",
                                   "With `diameter`: how far it goes into the other timber.")
        .when(is_worked_out),
    choice<&Fixing::predrilled>("predrilled", with_default, no_or_yes,
                                "With `diameter`: whether holes are drilled.")
        .when(is_worked_out),
};
inline constexpr Table<Fixing> fixing{
    "lift.stand.fixing", single, required,
    "What holds the stand together; its whole load goes through all of them.", fixing_fields};

}  // namespace deadshore::solver::fields
