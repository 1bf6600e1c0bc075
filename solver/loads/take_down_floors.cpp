#include "solver/loads/take_down_sheet.h"

#include <fmt/format.h>

namespace deadshore::solver {

namespace {

/// Part of a load that a joist, simply supported at both ends, brings to the wall.
struct Lever {
  double share;
  std::string working;  ///< "(1 - 0.9/3.8)"
};

Lever lever(double distance, const std::string& distance_in_words, const Floor& floor) {
  return {1.0 - distance / floor.span,
          fmt::format("(1 - {}/{:.6g})", distance_in_words, floor.span / 1e3)};
}

/// The lever of the middle of a partition that runs across the wall.
Lever lever_of_middle(const Partition& partition, const Floor& floor) {
  return lever(partition.distance + 0.5 * partition.length,
               fmt::format("({:.6g} + {:.6g}/2)", partition.distance / 1e3, partition.length / 1e3),
               floor);
}

template <class Thing>
Lever lever_of_distance(const Thing& thing, const Floor& floor) {
  return lever(thing.distance, fmt::format("{:.6g}", thing.distance / 1e3), floor);
}

}  // namespace

void take_down(const Floor& floor, TakeDownSheet& sheet) {
  sheet.begin({floor.name, floor.name, {}, true, floor.level, false, floor.x});
  const Amount amount{Measure::area, floor.span * floor.x.length(), floor.share,
                      fmt::format("{} x {}{}", in_metres(floor.span), in_metres(floor.x.length()),
                                  times(floor.share))};
  sheet.add(floor.build_up, amount);
  sheet.add_if_any("imposed load, " + floor.imposed.use, Action::floor_imposed, amount,
                   floor.imposed.load, floor.imposed.source);
  sheet.add_if_any("movable partitions", Action::floor_imposed, amount, floor.movable_partitions,
                   "EN 1991-1-1 6.3.1.2(8)");
}

void take_down(const Partition& partition, const Floor& floor, TakeDownSheet& sheet) {
  const bool along = partition.run == PartitionRun::along_wall;
  const mesh::Interval x = along ? partition.x : centred(partition.place, partition.bearing);
  sheet.begin({partition.name, floor.name, {}, along, floor.level, false, x});
  const Lever lever =
      along ? lever_of_distance(partition, floor) : lever_of_middle(partition, floor);
  Amount amount = face_of_wall(along ? partition.x.length() : partition.length, partition.height,
                               partition.openings);
  amount.share = lever.share;
  amount.working =
      fmt::format("{} x {}", partition.openings > 0.0 ? "(" + amount.working + ")" : amount.working,
                  lever.working);
  sheet.add(partition.build_up, amount);
}

void take_down(const Contents& contents, const Floor& floor, TakeDownSheet& sheet) {
  sheet.begin({contents.name,
               floor.name,
               {},
               false,
               floor.level,
               false,
               centred(contents.x, contents.bearing)});
  const Lever lever = lever_of_distance(contents, floor);
  sheet.add("weight, full", Action::floor_imposed,
            {Measure::pieces, 1.0, lever.share, "1 x " + lever.working}, contents.weight,
            "as given");
}

}  // namespace deadshore::solver
