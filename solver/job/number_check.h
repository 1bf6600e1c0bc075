#pragma once

#include "solver/job/fault_list.h"

#include <cstddef>
#include <string>

/// Refusing single numbers of a job.
namespace deadshore::solver {

/// What a builder writes for a value in N and mm.
namespace number_words {

[[nodiscard]] std::string length(double value);            ///< "150 mm", "5.6 m"
[[nodiscard]] std::string area(double value);              ///< "1.6 m2"
[[nodiscard]] std::string stress(double value);            ///< "2.4 N/mm2"
[[nodiscard]] std::string stiffness(double value);         ///< "20 kN/mm"
[[nodiscard]] std::string force(double value);             ///< "5 kN"
[[nodiscard]] std::string force_per_length(double value);  ///< "4 kN/m"
[[nodiscard]] std::string force_per_area(double value);    ///< "150 kN/m2"
[[nodiscard]] std::string force_per_volume(double value);  ///< "19 kN/m3"
[[nodiscard]] std::string degrees(double value);           ///< "35 degrees"
[[nodiscard]] std::string plain(double value);             ///< "0.2"

}  // namespace number_words

enum class Range {
  any,
  positive,
  not_negative,
  poisson,  ///< 0 or more and less than 0.5
  part,     ///< 0 to 1
  share,    ///< more than 0, up to 1
  pitch,    ///< 0 or more and less than 90
};

/// Adds a fault for each number of one table that is not finite or out of its range.
class NumberCheck {
 public:
  using Words = std::string (*)(double);

  /// \param table its path in the job, such as "needle[0]"; `faults` must outlive this
  NumberCheck(FaultList& faults, std::string table) : faults_(faults), table_(std::move(table)) {}

  void operator()(const char* key, double value, Words words, Range range) const;

 private:
  FaultList& faults_;
  std::string table_;
};

/// The numbers of one entry of a list, such as "needle[0]".
[[nodiscard]] NumberCheck entry(FaultList& faults, const char* table, std::size_t index);

}  // namespace deadshore::solver
