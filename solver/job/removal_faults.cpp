#include "solver/job/fault_list.h"

#include <fmt/format.h>

#include <cmath>

namespace deadshore::solver {

namespace {

constexpr double least_course = 10.0;  // mm; thinner is no course, and makes endless lists
constexpr double least_strip = 50.0;   // mm

std::string force_in_words(double newtons) {
  return fmt::format("{:.6g} N", newtons);
}

}  // namespace

void find_removal_faults(const Job& job, FaultList& faults) {
  const RemovalOptions& removal = job.removal;
  // What is not a number is no less than anything either.
  const auto check = [&](const char* key, double value, double least, const std::string& found,
                         const std::string& due) {
    if (!(value >= least) || !std::isfinite(value))
      faults.push_back({fmt::format("removal.{}", key), found, due});
  };
  check("course_height", removal.course_height, least_course, in_words(removal.course_height),
        in_words(least_course) + " or more");
  check("strip_width", removal.strip_width, least_strip, in_words(removal.strip_width),
        in_words(least_strip) + " or more");
  constexpr double least_lift = 1.0;  // N
  check("one_person_lift", removal.one_person_lift, least_lift,
        force_in_words(removal.one_person_lift), force_in_words(least_lift) + " or more");
  check("two_person_lift", removal.two_person_lift, removal.one_person_lift,
        fmt::format("{}, where one person lifts {}", force_in_words(removal.two_person_lift),
                    force_in_words(removal.one_person_lift)),
        "what one person lifts or more");
  check("bulking", removal.bulking, 1.0, fmt::format("{:.6g}", removal.bulking),
        "1 or more: what is broken up takes no less room");
}

}  // namespace deadshore::solver
