#pragma once

#include "io/tables/member_tables.h"
#include "io/tables/weight_tables.h"

#include <string>
#include <string_view>
/// What a job may name, as tables for a terminal of 80 columns with units and sources. `pattern` is
/// part of a name, whatever its case and spaces, in which * and ? stand for any letters; empty for
/// all. Throws UnknownMember, with the nearest known name, where nothing matches.
/// What a job's house may name, in the form and with the patterns of member_lists.h.
namespace deadshore::io {

/// Dimensions and properties that are worked out from them; every property where one section alone
/// matches.
[[nodiscard]] std::string list_of_sections(const MemberTables& tables, std::string_view pattern);

[[nodiscard]] std::string list_of_timber(const MemberTables& tables, std::string_view pattern);

/// Range, and safe load of unfactored load every half metre of extension.
[[nodiscard]] std::string list_of_props(const MemberTables& tables, std::string_view pattern);

/// Presumed bearing, and the subgrade modulus that is taken where a job gives none.
[[nodiscard]] std::string list_of_grounds(const MemberTables& tables, std::string_view pattern);

[[nodiscard]] std::string list_of_materials(const WeightTables& tables, std::string_view pattern);

/// Imposed loads by the use of a floor or a roof.
[[nodiscard]] std::string list_of_uses(const WeightTables& tables, std::string_view pattern);

}  // namespace deadshore::io
