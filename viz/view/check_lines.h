#pragma once

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <vector>

namespace deadshore::viz {

/// The members under `checks` that belong to a support of supports.vtp, or to "beam": a needle
/// brings its props, a row of joists its dead shore, a beam's end its padstone and pier.
[[nodiscard]] std::vector<std::string> members_at(const nlohmann::json& answers,
                                                  const std::string& support);

/// Their checks, worst first as results.json has them: two lines each, utilisation and what is
/// checked, then clause and stage. What is past the first few is counted in the last line.
[[nodiscard]] std::vector<std::string> check_lines(const nlohmann::json& answers,
                                                   const std::vector<std::string>& members);

}  // namespace deadshore::viz
