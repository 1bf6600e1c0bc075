#pragma once

#include "io/job/job_table.h"
#include "io/tables/weight_tables.h"
#include "solver/job/house.h"

#include <string_view>

namespace deadshore::io {

/// The source of what the job gives outright.
inline constexpr std::string_view as_given = "as given in the job file";

/// The layers at `key`, weighed by the tables or as given. Throws InputError for a material that no
/// table has, with the nearest known one, and where a thickness is missing or of no use.
[[nodiscard]] solver::BuildUp read_build_up(const JobTable& table, std::string_view key,
                                            const WeightTables& weights, const JobSource& source);

/// N/mm3 of the material that the table names at `material`, or as given at `unit_weight`, and its
/// source.
struct MasonryWeight {
  double unit_weight = 0.0;
  std::string source;
};
[[nodiscard]] MasonryWeight read_masonry_weight(const JobTable& table, const WeightTables& weights);

}  // namespace deadshore::io
