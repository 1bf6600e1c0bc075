#pragma once

#include "mesh/plane.h"
#include "solver/limit/limit_problem.h"

#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace deadshore::solver {

/// How a wall lets go, from the velocities of its nodes.
struct LettingGo {
  double soffit_x = 0.0;           ///< where the soffit over the cut drops most, mm
  mesh::Interval between;          ///< the supports next to that place, along the wall
  std::string between_names;       ///< "N2 and N3"
  bool soffit_drops = false;       ///< by more than a third of the largest velocity
  bool spreads = false;            ///< sideways, by more than it drops or nearly so
  mesh::Point lowest;              ///< the node that drops most
  std::vector<std::size_t> heads;  ///< openings without a lintel whose heads drop, by number
};
[[nodiscard]] LettingGo read_mechanism(const Job& job, const StageState& state,
                                       const LimitProblem& problem,
                                       std::span<const double> mechanism);

/// What would make the wall stand without tension: the first of boards under the soffit, a needle,
/// a lintel and a held end that does it alone, or else all of them if that does. Each has been
/// tried. Worded to follow "would hold it" or "to hold it".
struct Remedies {
  std::string alone;
  std::string together;  ///< empty where one does alone, or all do not
  int iterations = 0;
};
[[nodiscard]] Remedies remedies_for(const Job& job, const LimitProblem& problem,
                                    const LettingGo& letting_go);

}  // namespace deadshore::solver
