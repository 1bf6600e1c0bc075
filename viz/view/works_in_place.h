#pragma once

#include <nlohmann/json_fwd.hpp>

#include <cstddef>
#include <string>

namespace deadshore::viz {

/// Whether the needle of this name is in at a stage, by what results.json says is done: fitted by
/// then and not released. Where the work is not followed, it is in.
[[nodiscard]] bool needle_is_in(const nlohmann::json& answers, std::size_t stage,
                                const std::string& needle);

}  // namespace deadshore::viz
