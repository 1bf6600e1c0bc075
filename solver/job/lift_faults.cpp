#include "mesh/plane.h"
#include "solver/job/beam_places.h"
#include "solver/job/number_faults.h"

#include <fmt/format.h>

#include <string>

namespace deadshore::solver {

namespace {

std::string piece_key(const char* list, std::size_t i) {
  return fmt::format("lift.{}[{}]", list, i);
}

void check_table(const ForkTable& table, const std::string& key, FaultList& faults) {
  if (table.rows.size() < 2)
    faults.push_back({key, fmt::format("loads at {} distances", table.rows.size()),
                      "loads at two distances or more"});
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const ForkTable::Row& row = table.rows[i];
    const std::string distance = entry_path(key + ".distance", i);
    check_number(distance, row.distance, fields::mm, fields::not_negative, faults);
    check_number(entry_path(key + ".load", i), row.load, fields::kN, fields::positive, faults);
    if (i > 0 && !(row.distance > table.rows[i - 1].distance))
      faults.push_back(
          {distance,
           fmt::format("{} after {}", in_words(row.distance), in_words(table.rows[i - 1].distance)),
           "rising distances"});
  }
}

/// Names of their own, so that a check can be told from another's.
void check_names(const Lifting& lifting, FaultList& faults) {
  TakenNames taken;
  for (std::size_t i = 0; i < lifting.lifters.size(); ++i)
    check_name(lifting.lifters[i].name, piece_key("lifter", i) + ".name", taken, faults);
  for (std::size_t i = 0; i < lifting.stands.size(); ++i)
    check_name(lifting.stands[i].name, piece_key("stand", i) + ".name", taken, faults);
}

template <class Pieces>
void check_places(const Pieces& pieces, const char* list, double beam, FaultList& faults) {
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const double at = pieces[i].at;
    if (at >= -mesh::same_place && at <= beam + mesh::same_place) continue;
    faults.push_back(
        {piece_key(list, i) + ".at",
         fmt::format("{} from the left end of a beam {} long", in_words(at), in_words(beam)),
         "a place along the beam"});
  }
}

void check_pocket(const char* side, double pocket, double bearing, double pier, FaultList& faults) {
  const std::string key = fmt::format("lift.pocket_{}", side);
  if (pocket < bearing - mesh::same_place)
    faults.push_back({key,
                      fmt::format("{}, for a bearing of {}", in_words(pocket), in_words(bearing)),
                      "a pocket as deep as the bearing or deeper"});
  else if (pocket > pier + mesh::same_place)
    faults.push_back(
        {key,
         fmt::format("{}, where the {} pier is {} wide", in_words(pocket), side, in_words(pier)),
         "a pocket inside the pier"});
}

void check_ways(const Job& job, FaultList& faults) {
  const Lifting& lifting = *job.lifting;
  const mesh::Cut& cut = job.wall.cut;
  const mesh::Box beam = places_of_beam(job).beam;
  check_pocket("left", lifting.pocket_left, job.beam->bearing, cut.left, faults);
  check_pocket("right", lifting.pocket_right, job.beam->bearing, job.wall.length - cut.right,
               faults);
  check_places(lifting.lifters, "lifter", beam.x.length(), faults);
  check_places(lifting.stands, "stand", beam.x.length(), faults);
  if (!(lifting.room_right > lifting.room_left))
    faults.push_back({"lift.room_right",
                      fmt::format("{}, where the room begins at {}", in_words(lifting.room_right),
                                  in_words(lifting.room_left)),
                      "a room from left to right"});
  if (!(lifting.floor_level < beam.y.from))
    faults.push_back({"lift.floor_level",
                      fmt::format("{}, where the beam's underside comes to {}",
                                  in_words(lifting.floor_level), in_words(beam.y.from)),
                      "a level below the beam"});
}

}  // namespace

void find_lift_faults(const Job& job, FaultList& faults) {
  if (!job.lifting) return;
  const Lifting& lifting = *job.lifting;
  if (!job.beam) {
    faults.push_back({"lift", "a way up for a beam that is not in the job", "a [beam]"});
    return;
  }
  const std::size_t before = faults.size();
  if (lifting.lifters.empty())
    faults.push_back({"lift.lifter", "no lifter", "what the beam is lifted with"});
  for (std::size_t i = 0; i < lifting.lifters.size(); ++i)
    check_table(lifting.lifters[i].capacity, piece_key("lifter", i) + ".capacity", faults);
  check_names(lifting, faults);
  if (faults.size() > before) return;
  check_ways(job, faults);
}

}  // namespace deadshore::solver
