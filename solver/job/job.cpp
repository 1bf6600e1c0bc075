#include "solver/job/job.h"

#include <array>

namespace deadshore::solver {

const char* to_string(MasonryModel model) {
  switch (model) {
    case MasonryModel::uncracked:
      return "uncracked";
    case MasonryModel::cracked:
      return "cracked";
  }
  return "unknown";
}

double CheckRules::design_load(double dead, double imposed) const {
  const bool permissible = basis.method == SafetyMethod::permissible;
  const std::array variable = {VariableAction{imposed}};
  return combine(permissible ? Combination::unfactored : combination, dead, variable, factors);
}

}  // namespace deadshore::solver
