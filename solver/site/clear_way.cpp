#include "solver/site/pieces_in_way.h"
#include "solver/site/raised_beam.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <limits>
#include <utility>

namespace deadshore::solver {

namespace {

/// Masonry that may hang over a pocket beyond the bearing, half a brick: common practice, no
/// source.
constexpr double half_a_brick = 102.5;

constexpr double endless = std::numeric_limits<double>::infinity();

/// A check with the piece that is in the way, named where it fails.
Check clear_of(Check check, const std::string& piece) {
  if (!check.passes()) check.caution = piece + " is in the way";
  return check;
}

Check height_check(const Job& job, const RaisedBeam& beam) {
  const Lifting& lifting = *job.lifting;
  const double depth = beam.places.beam.y.length();
  const double bed = beam.places.beam.y.from;
  return clear_of(
      geometry_check(job.beam->name, "height under the needles", depth + lifting.clearance,
                     lifting.needle_underside - bed,
                     fmt::format("{:.0f} deep + {:.0f}; needles at {:.0f} over padstones at {:.0f}",
                                 depth, lifting.clearance, lifting.needle_underside, bed)),
      "the needles' underside");
}

/// Between the wall's face and the first prop that the beam passes.
Check corridor_check(const Job& job, const RaisedBeam& beam,
                     const std::vector<PieceInWay>& pieces) {
  const double clearance = job.lifting->clearance;
  const PieceInWay& nearest = *std::ranges::min_element(pieces, {}, &PieceInWay::clear);
  return clear_of(
      geometry_check(job.beam->name, "way between wall and props", beam.width_up + 2.0 * clearance,
                     nearest.clear,
                     fmt::format("{:.1f} wide + 2 x {:.0f}; {:.0f} from the wall's face to the {}",
                                 beam.width_up, clearance, nearest.clear, nearest.name)),
      "the " + nearest.name);
}

/// From a place to the nearest face of a piece; 0 inside it.
double distance_to(const PieceInWay& piece, double x) {
  return std::max({piece.x.from - x, x - piece.x.to, 0.0});
}

/// Something `width` wide that stands at `x` among pieces, which are not none.
Check standing_check(const std::string& member, double x, double width, double clearance,
                     const std::vector<PieceInWay>& pieces) {
  const auto nearest = std::ranges::min_element(
      pieces, {}, [&](const PieceInWay& piece) { return distance_to(piece, x); });
  const double there = distance_to(*nearest, x);
  return clear_of(
      geometry_check(
          member, "room to stand", 0.5 * width + clearance, there,
          fmt::format("half of {:.0f} + {:.0f}, its middle at x {:.0f}; {:.0f} to the {}", width,
                      clearance, x, there, nearest->name)),
      "the " + nearest->name);
}

Check opening_check(const Job& job, const RaisedBeam& beam) {
  const Lifting& lifting = *job.lifting;
  const double cut = job.wall.cut.right - job.wall.cut.left;
  return clear_of(
      geometry_check(
          job.beam->name, "length between the pockets", beam.length + 2.0 * lifting.clearance,
          cut + lifting.pocket_left + lifting.pocket_right,
          fmt::format("{:.0f} long + 2 x {:.0f}; opening {:.0f}, pockets {:.0f} and {:.0f}",
                      beam.length, lifting.clearance, cut, lifting.pocket_left,
                      lifting.pocket_right)),
      "the back of the pockets");
}

/// One end goes past its place, so that the other clears its jamb.
Check sliding_check(const Job& job, const RaisedBeam& beam) {
  const Lifting& lifting = *job.lifting;
  const double bearing = job.beam->bearing;
  const char* const side = beam.shift < 0.0 ? "left" : "right";
  const double pocket = beam.shift < 0.0 ? lifting.pocket_left : lifting.pocket_right;
  return clear_of(
      geometry_check(
          job.beam->name, "one end past its place", 2.0 * bearing + 2.0 * lifting.clearance, pocket,
          fmt::format("bearings {0:.0f} + {0:.0f} and 2 x {1:.0f}; the {2} pocket is {3:.0f} deep",
                      bearing, lifting.clearance, side, pocket)),
      fmt::format("the back of the {} pocket", side));
}

/// That the beam can be held in front of its place, from the opening's middle to either side.
std::vector<Check> room_checks(const Job& job, const RaisedBeam& beam) {
  const Lifting& lifting = *job.lifting;
  const double middle = beam.places.beam.x.middle();
  const double half = 0.5 * beam.length + lifting.clearance;
  const auto check = [&](const char* side, double past, double there) {
    return clear_of(
        geometry_check(
            job.beam->name, fmt::format("room to the {}", side), half + past, there,
            fmt::format("half of {:.0f} + {:.0f}, {:.0f} past its place; {:.0f} from the opening's "
                        "middle",
                        beam.length, lifting.clearance, past, there)),
        fmt::format("what ends the room to the {}", side));
  };
  return {check("left", std::max(0.0, -beam.shift), middle - lifting.room_left),
          check("right", std::max(0.0, beam.shift), lifting.room_right - middle)};
}

std::vector<PieceInWay> jambs_of(const Job& job) {
  return {{"left jamb and its padstone", {-endless, job.wall.cut.left}, 0.0},
          {"right jamb and its padstone", {job.wall.cut.right, endless}, 0.0}};
}

/// What a stand may meet: jambs, the lifters that still hold the beam, and what its depth reaches.
std::vector<PieceInWay> pieces_by_stand(const Job& job, const RaisedBeam& beam,
                                        const Stand& stand) {
  const Lifting& lifting = *job.lifting;
  std::vector<PieceInWay> pieces = jambs_of(job);
  for (const Lifter& lifter : lifting.lifters) {
    const double x = beam.x_of(lifter.at);
    pieces.push_back(
        {"lifter " + lifter.name, {x - 0.5 * lifter.width, x + 0.5 * lifter.width}, 0.0});
  }
  const double reach = 0.5 * (stand.depth - job.thickness) + lifting.clearance;
  for (const PropSide side : {PropSide::inside, PropSide::outside}) {
    for (PieceInWay& piece : pieces_in_way(job, side).pieces)
      if (piece.clear < reach) pieces.push_back(std::move(piece));
  }
  return pieces;
}

/// The analysis takes out pockets as deep as the bearings alone, so nobody has looked at the
/// masonry over a deeper one.
void add_deep_pockets(const Job& job, std::vector<Check>& checks) {
  const double bearing = job.beam->bearing;
  const auto add = [&](const char* side, double pocket) {
    if (pocket - bearing <= half_a_brick) return;
    checks.push_back(not_verified(
        "masonry over it", "pocket deeper than the bearing",
        fmt::format("it is {:.0f} mm deep, where the analysis takes out the {:.0f} mm of the "
                    "bearing: what holds the masonry over the rest has to be worked out, and it is "
                    "filled again before needles come out",
                    pocket, bearing)));
    checks.back().member = fmt::format("{} pocket", side);
  };
  add("left", job.lifting->pocket_left);
  add("right", job.lifting->pocket_right);
}

Check unknown_check(const std::vector<std::string>& unknown) {
  Check check = not_verified("clear of all props", "geometry",
                             fmt::format("where the props of {} stand is not in the job, so nobody "
                                         "has looked whether they are in the way",
                                         fmt::join(unknown, ", ")));
  check.member = "beam and lifters";
  return check;
}

}  // namespace

std::vector<Check> clear_way(const Job& job, const RaisedBeam& beam) {
  const Lifting& lifting = *job.lifting;
  const PiecesInWay in_way = pieces_in_way(job, lifting.side);
  std::vector<Check> checks = room_checks(job, beam);
  checks.push_back(height_check(job, beam));
  checks.push_back(lifting.entry == BeamEntry::sideways ? opening_check(job, beam)
                                                        : sliding_check(job, beam));
  add_deep_pockets(job, checks);
  if (!in_way.unknown.empty()) checks.push_back(unknown_check(in_way.unknown));
  if (!in_way.pieces.empty()) {
    checks.push_back(corridor_check(job, beam, in_way.pieces));
    for (const Lifter& lifter : lifting.lifters)
      checks.push_back(standing_check("lifter " + lifter.name, beam.x_of(lifter.at), lifter.width,
                                      lifting.clearance, in_way.pieces));
  }
  for (const Stand& stand : lifting.stands)
    checks.push_back(standing_check("stand " + stand.name, beam.x_of(stand.at), stand.width,
                                    lifting.clearance, pieces_by_stand(job, beam, stand)));
  return checks;
}

}  // namespace deadshore::solver
