#pragma once

#include "solver/job/field.h"
#include "solver/job/needle_frame.h"

#include <array>

/// The keys of needle frames, and those that other members of steel and timber have too.
namespace deadshore::solver::fields {

inline constexpr std::array<Word, 3> steel_grades{
    {{"S235", SteelGrade::s235}, {"S275", SteelGrade::s275}, {"S355", SteelGrade::s355}}};
inline constexpr std::array<Word, 5> load_durations{
    {{"permanent", LoadDuration::permanent},
     {"long term", LoadDuration::long_term},
     {"medium term", LoadDuration::medium_term},
     {"short term", LoadDuration::short_term},
     {"instantaneous", LoadDuration::instantaneous}}};
inline constexpr std::array<Word, 3> service_classes{
    {{"1", ServiceClass::one}, {"2", ServiceClass::two}, {"3", ServiceClass::three}}};
inline constexpr std::array<Word, 4> section_kinds{
    {{"I", SectionKind::i_section},
     {"channel", SectionKind::channel},
     {"rectangular hollow", SectionKind::rectangular_hollow},
     {"circular hollow", SectionKind::circular_hollow}}};
inline constexpr std::array<Word, 2> no_or_yes{{{"no", false}, {"yes", true}}};
inline constexpr std::array<Word, 2> wall_sides{
    {{"inside", PropSide::inside}, {"outside", PropSide::outside}}};
inline constexpr std::array<Word, 2> prop_actions{
    {{"up", PropAction::up}, {"down", PropAction::down}}};

template <class Struct>
constexpr Field<Struct> grade(std::string_view meaning) {
  return by_hand<Struct>(choice("grade", optional, steel_grades, meaning)).by_default("S275");
}
template <class Struct>
constexpr Field<Struct> duration(std::string_view meaning) {
  return by_hand<Struct>(choice("duration", optional, load_durations, meaning))
      .by_default("medium term");
}
template <class Struct>
constexpr Field<Struct> service_class(std::string_view meaning, std::string_view usual = "2") {
  return by_hand<Struct>(choice("service_class", optional, service_classes, meaning))
      .by_default(usual);
}
template <class Struct>
constexpr Field<Struct> strength_class(std::string_view name, std::string_view meaning) {
  return by_hand<Struct>(text(name, optional, "C24", meaning)).by_default("C24");
}
template <class Struct>
constexpr Field<Struct> ground() {
  return by_hand<Struct>(
      text("ground", optional, "stiff clay", "The ground under the sole, of the tables."));
}

/// The bearing and the stiffness of the ground, for a struct with a `footing`.
template <class Struct>
constexpr Field<Struct> ground_bearing() {
  return quantity<&Struct::footing, &Footing::ground, &Ground::presumed_bearing>(
      "ground_bearing", optional, kN_per_m2, ground_pressure, "150 kN/m2",
      "In place of `ground`: what it may bear, for unfactored loads.");
}
template <class Struct>
constexpr Field<Struct> subgrade_modulus() {
  return quantity<&Struct::footing, &Footing::subgrade_modulus>(
      "subgrade_modulus", optional, MN_per_m3, ground_stiffness, "30 MN/m3",
      "Pressure that settles the ground by a unit of length; by default that of the kind of "
      "ground, where there is one.");
}

constexpr bool is_of_timber(const NeedleFrame& frame) {
  return std::holds_alternative<TimberMember>(frame.member);
}
constexpr bool is_packed(const NeedleFrame& frame) {
  return frame.packing.thickness > 0.0;
}

inline constexpr std::array needle_frame_fields{
    by_hand<NeedleFrame>(
        text("section", optional, "UC 152x152x23", "The needle as a steel section of the tables.")),
    by_hand<NeedleFrame>(choice("kind", optional, section_kinds,
                                "The needle as a steel section by its dimensions.")),
    by_hand<NeedleFrame>(
        text("timber", optional, "C24", "The needle as a piece of timber of this strength class.")),
    grade<NeedleFrame>("Grade of a steel needle."),
    by_hand<NeedleFrame>(quantity("h", optional, mm, positive, "152 mm",
                                  "With `kind`: depth; diameter of a circular hollow section.")),
    by_hand<NeedleFrame>(quantity("b", optional, mm, positive, "152 mm",
                                  "With `kind`: width; not for a circular hollow section.")),
    by_hand<NeedleFrame>(
        quantity("tw", optional, mm, positive, "5.8 mm",
                 "With `kind`: thickness of the web; the wall of a hollow section.")),
    by_hand<NeedleFrame>(
        quantity("tf", optional, mm, positive, "6.8 mm",
                 "With `kind`: thickness of the flanges; not for a hollow section.")),
    by_hand<NeedleFrame>(quantity("r", optional, mm, not_negative, "7.6 mm",
                                  "With `kind`: root radius; not for a hollow section."))
        .by_default("0 mm"),
    quantity<&NeedleFrame::member, as<TimberMember>, &TimberMember::section, &TimberSection::b>(
        "width", required, mm, positive, "100 mm", "With `timber`: along the wall.")
        .when(is_of_timber),
    quantity<&NeedleFrame::member, as<TimberMember>, &TimberMember::section, &TimberSection::h>(
        "depth", required, mm, positive, "225 mm", "With `timber`: upwards.")
        .when(is_of_timber),
    duration<NeedleFrame>("How long the shortest load on a needle or sole of timber lasts; imposed "
                          "load on floors is medium term."),
    service_class<NeedleFrame>(
        "How damp a needle of timber is: 1 heated room, 2 under cover, 3 in the "
        "open, since its outer tail is; soles are taken as 3 outside and 2 inside.",
        "3"),
    quantity<&NeedleFrame::overhang>("overhang", with_default, mm, positive, "150 mm",
                                     "Needle beyond its last prop, or the wall's face, at each "
                                     "end."),
    quantity<&NeedleFrame::packing, &Packing::thickness>(
        "packing_thickness", with_default, mm, not_negative, "25 mm",
        "Packing between the needle and the soffit."),
    quantity<&NeedleFrame::packing, &Packing::E>("packing_E", required, N_per_mm2, solid_E,
                                                 "5000 N/mm2",
                                                 "With packing: its modulus of elasticity along "
                                                 "the load.")
        .when(is_packed),
    quantity<&NeedleFrame::packing, &Packing::strength>(
        "packing_strength", required, N_per_mm2, positive, "10 N/mm2",
        "With packing: its characteristic compressive strength.")
        .when(is_packed),
    by_hand<NeedleFrame>({.name = "leaves",
                          .kind = KeyKind::stretches,
                          .unit = mm,
                          .range = {.bounds = "inside the wall's thickness, clear of one another"},
                          .example = R"([["0 mm", "102 mm"], ["152 mm", "252 mm"]])",
                          .meaning = "What bears on the needle, from the wall's outer face "
                                     "inwards; by default the whole thickness."}),
};
inline constexpr Table<NeedleFrame> needle_frame{
    "needle_frame", named, optional, "A kind of needle with its props and what they stand on.",
    needle_frame_fields};

inline constexpr std::array needle_prop_fields{
    text<&NeedleProp::mark>("mark", optional, "tail",
                            "What the prop is called; by default \"inner\" or \"outer\" by its "
                            "side."),
    choice<&NeedleProp::side>("side", required, wall_sides, "The side of the wall it stands on."),
    choice<&NeedleProp::action>("acts", with_default, prop_actions,
                                "Whether it carries the needle or holds its tail down."),
    quantity<&NeedleProp::distance>("distance", required, mm,
                                    any.within("so that its base clears the wall"), "600 mm",
                                    "From the wall's face to its middle."),
    quantity<&NeedleProp::level>("level", with_default, mm, any.within("below the needle"),
                                 "-150 mm",
                                 "The ground under its sole, above the wall's base; for a prop "
                                 "that acts down, what it is wedged against."),
    by_hand<NeedleProp>(text("prop", required, "B35",
                             "A prop of the tables: its class and its longest extension in dm.")),
    quantity<&NeedleProp::footing, &Footing::sole, &SolePlate::timber, &TimberMember::section,
             &TimberSection::b>("sole_width", required, mm, positive.within("at least `prop_base`"),
                                "225 mm", "Sole plate across the grain."),
    quantity<&NeedleProp::footing, &Footing::sole, &SolePlate::timber, &TimberMember::section,
             &TimberSection::h>("sole_thickness", required, mm, positive, "75 mm",
                                "Sole plate upwards."),
    quantity<&NeedleProp::footing, &Footing::sole, &SolePlate::length>(
        "sole_length", required, mm, positive.within("at least `prop_base`"), "900 mm",
        "Sole plate along the grain, this prop's share of it."),
    strength_class<NeedleProp>("sole_timber", "Strength class of the sole plate."),
    quantity<&NeedleProp::footing, &Footing::sole, &SolePlate::prop_base>(
        "prop_base", with_default, mm, positive, "120 mm",
        "Side of the prop's square plates, foot and head."),
    ground<NeedleProp>(),
    ground_bearing<NeedleProp>(),
    text<&NeedleProp::footing, &Footing::suspended_floor>(
        "suspended_floor", optional, "kitchen floor, timber joists",
        "In place of `ground`: the floor it stands on or is wedged against, which somebody else "
        "has to verify."),
    subgrade_modulus<NeedleProp>(),
};
inline constexpr Table<NeedleProp> needle_prop{"needle_frame.prop", list, required,
                                               "A prop of the frame.", needle_prop_fields};

inline constexpr std::array prop_capacity_fields{
    text<&CapacityTable::source>("source", required, "supplier's sheet of March",
                                 "Where the figures come from."),
    by_hand<CapacityTable>(quantities("extension", required, m, "rising, at least two",
                                      R"(["2 m", "3 m"])", "Extensions.")),
    by_hand<CapacityTable>(quantities("load", required, kN, "one for each extension",
                                      R"(["30 kN", "20 kN"])", "Safe loads at these extensions.")),
};
inline constexpr Table<CapacityTable> prop_capacity{"needle_frame.prop.capacity", single, optional,
                                                    "A supplier's safe loads of the prop.",
                                                    prop_capacity_fields};

}  // namespace deadshore::solver::fields
