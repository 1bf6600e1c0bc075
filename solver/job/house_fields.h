#pragma once

#include "solver/job/house.h"
#include "solver/job/job_fields.h"

#include <array>

/// The keys of the house: what stands on the wall, and is taken down onto it.
namespace deadshore::solver::fields {

/// The part of a load that the wall takes.
template <class Struct>
constexpr Field<Struct> share(std::string_view meaning) {
  return quantity<&Struct::share>("share", with_default, number, above_zero_to_one, "0.5", meaning);
}

template <class Struct>
constexpr Field<Struct> layers(std::string_view name, Need need, std::string_view example,
                               std::string_view meaning) {
  return by_hand<Struct>({.name = name,
                          .kind = KeyKind::layers,
                          .need = need,
                          .example = example,
                          .meaning = meaning});
}

/// The floor that something stands on.
template <class Struct>
constexpr Field<Struct> on_floor() {
  return text<&Struct::floor>("on", required, "first floor",
                              "The name of the floor or loft whose joists it stands on; they must "
                              "bear on the wall.");
}

inline constexpr std::array<Word, 2> joist_directions{
    {{"onto the wall", JoistDirection::onto_wall}, {"along the wall", JoistDirection::along_wall}}};
inline constexpr std::array<Word, 2> partition_runs{
    {{"along the wall", PartitionRun::along_wall}, {"across the wall", PartitionRun::across_wall}}};

// What floors and lofts have in common.
inline constexpr Field<Floor> floor_level = quantity<&Floor::level>(
    "level", required, m, on_masonry, "2.7 m", "Where joists come into the wall.");
inline constexpr Field<Floor> joist_direction = choice<&Floor::joists>(
    "joists", with_default, joist_directions,
    "Whether joists bear on the wall or run beside it, so that only a strip does.");
inline constexpr Field<Floor> joist_span =
    quantity<&Floor::span>("span", required, m, span_of_house, "3.8 m",
                           "From this wall to the joists' other bearing; the width of the strip "
                           "where they run along the wall.");
inline constexpr Field<Floor> own_weight =
    by_hand<Floor>(quantity("dead", optional, kN_per_m2, load_on_area, "0.6 kN/m2",
                            "In place of `build_up`: all of its own weight."));

inline constexpr std::array floor_fields{
    text<&Floor::name>("name", required, "first floor",
                       "What the floor is called; the load it brings has this name too."),
    floor_level,
    begins<Floor>(),
    ends<Floor>(),
    joist_direction,
    joist_span,
    share<Floor>("Part of the load over the span that this wall takes."),
    layers<Floor>("build_up", optional, R"([["softwood", "22 mm"], "plasterboard and skim"])",
                  "What it is made of, joists too."),
    own_weight,
    by_hand<Floor>(
        text("use", optional, "domestic", "A use of the tables, which gives the imposed load.")),
    quantity<&Floor::imposed, &ImposedUse::load>("imposed", optional, kN_per_m2, load_on_area,
                                                 "1.5 kN/m2",
                                                 "In place of `use`: the imposed load."),
    quantity<&Floor::movable_partitions>(
        "movable_partitions", with_default, kN_per_m2, load_on_area, "0.5 kN/m2",
        "Imposed load for light partitions that may be moved, EN 1991-1-1 6.3.1.2(8)."),
};
inline constexpr Table<Floor> floor{"floor", list, optional, "A floor that bears on the wall.",
                                    floor_fields};

inline constexpr std::array loft_fields{
    text<&Floor::name>("name", required, "loft",
                       "What the loft is called; the load it brings has this name too."),
    floor_level,
    begins<Floor>(),
    ends<Floor>(),
    joist_direction,
    joist_span,
    share<Floor>("Part of the load over the span that this wall takes."),
    layers<Floor>("build_up", optional,
                  R"(["plasterboard and skim", ["insulation", "0.05 kN/m2"]])",
                  "What it is made of, joists too."),
    own_weight,
    by_hand<Floor>({.name = "boarded",
                    .kind = KeyKind::flag,
                    .example = "true",
                    .meaning = "Whether it is boarded for storage, which gives the imposed load."}),
    quantity<&Floor::imposed, &ImposedUse::load>("imposed", optional, kN_per_m2, load_on_area,
                                                 "0.25 kN/m2",
                                                 "In place of `boarded`: the imposed load."),
};
inline constexpr Table<Floor> loft{"loft", list, optional,
                                   "The floor of a loft that bears on the wall.", loft_fields};

inline constexpr std::array roof_fields{
    text<&Roof::name>("name", required, "roof",
                      "What the slope is called; the load it brings has this name too."),
    level_or_top<Roof>("Where rafters bear on the wall; \"top\" follows the wall's top edge."),
    begins<Roof>(),
    ends<Roof>(),
    quantity<&Roof::pitch>("pitch", required, degrees,
                           {.least = 0.0, .most = 90.0, .below_most = true}, "35 degrees",
                           "Of the slope, from level."),
    quantity<&Roof::run>("run", with_default, m, not_negative, "2.1 m",
                         "On plan, from this wall to where rafters bear next; 0 where none bear "
                         "on it."),
    share<Roof>("Part of the load over the run that this wall takes."),
    quantity<&Roof::overhang>("overhang", with_default, mm, not_negative, "300 mm",
                              "On plan, of the eaves beyond the wall."),
    layers<Roof>("coverings", required,
                 R"(["interlocking concrete tiles", "battens", ["rafters", "0.1 kN/m2"]])",
                 "What the slope is made of, rafters too, per area of slope."),
    layers<Roof>("ceiling", optional, R"(["plasterboard and skim"])",
                 "A ceiling that hangs on it, per area on plan."),
    quantity<&Roof::access>("access", optional, kN_per_m2, load_on_area, "0.6 kN/m2",
                            "Imposed load of those who mend the roof, on plan; by default that of "
                            "its pitch. It never acts with snow."),
    by_hand<Roof>(quantity("ground_snow", optional, kN_per_m2, load_on_area, "0.5 kN/m2",
                           "Snow on the ground, of the place's map; the pitch says how much lies "
                           "on the roof.")),
    by_hand<Roof>(quantity("snow_zone", optional, number, {.least = 1.0, .most = 5.0}, "3",
                           "In place of `ground_snow`, in the United Kingdom: the zone of its map; "
                           "with `altitude`.")),
    by_hand<Roof>(quantity("altitude", optional, m, any, "80 m",
                           "Of the site above the sea, with `snow_zone`.")),
    quantity<&Roof::snow>("snow", optional, kN_per_m2, load_on_area, "0.4 kN/m2",
                          "In place of `ground_snow`: snow on the roof, on plan."),
};
inline constexpr Table<Roof> roof{"roof", list, optional, "A roof slope that bears on the wall.",
                                  roof_fields};

inline constexpr std::array purlin_fields{
    text<&Purlin::name>("name", required, "left purlin",
                        "What the purlin is called; the load it brings has this name too."),
    quantity<&Purlin::x>("x", required, m, inside_the_wall, "2.6 m",
                         "Its middle, from the left end."),
    quantity<&Purlin::level>("level", required, m, on_masonry, "6.2 m",
                             "Where it bears on the wall."),
    quantity<&Purlin::bearing>("bearing", required, mm, positive, "100 mm",
                               "The length of wall it bears on."),
    quantity<&Purlin::width>("width", required, m, positive, "2.4 m",
                             "Of the roof that it carries, on plan."),
    quantity<&Purlin::span>("span", required, m, span_of_house, "3.5 m", "To its other bearing."),
    share<Purlin>("Part of the load over the span that this wall takes."),
};
inline constexpr Table<Purlin> purlin{"roof.purlin", list, optional,
                                      "A purlin of the slope, on the wall.", purlin_fields};

constexpr bool runs_along(const Partition& partition) {
  return partition.run == PartitionRun::along_wall;
}
constexpr bool runs_across(const Partition& partition) {
  return partition.run == PartitionRun::across_wall;
}

inline constexpr std::array partition_fields{
    text<&Partition::name>("name", required, "bathroom wall",
                           "What the partition is called; the load it brings has this name too."),
    on_floor<Partition>(),
    choice<&Partition::run>("runs", required, partition_runs, "Beside the wall, or away from it."),
    quantity<&Partition::distance>("distance", optional, m,
                                   not_negative.within("up to the floor's span"), "1.2 m",
                                   "From the wall's inner face to its middle where it runs along "
                                   "the wall, else to its near end, by default 0."),
    begins<Partition>("Where it begins, if it runs along the wall; by default the wall's left end.")
        .when(runs_along),
    ends<Partition>("Where it ends, if it runs along the wall; by default the wall's right end.")
        .when(runs_along),
    quantity<&Partition::place>("place", required, m, inside_the_wall, "2.6 m",
                                "Its middle, from the wall's left end, if it runs across.")
        .when(runs_across),
    quantity<&Partition::length>("length", required, m, positive, "3 m",
                                 "From its near end inwards, if it runs across.")
        .when(runs_across),
    quantity<&Partition::bearing>("bearing", required, mm, positive, "400 mm",
                                  "The length of wall that takes its load, if it runs across: the "
                                  "joists under it.")
        .when(runs_across),
    quantity<&Partition::height>("height", required, m, positive, "2.4 m", "Of the partition."),
    quantity<&Partition::openings>("openings", with_default, m2,
                                   not_negative.within("below its face"), "1.6 m2",
                                   "Area of doors in it."),
    layers<Partition>("build_up", required, R"(["stud partition, plasterboard"])",
                      "What it is made of."),
};
inline constexpr Table<Partition> partition{
    "partition", list, optional, "A partition on the joists of a floor that bears on the wall.",
    partition_fields};

inline constexpr std::array upper_wall_fields{
    text<&UpperWall::name>("name", required, "gable",
                           "What the wall is called; the load it brings has this name too."),
    level_or_top<UpperWall>("Where it stands on the wall; \"top\" follows the wall's top edge."),
    begins<UpperWall>(),
    ends<UpperWall>(),
    quantity<&UpperWall::height>("height", required, m, positive, "2.5 m",
                                 "Of the wall, on average."),
    quantity<&UpperWall::openings>("openings", with_default, m2,
                                   not_negative.within("below its face"), "1.4 m2",
                                   "Area of windows and doors in it."),
    layers<UpperWall>("build_up", required,
                      R"([["brickwork", "215 mm"], ["lime mortar", "15 mm"]])",
                      "Masonry and finishes."),
};
inline constexpr Table<UpperWall> upper_wall{
    "upper_wall", list, optional, "Masonry on the wall that is not drawn.", upper_wall_fields};

inline constexpr std::array chimney_fields{
    text<&Chimney::name>("name", required, "chimney breast",
                         "What the chimney is called; the load it brings has this name too."),
    quantity<&Chimney::x>("x", required, m, inside_the_wall, "3.1 m",
                          "Its middle, from the left end."),
    quantity<&Chimney::level>("level", required, m, on_masonry, "2.7 m",
                              "From where it stands on the wall: all of it above counts."),
    quantity<&Chimney::width>("width", required, m, positive, "1.4 m",
                              "Of the breast, along the wall."),
    quantity<&Chimney::projection>("projection", required, mm, positive, "350 mm",
                                   "Of the breast, from the face of the wall."),
    quantity<&Chimney::height>("height", required, m, positive, "3.6 m",
                               "Of the breast above its level."),
    quantity<&Chimney::stack_width>("stack_width", with_default, m, not_negative, "0.9 m",
                                    "Of the stack."),
    quantity<&Chimney::stack_depth>("stack_depth", with_default, m, not_negative, "0.6 m",
                                    "Of the stack."),
    quantity<&Chimney::stack_height>("stack_height", with_default, m, not_negative, "1.5 m",
                                     "Of the stack above the breast; 0 where it is gone."),
    quantity<&Chimney::solid>("solid", with_default, number, above_zero_to_one, "0.8",
                              "Part of breast and stack that is masonry, the rest being flues."),
    by_hand<Chimney>(text("material", optional, "old brickwork in lime",
                          "A material of the tables, which gives the unit weight.")),
    quantity<&Chimney::unit_weight>("unit_weight", optional, kN_per_m3, solid_weight, "19 kN/m3",
                                    "In place of `material`: weight of the masonry."),
    share<Chimney>("Part of its weight that this wall takes."),
};
inline constexpr Table<Chimney> chimney{
    "chimney", list, optional, "A chimney breast and its stack, on the wall.", chimney_fields};

inline constexpr std::array contents_fields{
    text<&Contents::name>("name", required, "bath",
                          "What it is called; the load it brings has this name too."),
    on_floor<Contents>(),
    quantity<&Contents::x>("x", required, m, inside_the_wall, "1.8 m",
                           "Its middle, from the left end."),
    quantity<&Contents::distance>("distance", required, m,
                                  not_negative.within("up to the floor's span"), "0.6 m",
                                  "From the wall's inner face to its middle."),
    quantity<&Contents::bearing>("bearing", required, mm, positive, "700 mm",
                                 "The length of wall that takes its load: the joists under it."),
    quantity<&Contents::weight>("weight", required, kN_or_mass, positive, "3.2 kN",
                                "Full of what it holds, as a force or as a mass; taken as "
                                "imposed."),
};
inline constexpr Table<Contents> contents{
    "contents", list, optional, "Something heavy on the joists of a floor that bears on the wall.",
    contents_fields};

}  // namespace deadshore::solver::fields
