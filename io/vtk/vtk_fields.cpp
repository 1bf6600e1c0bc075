#include "io/vtk/vtk_fields.h"

#include "io/commands/terminal.h"

#include <fmt/format.h>

#include <array>
#include <string_view>

namespace deadshore::io {

namespace {

using namespace vtk_fields;

constexpr std::array of_wall{
    displacement,    stress,    major_stress,   minor_stress,      major_direction,
    minor_direction, mechanism, mean_stress,    crack_strain,      largest_crack_strain,
    loose,           material,  material_index, vtk_fields::stage, model,
    thickness,       day,       no_equilibrium};
constexpr std::array of_supports{support_name, part, reaction};
constexpr std::array of_needles{part, moment, shear, deflection, load, load_method, load_stage};
constexpr std::array of_beam{beam_displacement, beam_moment,       beam_shear, beam_deflection,
                             packing,           vtk_fields::stage, model};

constexpr std::string_view foreword =
    "The files of this folder that any VTK viewer opens. Lengths in mm: x along the wall from its "
    "left end, y up from its base, z through the wall, inside positive. A field's unit stands "
    "between brackets in its name; a field without one is a pure number or a text.";
constexpr std::string_view of_collection =
    "The wall through the work: the time step is the stage's number from 0 (0 as it was found), "
    "and "
    "the part the model, 0 uncracked and 1 cracked. For a job worked out at once the time step "
    "only counts the models.";
constexpr std::string_view of_wall_file =
    "The wall in one stage under one model, without what is taken out by then; wall.pvd lists "
    "them.";
constexpr std::string_view of_supports_file =
    "A point for each needle (the middle of its bearing), pier, held end, row of joists and "
    "bearing "
    "of the permanent beam; the beam and its padstones as faces.";
constexpr std::string_view of_needles_file =
    "The needles that have frames, and their props, as lines, each under the largest load that any "
    "method finds for it; not factored. There only where the job has needle frames.";
constexpr std::string_view of_beam_collection =
    "The permanent beam through the work, from the stage at which it is placed: time steps and "
    "parts as in wall.pvd. There only where the job has a beam and is followed stage by stage.";
constexpr std::string_view of_beam_file =
    "The permanent beam along its axis, in one stage under one model; beam.pvd lists them.";
constexpr std::string_view caution =
    "An aid to judgement. Read the cautions of note.html before you use a number.";

std::string section(std::string_view file, std::string_view meaning,
                    std::span<const VtkField> fields) {
  std::string text = fmt::format("\n{}\n{}", file, wrapped(meaning, 2));
  for (const VtkField& field : fields) {
    text += fmt::format("\n  {} ({})\n{}", field.name, field.carrier, wrapped(field.meaning, 6));
  }
  return text;
}

}  // namespace

std::span<const VtkField> wall_fields() {
  return of_wall;
}

std::span<const VtkField> support_fields() {
  return of_supports;
}

std::span<const VtkField> needle_fields() {
  return of_needles;
}

std::span<const VtkField> beam_fields() {
  return of_beam;
}

std::string vtk_readme() {
  return wrapped(foreword) + section("wall.pvd", of_collection, {}) +
         section("wall-*.vtu", of_wall_file, of_wall) +
         section("supports.vtp", of_supports_file, of_supports) +
         section("needles.vtp", of_needles_file, of_needles) +
         section("beam.pvd", of_beam_collection, {}) +
         section("beam-*.vtp", of_beam_file, of_beam) + "\n" + wrapped(caution);
}

}  // namespace deadshore::io
