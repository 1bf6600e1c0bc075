#include "io/job/units.h"

#include "io/error.h"
#include "io/job/job_wording.h"

#include <fmt/format.h>
#include <udunits2.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <system_error>
#include <utility>

namespace deadshore::io {

namespace {

constexpr std::size_t longest_unit = 40;

constexpr double standard_gravity = 9.80665;  // m/s2, 3rd CGPM, 1901

struct FreeUnit {
  void operator()(ut_unit* unit) const { ut_free(unit); }
};
using Unit = std::unique_ptr<ut_unit, FreeUnit>;

struct FreeConverter {
  void operator()(cv_converter* converter) const { cv_free(converter); }
};
using Converter = std::unique_ptr<cv_converter, FreeConverter>;

/// What is known of a dimension.
struct DimensionRow {
  Dimension dimension;
  std::string_view in_words;
  const char* internal_unit;
  Magnitudes magnitudes;
};

constexpr std::array<DimensionRow, 10> dimensions{{
    {Dimension::none, "a number", "1", {1e-6, 1e6, "1e-6 to 1e6"}},
    {Dimension::length, "a length", "mm", {1e-3, 1e6, "0.001 mm to 1 km"}},
    {Dimension::force, "a force", "N", {1e-3, 1e9, "0.001 N to 1 GN"}},
    {Dimension::force_per_length, "a force per length", "N/mm", {1e-6, 1e6, "0.001 N/m to 1 GN/m"}},
    {Dimension::force_per_volume,
     "a force per volume",
     "N/mm3",
     {1e-9, 1e3, "1 N/m3 to 1000 GN/m3"}},
    {Dimension::stress, "a stress", "N/mm2", {1e-9, 1e7, "0.001 N/m2 to 10000 GPa"}},
    {Dimension::stiffness, "a stiffness", "N/mm", {1e-3, 1e12, "0.001 N/mm to 1e9 kN/mm"}},
    {Dimension::area, "an area", "mm2", {1e-2, 1e12, "0.01 mm2 to 1 km2"}},
    {Dimension::angle, "an angle", "degree", {1e-6, 360.0, "1e-6 to 360 degrees"}},
    {Dimension::weight, "a force or a mass", "N", {1e-3, 1e9, "0.001 N to 1 GN"}},
}};

const DimensionRow& row_of(Dimension dimension) {
  return *std::ranges::find(dimensions, dimension, &DimensionRow::dimension);
}

/// What a job's author may have written instead, to name it in words.
constexpr std::array<std::pair<const char*, const char*>, 15> named_dimensions{{
    {"mm", "a length"},
    {"mm2", "an area"},
    {"mm3", "a volume"},
    {"N", "a force"},
    {"N/mm", "a force per length"},
    {"N/mm2", "a force per area"},
    {"N/mm3", "a force per volume"},
    {"N mm", "a moment"},
    {"kg", "a mass"},
    {"kg/m", "a mass per length"},
    {"kg/m2", "a mass per area"},
    {"kg/m3", "a mass per volume"},
    {"s", "a time"},
    {"K", "a temperature"},
    {"1", "an angle or a pure number"},
}};

/// Units whose capitals people get wrong.
constexpr std::array<const char*, 18> usual_units{
    "mm",  "cm",   "m",    "in",    "ft",    "N",     "kN",    "kgf", "lbf",
    "N/m", "kN/m", "N/mm", "kN/mm", "kN/m3", "N/mm2", "kN/m2", "MPa", "GPa"};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool same_but_for_capitals(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char x, char y) { return lower(x) == lower(y); });
}

struct Parts {
  double number = 0.0;
  std::string_view unit;
};

Parts split(std::string_view text) {
  text = trimmed(text);
  if (text.starts_with('+')) text.remove_prefix(1);
  Parts parts;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), parts.number);
  if (error == std::errc::result_out_of_range) {
    throw UnitError("a number that is too large or too small");
  }
  if (error != std::errc{}) throw UnitError("which does not start with a number");
  if (!std::isfinite(parts.number)) throw UnitError("which is not a finite number");
  text.remove_prefix(static_cast<std::size_t>(end - text.data()));
  if (text.starts_with(',')) throw UnitError("a number with a comma (write a decimal point)");
  parts.unit = trimmed(text);
  if (parts.unit.empty()) throw UnitError("a number without a unit");
  return parts;
}

