#include "io/note/chapters.h"
#include "io/note/wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using solver::Check;
using solver::CheckRules;

constexpr std::size_t most_named = 6;

std::string with_unit(double value, const std::string& unit) {
  return unit.empty() ? three_figures(value)
                      : three_figures(value) + " " + with_raised_powers(unit);
}

std::string name_of(const Check& check) {
  return check.member + ", " + check.check;
}

Row check_row(const Check& check, bool several_stages) {
  const bool known = !check.not_verified;
  std::string what = check.check;
  if (several_stages) what += fmt::format(" ({})", check.stage);
  return {{check.member, what, known || check.demand > 0.0 ? three_figures(check.demand) : "\u2013",
           known ? three_figures(check.capacity) : "\u2013", with_raised_powers(check.unit),
           utilisation_words(check)},
          row_kind_of(check)};
}

/// The clause with the working, and what to mind; the reason first where the check could not be
/// made.
std::string working_of(const Check& check) {
  if (check.not_verified) {
    const std::string by = check.clause == "none" ? "" : fmt::format(" ({})", check.clause);
    return fmt::format("Not verified{}: {}{}", by, as_sentence(check.caution),
                       check.working.empty() ? "" : " " + check.working);
  }
  const std::string by = check.working.empty() ? check.clause : check.clause + ": " + check.working;
  return check.caution.empty() ? by : as_sentence(by) + " Mind: " + as_sentence(check.caution);
}

Table checks_table(const solver::JobResult& result) {
  Table content{
      "checks",
      "Worst first, what is not verified before all; under each by what rule, and the numbers put "
      "in",
      {"Member", "Check", numeric("Demand"), numeric("Capacity"), "Unit", numeric("Utilisation")}};
  content.dense = true;
  for (const Check& check : result.checks) {
    content.rows.push_back(check_row(check, result.stages.size() > 1));
    content.add({with_raised_powers(working_of(check))}, RowKind::working);
  }
  return content;
}

std::string combination_words(const CheckRules& rules) {
  const std::string factors =
      fmt::format("\u03b3G {} and \u03b3Q {}", two_decimals(rules.factors.gamma_G),
                  two_decimals(rules.factors.gamma_Q));
  const std::string reduced =
      fmt::format("{}, \u03be {}", factors, significant(rules.factors.xi, 4));
  switch (rules.combination) {
    case solver::Combination::eq_6_10:
      return "factored by EN 1990 (6.10) with " + factors;
    case solver::Combination::eq_6_10a_or_b:
      return "factored by EN 1990 (6.10a) or (6.10b), whichever is more, with " + reduced;
    case solver::Combination::eq_6_10a:
      return "factored by EN 1990 (6.10a) with " + factors;
    case solver::Combination::eq_6_10b:
      return "factored by EN 1990 (6.10b) with " + reduced;
    case solver::Combination::unfactored:
      return "not factored";
  }
  return "";
}

std::string loads_rule(const CheckRules& rules) {
  const std::string envelope =
      "The load on each needle is the largest that any method finds: by hand, uncracked and "
      "cracked, if no needle gave, and in every what-if; permanent and imposed in the shares that "
      "the hand sum has on that needle";
  if (rules.basis.method == solver::SafetyMethod::permissible) {
    return envelope + ". It is not factored.";
  }
  return envelope + "; it is " + combination_words(rules) + ".";
}

std::string strengths_rule(const solver::SafetyBasis& basis) {
  const bool permissible = basis.method == solver::SafetyMethod::permissible;
  return fmt::format(
      "{}: steel {}, steel that buckles {}, timber {}, masonry and packing {}.{}",
      permissible ? "Permissible stresses: strengths are divided by one factor in all"
                  : "Partial factors: characteristic strengths are divided by",
      two_decimals(basis.gamma_M0), two_decimals(basis.gamma_M1), two_decimals(basis.gamma_timber),
      two_decimals(basis.gamma_masonry), permissible ? " Steel sections stay elastic." : "");
}

