#pragma once

#include <nlohmann/json_fwd.hpp>

#include <initializer_list>
#include <optional>
#include <string>

/// Looking things up in results.json, where any of them may be missing.
namespace deadshore::viz {

using KeyPath = std::initializer_list<std::string>;

/// What lies at the end of a path of keys; null where there is nothing.
[[nodiscard]] const nlohmann::json* at_path(const nlohmann::json& from, KeyPath path);

[[nodiscard]] std::optional<double> number_at(const nlohmann::json& from, KeyPath path);

/// Empty where there is no text.
[[nodiscard]] std::string text_at(const nlohmann::json& from, KeyPath path);

/// The list at the end of a path; an empty one where there is none.
[[nodiscard]] const nlohmann::json& list_at(const nlohmann::json& from, KeyPath path);

}  // namespace deadshore::viz
