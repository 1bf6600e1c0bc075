#include "viz/view/answer_paths.h"

#include <nlohmann/json.hpp>

namespace deadshore::viz {

using nlohmann::json;

const json* at_path(const json& from, KeyPath path) {
  const json* at = &from;
  for (const std::string& key : path) {
    if (!at->is_object()) return nullptr;
    const auto found = at->find(key);
    if (found == at->end()) return nullptr;
    at = &*found;
  }
  return at;
}

std::optional<double> number_at(const json& from, KeyPath path) {
  const json* found = at_path(from, path);
  return found == nullptr || !found->is_number() ? std::nullopt
                                                 : std::optional(found->get<double>());
}

std::string text_at(const json& from, KeyPath path) {
  const json* found = at_path(from, path);
  return found == nullptr || !found->is_string() ? "" : found->get<std::string>();
}

const json& list_at(const json& from, KeyPath path) {
  static const json nothing = json::array();
  const json* found = at_path(from, path);
  return found == nullptr || !found->is_array() ? nothing : *found;
}

}  // namespace deadshore::viz
