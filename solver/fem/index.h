#pragma once

#include <cstddef>

namespace deadshore::solver {

/// A number of a node, a quadrilateral or an equation as an index into a container.
/// \pre >= 0
[[nodiscard]] constexpr std::size_t index_of(int number) {
  return static_cast<std::size_t>(number);
}

}  // namespace deadshore::solver
