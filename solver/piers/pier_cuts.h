#pragma once

#include "mesh/plane.h"
#include "mesh/quad_mesh.h"
#include "solver/panel/panel_result.h"

#include <vector>

/// What piers carry, cut by cut, from an analysis' own stresses. N, mm.
namespace deadshore::solver {

/// A level cut through an unbroken stretch of standing masonry.
struct PierCut {
  double level = 0.0;   ///< y, mm
  mesh::Interval x;     ///< of the stretch, mm
  double force = 0.0;   ///< N, pushing down on what is below
  double moment = 0.0;  ///< N mm about the stretch's middle; more on the right is positive

  /// Eccentricity of the force from the stretch's middle, mm, to the right positive; 0 where there
  /// is no push.
  [[nodiscard]] double eccentricity() const { return force > 0.0 ? moment / force : 0.0; }
};

/// Forces on level cuts at the middle of every row of elements: one cut for each stretch of masonry
/// between openings and what is out. Stress varies linearly over an element, about its mean and
/// with the slope to its neighbours' means.
/// \param thickness of the wall, mm
/// \pre the analysis stands
[[nodiscard]] std::vector<PierCut> pier_cuts(const mesh::QuadMesh& mesh,
                                             const PanelResult& analysis, double thickness);

}  // namespace deadshore::solver
