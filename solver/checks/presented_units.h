#pragma once

/// The units that checks are presented in, as multiples of N and mm.
namespace deadshore::solver {

inline constexpr double kN = 1e3;
inline constexpr double kNm = 1e6;
inline constexpr double kN_per_m2 = 1e-3;

}  // namespace deadshore::solver
