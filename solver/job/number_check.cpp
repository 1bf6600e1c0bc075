#include "solver/job/number_check.h"

#include <fmt/format.h>

#include <cmath>

namespace deadshore::solver {

namespace number_words {

std::string length(double value) {
  return in_words(value);
}

std::string area(double value) {
  return fmt::format("{:.6g} m2", value / 1e6);
}

std::string stress(double value) {
  return fmt::format("{:.6g} N/mm2", value);
}

std::string stiffness(double value) {
  return fmt::format("{:.6g} kN/mm", value / 1e3);
}

std::string force(double value) {
  return fmt::format("{:.6g} kN", value / 1e3);
}

std::string force_per_length(double value) {
  return fmt::format("{:.6g} kN/m", value);
}

std::string force_per_area(double value) {
  return fmt::format("{:.6g} kN/m2", value * 1e3);
}

std::string force_per_volume(double value) {
  return fmt::format("{:.6g} kN/m3", value * 1e6);
}

std::string degrees(double value) {
  return fmt::format("{:.6g} degrees", value);
}

std::string plain(double value) {
  return fmt::format("{:.6g}", value);
}

}  // namespace number_words

namespace {

bool is_in(double value, Range range) {
  switch (range) {
    case Range::any:
      return true;
    case Range::positive:
      return value > 0.0;
    case Range::not_negative:
      return value >= 0.0;
    case Range::poisson:
      return value >= 0.0 && value < 0.5;
    case Range::part:
      return value >= 0.0 && value <= 1.0;
    case Range::share:
      return value > 0.0 && value <= 1.0;
    case Range::pitch:
      return value >= 0.0 && value < 90.0;
  }
  return false;
}

const char* due_in(Range range) {
  switch (range) {
    case Range::any:
      return "a number";
    case Range::positive:
      return "more than 0";
    case Range::not_negative:
      return "0 or more";
    case Range::poisson:
      return "0 or more and less than 0.5";
    case Range::part:
      return "0 to 1";
    case Range::share:
      return "more than 0, up to 1";
    case Range::pitch:
      return "0 or more and less than 90 degrees";
  }
  return "";
}

}  // namespace

void NumberCheck::operator()(const char* key, double value, Words words, Range range) const {
  const std::string path = table_ + "." + key;
  if (!std::isfinite(value))
    faults_.push_back({path, fmt::format("{}, not a number to reckon with", value), "a number"});
  else if (!is_in(value, range))
    faults_.push_back({path, words(value), due_in(range)});
}

NumberCheck entry(FaultList& faults, const char* table, std::size_t index) {
  return {faults, fmt::format("{}[{}]", table, index)};
}

}  // namespace deadshore::solver
