#include "io/error.h"
#include "io/job/job_reader.h"
#include "tests/io/core_keys.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <ostream>
#include <string>

namespace deadshore::io {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;

/// The core job with a [removal] table at its end.
std::string with_removal(const std::string& keys) {
  return core_keys() + "\n[removal]\n" + keys + "\n";
}

TEST(RemovalReader, HasDefaultsWithoutItsTable) {
  const solver::RemovalOptions removal = parse_job(core_keys(), "yard.toml").removal;
  const solver::RemovalOptions usual;
  EXPECT_EQ(removal.course_height, usual.course_height);
  EXPECT_EQ(removal.strip_width, usual.strip_width);
  EXPECT_EQ(removal.one_person_lift, usual.one_person_lift);
  EXPECT_EQ(removal.two_person_lift, usual.two_person_lift);
  EXPECT_EQ(removal.bulking, usual.bulking);
}

TEST(RemovalReader, ReadsEveryKeyWithItsUnit) {
  const solver::RemovalOptions removal =
      parse_job(with_removal("course_height = \"3 in\"\nstrip_width = \"0.6 m\"\n"
                             "one_person_lift = \"0.2 kN\"\ntwo_person_lift = \"40 kgf\"\n"
                             "bulking = 1.7"),
                "yard.toml")
          .removal;
  EXPECT_DOUBLE_EQ(removal.course_height, 76.2);
  EXPECT_DOUBLE_EQ(removal.strip_width, 600.0);
  EXPECT_DOUBLE_EQ(removal.one_person_lift, 200.0);
  EXPECT_NEAR(removal.two_person_lift, 40.0 * 9.80665, 1e-9);
  EXPECT_DOUBLE_EQ(removal.bulking, 1.7);
}

struct BadRemoval {
  const char* keys;
  const char* key;
  const char* found;
  const char* due;

  friend std::ostream& operator<<(std::ostream& out, const BadRemoval& bad) {
    return out << bad.keys;
  }
};

class BadRemovals : public ::testing::TestWithParam<BadRemoval> {};

TEST_P(BadRemovals, AreRefusedAtTheirKey) {
  try {
    static_cast<void>(parse_job(with_removal(GetParam().keys), "yard.toml"));
    FAIL() << "read without complaint";
  } catch (const InputError& error) {
    EXPECT_THAT(error.what(), AllOf(HasSubstr("yard.toml:"), HasSubstr(GetParam().key),
                                    HasSubstr(GetParam().found), HasSubstr(GetParam().due)));
  }
}

const BadRemoval bad_removals[] = {
    {"course = \"75 mm\"", "removal.course", "not known", "course_height"},
    {"course_height = 75", "removal.course_height", "75", "without a unit"},
    {"course_height = \"75 kN\"", "removal.course_height", "75 kN", "length"},
    {"course_height = \"1 mm\"", "removal.course_height", "1 mm", "10 mm or more"},
    {"strip_width = \"-0.5 m\"", "removal.strip_width", "-500 mm", "50 mm or more"},
    {"one_person_lift = \"25 kg\"", "removal.one_person_lift", "25 kg", "force"},
    {"one_person_lift = \"0 N\"", "removal.one_person_lift", "0 N", "1 N or more"},
    {"two_person_lift = \"200 N\"", "removal.two_person_lift", "200 N", "one person lifts or more"},
    {"bulking = 0.5", "removal.bulking", "0.5", "1 or more"},
    {"bulking = \"1.5\"", "removal.bulking", "1.5", "number"},
};
INSTANTIATE_TEST_SUITE_P(Keys, BadRemovals, ::testing::ValuesIn(bad_removals));

}  // namespace
}  // namespace deadshore::io
