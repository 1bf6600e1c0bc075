#pragma once

#include "io/job/job_table.h"
#include "io/tables/weight_tables.h"
#include "mesh/wall_shape.h"
#include "solver/job/house.h"

#include <vector>

namespace deadshore::io {

/// [[roof]] with its purlins.
struct RoofTables {
  JobTable roof;
  std::vector<NamedTable> purlins;
};

/// The tables that describe the house, in the order of the file.
struct HouseTables {
  std::vector<NamedTable> floors;
  std::vector<NamedTable> lofts;
  std::vector<RoofTables> roofs;
  std::vector<NamedTable> partitions;
  std::vector<NamedTable> upper_walls;
  std::vector<NamedTable> chimneys;
  std::vector<NamedTable> contents;

  [[nodiscard]] bool empty() const;
};

/// Throws InputError for keys that are not known, in any of them.
[[nodiscard]] HouseTables find_house_tables(const JobTable& top);

/// Every table that brings a load of its own name: roofs' purlins come after their roof.
[[nodiscard]] std::vector<JobTable> named_parts(const HouseTables& tables);

/// The house as `solver::take_down` wants it, weighed by the tables; lofts come after the floors.
/// Tells `source` where faults of its parts are written. Throws InputError, with the nearest known
/// name, for a material or a use that no table has.
[[nodiscard]] solver::House read_house(const HouseTables& tables, const WeightTables& weights,
                                       const mesh::WallShape& wall, JobSource& source);

}  // namespace deadshore::io
