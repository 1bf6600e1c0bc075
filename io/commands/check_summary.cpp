#include "io/commands/check_summary.h"

#include "io/commands/terminal.h"
#include "io/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace deadshore::io {

namespace {

constexpr std::size_t most_rows = 8;
constexpr std::size_t member_width = 18;
constexpr std::size_t check_width = 26;
constexpr std::size_t clause_width = 24;

std::string row(const std::string& member, const std::string& check, const std::string& utilisation,
                const std::string& clause) {
  std::string text =
      fmt::format("{} {} {:>7}  {}", fitted(member, member_width), fitted(check, check_width),
                  utilisation, fitted(clause, clause_width));
  text.erase(text.find_last_not_of(' ') + 1);
  return text + "\n";
}

/// A clause without the remark behind it.
std::string short_clause(const std::string& clause) {
  return clause.size() > clause_width ? clause.substr(0, clause.find(" (")) : clause;
}

std::string in_words(double utilisation) {
  if (!std::isfinite(utilisation)) return "-";
  return utilisation < 1000.0 ? fmt::format("{:.2f}", utilisation) : "> 1000";
}

std::string name_of(const solver::Check& check) {
  return printable(check.member) + ", " + printable(check.check);
}

std::string failure(const solver::Check& check) {
  if (!std::isfinite(check.utilisation())) {
    return wrapped(fmt::format("!! FAILS: {}: {:.3g} {} against nothing ({})", name_of(check),
                               check.demand, check.unit, printable(check.clause)));
  }
  return wrapped(fmt::format(
      "!! FAILS: {}: {:.2f} times what it bears, {:.3g} against {:.3g} {} ({})", name_of(check),
      check.utilisation(), check.demand, check.capacity, check.unit, printable(check.clause)));
}

std::string unmade(const solver::Check& check) {
  return wrapped(fmt::format("!! NOT VERIFIED: {}: {}", name_of(check), one_line(check.caution)));
}

}  // namespace

bool all_pass(std::span<const solver::Check> checks) {
  return std::all_of(checks.begin(), checks.end(),
                     [](const solver::Check& check) { return check.passes(); });
}

std::string summary_of(std::span<const solver::Check> checks) {
  if (checks.empty()) return "";
  std::string text = row("checks", "worst first", "used", "by");
  std::string loud;
  std::size_t made = 0;
  for (const solver::Check& check : checks) {
    if (check.not_verified) {
      loud += unmade(check);
      continue;
    }
    if (!check.passes()) loud += failure(check);
    if (++made > most_rows) continue;
    text +=
        row(check.member, check.check, in_words(check.utilisation()), short_clause(check.clause));
  }
  if (made > most_rows) text += fmt::format("and {} more, all in the note\n", made - most_rows);
  return loud.empty() ? text : text + "\n" + loud;
}

}  // namespace deadshore::io
