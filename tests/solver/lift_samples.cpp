#include "tests/solver/lift_samples.h"

#include "tests/solver/beam_samples.h"
#include "tests/solver/needle_samples.h"

#include <stdexcept>

namespace deadshore::solver::testing {

namespace {

Lifter lifter(const std::string& name, double at) {
  return {.name = name,
          .at = at,
          .load_distance = 500.0,
          .width = 600.0,
          .capacity = {"invented plate", {{400.0, 2500.0}, {600.0, 1500.0}}},
          .tipping = Lifter::Tipping{900.0, 400.0, 200.0}};
}

Stand stand(const std::string& name, double at) {
  return {.name = name,
          .at = at,
          .width = 300.0,
          .depth = 600.0,
          .legs = 4,
          .leg = {.section = {47.0, 97.0},
                  .strength_class = sample_needle().props[0].footing.sole.timber.strength_class},
          .leg_length = 1800.0,
          .fixing = {.number = 8,
                     .capacity = {},
                     .diameter = 3.35,
                     .side_thickness = 38.0,
                     .penetration = 52.0}};
}

}  // namespace

Job lift_job() {
  Job job = beam_job();
  job.needle_frames = {sample_needle()};
  job.needles = {{"N1", 2000.0, 152.2, 20e3, 0.0, 0.0, 0},
                 {"N2", 3000.0, 152.2, 20e3, 0.0, 0.0, 0},
                 {"N3", 4000.0, 152.2, 20e3, 0.0, 0.0, 0}};
  Lifting lifting;
  lifting.side = PropSide::outside;
  lifting.needle_underside = 2450.0;
  lifting.pocket_left = 260.0;
  lifting.pocket_right = 260.0;
  lifting.room_left = 500.0;
  lifting.room_right = 5500.0;
  lifting.lifters = {lifter("L1", 1225.0), lifter("L2", 2225.0)};
  lifting.stands = {stand("S1", 575.0), stand("S2", 2875.0)};
  job.lifting = lifting;
  return job;
}

Job endways_job() {
  Job job = lift_job();
  job.lifting->entry = BeamEntry::endways;
  job.lifting->pocket_left = 520.0;
  return job;
}

Check check_of(const LiftPlan& plan, const std::string& member, const std::string& check) {
  std::vector<Check> rows = plan.checks;
  std::erase_if(rows, [&](const Check& row) { return row.member != member || row.check != check; });
  if (rows.size() != 1) throw std::logic_error("not one row: " + member + " " + check);
  return rows.front();
}

}  // namespace deadshore::solver::testing
