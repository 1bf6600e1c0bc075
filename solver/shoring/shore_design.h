#pragma once

#include "solver/checks/check.h"
#include "solver/job/ids.h"
#include "solver/job/shore_frame.h"

#include <string>
#include <vector>

namespace deadshore::solver {

struct Job;
struct JobResult;

/// A load on the head plate, N, characteristic.
struct HeadLoad {
  std::string from;      ///< "joists", or the name of what stands on the floor there
  bool by_joist = true;  ///< else of that alone
  double x = 0.0;
  double dead = 0.0;
  double imposed = 0.0;

  [[nodiscard]] double characteristic() const { return dead + imposed; }
};

/// A prop or stud with what it carries, N, characteristic.
struct UprightLoad {
  std::string mark;  ///< "floor shore P3"
  double x = 0.0;
  double load = 0.0;
  std::string extra_for;  ///< the point load that it was put under; empty: one of the row
};

/// One dead shore worked out under the floor that it carries.
struct ShoreDesign {
  ShoreId shore = {};
  std::string name;                   ///< of the dead shore, for printing
  double lever = 1.0;                 ///< joist_span / (joist_span - distance): shore over wall
  std::vector<HeadLoad> loads;        ///< on the head plate, from left to right
  std::vector<UprightLoad> uprights;  ///< empty, and no figures below, where the plate would tip
  double length = 0.0;                ///< of an upright, from sole to head plate
  double total = 0.0;                 ///< N, characteristic, on all uprights
  double largest_moment = 0.0;        ///< in the head plate, N mm
  double largest_shear = 0.0;         ///< N
  double deflection = 0.0;            ///< mm
  std::vector<Check> checks;          ///< worst first, members named
  std::vector<std::string> advice;    ///< plain sentences; may be empty
};

/// Every dead shore of the job that has a frame. By moments about the joists' far bearing the shore
/// takes joist_span / (joist_span - distance) times what the wall loses.
/// \pre the job has no faults
[[nodiscard]] std::vector<ShoreDesign> design_shores(const Job& job);

}  // namespace deadshore::solver
