#include "solver/job/number_faults.h"

#include "solver/job/job_fields.h"
#include "solver/job/lifting_fields.h"
#include "solver/job/permanent_works_fields.h"
#include "solver/job/shore_frame_fields.h"

#include <fmt/format.h>

#include <cmath>

namespace deadshore::solver {

namespace {

void check_outline(const mesh::WallShape& wall, FaultList& faults) {
  const bool level = wall.top.size() == 2 && wall.top[0].y == wall.top[1].y;
  for (std::size_t i = 0; i < wall.top.size(); ++i) {
    const std::string path = level ? "wall.height" : entry_path("wall.outline", i);
    check_number(path, wall.top[i].x, fields::m, fields::any, faults);
    check_number(path, wall.top[i].y, fields::m, fields::positive, faults);
  }
}

/// Ground has a stiffness; a suspended floor need have none.
void check_ground(const Footing& footing, FaultList& faults, const std::string& path) {
  if (footing.suspended_floor.empty() && footing.subgrade_modulus == 0.0)
    check_number(path + ".subgrade_modulus", 0.0, fields::MN_per_m3, fields::positive, faults);
}

void check_frames(const Job& job, FaultList& faults) {
  for (std::size_t i = 0; i < job.needle_frames.size(); ++i) {
    const NeedleFrame& frame = job.needle_frames[i];
    const std::string path = entry_path("needle_frame", i);
    check_numbers(fields::needle_frame, frame, faults, path);
    for (std::size_t j = 0; j < frame.props.size(); ++j) {
      const std::string prop = path + "." + entry_path("prop", j);
      check_numbers(fields::needle_prop, frame.props[j], faults, prop);
      check_ground(frame.props[j].footing, faults, prop);
    }
  }
}

void check_shores(const Job& job, FaultList& faults) {
  check_numbers(fields::dead_shore, job.dead_shores, faults);
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i) {
    if (!job.dead_shores[i].frame) continue;
    const ShoreFrame& frame = *job.dead_shores[i].frame;
    const std::string path = entry_path("dead_shore", i) + ".frame";
    check_numbers(fields::shore_frame, frame, faults, path);
    check_ground(frame.footing, faults, path);
  }
}

void check_beam(const PermanentBeam& beam, FaultList& faults) {
  check_numbers(fields::beam, beam, faults);
  check_numbers(fields::padstone, beam.padstone, faults);
  check_numbers(fields::packing, beam.packing, faults);
}

void check_lift(const Lifting& lifting, FaultList& faults) {
  check_numbers(fields::lift, lifting, faults);
  check_numbers(fields::lifter, lifting.lifters, faults);
  check_numbers(fields::stand, lifting.stands, faults);
  for (std::size_t i = 0; i < lifting.stands.size(); ++i)
    check_numbers(fields::fixing, lifting.stands[i].fixing, faults,
                  entry_path("lift.stand", i) + ".fixing");
}

}  // namespace

void check_number(const std::string& path, double value, const Unit& unit, const Range& range,
                  FaultList& faults) {
  if (!std::isfinite(value)) {
    faults.push_back({path, fmt::format("{}, not a number to reckon with", value), "a number"});
  } else if (!range.holds(value)) {
    std::string due = in_words(range, unit);
    if (!range.reason.empty()) due += fmt::format(": {}", range.reason);
    faults.push_back({path, in_words(value, unit), std::move(due)});
  } else if (!range.is_likely(value)) {
    faults.push_back({path, in_words(value, unit), likely_in_words(range, unit)});
  }
}

void find_number_faults(const Job& job, FaultList& faults) {
  check_numbers(fields::wall, job, faults);
  check_outline(job.wall, faults);
  check_numbers(fields::masonry, job.masonry, faults);
  check_numbers(fields::opening, job.wall.openings, faults);
  check_numbers(fields::lintel, job.lintels, faults);
  check_numbers(fields::cut, job.wall.cut, faults);
  check_numbers(fields::line_load, job.line_loads, faults);
  check_numbers(fields::point_load, job.point_loads, faults);
  check_numbers(fields::needle, job.needles, faults);
  check_numbers(fields::footing, job.footings, faults);
  check_numbers(fields::bracing, job.bracing, faults);
  check_frames(job, faults);
  if (job.beam) check_beam(*job.beam, faults);
  check_shores(job, faults);
  if (job.lifting) check_lift(*job.lifting, faults);
  check_numbers(fields::stage, job.stages, faults);
  check_numbers(fields::removal, job.removal, faults);
  check_numbers(fields::checks, job.check_rules, faults);
  check_numbers(fields::analysis, job.analysis, faults);
}

}  // namespace deadshore::solver
