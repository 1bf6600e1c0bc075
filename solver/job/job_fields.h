#pragma once

#include "solver/job/field.h"
#include "solver/job/job.h"

#include <array>

/// The keys of the job's head, the wall, what stands on it and under it, and how it is worked out.
namespace deadshore::solver::fields {

using mesh::Cut;
using mesh::Interval;
using mesh::LintelShape;
using mesh::Opening;
using mesh::WallShape;

inline constexpr std::array top_fields{
    text<&Job::title>("title", required, "Mill cottage, kitchen wall",
                      "What the job is called in everything that comes out."),
    by_hand<Job>({.name = "tables",
                  .kind = KeyKind::texts,
                  .example = R"(["my_sections.toml"])",
                  .meaning = "Files of your own sections, timber, props, ground, weights and uses, "
                             "seen from the job file; a known name replaces the known one."}),
};
inline constexpr Table<Job> top{"", root, required, "The job.", top_fields};

inline constexpr std::array title_block_fields{
    text<&TitleBlock::project>("project", optional, "Mill cottage, kitchen",
                               "The house or the site."),
    text<&TitleBlock::client>("client", optional, "The owners of Mill cottage",
                              "Whom the work is for."),
    text<&TitleBlock::reference>("reference", optional, "TW-01", "The number of this calculation."),
    text<&TitleBlock::revision>("revision", optional, "A", "Which issue of it this is."),
    text<&TitleBlock::prepared_by>("prepared_by", optional, "A. Builder",
                                   "Who made it; blank, to be signed by hand, if left out."),
    text<&TitleBlock::checked_by>("checked_by", optional, "C. Engineer",
                                  "Who checked it; blank, to be signed, if left out."),
    text<&TitleBlock::date>(
        "date", optional, "2 March 2026",
        "When it was signed, in your own words; blank, to be filled in, if left out."),
};
inline constexpr Table<TitleBlock> title_block{
    "title_block", single, optional,
    "What heads the design note; what is not given is left blank there.", title_block_fields};

inline constexpr std::array<Word, 2> wall_ends{{{"free", WallEnd::free}, {"held", WallEnd::held}}};

inline constexpr std::array wall_fields{
    quantity<&Job::wall, &WallShape::length>("length", required, m, whole_wall, "6 m",
                                             "The wall from its left end to its right."),
    by_hand<Job>(quantity("height", required, m, positive, "5.4 m",
                          "From the base to the highest point of the wall.")),
    quantity<&Job::thickness>("thickness", required, mm, positive, "215 mm", "Through the wall."),
    by_hand<Job>(text("masonry", required, "soft brick in lime",
                      "The name of the [masonry.NAME] table that the wall is built of.")),
    choice<&Job::left_end>("left_end", with_default, wall_ends,
                           "Whether a return wall or a neighbour stops the left end moving "
                           "sideways above the soffit."),
    choice<&Job::right_end>("right_end", with_default, wall_ends, "The same at the right end."),
    by_hand<Job>(
        {.name = "outline",
         .kind = KeyKind::outline,
         .unit = m,
         .range = {.bounds =
                       "from the left end to the right; two points at the same place are a step"},
         .example = R"([["0 m", "5.2 m"], ["3 m", "8 m"], ["6 m", "5.2 m"]])",
         .meaning = "The wall's top edge as points, each along the wall and up; without "
                    "it the top is level at `height`."}),
};
inline constexpr Table<Job> wall{"wall", single, required, "The wall as it stands.", wall_fields};

inline constexpr std::array masonry_fields{
    quantity<&Masonry::unit_weight>("unit_weight", required, kN_per_m3, solid_weight, "19 kN/m3",
                                    "Weight of the masonry."),
    quantity<&Masonry::E>("E", required, N_per_mm2, masonry_E, "1500 N/mm2",
                          "Modulus of elasticity."),
    quantity<&Masonry::nu>("nu", required, number, poisson, "0.2", "Poisson's ratio."),
    quantity<&Masonry::compressive_strength>("compressive_strength", required, N_per_mm2,
                                             solid_strength, "2.4 N/mm2",
                                             "What the masonry bears in compression."),
    quantity<&Masonry::tensile_strength>("tensile_strength", required, N_per_mm2, masonry_tension,
                                         "0.05 N/mm2",
                                         "What the masonry bears in tension before it cracks."),
};
inline constexpr Table<Masonry> masonry{"masonry", named, required, "A kind of masonry.",
                                        masonry_fields};

inline constexpr std::array opening_fields{
    text<&Opening::name>("name", required, "stair window", "What the opening is called."),
    quantity<&Opening::left>("left", required, m, inside_the_wall, "1.1 m",
                             "The opening's left jamb."),
    quantity<&Opening::sill>("sill", required, m, any.within("0 or more"), "3.7 m",
                             "The opening's lower edge."),
    quantity<&Opening::width>("width", required, m, positive, "0.9 m", "Between the jambs."),
    quantity<&Opening::height>("height", required, m, positive, "1.4 m",
                               "From the sill to the highest point of the head."),
    quantity<&Opening::rise>("rise", with_default, mm, not_negative, "120 mm",
                             "Rise of a segmental arch above its springings; 0 is a flat head."),
};
inline constexpr Table<Opening> opening{"opening", list, optional,
                                        "A window or door that is there already.", opening_fields};

inline constexpr std::array<Word, 4> lintel_materials{
    {{"concrete", 0}, {"steel", 1}, {"timber", 2}, {"stone", 3}}};

inline constexpr std::array lintel_fields{
    text<&Lintel::shape, &LintelShape::name>("name", required, "stair lintel",
                                             "What the lintel is called."),
    by_hand<Lintel>(
        text("opening", required, "stair window", "The name of the flat-headed opening it spans.")),
    by_hand<Lintel>(choice("material", required, lintel_materials, "What it is made of.")),
    quantity<&Lintel::shape, &LintelShape::depth>("depth", required, mm, positive, "150 mm",
                                                  "From the head upwards."),
    quantity<&Lintel::shape, &LintelShape::bearing>("bearing", required, mm, positive, "150 mm",
                                                    "Into the wall on each side."),
    quantity<&Lintel::E>("E", optional, N_per_mm2, solid_E, "30000 N/mm2",
                         "Modulus of elasticity; by default that of the material."),
    quantity<&Lintel::nu>("nu", optional, number, poisson, "0.2",
                          "Poisson's ratio; by default that of the material."),
    quantity<&Lintel::unit_weight>("unit_weight", optional, kN_per_m3, solid_weight, "25 kN/m3",
                                   "Weight; by default that of the material."),
    quantity<&Lintel::thickness>("thickness", optional, mm, positive, "100 mm",
                                 "Through the wall; by default the wall's."),
};
inline constexpr Table<Lintel> lintel{"lintel", list, optional, "A lintel over an opening.",
                                      lintel_fields};

inline constexpr std::array cut_fields{
    quantity<&Cut::left>("left", required, m, inside_the_wall, "0.8 m", "Left jamb of the cut."),
    quantity<&Cut::right>("right", required, m, inside_the_wall, "4.4 m", "Right jamb of the cut."),
    quantity<&Cut::soffit>("soffit", required, m, positive.within("below the wall's top"), "2.4 m",
                           "Masonry below this level between the jambs comes out."),
};
inline constexpr Table<Cut> cut{"cut", single, required, "What comes out.", cut_fields};

/// `level`, of a struct that has `follows_top` too.
template <class Struct>
constexpr Field<Struct> level_or_top(std::string_view meaning) {
  Key key = quantity("level", required, m, on_masonry, "5.4 m", meaning);
  key.kind = KeyKind::quantity_or_top;
  return {key,
          LevelAccess<Struct>{Path<&Struct::level>::access, Path<&Struct::follows_top>::access}};
}

/// The ends of `x`, a struct's stretch of the wall, which is the whole wall before it is read.
template <class Struct>
constexpr Field<Struct> begins(
    std::string_view meaning = "Where it begins; by default the wall's left end.") {
  return quantity<&Struct::x, &Interval::from>("from", optional, m, inside_the_wall, "0 m",
                                               meaning);
}
template <class Struct>
constexpr Field<Struct> ends(
    std::string_view meaning = "Where it ends; by default the wall's right end.") {
  return quantity<&Struct::x, &Interval::to>("to", optional, m, inside_the_wall, "6 m", meaning);
}

inline constexpr std::array line_load_fields{
    text<&LineLoad::name>("name", required, "roof", "What the load is called."),
    level_or_top<LineLoad>("Where it comes into the wall, above the base; \"top\" follows the "
                           "wall's top edge."),
    begins<LineLoad>(),
    ends<LineLoad>(),
    quantity<&LineLoad::dead>("dead", required, kN_per_m, line_of_load, "3.1 kN/m",
                              "Dead load, measured level."),
    quantity<&LineLoad::imposed>("imposed", with_default, kN_per_m, line_of_load, "2.2 kN/m",
                                 "Imposed load, measured level."),
};
inline constexpr Table<LineLoad> line_load{
    "line_load", list, optional, "A load along the wall, such as a floor.", line_load_fields};

inline constexpr std::array point_load_fields{
    text<&PointLoad::name>("name", required, "purlin", "What the load is called."),
    quantity<&PointLoad::x>("x", required, m, inside_the_wall, "3.9 m",
                            "Its middle, from the left end."),
    quantity<&PointLoad::level>("level", required, m, on_masonry, "5.2 m",
                                "Where it comes into the wall."),
    quantity<&PointLoad::bearing>("bearing", required, mm, positive, "200 mm",
                                  "The length of wall it bears on."),
    quantity<&PointLoad::dead>("dead", required, kN, not_negative, "6.5 kN", "Dead load."),
    quantity<&PointLoad::imposed>("imposed", with_default, kN, not_negative, "4 kN",
                                  "Imposed load."),
};
inline constexpr Table<PointLoad> point_load{
    "point_load", list, optional, "A load at one place, such as a purlin.", point_load_fields};

inline constexpr std::array needle_fields{
    text<&Needle::name>("name", required, "N1", "What the needle is called."),
    quantity<&Needle::x>("x", required, m, any.within("inside the cut"), "1.2 m",
                         "Its middle, from the wall's left end."),
    quantity<&Needle::bearing_width>("bearing_width", optional, mm,
                                     positive.within("up to the needle's width"), "152 mm",
                                     "The length of wall that bears on it; by default the width "
                                     "of its frame's needle."),
    by_hand<Needle>(
        text("frame", optional, "F1", "The name of the [needle_frame.NAME] table it is one of.")),
    quantity<&Needle::stiffness>("stiffness", required, kN_per_mm, positive, "20 kN/mm",
                                 "In place of `frame`: load that pushes needle, props and ground "
                                 "down by a unit of length.")
        .when([](const Needle& needle) { return !needle.frame.has_value(); }),
    quantity<&Needle::slack>("slack", with_default, mm, not_negative, "2 mm",
                             "Gap to close before the needle bears."),
    quantity<&Needle::preload>("preload", with_default, kN, not_negative.within("and 0 with slack"),
                               "5 kN", "Load it is jacked to before the cut."),
};
inline constexpr Table<Needle> needle{"needle", list, required, "A needle under the soffit.",
                                      needle_fields};

inline constexpr std::array<Word, 2> pier_sides{
    {{"left pier", PierSide::left}, {"right pier", PierSide::right}}};

inline constexpr std::array footing_fields{
    choice<&PierFooting::under>("under", required, pier_sides, "The pier that stands on it."),
    quantity<&PierFooting::width>("width", required, mm, positive, "450 mm", "Through the wall."),
    quantity<&PierFooting::depth>("depth", required, mm, not_negative, "600 mm",
                                  "Of its underside below the ground beside it."),
    by_hand<PierFooting>(
        text("ground", optional, "stiff clay", "The ground under it, of the tables.")),
    quantity<&PierFooting::ground, &Ground::presumed_bearing>(
        "ground_bearing", optional, kN_per_m2, ground_pressure, "150 kN/m2",
        "In place of `ground`: what it may bear, for unfactored loads."),
};
inline constexpr Table<PierFooting> footing{
    "footing", list, optional,
    "What a pier stands on; without it only the change of its load is judged.", footing_fields};

inline constexpr std::array bracing_fields{
    quantity<&Bracing::horizontal>(
        "horizontal", with_default, number,
        {.least = 0.025, .most = 0.5, .reason = "as a part, 0.025 is 2.5%"}, "0.03",
        "Part of the props' load that acts sideways too."),
    text<&Bracing::tied_to>(
        "tied_to", optional, "the party wall, by two ties",
        "What the bracing of the props is tied to; without it no bracing is verified."),
};
inline constexpr Table<Bracing> bracing{
    "bracing", single, optional, "What keeps rows of props from falling over.", bracing_fields};

inline constexpr std::array removal_fields{
    // Thinner courses are none, and make endless lists.
    quantity<&RemovalOptions::course_height>("course_height", with_default, mm, {.least = 10.0},
                                             "75 mm", "Of a brick and its joint."),
    quantity<&RemovalOptions::strip_width>("strip_width", with_default, mm, {.least = 50.0},
                                           "500 mm",
                                           "Along the wall, of what is taken out in one go."),
    quantity<&RemovalOptions::one_person_lift>(
        "one_person_lift", with_default, newtons, {.least = 1.0}, "250 N",
        "What one person lifts; local rules and the person decide."),
    quantity<&RemovalOptions::two_person_lift>("two_person_lift", with_default, newtons,
                                               any.within("what one person lifts or more"), "500 N",
                                               "What two people lift together; the same."),
    quantity<&RemovalOptions::bulking>(
        "bulking", with_default, number,
        {.least = 1.0, .reason = "what is broken up takes no less room"}, "1.5",
        "Room that broken masonry takes over what it took in the wall."),
};
inline constexpr Table<RemovalOptions> removal{
    "removal", single, optional, "How what comes out is taken apart.", removal_fields};

inline constexpr std::array<Word, 2> safety_methods{
    {{"partial factors", SafetyMethod::partial_factors},
     {"permissible stresses", SafetyMethod::permissible}}};
inline constexpr std::array<Word, 2> combinations{
    {{"6.10", Combination::eq_6_10}, {"6.10a or 6.10b", Combination::eq_6_10a_or_b}}};
inline constexpr std::array<Word, 4> safe_load_bases{
    {{"lower of both", SafeLoadBasis::lower_of_both},
     {"EN 1065", SafeLoadBasis::en_1065},
     {"CIRIA TN79", SafeLoadBasis::ciria_tn79},
     {"supplier table", SafeLoadBasis::supplier_table}}};

inline constexpr std::array check_fields{
    choice<&CheckRules::basis, &SafetyBasis::method>(
        "basis", with_default, safety_methods,
        "Whether loads and strengths are factored, or strengths alone."),
    choice<&CheckRules::combination>("combination", with_default, combinations,
                                     "With partial factors: the combination of EN 1990."),
    quantity<&CheckRules::factors, &CombinationFactors::gamma_G>(
        "gamma_G", with_default, number, positive, "1.35",
        "With partial factors: on permanent loads."),
    quantity<&CheckRules::factors, &CombinationFactors::gamma_Q>(
        "gamma_Q", with_default, number, positive, "1.5",
        "With partial factors: on imposed loads."),
    quantity<&CheckRules::basis, &SafetyBasis::gamma_masonry>(
        "gamma_masonry", optional, number, positive, "3",
        "What the strength of masonry is divided by; by default 3 with partial factors and 4.5 "
        "with permissible stresses."),
    choice<&CheckRules::prop_basis>("prop_basis", with_default, safe_load_bases,
                                    "Where safe loads of props come from; a supplier's table goes "
                                    "first in \"lower of both\"."),
};
inline constexpr Table<CheckRules> checks{"checks", single, optional,
                                          "By which rules members are checked.", check_fields};

inline constexpr std::array<Word, 2> element_kinds{
    {{"4-node", mesh::QuadOrder::four_node}, {"8-node", mesh::QuadOrder::eight_node}}};
inline constexpr std::array<Word, 2> masonry_models{
    {{"uncracked", MasonryModel::uncracked}, {"cracked", MasonryModel::cracked}}};
inline constexpr std::array<Word, 2> sequences{
    {{"staged", Sequence::staged}, {"at once", Sequence::at_once}}};

inline constexpr std::array analysis_fields{
    quantity<&AnalysisOptions::mesh_size>("mesh", with_default, mm, positive, "100 mm",
                                          "Size of the elements."),
    choice<&AnalysisOptions::element>("element", with_default, element_kinds,
                                      "Nodes of each element."),
    by_hand<AnalysisOptions>(
        {.name = "masonry",
         .kind = KeyKind::choices,
         .need = with_default,
         .words = masonry_models,
         .fallback = R"(["uncracked", "cracked"])",
         .meaning = "How the masonry is taken: as elastic, or as cracking in tension."}),
    choice<&AnalysisOptions::sequence>("sequence", with_default, sequences,
                                       "Whether the work is followed stage by stage, or all loads "
                                       "come at once on the wall as cut."),
};
inline constexpr Table<AnalysisOptions> analysis{
    "analysis", single, optional, "How it is worked out.", analysis_fields, [] {
      AnalysisOptions options;
      options.sequence = Sequence::staged;
      return options;
    }};

}  // namespace deadshore::solver::fields
