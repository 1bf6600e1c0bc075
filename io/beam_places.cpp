#include "io/beam_places.h"

namespace deadshore::io {

BeamEnds beam_ends(const solver::Job& job) {
  const mesh::Cut& cut = job.wall.cut;
  const double half = 0.5 * job.beam->bearing;
  return {cut.left - half, cut.right + half};
}

Rectangle beam_outline(const solver::Job& job) {
  const solver::PermanentBeam& beam = *job.beam;
  const mesh::Cut& cut = job.wall.cut;
  const double top = cut.soffit - beam.packing.thickness;
  return {{cut.left - beam.bearing, cut.right + beam.bearing}, {top - beam.member.section.h, top}};
}

std::array<Rectangle, 2> padstone_outlines(const solver::Job& job) {
  const solver::Padstone& stone = job.beam->padstone;
  const mesh::Cut& cut = job.wall.cut;
  const double top = beam_outline(job).y.from;
  const mesh::Interval y = {top - stone.depth, top};
  return {Rectangle{{cut.left - stone.length, cut.left}, y},
          Rectangle{{cut.right, cut.right + stone.length}, y}};
}

}  // namespace deadshore::io
