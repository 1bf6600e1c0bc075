#include "io/commands/summary.h"
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
constexpr std::size_t most_alarms = 6;  ///< of a kind
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

/// A clause without the remarks behind it.
std::string short_clause(std::string clause) {
  for (const char* remark : {" (", "; ", ", "}) {
    if (clause.size() > clause_width) clause = clause.substr(0, clause.find(remark));
  }
  return clause;
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

std::string check_table(std::span<const solver::Check> checks) {
  if (checks.empty()) return "";
  std::string text = row("checks", "worst first", "used", "by");
  std::size_t made = 0;
  for (const solver::Check& check : checks) {
    if (check.not_verified || ++made > most_rows) continue;
    text +=
        row(check.member, check.check, in_words(check.utilisation()), short_clause(check.clause));
  }
  if (made > most_rows) text += fmt::format("and {} more, all in the note\n", made - most_rows);
  return text;
}

std::string check_alarms(std::span<const solver::Check> checks) {
  std::string text;
  std::size_t failed = 0;
  std::size_t not_made = 0;
  for (const solver::Check& check : checks) {
    if (check.not_verified || check.passes() || ++failed > most_alarms) continue;
    text += failure(check);
  }
  if (failed > most_alarms) {
    text += fmt::format("!! FAILS: {} more, all in the note\n", failed - most_alarms);
  }
  for (const solver::Check& check : checks) {
    if (check.not_verified && ++not_made <= most_alarms) text += unmade(check);
  }
  if (not_made > most_alarms) {
    text += fmt::format("!! NOT VERIFIED: {} more, all in the note\n", not_made - most_alarms);
  }
  return text;
}

std::string summary_of(std::span<const solver::Check> checks) {
  const std::string alarms = check_alarms(checks);
  return alarms.empty() ? check_table(checks) : check_table(checks) + "\n" + alarms;
}

}  // namespace deadshore::io
