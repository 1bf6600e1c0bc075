#pragma once

#include <gtest/gtest.h>

#include <ranges>
#include <utility>

namespace deadshore {

/// The same container, for a loop that checks each of its members. An empty one fails the test: a
/// loop over nothing would pass unseen.
template <class Container>
[[nodiscard]] Container some(Container&& container) {
  EXPECT_FALSE(std::ranges::empty(container)) << "nothing to look at";
  return std::forward<Container>(container);
}

}  // namespace deadshore
