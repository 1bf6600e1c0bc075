#include "io/results/json_numbers.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <stdexcept>
#include <string>

namespace deadshore::io {

double rounded(double value, std::string_view what) {
  if (!std::isfinite(value)) {
    throw std::domain_error(fmt::format("results: {} is not a finite number", what));
  }
  const std::string digits = fmt::format("{:.10g}", value);
  double near = 0.0;  // which it stays for what is too small to hold ten digits
  std::from_chars(digits.data(), digits.data() + digits.size(), near);
  return near + 0.0;  // + 0.0 turns -0 into 0
}

double kilonewtons(double newtons, std::string_view what) {
  return rounded(newtons / 1e3, what);
}

double kilonewton_metres(double newton_mm, std::string_view what) {
  return rounded(newton_mm / 1e6, what);
}

Json range_of(const mesh::Interval& interval) {
  return Json::array({rounded(interval.from, "range"), rounded(interval.to, "range")});
}

Json finite_or_null(double value) {
  return std::isfinite(value) ? Json(rounded(value, "ratio")) : Json(nullptr);
}

}  // namespace deadshore::io
