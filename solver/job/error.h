#pragma once

#include <stdexcept>

namespace deadshore::solver {

/// An analysis that cannot be done or cannot be trusted; the message says what was found and, where
/// known, what is missing.
class SolveError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

}  // namespace deadshore::solver
