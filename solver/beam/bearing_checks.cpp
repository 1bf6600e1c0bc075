#include "mesh/plane.h"
#include "solver/beam/beam_case.h"
#include "solver/checks/check.h"
#include "solver/checks/masonry_checks.h"
#include "solver/job/beam_places.h"
#include "solver/spread/landing.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace deadshore::solver {

namespace {

/// One end of the beam, with distances from the cut's jamb into the pier.
struct BeamEnd {
  const char* side = "";
  double jamb = 0.0;       ///< x, mm
  double direction = 1.0;  ///< of the pier from its jamb: -1 left, 1 right
  double pier = 0.0;       ///< its length, mm
  double reaction = 0.0;   ///< N, characteristic

  [[nodiscard]] mesh::Interval into_pier(mesh::Interval x) const {
    const double a = direction * (x.from - jamb);
    const double b = direction * (x.to - jamb);
    return {std::min(a, b), std::max(a, b)};
  }
};

BeamEnd left_end(const Job& job, const BeamResult& answer) {
  return {"left", job.wall.cut.left, -1.0, job.wall.cut.left, answer.reaction_left};
}

BeamEnd right_end(const Job& job, const BeamResult& answer) {
  return {"right", job.wall.cut.right, 1.0, job.wall.length - job.wall.cut.right,
          answer.reaction_right};
}

Check stress_on_padstone(const BeamDesign& design, const BeamCase& load, const BeamEnd& end) {
  const PermanentBeam& beam = design.beam();
  const double gamma = design.job.check_rules.basis.gamma_masonry;
  const double width = pressed_width(design.job);
  Check check;
  check.check = "padstone under the beam";
  check.clause = "EN 1996-1-1 2.4.3, as masonry";
  check.demand = design.load_factor * end.reaction / (beam.bearing * width);
  check.capacity = beam.padstone.strength / gamma;
  check.unit = "N/mm2";
  check.working = fmt::format(
      "{}: {:.2f} kN x {:.3f} / ({:.0f} x {:.0f} mm); {:.2f} N/mm2 / {:.2f}", load.method,
      end.reaction / kN, design.load_factor, beam.bearing, width, beam.padstone.strength, gamma);
  return check;
}

/// Length of the padstone's bed that the beam presses on: spread through its depth at 45 degrees
/// from the beam's bearing, which ends at the jamb (common practice, no source).
double pressed_length(const PermanentBeam& beam) {
  return std::min(beam.padstone.length, beam.bearing + beam.padstone.depth);
}

/// The pier's masonry from under the padstone to its other end, or to the first opening beside it
/// that is not wholly higher; below 0 where an opening is under the padstone itself.
double clear_beyond(const Job& job, const BeamEnd& end, double length, double underside) {
  double clear = end.pier;
  for (const mesh::Opening& opening : openings_left_by_cut(job.wall)) {
    const mesh::Interval place = end.into_pier(opening.span());
    if (place.to > mesh::same_place && opening.sill < underside)
      clear = std::min(clear, place.from);
  }
  return clear - length;
}

Check masonry_under(const BeamDesign& design, const BeamCase& load, const BeamEnd& end) {
  const Job& job = design.job;
  const PermanentBeam& beam = design.beam();
  const Padstone& padstone = beam.padstone;
  const std::string name = "masonry under the padstone";
  const std::string clause = "EN 1996-1-1 6.1.3";
  const double length = pressed_length(beam);
  const double underside = places_of_beam(job).padstones.front().y.from;
  const double beyond = clear_beyond(job, end, length, underside);
  if (!(underside > 0.0))
    return not_verified(name, clause, "the padstone reaches below the base of the wall");
  if (beyond < -mesh::same_place)
    return not_verified(name, clause,
                        fmt::format("the {:.0f} mm that the padstone presses on reach over an "
                                    "opening or past the wall's end",
                                    length));
  ConcentratedLoad concentrated;
  concentrated.bearing_length = length;
  concentrated.bearing_depth = concentrated.thickness = job.thickness;
  concentrated.far_end = std::max(beyond, 0.0);
  concentrated.height = underside;
  const double weight = padstone.length * padstone.depth * job.thickness * padstone.unit_weight;
  const double force = design.load_factor * end.reaction + design.dead_factor * weight;
  Check check = check_concentrated_load(concentrated, force, job.masonry.compressive_strength,
                                        job.check_rules.basis);
  check.check = name;
  if (check.not_verified) return check;
  check.working = fmt::format("{}: {:.2f} kN x {:.3f} + padstone {:.2f} kN x {:.2f}; {}",
                              load.method, end.reaction / kN, design.load_factor, weight / kN,
                              design.dead_factor, check.working);
  check.caution =
      "the beam counts as in the middle of the wall's thickness; the pier as a whole, with the "
      "wall "
      "that stands on it beside the beam, is not checked here";
  return check;
}

Check packing_over(const BeamDesign& design, const BeamCase& load) {
  const double gamma = design.job.check_rules.basis.gamma_masonry;
  const BeamResult& answer = load.answer;
  Check check;
  check.check = "packing over the beam";
  check.clause = "EN 1996-1-1 2.4.3, as masonry";
  check.demand = design.load_factor * answer.packing_pressure;
  check.capacity = answer.packing_strength / gamma;
  check.unit = "N/mm2";
  check.working =
      fmt::format("{}: {:.3f} N/mm2 x {:.3f}; {:.2f} N/mm2 at its age / {:.2f}", load.method,
                  answer.packing_pressure, design.load_factor, answer.packing_strength, gamma);
  return check;
}

}  // namespace

std::vector<Check> bearing_checks(const BeamDesign& design, const BeamCase& load) {
  const std::string& name = design.beam().name;
  std::vector<Check> all;
  const auto add = [&](Check check, const std::string& member) {
    check.member = member;
    check.stage = load.stage;
    all.push_back(std::move(check));
  };
  for (const BeamEnd& end :
       {left_end(design.job, load.answer), right_end(design.job, load.answer)}) {
    add(stress_on_padstone(design, load, end), fmt::format("{} {} padstone", name, end.side));
    add(masonry_under(design, load, end), fmt::format("{} {} pier", name, end.side));
  }
  if (load.answer.packing_strength > 0.0) add(packing_over(design, load), name + " packing");
  return all;
}

}  // namespace deadshore::solver
