#include "benchmarks/machine_limits.h"

#include <benchmark/benchmark.h>
#include <vector>

// The Fortran interface of any BLAS.
extern "C" void dgemm_(const char* trans_a, const char* trans_b, const int* m, const int* n,
                       const int* k, const double* alpha, const double* a, const int* lda,
                       const double* b, const int* ldb, const double* beta, double* c,
                       const int* ldc);

namespace deadshore::benchmarks {

namespace {

using benchmark::Counter;

void dgemm(benchmark::State& state) {
  const int n = 1200;
  const std::size_t size = static_cast<std::size_t>(n) * static_cast<std::size_t>(n);
  const std::vector<double> a(size, 1.0);
  const std::vector<double> b(size, 2.0);
  std::vector<double> c(size, 0.0);
  const double one = 1.0;
  for (auto _ : state) {
    dgemm_("N", "N", &n, &n, &n, &one, a.data(), &n, b.data(), &n, &one, c.data(), &n);
    benchmark::ClobberMemory();
  }
  state.counters["flops"] = Counter(2.0 * n * n * n, Counter::kIsIterationInvariantRate);
}

void triad(benchmark::State& state) {
  const std::size_t size = 8'000'000;
  std::vector<double> a(size, 0.0);
  const std::vector<double> b(size, 1.0);
  const std::vector<double> c(size, 2.0);
  for (auto _ : state) {
    for (std::size_t i = 0; i < size; ++i) a[i] = b[i] + 3.0 * c[i];
    benchmark::ClobberMemory();
  }
  state.counters["bytes"] =
      Counter(3.0 * sizeof(double) * static_cast<double>(size), Counter::kIsIterationInvariantRate);
}

}  // namespace

void register_machine_limits() {
  benchmark::RegisterBenchmark("dgemm", dgemm)->Unit(benchmark::kMillisecond);
  benchmark::RegisterBenchmark("triad", triad)->Unit(benchmark::kMillisecond);
}

}  // namespace deadshore::benchmarks
