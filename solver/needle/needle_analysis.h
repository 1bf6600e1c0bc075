#pragma once

#include "solver/frame/solve_frame.h"
#include "solver/job/needle_frame.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// The wall round a needle frame.
struct NeedleSite {
  double wall_thickness = 0.0;  ///< mm
  double soffit = 0.0;          ///< mm above the wall's base
};

/// Loads on a needle frame.
struct NeedleLoad {
  double wall = 0.0;           ///< from the wall above, N
  double weight_factor = 1.0;  ///< on the needle's own weight
};

/// What a prop of a needle frame carries.
struct PropLoad {
  std::string mark;        ///< "inner", "outer", or the user's
  double place = 0.0;      ///< z, mm
  double extension = 0.0;  ///< mm
  double load = 0.0;       ///< N, compression positive
};

/// A point of the needle's diagrams.
struct NeedleStation {
  double z = 0.0;           ///< mm
  double moment = 0.0;      ///< N mm, sagging positive
  double shear = 0.0;       ///< N
  double deflection = 0.0;  ///< mm, down positive
};

/// A needle frame in equilibrium under its load.
struct NeedleAnswer {
  double wall_load = 0.0;       ///< N
  double stiffness = 0.0;       ///< N/mm: wall load over the wall's mean movement, packing included
  double settlement = 0.0;      ///< mean movement of the wall under its load, mm, down positive
  double largest_moment = 0.0;  ///< N mm, either sign, as a size
  double largest_shear = 0.0;   ///< N, as a size
  double bending_deflection = 0.0;  ///< mm, of the needle from the line between its outermost props
  double span = 0.0;                ///< between the props on either side of the wall, mm
  double buckling_factor = 0.0;     ///< on all loads; infinite where nothing can buckle
  int passes = 0;                   ///< of the second-order analysis
  std::vector<PropLoad> props;      ///< in the frame's order
  std::vector<NeedleStation> stations;  ///< from the outer end to the inner end
};

/// Analyses a needle frame: the needle as a beam on its props, the props as columns out of plumb by
/// 1.5 degrees on springs for sole and ground, the wall's load spread evenly over its thickness.
/// Second order (P-delta). The wall holds the needle sideways; heads and feet of props are pinned,
/// and a foot or a head that would be pulled lets go.
/// \throws MemberError for a prop outside its range; SolveError where the frame does not stand
[[nodiscard]] NeedleAnswer analyse_needle(const NeedleFrame& frame, const NeedleSite& site,
                                          const NeedleLoad& load);

/// Stiffness of a needle frame under its wall, N/mm: `NeedleAnswer::stiffness` alone. The needle's
/// own weight is left out, since it is on the props before the wall is.
[[nodiscard]] double needle_stiffness(const NeedleFrame& frame, const NeedleSite& site,
                                      double wall_load);

/// The plane frame that `analyse_needle` solves, to be looked at: its x is the job's z (through the
/// wall, inside positive), its y is up from the wall's base.
[[nodiscard]] Frame frame_of(const NeedleFrame& frame, const NeedleSite& site,
                             const NeedleLoad& load);

}  // namespace deadshore::solver
