#pragma once

#include <cstddef>

namespace deadshore::solver {

/// Index into a container, of a number of a node, a quad or an equation.
[[nodiscard]] constexpr std::size_t index_of(int number) {
  return static_cast<std::size_t>(number);
}

}  // namespace deadshore::solver
