#pragma once

#include "solver/result/results.h"

#include <chrono>
#include <string>
#include <vector>

namespace deadshore::solver {

/// Times phases one after the other.
class Stopwatch {
 public:
  /// Ends the running phase and books its time under `phase`, adding to an earlier one of that
  /// name.
  void lap(const std::string& phase) {
    const auto now = std::chrono::steady_clock::now();
    const double seconds = std::chrono::duration<double>(now - last_).count();
    last_ = now;
    for (PhaseTime& time : times_) {
      if (time.phase != phase) continue;
      time.seconds += seconds;
      return;
    }
    times_.push_back({phase, seconds});
  }

  [[nodiscard]] const std::vector<PhaseTime>& times() const { return times_; }

 private:
  std::chrono::steady_clock::time_point last_ = std::chrono::steady_clock::now();
  std::vector<PhaseTime> times_;
};

}  // namespace deadshore::solver
