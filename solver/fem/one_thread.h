#pragma once

namespace deadshore::solver {

/// While it is alive, OpenMP loops begun by this thread run on it alone: for work that is one of
/// several threads already.
class OneThread {
 public:
  OneThread();
  ~OneThread();
  OneThread(const OneThread&) = delete;
  OneThread& operator=(const OneThread&) = delete;

 private:
  int threads_before_;
};

}  // namespace deadshore::solver
