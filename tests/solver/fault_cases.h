#pragma once

#include "solver/loads/house_loads.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <ostream>

namespace deadshore::solver {

/// A change that spoils a sound job, and the first fault that is due then.
struct BadJob {
  const char* key;
  const char* found;  ///< part of what is said to be found
  std::function<void(Job&)> spoil;

  friend std::ostream& operator<<(std::ostream& out, const BadJob& bad) {
    return out << bad.key << ": " << bad.found;
  }
};

/// A change that leaves a sound job at the limits of what makes sense, which must pass.
struct GoodJob {
  const char* what;
  std::function<void(Job&)> change;

  friend std::ostream& operator<<(std::ostream& out, const GoodJob& good) {
    return out << good.what;
  }
};

inline void expect_fault(Job job, const BadJob& bad) {
  bad.spoil(job);
  const std::vector<Fault> faults = find_faults(job);
  ASSERT_FALSE(faults.empty());
  EXPECT_EQ(faults[0].key, bad.key) << faults[0].found;
  EXPECT_THAT(faults[0].found, testing::HasSubstr(bad.found));
  EXPECT_FALSE(faults[0].due.empty());
}

inline void expect_no_fault(const Job& job) {
  for (const Fault& fault : find_faults(job))
    ADD_FAILURE() << fault.key << ": " << fault.found << "; due " << fault.due;
}

}  // namespace deadshore::solver