/// UDUNITS would take "ft 6 in" as a product and "m/1000" as a scaled unit: a digit is let through
/// only as the power of the symbol before it.
bool holds_another_number(std::string_view unit) {
  for (std::size_t i = 0; i < unit.size(); ++i) {
    const bool after_break = i == 0 || is_blank(unit[i - 1]) || unit[i - 1] == '/' ||
                             unit[i - 1] == '(' || unit[i - 1] == '.';
    if (is_digit(unit[i]) && after_break) return true;
  }
  return unit.front() == '/';
}

Unit parse_unit(ut_system* system, std::string_view text) {
  return Unit(ut_parse(system, std::string(text).c_str(), UT_UTF8));
}

Unit parse_written_unit(ut_system* system, std::string_view text) {
  if (holds_another_number(text)) throw UnitError("more than one number and one unit");
  if (text == "deg") text = "degree";  // which the database does not have
  Unit unit;
  if (text.size() <= longest_unit) unit = parse_unit(system, text);
  if (unit) return unit;
  for (const char* usual : usual_units) {
    if (same_but_for_capitals(text, usual)) {
      throw UnitError(fmt::format("whose unit is not known (perhaps \"{}\")", usual));
    }
  }
  throw UnitError("whose unit is not known");
}

/// The converter where `from` is a plain multiple of `to`, else null: UDUNITS also converts between
/// a unit and its inverse, from logarithms and between zeros that differ.
Converter factor_between(ut_unit* from, ut_unit* to) {
  Converter converter(ut_get_converter(from, to));
  if (converter && cv_convert_double(converter.get(), 0.0) != 0.0) converter.reset();
  return converter;
}

std::string dimension_in_words(ut_system* system, ut_unit* unit) {
  for (const auto& [symbol, words] : named_dimensions) {
    if (factor_between(unit, parse_unit(system, symbol).get())) return words;
  }
  return "which measures something else";
}

/// Whether a unit is a multiple of the radian. UDUNITS takes an angle for a pure number, so that a
/// slope of 30 % would be 17 degrees.
bool is_angle(const ut_unit* unit) {
  std::array<char, 128> definition{};
  const int length = ut_format(unit, definition.data(), definition.size(), UT_DEFINITION);
  return length > 0 && std::string_view(definition.data()).ends_with("rad");
}

double to_13_digits(double value) {
  const std::string digits = fmt::format("{:.12e}", value);
  double rounded = 0.0;
  std::from_chars(digits.data(), digits.data() + digits.size(), rounded);
  return rounded;
}

}  // namespace

std::string_view in_words(Dimension dimension) {
  return row_of(dimension).in_words;
}

const Magnitudes& magnitudes_of(Dimension dimension) {
  return row_of(dimension).magnitudes;
}

void Units::Free::operator()(ut_system* system) const {
  ut_free_system(system);
}

Units::Units() {
  ut_set_error_message_handler(ut_ignore);
  system_.reset(ut_read_xml(nullptr));
  if (!system_) {
    ut_status status = UT_SUCCESS;
    throw FileError(ut_get_path_xml(nullptr, &status),
                    "the database of units cannot be read (Debian's package libudunits2-data)");
  }
}

double Units::parse(std::string_view text, Dimension due) const {
  const Parts parts = split(text);
  const Unit from = parse_written_unit(system_.get(), parts.unit);
  const Unit to = parse_unit(system_.get(), row_of(due).internal_unit);
  Converter converter = factor_between(from.get(), to.get());
  double factor = 1.0;
  if (!converter && due == Dimension::weight) {
    converter = factor_between(from.get(), parse_unit(system_.get(), "kg").get());
    factor = standard_gravity;
  }
  if (!converter) throw UnitError(dimension_in_words(system_.get(), from.get()));
  if (due == Dimension::angle && !is_angle(from.get())) throw UnitError("a pure number");
  const double value = factor * cv_convert_double(converter.get(), parts.number);
  if (!std::isfinite(value)) throw UnitError("a number that is too large");
  return to_13_digits(value);
}

}  // namespace deadshore::io
