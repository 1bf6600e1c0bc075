#include "mesh/plane.h"
#include "solver/beam/beam_checks.h"
#include "solver/beam/load_over_beam.h"
#include "solver/frame/solve_frame.h"
#include "solver/job/beam_places.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace deadshore::solver {

namespace {

constexpr int even_stations = 120;  // beside those where the load changes

/// The beam between the middles of its bearings as a frame of one member, and what goes straight
/// into its bearings beyond them.
struct SimpleBeam {
  Frame frame;
  BeamLoad beyond_left;
  BeamLoad beyond_right;
};

SimpleBeam simple_beam(const PermanentBeam& beam, const BeamPlaces& places,
                       const LoadOverBeam& over) {
  SimpleBeam simple;
  const double start = places.supports.from;
  simple.frame.nodes = {{0.0, 0.0, "left bearing"},
                        {places.supports.length(), 0.0, "right bearing"}};
  FrameMember member;
  member.to = 1;
  member.E = steel_E;
  member.A = beam.count * beam.member.properties.A;
  member.I = beam.count * beam.member.properties.I_y;
  member.shear_stiffness = beam.shear_stiffness();
  member.weight = beam.weight();
  member.name = beam.name;
  simple.frame.members = {member};
  simple.frame.supports = {pinned_support(0), {1, {}, 0.0, {}}};
  for (const LoadStretch& stretch : over.stretches) {
    if (stretch.x.middle() < places.supports.from) {
      simple.beyond_left += stretch.sum();
    } else if (stretch.x.middle() > places.supports.to) {
      simple.beyond_right += stretch.sum();
    } else {
      simple.frame.line_loads.push_back({0, std::max(stretch.x.from - start, 0.0),
                                         std::min(stretch.x.to - start, places.supports.length()),
                                         0.0, -stretch.at_from.total(), 0.0,
                                         -stretch.at_to.total()});
    }
  }
  for (const JambLoad& jamb : over.jambs) {
    if (jamb.x <= places.supports.from) {
      simple.beyond_left += jamb.load;
    } else if (jamb.x >= places.supports.to) {
      simple.beyond_right += jamb.load;
    } else {
      simple.frame.point_loads.push_back({0, jamb.x - start, 0.0, -jamb.load.total(), 0.0});
    }
  }
  return simple;
}

/// Places from the left support at which the diagrams are given.
std::vector<double> station_places(const Frame& frame, const std::vector<double>& extremes) {
  std::vector<double> places = extremes;
  const double span = frame.nodes[1].x;
  for (int i = 0; i <= even_stations; ++i) places.push_back(span * i / even_stations);
  for (const FrameLineLoad& load : frame.line_loads)
    places.insert(places.end(), {load.from, load.to});
  for (const FramePointLoad& load : frame.point_loads) places.push_back(load.at);
  for (double& place : places) place = std::clamp(place, 0.0, span);
  return mesh::distinct_places(std::move(places));
}

/// Load over the beam at a place; where it steps, what begins there.
double load_at(const LoadOverBeam& over, double x) {
  double load = 0.0;
  for (const LoadStretch& stretch : over.stretches) {
    if (x < stretch.x.from - mesh::same_place) break;
    const double along = std::clamp((x - stretch.x.from) / stretch.x.length(), 0.0, 1.0);
    load = std::lerp(stretch.at_from.total(), stretch.at_to.total(), along);
  }
  return load;
}

}  // namespace

HandBeam hand_beam(const Job& job) {
  const PermanentBeam& beam = job.beam.value();
  const BeamPlaces places = places_of_beam(job);
  const LoadOverBeam over = load_over_beam(job);
  const SimpleBeam simple = simple_beam(beam, places, over);
  const FrameSolution solution = solve(simple.frame).value();
  const MemberSolution& member = solution.members.front();

  HandBeam hand;
  hand.span = places.supports.length();
  const double own_weight = beam.weight() * places.beam.x.length();
  hand.load = over.sum().total() + own_weight;
  hand.dead = over.sum().dead + own_weight;
  const double end_weight = beam.weight() * 0.5 * beam.bearing;
  hand.reaction_left = solution.reactions[0].y + simple.beyond_left.total() + end_weight;
  hand.reaction_right = solution.reactions[1].y + simple.beyond_right.total() + end_weight;

  const Extremes moment = extremes(member, &SectionState::moment);
  const Extremes shear = extremes(member, &SectionState::shear);
  const Extremes rise = extremes(member, &SectionState::y);
  hand.largest_moment = moment.greatest.moment;
  hand.largest_shear = std::max(shear.greatest.shear, -shear.least.shear);
  hand.deflection = -rise.least.y;
  for (const double at : station_places(simple.frame, {moment.greatest.at, rise.least.at})) {
    const SectionState state = section(member, at);
    const double x = places.supports.from + at;
    hand.stations.push_back({x, state.moment, state.shear, -state.y, load_at(over, x)});
  }
  return hand;
}

}  // namespace deadshore::solver
