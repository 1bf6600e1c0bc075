#pragma once

#include <array>
#include <csignal>
#include <functional>
#include <thread>

namespace deadshore::io {

/// While it lives, SIGINT, SIGTERM and SIGHUP tidy up and end the process at once with 128 + their
/// number, whatever its other threads are in the middle of. One at a time; a signal that the
/// process was told to ignore (nohup) stays ignored.
class StopSignals {
 public:
  /// `tidy_up` runs on a thread of its own beside the work, which is not stopped for it.
  explicit StopSignals(std::function<void()> tidy_up);
  ~StopSignals();
  StopSignals(const StopSignals&) = delete;
  StopSignals& operator=(const StopSignals&) = delete;

 private:
  static constexpr std::array<int, 3> watched = {SIGINT, SIGTERM, SIGHUP};

  void watch() const;

  std::function<void()> tidy_up_;
  std::array<int, 2> pipe_{};
  std::array<struct sigaction, watched.size()> before_{};
  std::thread watcher_;
};

}  // namespace deadshore::io
