#pragma once

namespace deadshore::solver {

/// Buckling curves of EN 1993-1-1 Table 6.1.
enum class BucklingCurve { a0, a, b, c, d };
[[nodiscard]] const char* to_string(BucklingCurve curve);

/// Imperfection factor alpha: 0.13, 0.21, 0.34, 0.49, 0.76.
[[nodiscard]] double imperfection_factor(BucklingCurve curve);

/// Reduction factor chi of a compressed member at a relative slenderness, 6.3.1.2; 1 up to 0.2.
[[nodiscard]] double buckling_factor(double slenderness, BucklingCurve curve);

}  // namespace deadshore::solver
