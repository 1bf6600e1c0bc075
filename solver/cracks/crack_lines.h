#pragma once

#include "mesh/quad_mesh.h"
#include "solver/panel/panel_result.h"

#include <vector>

namespace deadshore::solver {

/// One brick with its joint, mm: the upright joints of a course come no closer, so that a course
/// has at most one crack through its joints in this length.
constexpr double brick_pitch = 225.0;

/// One crack as a line through the elements.
struct CrackLine {
  double width = 0.0;              ///< at its widest, mm
  mesh::Point widest;              ///< where that is
  mesh::Point normal;              ///< unit, across the crack where it is widest
  std::vector<mesh::Point> along;  ///< from end to end, two points at least
};

/// Finds single cracks in a field of smeared crack strain, widest first, at most `most`.
///
/// The law has no softening: it spreads a crack over any number of elements, and over whole zones
/// where stresses fan out. Masonry opens at joints instead. So a crack's width at a
/// point is the crack strain across it, integrated along its normal over one `brick_pitch` (never
/// less than two elements, as a jump cannot be drawn sharper), the window lying where that gives
/// most; the integral ends where elements are closed, loose or out, or crack another way (by over
/// 45 degrees). The window is the characteristic length of the crack: with it a width neither fades
/// as elements get smaller, nor adds up a whole fan as one crack.
///
/// Lines are traced from the widest point along the crack, kept on the middle of the strain in the
/// window, for as long as the width is at least `least_width` mm. Elements within half a window of
/// a line that crack its way belong to it and count for no other line: a zone that cracks as a
/// whole becomes cracks a window apart.
/// \param least_width at which a crack ends, mm
/// \param most number of cracks
[[nodiscard]] std::vector<CrackLine> crack_lines(const mesh::QuadMesh& mesh,
                                                 const PanelFields& fields, double least_width,
                                                 int most);

}  // namespace deadshore::solver
