#include "solver/loads/take_down.h"

#include "solver/checks/safety_basis.h"
#include "solver/loads/take_down_sheet.h"

#include <algorithm>
#include <array>

namespace deadshore::solver {

namespace {

// UK NA to EN 1990 Table NA.A1.1; snow below 1000 m above the sea.
constexpr double psi_0_floors = 0.7;
constexpr double psi_0_roof_access = 0.7;
constexpr double psi_0_snow = 0.5;

const Floor& floor_named(const House& house, const std::string& name) {
  return *std::ranges::find(house.floors, name, &Floor::name);
}

}  // namespace

double ActionSums::imposed() const {
  return floor_imposed + std::max(roof_access, snow);
}

ActionSums TakeDown::total() const {
  ActionSums total;
  for (const TakenDown& load : loads) {
    total.dead += load.sums.dead;
    total.floor_imposed += load.sums.floor_imposed;
    total.roof_access += load.sums.roof_access;
    total.snow += load.sums.snow;
  }
  return total;
}

TakeDown take_down(const House& house) {
  TakeDownSheet sheet;
  for (const Floor& floor : house.floors) take_down(floor, sheet);
  for (const Roof& roof : house.roofs) take_down(roof, sheet);
  for (const Partition& partition : house.partitions)
    take_down(partition, floor_named(house, partition.floor), sheet);
  for (const UpperWall& wall : house.upper_walls) take_down(wall, sheet);
  for (const Chimney& chimney : house.chimneys) take_down(chimney, sheet);
  for (const Contents& contents : house.contents)
    take_down(contents, floor_named(house, contents.floor), sheet);
  return sheet.result();
}

CombinedSums combined(const ActionSums& sums) {
  const VariableAction floors{sums.floor_imposed, psi_0_floors};
  // Snow and access to a roof never act together, EN 1991-1-1 3.3.2(1).
  const std::array with_access{floors, VariableAction{sums.roof_access, psi_0_roof_access}};
  const std::array with_snow{floors, VariableAction{sums.snow, psi_0_snow}};
  const auto worse = [&](Combination combination) {
    return std::max(combine(combination, sums.dead, with_access),
                    combine(combination, sums.dead, with_snow));
  };
  return {worse(Combination::unfactored), worse(Combination::eq_6_10), worse(Combination::eq_6_10a),
          worse(Combination::eq_6_10b)};
}

}  // namespace deadshore::solver
