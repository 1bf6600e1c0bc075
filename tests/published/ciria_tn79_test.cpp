// CIRIA Technical Note 79 (1977), safe loads of props with an eccentricity up to 25 mm, as quoted
// in later guidance (not had in the original). Accepted: the values of the table, and straight
// lines between them.

#include "solver/members/error.h"
#include "solver/members/prop.h"
#include "tests/published/comparison.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <array>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source tn79{Field::props, Certainty::read, "CIRIA TN79 (1977), as quoted"};

// BS 4074 sizes; from memory, unverified.
Prop old_prop(const char* name, double shortest, double longest) {
  return {name, shortest, longest, {60.3, 3.2}, {48.3, 3.2}, {}, {}, "BS 4074"};
}

TEST(CiriaTn79, Size3CarriesTheTabulatedLoads) {
  const Prop prop = old_prop("size 3", 2590.0, 3950.0);
  const std::array<std::array<double, 2>, 5> row{
      {{2750, 17}, {3000, 15}, {3250, 13}, {3500, 11}, {3750, 10}}};
  for (const auto& [extension, load] : row)
    verify({tn79, fmt::format("size 3 at {} m: safe load", extension / 1e3), load,
            safe_load(prop, extension).load / 1e3, 0.0, "kN"});
  EXPECT_DOUBLE_EQ(safe_load(prop, 3375.0).load, 12e3);
}

TEST(CiriaTn79, Size4CarriesTheTabulatedLoads) {
  const Prop prop = old_prop("size 4", 3200.0, 4870.0);
  const std::array<std::array<double, 2>, 7> row{
      {{3250, 17}, {3500, 14}, {3750, 11}, {4000, 10}, {4250, 9}, {4500, 8}, {4750, 7}}};
  for (const auto& [extension, load] : row)
    verify({tn79, fmt::format("size 4 at {} m: safe load", extension / 1e3), load,
            safe_load(prop, extension).load / 1e3, 0.0, "kN"});
}

TEST(CiriaTn79, BelowTheFirstHeightTheFirstValueHolds) {
  EXPECT_DOUBLE_EQ(safe_load(old_prop("size 4", 3200.0, 4870.0), 3200.0).load, 17e3);
}

TEST(CiriaTn79, AboveTheLastHeightThereIsNoValue) {
  EXPECT_THROW((void)safe_load(old_prop("size 3", 2590.0, 3950.0), 3800.0), MemberError);
  try {
    (void)safe_load(old_prop("size 4", 3200.0, 4870.0), 4800.0);
    FAIL() << "accepted";
  } catch (const MemberError& error) {
    EXPECT_STREQ(error.what(),
                 "size 4: found an extension of 4.800 m; CIRIA TN79 (1977), size 4 ends at 4.75 m: "
                 "give a supplier's table or choose another basis");
  }
}

}  // namespace
}  // namespace deadshore::solver
