#pragma once

namespace deadshore::benchmarks {

/// Registers what this machine can do at best on one thread: `dgemm` (matrix product of the BLAS in
/// use, large square blocks; counter `flops`, per second) and `triad` (a = b + s c over arrays far
/// larger than the caches; counter `bytes`, read and written per second).
void register_machine_limits();

}  // namespace deadshore::benchmarks
