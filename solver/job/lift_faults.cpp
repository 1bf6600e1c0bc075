#include "mesh/plane.h"
#include "solver/job/beam_places.h"
#include "solver/job/number_check.h"

#include <fmt/format.h>

#include <map>
#include <string>
#include <utility>

namespace deadshore::solver {

namespace {

using number_words::force;
using number_words::length;
using number_words::plain;
using number_words::stress;

void check_table(const ForkTable& table, const std::string& key, FaultList& faults) {
  if (table.rows.size() < 2)
    faults.push_back({key, fmt::format("loads at {} distances", table.rows.size()),
                      "loads at two distances or more"});
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const ForkTable::Row& row = table.rows[i];
    const NumberCheck numbers(faults, key);
    numbers(fmt::format("distance[{}]", i).c_str(), row.distance, length, Range::not_negative);
    numbers(fmt::format("load[{}]", i).c_str(), row.load, force, Range::positive);
    if (i > 0 && !(row.distance > table.rows[i - 1].distance))
      faults.push_back(
          {fmt::format("{}.distance[{}]", key, i),
           fmt::format("{} after {}", in_words(row.distance), in_words(table.rows[i - 1].distance)),
           "rising distances"});
  }
}

void check_lifter(const Lifter& lifter, const std::string& key, FaultList& faults) {
  const NumberCheck numbers(faults, key);
  numbers("at", lifter.at, length, Range::any);
  numbers("load_distance", lifter.load_distance, length, Range::not_negative);
  numbers("width", lifter.width, length, Range::positive);
  if (lifter.tipping) {
    numbers("own_weight", lifter.tipping->own_weight, force, Range::positive);
    numbers("weight_behind", lifter.tipping->weight_behind, length, Range::positive);
    numbers("load_beyond", lifter.tipping->load_beyond, length, Range::any);
  }
  check_table(lifter.capacity, key + ".capacity", faults);
}

void check_fixing(const Fixing& fixing, const std::string& key, FaultList& faults) {
  const NumberCheck numbers(faults, key);
  numbers("number", fixing.number, plain, Range::positive);
  if (fixing.capacity) {
    numbers("capacity", *fixing.capacity, force, Range::positive);
    return;
  }
  numbers("diameter", fixing.diameter, length, Range::positive);
  numbers("tensile_strength", fixing.tensile_strength, stress, Range::positive);
  numbers("side_thickness", fixing.side_thickness, length, Range::positive);
  numbers("penetration", fixing.penetration, length, Range::positive);
  constexpr double thickest = 8.0;
  if (fixing.diameter > thickest)
    faults.push_back({key + ".diameter", in_words(fixing.diameter),
                      "up to 8 mm; for bolts give their usable load as the capacity"});
}

void check_stand(const Stand& stand, const std::string& key, FaultList& faults) {
  const NumberCheck numbers(faults, key);
  numbers("at", stand.at, length, Range::any);
  numbers("width", stand.width, length, Range::positive);
  numbers("depth", stand.depth, length, Range::positive);
  numbers("legs", stand.legs, plain, Range::positive);
  numbers("leg_width", stand.leg.section.b, length, Range::positive);
  numbers("leg_depth", stand.leg.section.h, length, Range::positive);
  numbers("leg_length", stand.leg_length, length, Range::positive);
  check_fixing(stand.fixing, key + ".fixing", faults);
}

std::string piece_key(const char* list, std::size_t i) {
  return fmt::format("lift.{}[{}]", list, i);
}

void check_numbers(const Lifting& lifting, FaultList& faults) {
  const NumberCheck numbers(faults, "lift");
  numbers("clearance", lifting.clearance, length, Range::not_negative);
  numbers("needle_underside", lifting.needle_underside, length, Range::any);
  numbers("pocket_left", lifting.pocket_left, length, Range::not_negative);
  numbers("pocket_right", lifting.pocket_right, length, Range::not_negative);
  numbers("floor_level", lifting.floor_level, length, Range::any);
  numbers("room_left", lifting.room_left, length, Range::any);
  numbers("room_right", lifting.room_right, length, Range::any);
  numbers("dynamic_factor", lifting.dynamic_factor, plain, Range::positive);
  for (std::size_t i = 0; i < lifting.lifters.size(); ++i)
    check_lifter(lifting.lifters[i], piece_key("lifter", i), faults);
  for (std::size_t i = 0; i < lifting.stands.size(); ++i)
    check_stand(lifting.stands[i], piece_key("stand", i), faults);
}

/// Names of their own, so that a check can be told from another's.
void check_names(const Lifting& lifting, FaultList& faults) {
  std::map<std::string, std::string> taken;
  const auto check = [&](const std::string& name, const std::string& key) {
    if (name.empty()) {
      faults.push_back({key, "no name", "a name to call it by in the answer"});
    } else if (const auto [earlier, is_new] = taken.emplace(name, key); !is_new) {
      faults.push_back({key, fmt::format("{}, also the name at {}", quoted(name), earlier->second),
                        "a name of its own"});
    }
  };
  for (std::size_t i = 0; i < lifting.lifters.size(); ++i)
    check(lifting.lifters[i].name, piece_key("lifter", i) + ".name");
  for (std::size_t i = 0; i < lifting.stands.size(); ++i)
    check(lifting.stands[i].name, piece_key("stand", i) + ".name");
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
  check_numbers(lifting, faults);
  check_names(lifting, faults);
  if (faults.size() > before) return;
  if (lifting.dynamic_factor < 1.0)
    faults.push_back({"lift.dynamic_factor", plain(lifting.dynamic_factor),
                      "1 or more: what moves never weighs less"});
  check_ways(job, faults);
}

}  // namespace deadshore::solver
