#pragma once

#include <ctime>

namespace deadshore::benchmarks {

/// CPU time of this process so far, user and system, all threads, s. On a busy machine it tells
/// more than the clock on the wall.
[[nodiscard]] inline double cpu_seconds() {
  timespec time{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) + 1e-9 * static_cast<double>(time.tv_nsec);
}

}  // namespace deadshore::benchmarks
