#include "solver/job/number_check.h"

#include <fmt/format.h>

namespace deadshore::solver {

namespace {

using number_words::force;
using number_words::force_per_area;
using number_words::force_per_length;
using number_words::force_per_volume;
using number_words::length;
using number_words::plain;
using number_words::stiffness;
using number_words::stress;

void check_wall(const Job& job, FaultList& faults) {
  const NumberCheck wall(faults, "wall");
  wall("length", job.wall.length, length, Range::positive);
  for (std::size_t i = 0; i < job.wall.top.size(); ++i) {
    const bool level = job.wall.top.size() == 2 && job.wall.top[0].y == job.wall.top[1].y;
    const std::string key = level ? "height" : fmt::format("outline[{}]", i);
    wall(key.c_str(), job.wall.top[i].x, length, Range::any);
    wall(key.c_str(), job.wall.top[i].y, length, Range::positive);
  }
  wall("thickness", job.thickness, length, Range::positive);

  const NumberCheck masonry(faults, "masonry");
  masonry("unit_weight", job.masonry.unit_weight, force_per_volume, Range::not_negative);
  masonry("E", job.masonry.E, stress, Range::positive);
  masonry("nu", job.masonry.nu, plain, Range::poisson);
  masonry("compressive_strength", job.masonry.compressive_strength, stress, Range::positive);
  masonry("tensile_strength", job.masonry.tensile_strength, stress, Range::not_negative);
}

void check_openings(const Job& job, FaultList& faults) {
  for (std::size_t i = 0; i < job.wall.openings.size(); ++i) {
    const mesh::Opening& opening = job.wall.openings[i];
    const NumberCheck check = entry(faults, "opening", i);
    check("left", opening.left, length, Range::any);
    check("sill", opening.sill, length, Range::any);
    check("width", opening.width, length, Range::positive);
    check("height", opening.height, length, Range::positive);
    check("rise", opening.rise, length, Range::not_negative);
  }
  for (std::size_t i = 0; i < job.lintels.size(); ++i) {
    const Lintel& lintel = job.lintels[i];
    const NumberCheck check = entry(faults, "lintel", i);
    check("depth", lintel.shape.depth, length, Range::positive);
    check("bearing", lintel.shape.bearing, length, Range::positive);
    check("E", lintel.E, stress, Range::positive);
    check("nu", lintel.nu, plain, Range::poisson);
    check("unit_weight", lintel.unit_weight, force_per_volume, Range::not_negative);
    check("thickness", lintel.thickness, length, Range::positive);
  }
  const NumberCheck cut(faults, "cut");
  cut("left", job.wall.cut.left, length, Range::any);
  cut("right", job.wall.cut.right, length, Range::any);
  cut("soffit", job.wall.cut.soffit, length, Range::positive);
}

void check_loads(const Job& job, FaultList& faults) {
  for (std::size_t i = 0; i < job.line_loads.size(); ++i) {
    const LineLoad& load = job.line_loads[i];
    const NumberCheck check = entry(faults, "line_load", i);
    check("level", load.level, length, Range::any);
    check("from", load.x.from, length, Range::any);
    check("to", load.x.to, length, Range::any);
    check("dead", load.dead, force_per_length, Range::not_negative);
    check("imposed", load.imposed, force_per_length, Range::not_negative);
  }
  for (std::size_t i = 0; i < job.point_loads.size(); ++i) {
    const PointLoad& load = job.point_loads[i];
    const NumberCheck check = entry(faults, "point_load", i);
    check("x", load.x, length, Range::any);
    check("level", load.level, length, Range::any);
    check("bearing", load.bearing, length, Range::positive);
    check("dead", load.dead, force, Range::not_negative);
    check("imposed", load.imposed, force, Range::not_negative);
  }
}

void check_needles(const Job& job, FaultList& faults) {
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const Needle& needle = job.needles[i];
    const NumberCheck check = entry(faults, "needle", i);
    check("x", needle.x, length, Range::any);
    check("bearing_width", needle.bearing_width, length, Range::positive);
    if (!needle.frame) check("stiffness", needle.stiffness, stiffness, Range::positive);
    check("slack", needle.slack, length, Range::not_negative);
    check("preload", needle.preload, force, Range::not_negative);
  }
}

void check_prop(const NeedleProp& prop, const NumberCheck& check) {
  check("distance", prop.distance, length, Range::any);
  check("level", prop.level, length, Range::any);
  const SolePlate& sole = prop.footing.sole;
  check("sole_width", sole.timber.section.b, length, Range::positive);
  check("sole_thickness", sole.timber.section.h, length, Range::positive);
  check("sole_length", sole.length, length, Range::positive);
  check("prop_base", sole.prop_base, length, Range::positive);
  const bool on_ground = prop.footing.suspended_floor.empty();
  check("subgrade_modulus", prop.footing.subgrade_modulus, force_per_volume,
        on_ground ? Range::positive : Range::not_negative);
  if (on_ground && prop.footing.ground.presumed_bearing)
    check("ground_bearing", *prop.footing.ground.presumed_bearing, force_per_area, Range::positive);
}

void check_frames(const Job& job, FaultList& faults) {
  for (std::size_t i = 0; i < job.needle_frames.size(); ++i) {
    const NeedleFrame& frame = job.needle_frames[i];
    const NumberCheck check = entry(faults, "needle_frame", i);
    if (const auto* timber = std::get_if<TimberMember>(&frame.member)) {
      check("width", timber->section.b, length, Range::positive);
      check("depth", timber->section.h, length, Range::positive);
    }
    check("overhang", frame.overhang, length, Range::positive);
    check("packing_thickness", frame.packing.thickness, length, Range::not_negative);
    if (frame.packing.thickness > 0.0) {
      check("packing_E", frame.packing.E, stress, Range::positive);
      check("packing_strength", frame.packing.strength, stress, Range::positive);
    }
    for (const mesh::Interval& leaf : frame.leaves) {
      check("leaves", leaf.from, length, Range::any);
      check("leaves", leaf.to, length, Range::any);
    }
    for (std::size_t j = 0; j < frame.props.size(); ++j)
      check_prop(frame.props[j], {faults, fmt::format("needle_frame[{}].prop[{}]", i, j)});
  }

  const NumberCheck checks(faults, "checks");
  checks("gamma_G", job.check_rules.factors.gamma_G, plain, Range::positive);
  checks("gamma_Q", job.check_rules.factors.gamma_Q, plain, Range::positive);
  checks("gamma_masonry", job.check_rules.basis.gamma_masonry, plain, Range::positive);
}

void check_beam(const PermanentBeam& beam, FaultList& faults) {
  const NumberCheck check(faults, "beam");
  check("count", beam.count, plain, Range::positive);
  check("bearing", beam.bearing, length, Range::positive);
  check("restraint_spacing", beam.restraint_spacing, length, Range::not_negative);
  check("deflection_ratio", beam.deflection_ratio, plain, Range::positive);
  const NumberCheck padstone(faults, "beam.padstone");
  padstone("length", beam.padstone.length, length, Range::positive);
  padstone("depth", beam.padstone.depth, length, Range::positive);
  padstone("E", beam.padstone.E, stress, Range::positive);
  padstone("nu", beam.padstone.nu, plain, Range::poisson);
  padstone("unit_weight", beam.padstone.unit_weight, force_per_volume, Range::not_negative);
  padstone("strength", beam.padstone.strength, stress, Range::positive);
  const NumberCheck packing(faults, "beam.packing");
  packing("thickness", beam.packing.thickness, length, Range::positive);
  packing("E", beam.packing.E, stress, Range::positive);
  packing("strength", beam.packing.strength, stress, Range::positive);
  packing("hardening", beam.packing.hardening, plain, Range::positive);
}

void check_work(const Job& job, FaultList& faults) {
  if (job.beam) check_beam(*job.beam, faults);
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i) {
    const NumberCheck check = entry(faults, "dead_shore", i);
    check("share", job.dead_shores[i].share, plain, Range::part);
    if (!job.dead_shores[i].joist_ends) continue;
    const DeadShore::JoistEnds& joists = *job.dead_shores[i].joist_ends;
    check("joist_gap", joists.gap, length, Range::not_negative);
    check("joist_stiffness", joists.stiffness, stiffness, Range::positive);
    check("joist_spacing", joists.spacing, length, Range::positive);
  }
  for (std::size_t i = 0; i < job.stages.size(); ++i)
    entry(faults, "stage", i)("day", job.stages[i].day, plain, Range::not_negative);
}

}  // namespace

void find_number_faults(const Job& job, FaultList& faults) {
  check_wall(job, faults);
  check_openings(job, faults);
  check_loads(job, faults);
  check_needles(job, faults);
  check_frames(job, faults);
  check_work(job, faults);
  NumberCheck(faults, "analysis")("mesh", job.analysis.mesh_size, length, Range::positive);
}

}  // namespace deadshore::solver
