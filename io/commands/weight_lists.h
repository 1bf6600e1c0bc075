#pragma once

#include "io/tables/weight_tables.h"

#include <string>
#include <string_view>

/// What a job's house may name, in the form and with the patterns of member_lists.h.
namespace deadshore::io {

[[nodiscard]] std::string list_of_materials(const WeightTables& tables, std::string_view pattern);

/// Imposed loads by the use of a floor or a roof.
[[nodiscard]] std::string list_of_uses(const WeightTables& tables, std::string_view pattern);

}  // namespace deadshore::io
