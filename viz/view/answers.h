#pragma once

#include <nlohmann/json_fwd.hpp>

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <string>
#include <vector>
/// Looking things up in results.json, where any of them may be missing.
/// What is said of a thing that was picked, from results.json alone. Lines of plain text, short
/// enough for the panel beside the wall.
namespace deadshore::viz {

using KeyPath = std::initializer_list<std::string>;

/// What lies at the end of a path of keys; null where there is nothing.
[[nodiscard]] const nlohmann::json* at_path(const nlohmann::json& from, KeyPath path);

[[nodiscard]] std::optional<double> number_at(const nlohmann::json& from, KeyPath path);

/// Empty where there is no text.
[[nodiscard]] std::string text_at(const nlohmann::json& from, KeyPath path);

/// The list at the end of a path; an empty one where there is none.
[[nodiscard]] const nlohmann::json& list_at(const nlohmann::json& from, KeyPath path);

/// The members under `checks` that belong to a support of supports.vtp, or to "beam": a needle
/// brings its props, a row of joists its dead shore, a beam's end its padstone and pier.
[[nodiscard]] std::vector<std::string> members_at(const nlohmann::json& answers,
                                                  const std::string& support);

/// Their checks, worst first as results.json has them: two lines each, utilisation and what is
/// checked, then clause and stage. What is past the first few is counted in the last line.
[[nodiscard]] std::vector<std::string> check_lines(const nlohmann::json& answers,
                                                   const std::vector<std::string>& members);

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