/// How far off a prop's axis each source lets its load be.
std::string eccentricity_allowed(solver::SafeLoadBasis basis) {
  switch (basis) {
    case solver::SafeLoadBasis::lower_of_both:
      return "Their load may be 25 mm off their axis, no more; EN 1065 alone allows for some 10 "
             "mm, so "
             "the second-order sum has 25 mm. A supplier's sheet says what it allows for.";
    case solver::SafeLoadBasis::en_1065:
      return "EN 1065 allows for a load some 10 mm off their axis, no more: centre it.";
    case solver::SafeLoadBasis::ciria_tn79:
      return "Their load may be 25 mm off their axis, no more.";
    case solver::SafeLoadBasis::supplier_table:
      return "The supplier's sheet says how far off their axis the load may be.";
  }
  return "";
}

std::string props_rule(solver::SafeLoadBasis basis) {
  const auto source = [basis]() -> std::string {
    switch (basis) {
      case solver::SafeLoadBasis::lower_of_both:
        return "a supplier's table where one is given, else the least of EN 1065 over 1.65, CIRIA "
               "TN79 and a second-order sum of the prop itself over 1.65";
      case solver::SafeLoadBasis::en_1065:
        return "the strength of EN 1065 over 1.65";
      case solver::SafeLoadBasis::ciria_tn79:
        return "CIRIA TN79";
      case solver::SafeLoadBasis::supplier_table:
        return "the supplier's table";
    }
    return "";
  }();
  return "Safe loads of props: " + source +
         ". They carry the whole margin and are set against unfactored loads, out of plumb by 1.5 "
         "degrees and no more. " +
         eccentricity_allowed(basis);
}

Blocks rules_of(const CheckRules& rules) {
  const std::vector<std::string> sentences = {
      loads_rule(rules), strengths_rule(rules.basis), props_rule(rules.prop_basis),
      "Ground pressure and deflections are of unfactored loads. What may be presumed of the ground "
      "holds only if the ground is what the job says."};
  return Heading{"Rules used"} + bullets(sentences);
}

/// The first few as a list, and how many more there are.
List first_of(std::vector<std::string> lines) {
  if (lines.size() > most_named) {
    const std::size_t more = lines.size() - most_named;
    lines.resize(most_named);
    lines.push_back(fmt::format("and {} more, see the member checks.", more));
  }
  return bullets(lines);
}

std::string plural(std::size_t count, const std::string& one, const std::string& many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

Blocks failures(const std::vector<Check>& checks) {
  std::vector<std::string> lines;
  for (const Check& check : checks) {
    if (check.not_verified || check.passes()) continue;
    lines.push_back(fmt::format("{}: {} against {}, {}", name_of(check),
                                with_unit(check.demand, check.unit),
                                with_unit(check.capacity, check.unit), check.clause));
  }
  if (lines.empty()) return {};
  return callout(Severity::alarm, plural(lines.size(), "check fails.", "checks fail."),
                 "Do not build it so:", first_of(lines));
}

/// What is not verified, by its reason.
Blocks unverified(const std::vector<Check>& checks) {
  std::vector<std::string> reasons;
  std::map<std::string, std::vector<std::string>> names;
  std::size_t count = 0;
  for (const Check& check : checks) {
    if (!check.not_verified) continue;
    ++count;
    if (names[check.caution].empty()) reasons.push_back(check.caution);
    names[check.caution].push_back(name_of(check));
  }
  if (count == 0) return {};
  std::vector<std::string> lines;
  lines.reserve(reasons.size());
  for (const std::string& reason : reasons) {
    lines.push_back(fmt::format("{}: {}", listed(names[reason]), as_sentence(reason)));
  }
  return callout(Severity::warning,
                 plural(count, "check is not verified.", "checks are not verified."),
                 "No number here covers them; somebody has to look:", first_of(lines));
}

}  // namespace

std::string utilisation_words(const Check& check) {
  if (check.not_verified) return "NOT VERIFIED";
  const double utilisation = check.utilisation();
  const std::string figure = std::isfinite(utilisation) ? two_decimals(utilisation) : "over all";
  return check.passes() ? figure : figure + " FAILS";
}

RowKind row_kind_of(const Check& check) {
  if (check.not_verified) return RowKind::unverified;
  return check.passes() ? RowKind::plain : RowKind::fails;
}

Blocks checks_to_mend(const solver::JobResult& result) {
  return failures(result.checks) + unverified(result.checks);
}

Chapter checks_chapter(const solver::JobResult& result) {
  if (result.checks.empty()) return {};
  return {"member-checks", "Member checks", rules_of(result.job.check_rules), checks_table(result)};
}

}  // namespace deadshore::io
