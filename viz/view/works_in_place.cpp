#include "viz/view/works_in_place.h"

#include "viz/view/answer_paths.h"

#include <nlohmann/json.hpp>

namespace deadshore::viz {

bool needle_is_in(const nlohmann::json& answers, std::size_t stage, const std::string& needle) {
  bool is_in = false;
  bool is_followed = false;
  const nlohmann::json& stages = list_at(answers, {"stages"});
  for (std::size_t i = 0; i <= stage && i < stages.size(); ++i) {
    if (at_path(stages[i], {"operations"}) == nullptr) continue;
    is_followed = true;
    for (const nlohmann::json& operation : list_at(stages[i], {"operations"})) {
      if (operation == "fit " + needle) is_in = true;
      if (operation == "release " + needle) is_in = false;
    }
  }
  return is_in || !is_followed;
}

}  // namespace deadshore::viz
