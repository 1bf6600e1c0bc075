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
  double rotation = 0.0;   ///< of the beam's end, as it sags, radians

  [[nodiscard]] mesh::Interval into_pier(mesh::Interval x) const {
    const double a = direction * (x.from - jamb);
    const double b = direction * (x.to - jamb);
    return {std::min(a, b), std::max(a, b)};
  }
};

/// How far the beam's end turns downwards into the opening: of an evenly loaded beam 3.2 times its
/// sag over its span.
double end_rotation(const Job& job, const BeamResult& answer) {
  return 3.2 * answer.sag / places_of_beam(job).supports.length();
}

BeamEnd left_end(const Job& job, const BeamResult& answer) {
  return {"left",
          job.wall.cut.left,
          -1.0,
          job.wall.cut.left,
          answer.reaction_left,
          end_rotation(job, answer)};
}

BeamEnd right_end(const Job& job, const BeamResult& answer) {
  return {"right",
          job.wall.cut.right,
          1.0,
          job.wall.length - job.wall.cut.right,
          answer.reaction_right,
          end_rotation(job, answer)};
}

/// Where the beam's reaction acts, from the jamb, mm: in the middle of its bearing, and as its end
/// turns towards the third point of a triangle, which it is taken to reach where the turning lifts
/// the end of the bearing by a millimetre (common practice, no source).
double place_of_reaction(const PermanentBeam& beam, const BeamEnd& end) {
  constexpr double lifts_off = 1.0;  // mm
  const double lift = std::min(1.0, std::max(0.0, end.rotation * beam.bearing) / lifts_off);
  return beam.bearing * (0.5 - lift / 6.0);
}

Check stress_on_padstone(const BeamDesign& design, const BeamCase& load, const BeamEnd& end) {
  const PermanentBeam& beam = design.beam();
  const double gamma = design.job.check_rules.basis.gamma_masonry;
  const double width = pressed_width(design.job);
  Check check;
  check.check = "padstone under the beam";
  check.clause = "EN 1996-1-1 2.4.3, as masonry";
  // Straight-line pressure with its middle where the reaction is.
  const double off = 0.5 * beam.bearing - place_of_reaction(beam, end);
  const double uneven = 1.0 + 6.0 * off / beam.bearing;
  check.demand = uneven * design.load_factor * end.reaction / (beam.bearing * width);
  check.capacity = beam.padstone.strength / gamma;
  check.unit = "N/mm2";
  check.working = fmt::format(
      "{}: {:.2f} kN x {:.3f} / ({:.0f} x {:.0f} mm) x {:.2f}, for its end turns; {:.2f} N/mm2 / "
      "{:.2f}",
      load.method, end.reaction / kN, design.load_factor, beam.bearing, width, uneven,
      beam.padstone.strength, gamma);
  return check;
}

/// What presses on the padstone's bed, and the block of even stress that is in equilibrium with it.
struct PadstoneBlock {
  double force = 0.0;   ///< N, design
  double weight = 0.0;  ///< of the padstone, N, characteristic
  double tail = 0.0;    ///< of the wall straight over the padstone beyond the beam's end, N
  double place = 0.0;   ///< of the resultant from the jamb, mm
  double length = 0.0;  ///< of the block: twice to the padstone's nearer end
};

/// The wall straight over the padstone's tail up to the first opening, or the wall's top, N. It
/// holds the tail down, so with a factor of 1 and without any load on it.
double weight_on_tail(const Job& job, const BeamEnd& end, double from, double to) {
  const double bottom = places_of_beam(job).padstones.front().y.to;
  const double x = end.jamb + end.direction * 0.5 * (from + to);
  double top = job.wall.top_at(x);
  for (const mesh::Opening& opening : openings_left_by_cut(job.wall))
    if (opening.span().contains(x) && opening.crown() > bottom) top = std::min(top, opening.sill);
  const double height = std::max(0.0, top - bottom);
  return (to - from) * height * job.thickness * job.masonry.unit_weight;
}

PadstoneBlock block_under(const BeamDesign& design, const BeamEnd& end) {
  const PermanentBeam& beam = design.beam();
  const Padstone& stone = beam.padstone;
  PadstoneBlock block;
  block.weight = stone.length * stone.depth * design.job.thickness * stone.unit_weight;
  block.tail = weight_on_tail(design.job, end, beam.bearing, stone.length);
  const double reaction = design.load_factor * end.reaction;
  const double weight = design.dead_factor * block.weight;
  block.force = reaction + weight + block.tail;
  const double moment = reaction * place_of_reaction(beam, end) + weight * 0.5 * stone.length +
                        block.tail * 0.5 * (beam.bearing + stone.length);
  block.place = block.force > 0.0 ? moment / block.force : 0.5 * stone.length;
  block.length = 2.0 * std::min(block.place, stone.length - block.place);
  return block;
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
  const std::string name = "masonry under the padstone";
  const std::string clause = "EN 1996-1-1 6.1.3";
  const PadstoneBlock block = block_under(design, end);
  const double length = std::min(pressed_length(beam), block.length);
  const double underside = places_of_beam(job).padstones.front().y.from;
  const double stone = beam.padstone.length;
  const double beyond = clear_beyond(job, end, stone, underside);
  if (!(underside > 0.0))
    return not_verified(name, clause, "the padstone reaches below the base of the wall");
  if (beyond < -mesh::same_place)
    return not_verified(
        name, clause,
        fmt::format("the {:.0f} mm of the padstone reach over an opening or past the "
                    "wall's end",
                    stone));
  ConcentratedLoad concentrated;
  concentrated.bearing_length = length;
  concentrated.bearing_depth = concentrated.thickness = job.thickness;
  concentrated.far_end = std::max(beyond, 0.0) + stone - length;
  concentrated.height = underside;
  Check check = check_concentrated_load(concentrated, block.force, job.masonry.compressive_strength,
                                        job.check_rules.basis);
  check.check = name;
  if (check.not_verified) return check;
  check.working = fmt::format(
      "{}: {:.2f} kN x {:.3f} at {:.0f} mm from the jamb + padstone {:.2f} kN x {:.2f} + wall on "
      "its "
      "tail {:.2f} kN x 1.00: resultant at {:.0f} mm, on {:.0f} mm; {}",
      load.method, end.reaction / kN, design.load_factor, place_of_reaction(beam, end),
      block.weight / kN, design.dead_factor, block.tail / kN, block.place, length, check.working);
  check.caution = "the beam counts as in the middle of the wall's thickness";
  if (!check.passes())
    check.caution +=
        "; a longer bearing brings the reaction further into the pier, a longer padstone alone "
        "does "
        "not";
  return check;
}

/// What dry packing bears from the moment that it is rammed in, N/mm2, however young: its own
/// weight and a course or two. Common practice, no source.
constexpr double resting_pressure = 0.05;

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
  const DryPacking& packing = design.beam().packing;
  const bool young = answer.packing_strength < strength_at(packing, youngest_known);
  if (!packing.temperature && answer.packing_strength < packing.strength && check.passes()) {
    check.not_verified = true;
    check.caution = fmt::format(
        "its strength at this age is that at {:.0f} degrees C, and in the cold it takes twice as "
        "long: give the temperature of [beam.packing]",
        packing.curing_temperature());
  }
  if (young && check.passes()) {
    check.not_verified = true;
    check.caution = fmt::format(
        "under {:.0f} days old: EN 1992-1-1 3.1.2(5) gives no strength before, only tests do",
        youngest_known);
  }
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
  if (load.answer.packing_pressure > resting_pressure)
    add(packing_over(design, load), name + " packing");
  return all;
}

}  // namespace deadshore::solver
