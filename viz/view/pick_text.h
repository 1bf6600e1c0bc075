#pragma once

#include <nlohmann/json_fwd.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// What is said of a thing that was picked, from results.json alone. Lines of plain text, short
/// enough for the panel beside the wall.
namespace deadshore::viz {

/// Where in the results: stage counts from 0.
struct PickedAt {
  std::size_t stage = 0;
  std::string analysis;
};

/// The force, kN, that a support of supports.vtp ("N1", "left pier", "base under the cut", "left
/// end", "joists on ...", "beam left end") gives the wall; none where it has none then.
[[nodiscard]] std::optional<double> reaction_of(const nlohmann::json& answers,
                                                const std::string& support, const PickedAt& at);

/// Its reaction now, by hand and through the stages, and its checks, worst first.
[[nodiscard]] std::vector<std::string> support_text(const nlohmann::json& answers,
                                                    const std::string& support, const PickedAt& at);

/// A prop of a needle's frame, by the name it has in needles.vtp ("N1 outer prop"): the load that
/// it is checked for, and its checks.
[[nodiscard]] std::vector<std::string> prop_text(const nlohmann::json& answers,
                                                 const std::string& prop);

/// The permanent beam: moment, shear and sag now and through the stages, and its checks.
[[nodiscard]] std::vector<std::string> beam_text(const nlohmann::json& answers, const PickedAt& at);

/// Whether the beam is in at that stage.
[[nodiscard]] bool beam_is_in(const nlohmann::json& answers, const PickedAt& at);

/// What the wall does not bear, or how much of it is loose, at that stage: nothing where all is
/// well.
[[nodiscard]] std::vector<std::string> wall_warnings(const nlohmann::json& answers,
                                                     const PickedAt& at);

}  // namespace deadshore::viz
