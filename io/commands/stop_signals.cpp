#include "io/commands/stop_signals.h"

#include <atomic>
#include <cerrno>
#include <fcntl.h>
#include <string_view>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace deadshore::io {

namespace {

/// Where the handler writes the signal's number: a handler can reach nothing that is not global.
std::atomic<int> bell = -1;

extern "C" void ring_bell(int signal) {
  const int before = errno;
  const auto number = static_cast<unsigned char>(signal);
  static_cast<void>(!write(bell, &number, 1));
  errno = before;
}

void say(std::string_view text) {
  static_cast<void>(!write(STDERR_FILENO, text.data(), text.size()));
}

}  // namespace

StopSignals::StopSignals(std::function<void()> tidy_up) : tidy_up_(std::move(tidy_up)) {
  if (pipe2(pipe_.data(), O_CLOEXEC) != 0) {
    throw std::system_error(errno, std::generic_category(), "no pipe for signals");
  }
  watcher_ = std::thread(&StopSignals::watch, this);
  bell = pipe_[1];
  struct sigaction action {};
  action.sa_handler = ring_bell;
  action.sa_flags = SA_RESTART;
  for (std::size_t i = 0; i < watched.size(); ++i) {
    sigaction(watched[i], nullptr, &before_[i]);
    if (before_[i].sa_handler != SIG_IGN) sigaction(watched[i], &action, nullptr);
  }
}

StopSignals::~StopSignals() {
  for (std::size_t i = 0; i < watched.size(); ++i) sigaction(watched[i], &before_[i], nullptr);
  const unsigned char end = 0;
  static_cast<void>(!write(pipe_[1], &end, 1));
  watcher_.join();  // which does not return if a signal came first: the process ends there
  bell = -1;
  close(pipe_[0]);
  close(pipe_[1]);
}

void StopSignals::watch() const {
  unsigned char signal = 0;
  while (read(pipe_[0], &signal, 1) < 0 && errno == EINTR) {
  }
  if (signal == 0) return;
  tidy_up_();
  if (isatty(STDERR_FILENO) != 0) say("\r\033[K");
  say("deadshore: stopped; nothing was written, and an earlier result is as it was\n");
  _exit(128 + signal);
}

}  // namespace deadshore::io
