#include "solver/members/timber.h"

#include "solver/members/error.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace deadshore::solver {

double modification_factor(LoadDuration duration, ServiceClass service) {
  constexpr std::array<double, 5> covered = {0.60, 0.70, 0.80, 0.90, 1.10};
  constexpr std::array<double, 5> in_the_open = {0.50, 0.55, 0.65, 0.70, 0.90};
  const auto place = static_cast<std::size_t>(duration);
  return service == ServiceClass::three ? in_the_open[place] : covered[place];
}

void require_sound(const TimberSection& section) {
  const bool sound =
      std::isfinite(section.b) && std::isfinite(section.h) && section.b > 0.0 && section.h > 0.0;
  if (!sound)
    throw MemberError("timber", fmt::format("{} x {} mm", section.b, section.h),
                      "dimensions above 0 are due");
}

}  // namespace deadshore::solver
