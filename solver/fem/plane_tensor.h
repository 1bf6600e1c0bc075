#pragma once

namespace deadshore::solver {

/// Components of a plane stress (N/mm2) or strain, tension positive. As a strain `xy` is the tensor
/// shear, half of the engineering shear.
struct PlaneTensor {
  double xx = 0.0;
  double yy = 0.0;
  double xy = 0.0;
};

/// Principal values of a plane tensor, `major >= minor`.
struct Principal {
  double major = 0.0;
  double minor = 0.0;
  double angle = 0.0;  ///< direction of `major` from the x axis, radians in (-pi/2, pi/2]
};

/// Principal values and direction of a plane tensor.
[[nodiscard]] Principal principal_of(const PlaneTensor& tensor);

}  // namespace deadshore::solver
