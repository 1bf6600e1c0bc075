#include "io/files/memory_limit.h"

#include "io/error.h"
#include "solver/study/memory_need.h"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <limits>
#include <sstream>
#include <string>
#include <sys/resource.h>
#include <unistd.h>

namespace deadshore::io {

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double gigabyte = 1e9;

/// Of a small file of the system's; empty where there is none.
std::string text_of(const char* path) {
  std::ostringstream text;
  text << std::ifstream(path).rdbuf();
  return text.str();
}

/// What a container may take (control groups, version 2: a number or "max").
double container_limit() {
  double limit = 0.0;
  std::istringstream text(text_of("/sys/fs/cgroup/memory.max"));
  return text >> limit ? limit : infinite;
}

/// What is left of the address space that the process may have (ulimit -v).
double process_limit() {
  rlimit limit{};
  if (getrlimit(RLIMIT_AS, &limit) != 0 || limit.rlim_cur == RLIM_INFINITY) return infinite;
  double pages = 0.0;
  std::istringstream(text_of("/proc/self/statm")) >> pages;
  // OpenBLAS takes 128 MB for each of two threads, and asks again without end if it gets none.
  constexpr double for_blas = 256.0 * 1024.0 * 1024.0;
  return static_cast<double>(limit.rlim_cur) - pages * static_cast<double>(sysconf(_SC_PAGESIZE)) -
         for_blas;
}

}  // namespace

std::optional<double> memory_in(std::string_view meminfo) {
  constexpr std::string_view label = "MemAvailable:";
  const std::size_t at = meminfo.find(label);
  if (at == std::string_view::npos) return std::nullopt;
  double kibibytes = 0.0;
  std::istringstream text{std::string(meminfo.substr(at + label.size()))};
  if (!(text >> kibibytes)) return std::nullopt;
  return 1024.0 * kibibytes;
}

double available_memory() {
  const double machine = memory_in(text_of("/proc/meminfo")).value_or(infinite);
  return std::max(0.0, std::min({machine, container_limit(), process_limit()}));
}

void refuse_what_does_not_fit(const solver::Job& job, const std::filesystem::path& job_file,
                              double memory) {
  const double need = solver::memory_needed(job);
  if (need <= memory) return;
  const double fitting = solver::smallest_mesh_within(job, memory);
  throw FileError(job_file,
                  fmt::format("analysis.mesh: elements of {:g} mm need some {:.2g} GB of memory "
                              "and {:.2g} GB can be had; {}",
                              job.analysis.mesh_size, need / gigabyte, memory / gigabyte,
                              fitting > 0.0 ? fmt::format("{:g} mm or more would fit", fitting)
                                            : std::string("no size would fit")));
}

}  // namespace deadshore::io
