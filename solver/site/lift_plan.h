#pragma once

#include "solver/checks/check.h"

#include <string>
#include <vector>

namespace deadshore::solver {

struct Job;

/// What one lifter or stand carries, N; `working` says how in numbers.
struct HeldLoad {
  std::string name;
  double at = 0.0;       ///< along the beam from its left end
  double load = 0.0;     ///< on the lifter with the dynamic factor; on the stand without
  double per_leg = 0.0;  ///< stands alone
  double per_fixing = 0.0;
  std::string working;
};

/// How the beam goes up: what each piece carries, what is in its way.
struct LiftPlan {
  double length = 0.0;         ///< of the beam
  double weight_of_one = 0.0;  ///< N, one section
  double weight = 0.0;         ///< N, all sections
  double lift = 0.0;           ///< height from what lifters stand on to the beam's underside
  std::vector<HeldLoad> lifters;
  std::vector<HeldLoad> stands;
  std::vector<Check> checks;       ///< loads and clearances; a clash is a check that fails, in mm
  std::vector<std::string> steps;  ///< plain sentences, in order: how it is brought in
};

/// \pre job.beam and job.lifting, without faults
[[nodiscard]] LiftPlan plan_lift(const Job& job);

}  // namespace deadshore::solver
