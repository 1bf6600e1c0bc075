#include "io/job/check_rules_reader.h"

#include "io/job/job_wording.h"

#include <string>

namespace deadshore::io {

namespace {

solver::SafeLoadBasis read_prop_basis(const JobTable& table) {
  const std::string basis = table.choice("prop_basis");
  if (basis == "EN 1065") return solver::SafeLoadBasis::en_1065;
  if (basis == "CIRIA TN79") return solver::SafeLoadBasis::ciria_tn79;
  if (basis == "supplier table") return solver::SafeLoadBasis::supplier_table;
  return solver::SafeLoadBasis::lower_of_both;
}

}  // namespace

solver::CheckRules read_check_rules(const JobTable& table) {
  solver::CheckRules rules;
  if (table.choice("basis") == "permissible stresses") {
    rules.basis = solver::permissible_stresses();
    rules.combination = solver::Combination::unfactored;
    for (const char* key : {"combination", "gamma_G", "gamma_Q"}) {
      if (!table.has(key)) continue;
      table.refuse(key, table.written(key) + " with permissible stresses",
                   "loads are unfactored then; leave it out");
    }
  } else {
    rules.basis = solver::partial_factors();
    if (table.choice("combination") == "6.10a or 6.10b") {
      rules.combination = solver::Combination::eq_6_10a_or_b;
    }
    rules.factors.gamma_G = table.number("gamma_G");
    rules.factors.gamma_Q = table.number("gamma_Q");
  }
  if (table.has("gamma_masonry")) rules.basis.gamma_masonry = table.number("gamma_masonry");
  rules.prop_basis = read_prop_basis(table);
  return rules;
}

}  // namespace deadshore::io
