#pragma once

#include "io/job/job_limits.h"
#include "solver/job/quantity.h"

#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>

struct ut_system;

namespace deadshore::io {

using solver::Dimension;

/// In words with its article: "a length", "a force per length" ...
[[nodiscard]] std::string_view in_words(Dimension dimension);

/// Of numbers of this dimension, either way of 0.
[[nodiscard]] const Magnitudes& magnitudes_of(Dimension dimension);

/// A text that is no quantity of the due dimension. `what()` completes "found <text>, ...", such as
/// "a force" or "a number without a unit".
class UnitError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// The units that a job may be written in: those of the UDUNITS-2 database, metric and imperial.
///
/// Loading takes some milliseconds, so load once and read many quantities. Silences the messages
/// that the UDUNITS library would print itself, for the whole process.
class Units {
 public:
  /// Throws FileError where the database of units is not installed.
  Units();

  /// The quantity in internal units: one decimal number and one unit, such as "19 kN/m3",
  /// "8.5 in", "450 kgf/m" or "2.4 N/mm^2". Good to 13 digits, so that "6 in" and "152.4 mm" are
  /// the same number. Throws UnitError.
  [[nodiscard]] double parse(std::string_view text, Dimension due) const;

 private:
  struct Free {
    void operator()(ut_system* system) const;
  };
  std::unique_ptr<ut_system, Free> system_;
};

}  // namespace deadshore::io
