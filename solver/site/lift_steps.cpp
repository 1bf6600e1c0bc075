#include "solver/checks/check.h"
#include "solver/site/raised_beam.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <cmath>

namespace deadshore::solver {

namespace {

constexpr double standard_gravity = 9.80665;  // m/s2

std::string metres(double length) {
  return fmt::format("{:.2f} m", length / 1000.0);
}

/// "L1 (925 mm), L2 (2375 mm)", each from the beam's left end.
template <class Pieces>
std::string at_places(const Pieces& pieces) {
  std::vector<std::string> words;
  words.reserve(pieces.size());
  for (const auto& piece : pieces)
    words.push_back(fmt::format("{} ({:.0f} mm)", piece.name, piece.at));
  return fmt::format("{}", fmt::join(words, ", "));
}

std::string bring_in(const Job& job, const RaisedBeam& beam) {
  const Lifting& lifting = *job.lifting;
  const PermanentBeam& given = *job.beam;
  std::string what = fmt::format("{}, {} long, {:.0f} kg", given.member.section.name,
                                 metres(beam.length), beam.weight_of_one / standard_gravity);
  if (given.count > 1) {
    what = fmt::format("{} x {} each, {}", given.count, what,
                       lifting.one_at_a_time ? "one after the other" : "bolted together first");
  }
  return fmt::format(
      "Bring it to the {} of the wall, lengthways between wall and props: {}. It needs a way "
      "{:.0f} "
      "mm wide.",
      lifting.side == PropSide::inside ? "inside" : "outside", what,
      beam.width_up + 2.0 * lifting.clearance);
}

std::string lift_up(const Job& job, const RaisedBeam& beam) {
  const Lifting& lifting = *job.lifting;
  return fmt::format(
      "Take {:.2f} kN up on {}, from the beam's left end, level all the way, until its underside "
      "is "
      "{} above what the lifters stand on and {:.0f} mm clear over the padstones. Nobody is under "
      "it.",
      beam.weight_up / kN, at_places(lifting.lifters),
      metres(beam.places.beam.y.from - lifting.floor_level + lifting.clearance), lifting.clearance);
}

std::string set_on_stands(const Lifting& lifting) {
  if (lifting.stands.empty())
    return "Stop here: there are no stands to set it on, and lifters must never be the only thing "
           "that holds it.";
  return fmt::format(
      "Set it on the stands {} before anyone works at it; the lifters stay under it "
      "but are not what holds it.",
      at_places(lifting.stands));
}

std::string move_in(const Job& job, const RaisedBeam& beam) {
  const Lifting& lifting = *job.lifting;
  const double bearing = job.beam->bearing;
  if (lifting.entry == BeamEntry::sideways)
    return fmt::format("Move it in sideways over both padstones, {:.0f} mm of bearing at each end.",
                       bearing);
  const bool left = beam.shift < 0.0;
  return fmt::format(
      "Slide its {0} end into the {0} pocket, {1:.0f} mm past its place, until the {2} end is "
      "{3:.0f} "
      "mm clear of its jamb; bring that end in line and slide the beam back by {1:.0f} mm, until "
      "it "
      "bears {4:.0f} mm at each end. Askew it needs more room than these lengths: try it with a "
      "lath "
      "first.",
      left ? "left" : "right", std::abs(beam.shift), left ? "right" : "left", lifting.clearance,
      bearing);
}

std::string land(const Job& job) {
  return fmt::format(
      "Lower it onto both padstones, level it, and leave {:.0f} mm under the soffit for dry "
      "packing. "
      "Stands and lifters go when it bears at both ends and cannot turn over.",
      job.beam->packing.thickness);
}

}  // namespace

std::vector<std::string> lift_steps(const Job& job, const RaisedBeam& beam) {
  const Lifting& lifting = *job.lifting;
  std::vector<std::string> steps = {bring_in(job, beam), lift_up(job, beam), set_on_stands(lifting),
                                    move_in(job, beam)};
  if (job.beam->count > 1 && lifting.one_at_a_time)
    steps.emplace_back(
        "Do the same with the next section and bolt them together while the stands "
        "hold all of them.");
  steps.push_back(land(job));
  return steps;
}

}  // namespace deadshore::solver
