#include "solver/job/beam_places.h"

#include <algorithm>

namespace deadshore::solver {

BeamPlaces places_of_beam(const Job& job) {
  const PermanentBeam& beam = job.beam.value();
  const mesh::Cut& cut = job.wall.cut;
  const double top = cut.soffit - beam.packing.thickness;
  const double underside = top - beam.member.section.h;
  /// Boxes in both piers that reach `length` from the jambs.
  const auto beside_jambs = [&](double length, mesh::Interval y) {
    return std::array{mesh::Box{{cut.left - length, cut.left}, y},
                      mesh::Box{{cut.right, cut.right + length}, y}};
  };
  BeamPlaces places;
  places.beam = {{cut.left - beam.bearing, cut.right + beam.bearing}, {underside, top}};
  places.supports = {cut.left - 0.5 * beam.bearing, cut.right + 0.5 * beam.bearing};
  places.pockets = beside_jambs(beam.bearing, {underside, cut.soffit});
  places.padstones =
      beside_jambs(beam.padstone.length, {underside - beam.padstone.depth, underside});
  return places;
}

double pressed_width(const Job& job) {
  return std::min(job.beam.value().flange_width(), job.thickness);
}

}  // namespace deadshore::solver
