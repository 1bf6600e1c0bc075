#include "tests/published/page.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <set>
#include <stdexcept>
#include <utility>

namespace deadshore::published {
namespace {

constexpr std::string_view derived_columns[] = {"difference", "furthest, as part of its tolerance"};

/// At least so many significant digits; no exponent where the number is of a handy size.
std::string printed(double value, int digits) {
  if (value == 0.0) return "0";
  const double rounded = std::stod(fmt::format("{:.{}e}", value, digits - 1));
  const int size = static_cast<int>(std::floor(std::log10(std::abs(rounded))));
  if (size < -4 || size > 6) return fmt::format("{:.{}e}", value, digits - 1);
  return fmt::format("{:.{}f}", value, std::max(0, digits - 1 - size));
}

/// Digits for the two values: four, up to six where less is accepted than four would show.
int digits_for(const Row& row) {
  const double accepted = std::min(row.below, row.above);
  if (row.theirs == 0.0 || accepted <= 1e-8 * std::abs(row.theirs)) return 4;
  return std::clamp(static_cast<int>(std::ceil(std::log10(std::abs(row.theirs) / accepted))) + 1, 4,
                    6);
}

std::string difference(const Row& row) {
  const double found = row.ours - row.theirs;
  if (std::abs(found) <= 1e-8 * std::abs(row.theirs)) return "0";
  return (found > 0.0 ? "+" : "") + printed(found, 2);
}

std::string tolerance(const Row& row) {
  if (row.below == row.above) {
    if (row.below == 0.0) return "none";
    if (row.below <= 1e-8 * std::abs(row.theirs)) return "rounding";
    return "±" + printed(row.below, 2);
  }
  const std::string below = std::isinf(row.below) ? "any less" : "-" + printed(row.below, 2);
  return below + " to " + (std::isinf(row.above) ? "any more" : "+" + printed(row.above, 2));
}

/// 1 where it is just accepted.
double part_of_tolerance(const Row& row) {
  const double found = row.ours - row.theirs;
  const double accepted = found < 0.0 ? row.below : row.above;
  return accepted > 0.0 ? std::abs(found) / accepted : 0.0;
}

std::vector<Row> rows_in(std::span<const Row> rows, Field field) {
  std::vector<Row> chosen;
  std::ranges::copy_if(rows, std::back_inserter(chosen),
                       [&](const Row& row) { return row.field == field; });
  std::set<std::string> words;
  for (const Row& row : chosen)
    if (!words.insert(row.what).second)
      throw std::runtime_error("two comparisons are called \"" + row.what + "\"");
  // Rows of one source together, sources in the order of their first row.
  std::map<std::string, std::size_t> first;
  for (const Row& row : chosen) first.emplace(row.citation, first.size());
  std::ranges::stable_sort(chosen, {}, [&](const Row& row) { return first.at(row.citation); });
  return chosen;
}

std::string totals(std::span<const Row> rows) {
  std::string text =
      "| field | comparisons | furthest, as part of its tolerance |\n|---|---|---|\n";
  for (int i = 0; i < field_count; ++i) {
    const std::vector<Row> chosen = rows_in(rows, static_cast<Field>(i));
    if (chosen.empty()) continue;
    const double furthest =
        part_of_tolerance(*std::ranges::max_element(chosen, {}, part_of_tolerance));
    text += fmt::format("| {} | {} | {:.2f} |\n", title_of(static_cast<Field>(i)), chosen.size(),
                        furthest);
  }
  return text + fmt::format("| all | {} | |\n", rows.size());
}

std::string chapter(Field field, std::span<const Row> rows) {
  std::string text = fmt::format(
      "\n## {}\n\n| what | source | ours | difference | tolerance | unit | outside source | how "
      "sure "
      "it is |\n|---|---|---|---|---|---|---|---|\n",
      title_of(field));
  for (const Row& row : rows)
    text += fmt::format("| {} | {} | {} | {} | {} | {} | {} | {} |\n", row.what,
                        printed(row.theirs, digits_for(row)), printed(row.ours, digits_for(row)),
                        difference(row), tolerance(row), row.unit, row.citation,
                        words_for(row.certainty));
  return text;
}

constexpr std::string_view heading = R"(# Checked against outside sources

What the tests of this folder compare with sources outside the project, as they found it. The tests write this
page; do not edit it. To write it anew, after `cmake --build --preset release`:

```
build/release/tests/published/deadshore_published_tests --page tests/published/README.md
```

Differences are ours less the source's. A unit of *order* is a rate of convergence: the power of the element's
size with which the error falls. Tolerance *none* means equal to the last bit, *rounding* equal but for it.

How sure a source is: nobody here had the bought standards at hand, so check a value *from memory* against the
printed page before you lean on it; *worked by hand* shares the reading of the clause with the program, and so
finds slips but not misreadings. Each test file names its sources and accepted digits at its head.

)";

std::vector<std::string> split(std::string_view text, std::string_view by) {
  std::vector<std::string> parts;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find(by, at), text.size());
    parts.emplace_back(text.substr(at, end - at));
    at = end + by.size();
  }
  return parts;
}

/// The cells of a table's line; any other line is one cell.
std::vector<std::string> cells_of(std::string_view line) {
  if (!line.starts_with("| ") || !line.ends_with(" |")) return {std::string(line)};
  return split(line.substr(2, line.size() - 4), " | ");
}

bool same(const std::string& one, const std::string& other) {
  if (one == other) return true;
  const auto number = [](const std::string& text) {
    char* end = nullptr;
    const double value = std::strtod(text.c_str(), &end);
    return !text.empty() && *end == '\0' ? value : std::nan("");
  };
  const double a = number(one);
  const double b = number(other);
  return std::abs(a - b) <= 0.002 * std::max(std::abs(a), std::abs(b));
}

bool same_row(const std::vector<std::string>& one, const std::vector<std::string>& other,
              const std::vector<std::string>& header) {
  if (one.size() != other.size()) return false;
  for (std::size_t i = 0; i < one.size(); ++i) {
    const bool derived = i < header.size() &&
                         std::ranges::find(derived_columns, header[i]) != std::end(derived_columns);
    if (!derived && !same(one[i], other[i])) return false;
  }
  return true;
}

}  // namespace

std::string page_of(std::span<const Row> rows) {
  std::string text = std::string(heading) + totals(rows);
  for (int i = 0; i < field_count; ++i) {
    const auto field = static_cast<Field>(i);
    const std::vector<Row> chosen = rows_in(rows, field);
    if (!chosen.empty()) text += chapter(field, chosen);
  }
  return text;
}

std::vector<std::string> disagreements(std::string_view committed, std::string_view found) {
  const std::vector<std::string> one = split(committed, "\n");
  const std::vector<std::string> other = split(found, "\n");
  std::vector<std::string> wrong;
  std::vector<std::string> header;
  for (std::size_t i = 0; i < std::max(one.size(), other.size()); ++i) {
    const std::string had = i < one.size() ? one[i] : "(nothing)";
    const std::string has = i < other.size() ? other[i] : "(nothing)";
    const std::vector<std::string> cells = cells_of(had);
    if (i + 1 < one.size() && one[i + 1].starts_with("|---")) header = cells;
    if (!same_row(cells, cells_of(has), header))
      wrong.push_back(
          fmt::format("line {}: the page has\n  {}\nthe tests find\n  {}", i + 1, had, has));
  }
  return wrong;
}

}  // namespace deadshore::published
