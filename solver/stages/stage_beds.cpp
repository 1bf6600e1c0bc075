#include "solver/stages/stage_beds.h"

#include "solver/fem/job_mesh.h"
#include "solver/job/beam_places.h"

namespace deadshore::solver {

namespace {

constexpr double beam_element = 200.0;  // mm

// The beam's ends are bedded on their padstones in about 10 mm of mortar of 5000 N/mm2 (common
// practice, no source; ten times softer or harder moves nothing that matters).
constexpr double bedding = 5000.0 / 10.0;  // N/mm3

/// Points of a chain's sides over `x`, each with a bed's stiffness.
std::vector<ContactPoint> points_along(const mesh::QuadMesh& mesh, mesh::Chain chain,
                                       mesh::Interval x, double stiffness, double wall_factor) {
  std::vector<ContactPoint> points;
  for (const mesh::Side side : mesh.sides_of(chain)) {
    for (const SidePoint& side_point : points_on_side(mesh, side, x)) {
      ContactPoint& point = points.emplace_back();
      point.x = side_point.position.x;
      point.length = side_point.length;
      point.stiffness = stiffness;
      add_rise(side_point, point.form, -wall_factor);
    }
  }
  return points;
}

/// The beam comes down on the wall.
ContactBed bearing_bed(BedKind kind, const mesh::QuadMesh& mesh, const BeamLine& beam,
                       mesh::Interval x, double width) {
  ContactBed bed{{kind},
                 points_along(mesh, {mesh::ChainKind::block_upper, padstones_group}, x,
                              bedding * width, -1.0)};
  for (ContactPoint& point : bed.points) add_rise(beam, point.x, point.form, -1.0);
  return bed;
}

/// The wall comes down on the beam.
ContactBed packing_on(const mesh::QuadMesh& mesh, const BeamLine& beam) {
  const mesh::Interval x{beam.x.front(), beam.x.back()};
  ContactBed bed{{BedKind::packing}, points_along(mesh, {mesh::ChainKind::soffit}, x, 1.0, 1.0)};
  const auto over_pockets =
      points_along(mesh, {mesh::ChainKind::block_top, pockets_group}, x, 1.0, 1.0);
  bed.points.insert(bed.points.end(), over_pockets.begin(), over_pockets.end());
  for (ContactPoint& point : bed.points) add_rise(beam, point.x, point.form);
  return bed;
}

ContactBed joist_bed(const Job& job, const mesh::QuadMesh& mesh, ShoreId id) {
  const DeadShore& shore = job.dead_shores[index_of(id)];
  const LineLoad& load = job.line_loads[index_of(shore.carries)];
  const double stiffness = shore.joist_ends->stiffness / shore.joist_ends->spacing;
  return {bed_of(id), points_along(mesh, chain_of(job, shore.carries), load.x, stiffness, 1.0)};
}

}  // namespace

BeamLine beam_line_of(const Job& job, int first_node) {
  const PermanentBeam& beam = job.beam.value();
  const mesh::Interval reach = places_of_beam(job).beam.x;
  return make_beam_line(first_node, reach.from, reach.to, beam_element, beam.bending_stiffness(),
                        beam.shear_stiffness(), beam.weight());
}

std::vector<ContactBed> beam_beds(const Job& job, const mesh::QuadMesh& mesh,
                                  const BeamLine& beam) {
  const auto [left, right] = places_of_beam(job).pockets;
  const double width = pressed_width(job);
  return {packing_on(mesh, beam), bearing_bed(BedKind::left_bearing, mesh, beam, left.x, width),
          bearing_bed(BedKind::right_bearing, mesh, beam, right.x, width)};
}

std::vector<ContactBed> beds_at(const Job& job, const mesh::QuadMesh& mesh, const StageState& state,
                                const std::optional<BeamLine>& beam) {
  std::vector<ContactBed> beds;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    if (!is_in(state.needles[i])) continue;
    beds.push_back(
        needle_bed(mesh, mesh.sides_of(mesh::ChainKind::soffit), job.needles[i], NeedleId{i}));
    for (ContactPoint& point : beds.back().points) point.rest = 0.0;
  }
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i) {
    const DeadShore& shore = job.dead_shores[i];
    if (state.shore_tight[i] != 0 && shore.joist_ends) {
      beds.push_back(joist_bed(job, mesh, ShoreId{i}));
    }
  }
  if (!beam) return beds;
  for (ContactBed& bed : beam_beds(job, mesh, *beam)) {
    if (bed.id.kind != BedKind::packing) {
      beds.push_back(std::move(bed));
    } else if (const std::optional<double> age = state.packing_age()) {
      const double stiffness = packing_bed(job.beam->packing, *age) * pressed_width(job);
      for (ContactPoint& point : bed.points) point.stiffness = stiffness;
      beds.push_back(std::move(bed));
    }
  }
  return beds;
}

}  // namespace deadshore::solver
