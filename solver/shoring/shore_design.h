#pragma once

#include "solver/checks/check.h"
#include "solver/job/ids.h"
#include "solver/job/shore_frame.h"

#include <string>
#include <vector>

namespace deadshore::solver {

struct Job;
struct JobResult;

/// A load on the head plate, characteristic.
struct HeadLoad {
  std::string from;      ///< "joists", or the name of what stands on the floor there
  bool by_joist = true;  ///< one joist's share of even loads; else what `from` alone brings
  double x = 0.0;        ///< along the wall, mm
  double dead = 0.0;     ///< N
  double imposed = 0.0;  ///< N

  /// Dead and imposed load together, N.
  [[nodiscard]] double characteristic() const { return dead + imposed; }
};

/// A prop or stud with what it carries.
struct UprightLoad {
  std::string mark;       ///< "floor shore P3"
  double x = 0.0;         ///< along the wall, mm
  double load = 0.0;      ///< N, characteristic
  std::string extra_for;  ///< the point load that it was put under; empty: one of the row
};

/// One dead shore worked out under the floor that it carries.
struct ShoreDesign {
  ShoreId shore = {};
  std::string name;                   ///< of the dead shore, for printing
  double lever = 1.0;                 ///< joist_span / (joist_span - distance): shore over wall
  std::vector<HeadLoad> loads;        ///< on the head plate, from left to right
  std::vector<UprightLoad> uprights;  ///< empty, and no figures below, where the plate would tip
  double length = 0.0;                ///< of an upright, from sole to head plate, mm
  double total = 0.0;                 ///< N, characteristic, on all uprights
  double largest_moment = 0.0;        ///< in the head plate, N mm
  double largest_shear = 0.0;         ///< N
  double deflection = 0.0;            ///< mm
  std::vector<Check> checks;          ///< worst first, members named
  std::vector<std::string> advice;    ///< plain sentences; may be empty
};

/// Works out every dead shore of the job that has a frame. By moments about the joists' far bearing
/// the shore takes joist_span / (joist_span - distance) times what the wall loses.
/// \pre the job has no faults
[[nodiscard]] std::vector<ShoreDesign> design_shores(const Job& job);

}  // namespace deadshore::solver
