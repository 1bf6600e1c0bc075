#pragma once

#include "solver/checks/check.h"
#include "solver/job/beam_places.h"
#include "solver/job/job.h"
#include "solver/job/lifting.h"
#include "solver/site/lift_plan.h"

#include <span>
#include <string>
#include <vector>

/// The parts that `plan_lift` is put together from. Of each, \pre job.beam and job.lifting.
namespace deadshore::solver {

/// The beam as it goes up. N, mm.
struct RaisedBeam {
  BeamPlaces places;
  std::string stage;  ///< in which it is placed
  double length = 0.0;
  double weight_of_one = 0.0;
  double weight = 0.0;     ///< of all sections
  double weight_up = 0.0;  ///< of what goes up at once
  double width_up = 0.0;   ///< of what goes up at once, over its flanges
  double shift = 0.0;  ///< how far it slides past its place, + to the right; 0 where it comes in
                       ///< sideways

  [[nodiscard]] double x_of(double at) const { return places.beam.x.from + at; }
};
[[nodiscard]] RaisedBeam raised_beam(const Job& job);

/// A check in mm of a length that is there against what is needed.
[[nodiscard]] Check geometry_check(std::string member, std::string check, double needed,
                                   double there, std::string working);

/// That the beam does not tip over what holds it at `places`, with its middle at the worst of
/// `middles`, along the beam, mm.
[[nodiscard]] Check balance_check(std::string held_by, std::span<const double> places,
                                  std::span<const double> middles);

/// Loads of the lifters, and every check of them but for their way.
void add_lifters(const Job& job, const RaisedBeam& beam, LiftPlan& plan);

/// Loads of the stands and every check of them but for their place.
void add_stands(const Job& job, const RaisedBeam& beam, LiftPlan& plan);

/// What is in the way of beam, lifters and stands.
[[nodiscard]] std::vector<Check> clear_way(const Job& job, const RaisedBeam& beam);

/// The work in plain sentences, in order.
[[nodiscard]] std::vector<std::string> lift_steps(const Job& job, const RaisedBeam& beam);

}  // namespace deadshore::solver
