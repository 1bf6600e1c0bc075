#pragma once

#include "solver/panel/panel_result.h"

#include <map>

namespace deadshore::solver {

/// How far each reaction may be off for the size of the elements, plus or minus, N, from the same
/// analysis on elements twice as large. Supports that carry nothing on either mesh are left out.
///
/// Richardson's extrapolation with the order that the corners of openings and cut leave to any
/// element: 2 * 0.5445 (the strongest singular stress at a corner of 270 degrees, M. L. Williams,
/// J. Appl. Mech. 19 (1952) 526-528; a force is twice as good as the displacements), times the
/// factor of safety 3 that P. J. Roache, J. Fluids Eng. 116 (1994) 405-413, asks for where there
/// are two meshes (both from memory, unverified). So it comes to 2.7 times the change, which still
/// covers an order of 0.46. An order seen on three meshes would be no better ground: on meshes of
/// such size, which do not nest, it comes out anywhere from 0 to 3.
///
/// A change can be small by chance, where a reaction crosses its limit. What one support gains its
/// like lose, so none is taken to have changed less than the root mean square of its group
/// (support_reactions.h).
[[nodiscard]] std::map<SupportId, double> mesh_error(const Job& job, const PanelResult& fine,
                                                     const PanelResult& coarse);

}  // namespace deadshore::solver
