#pragma once

#include <span>
#include <string>

/// The fields of the VTK files: the writers take their names from here, README.txt all of it.
namespace deadshore::io {

struct VtkField {
  const char* name;     ///< with its unit between brackets; without one it has none
  const char* carrier;  ///< "point", "cell" or "file"
  const char* meaning;  ///< a sentence; it names the components where there are several
};

namespace vtk_fields {

inline constexpr VtkField displacement{
    "displacement [mm]", "point",
    "Movement from the wall without any load, its own weight among them: x to the right, y up "
    "(settlement is -y), z 0."};
inline constexpr VtkField stress{
    "stress [N/mm2]", "point",
    "xx, yy, xy in the wall's plane, smoothed for drawing; tension positive."};
inline constexpr VtkField major_stress{"principal stress, major [N/mm2]", "point",
                                       "The larger principal stress; tension positive."};
inline constexpr VtkField minor_stress{
    "principal stress, minor [N/mm2]", "point",
    "The smaller principal stress: the compression, as a negative value."};
inline constexpr VtkField major_direction{"direction of major", "point",
                                          "Unit vector along the larger principal stress."};
inline constexpr VtkField minor_direction{"direction of minor", "point",
                                          "Unit vector along the smaller principal stress."};
inline constexpr VtkField mechanism{
    "mechanism without tension", "point",
    "How the wall would begin to give way if its mortar bore no tension, as a velocity of which "
    "the largest is 1; there only where it would."};
inline constexpr VtkField mean_stress{"mean stress [N/mm2]", "cell",
                                      "xx, yy, xy, the mean of the element; tension positive."};
inline constexpr VtkField crack_strain{
    "crack strain", "cell", "xx, yy, xy: mean strain that open cracks take; shear as in a tensor."};
inline constexpr VtkField largest_crack_strain{"largest crack strain", "cell",
                                               "The larger principal value of the crack strain."};
inline constexpr VtkField loose{"loose", "cell",
                                "1 where the masonry hangs on nothing and would fall, else 0."};
inline constexpr VtkField material{"material", "cell", "Name of the masonry or of the member."};
inline constexpr VtkField material_index{"material index", "cell",
                                         "Number of the material, 0 the masonry."};
inline constexpr VtkField stage{"stage", "file", "Name of the stage."};
inline constexpr VtkField model{"model", "file", "How the masonry is taken: uncracked or cracked."};
inline constexpr VtkField thickness{"thickness [mm]", "file",
                                    "Of the wall, half of it each way of z = 0."};
inline constexpr VtkField day{"day", "file", "Day of the stage, from the start of the work."};
inline constexpr VtkField no_equilibrium{
    "no equilibrium", "file",
    "Why the wall does not stand; there is then no displacement, stress or strain."};

inline constexpr VtkField support_name{"name", "point", "Name of the support, or of the part."};
inline constexpr VtkField part{"part", "cell", "Name of the part."};
inline constexpr VtkField reaction{
    "reaction STAGE MODEL [kN]", "point",
    "Force on the wall in that stage and model (under the beam's ends: on the beam), y upwards; "
    "\"reaction hand [kN]\" is the 45-degree rule's."};

inline constexpr VtkField moment{"moment [kNm]", "point",
                                 "Bending moment of the needle, sagging positive; not a number on "
                                 "props."};
inline constexpr VtkField shear{"shear [kN]", "point",
                                "Shear of the needle; not a number on props."};
inline constexpr VtkField deflection{"deflection [mm]", "point",
                                     "How far the needle goes down; not a number on props."};
inline constexpr VtkField load{"load [kN]", "cell",
                               "What the wall brings onto the needle; in a prop its compression."};
inline constexpr VtkField load_method{
    "method", "cell", "What found the load: hand, uncracked or cracked, whichever is largest."};
inline constexpr VtkField load_stage{"stage", "cell", "The stage in which it was found."};

inline constexpr VtkField beam_displacement{
    "displacement [mm]", "point",
    "Movement from where it was placed: y up, so the deflection as -y."};
inline constexpr VtkField beam_moment{
    "moment [kNm]", "point",
    "Bending moment, all sections of the beam together; sagging positive."};
inline constexpr VtkField beam_shear{"shear [kN]", "point", "Shear, all sections together."};
inline constexpr VtkField beam_deflection{"deflection [mm]", "point",
                                          "How far it goes down from where it was placed."};
inline constexpr VtkField packing{"load from packing [kN/m]", "point",
                                  "What the packing over it brings onto the beam."};

}  // namespace vtk_fields

/// Of `wall-*.vtu`, `supports.vtp`, `needles.vtp` and `beam-*.vtp`.
[[nodiscard]] std::span<const VtkField> wall_fields();
[[nodiscard]] std::span<const VtkField> support_fields();
[[nodiscard]] std::span<const VtkField> needle_fields();
[[nodiscard]] std::span<const VtkField> beam_fields();

/// README.txt of a folder of results: which VTK files there are, and every field with its unit.
[[nodiscard]] std::string vtk_readme();

}  // namespace deadshore::io
