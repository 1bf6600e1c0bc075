#pragma once

#include "solver/job/fault_list.h"
#include "solver/job/field.h"

#include <optional>
#include <string>
#include <vector>

/// Refusing numbers of a job that are not finite, or not in the range that their table says.
namespace deadshore::solver {

/// Adds a fault at `path`, such as "needle[0].x", unless `value` is finite and in `range`.
void check_number(const std::string& path, double value, const Unit& unit, const Range& range,
                  FaultList& faults);

/// Checks every number of a struct whose key counts.
/// \param path of the struct in the job, such as "needle[0]"; that of [name] by default
template <class Struct>
void check_numbers(const Table<Struct>& table, const Struct& values, FaultList& faults,
                   const std::string& path) {
  for (const Field<Struct>& field : table.fields) {
    if (field.counts != nullptr && !field.counts(values)) continue;
    if (const std::optional<double> number = number_in(values, field.member))
      check_number(path + "." + std::string(field.key.name), *number, field.key.unit,
                   field.key.range, faults);
  }
}
template <class Struct>
void check_numbers(const Table<Struct>& table, const Struct& values, FaultList& faults) {
  check_numbers(table, values, faults, std::string(table.name));
}

/// The same for each entry of a list.
template <class Struct>
void check_numbers(const Table<Struct>& table, const std::vector<Struct>& entries,
                   FaultList& faults) {
  for (std::size_t i = 0; i < entries.size(); ++i)
    check_numbers(table, entries[i], faults, entry_path(table.name, i));
}

}  // namespace deadshore::solver
