#include "viz/view/pick_text.h"

#include "viz/view/answer_paths.h"
#include "viz/view/check_lines.h"
#include "viz/view/wall_solid.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <string_view>

namespace deadshore::viz {
namespace {

using nlohmann::json;

const json& stage_at(const json& answers, std::size_t stage) {
  return answers.at("stages").at(stage);
}

std::string with_unit(std::optional<double> value, const char* unit) {
  return value ? fmt::format("{:.2f} {}", *value, unit) : std::string("none");
}

std::optional<double> hand_load_of(const json& answers, const std::string& support) {
  if (support == "left pier") return number_at(answers, {"hand", "base", "left"});
  if (support == "right pier") return number_at(answers, {"hand", "base", "right"});
  return number_at(answers, {"hand", "needles", needle_called(answers, support)});
}

/// One line a stage: its name and what `value_at` finds there.
template <class ValueAt>
std::vector<std::string> through_the_stages(const json& answers, const PickedAt& at,
                                            const char* unit, ValueAt value_at) {
  std::vector<std::string> lines;
  const std::size_t count = answers.at("stages").size();
  if (count < 2) return lines;
  lines.push_back(fmt::format("Through the stages ({}):", at.analysis));
  for (std::size_t stage = 0; stage < count; ++stage) {
    lines.push_back(fmt::format("{} {}: {}", stage == at.stage ? ">" : "  ",
                                text_at(stage_at(answers, stage), {"name"}),
                                with_unit(value_at(PickedAt{stage, at.analysis}), unit)));
  }
  return lines;
}

void append(std::vector<std::string>& lines, const std::vector<std::string>& more) {
  lines.insert(lines.end(), more.begin(), more.end());
}

}  // namespace

std::optional<double> reaction_of(const json& answers, const std::string& support,
                                  const PickedAt& at) {
  const json* analysis = at_path(stage_at(answers, at.stage), {"analyses", at.analysis});
  if (analysis == nullptr) return std::nullopt;
  if (support == "left pier") return number_at(*analysis, {"base", "left"});
  if (support == "right pier") return number_at(*analysis, {"base", "right"});
  if (support == "base under the cut") return number_at(*analysis, {"base", "cut"});
  if (support == "left end") return number_at(*analysis, {"thrust", "left"});
  if (support == "right end") return number_at(*analysis, {"thrust", "right"});
  if (support == "beam left end") return number_at(*analysis, {"beam", "reaction_left"});
  if (support == "beam right end") return number_at(*analysis, {"beam", "reaction_right"});
  constexpr std::string_view joists = "joists on ";
  if (support.starts_with(joists)) {
    return number_at(*analysis, {"joists", support.substr(joists.size()), "force"});
  }
  return number_at(*analysis, {"needles", needle_called(answers, support)});
}

std::vector<std::string> support_text(const json& answers, const std::string& support,
                                      const PickedAt& at) {
  const auto value_at = [&](const PickedAt& there) { return reaction_of(answers, support, there); };
  std::vector<std::string> lines = {support,
                                    fmt::format("Reaction now: {}", with_unit(value_at(at), "kN"))};
  if (const auto hand = hand_load_of(answers, support)) {
    lines.push_back(fmt::format("By hand, 45 degrees: {}", with_unit(hand, "kN")));
  }
  append(lines, through_the_stages(answers, at, "kN", value_at));
  append(lines, check_lines(answers, members_at(answers, support)));
  return lines;
}

std::vector<std::string> prop_text(const json& answers, const std::string& prop) {
  std::vector<std::string> lines = {prop};
  const json* frames = at_path(answers, {"needle_frames"});
  const json none = json::object();
  for (const auto& entry : (frames == nullptr ? none : *frames).items()) {
    const json& frame = entry.value();
    for (const json& one : list_at(frame, {"props"})) {
      if (prop != fmt::format("{} {} prop", entry.key(), text_at(one, {"mark"}))) continue;
      lines.push_back(fmt::format("Load at worst: {}", with_unit(number_at(one, {"load"}), "kN")));
      lines.push_back(
          fmt::format("By {}, stage {}", text_at(frame, {"method"}), text_at(frame, {"stage"})));
      lines.push_back(
          fmt::format("Extension: {:.0f} mm", number_at(one, {"extension"}).value_or(0.0)));
    }
  }
  append(lines, check_lines(answers, {prop}));
  return lines;
}

std::vector<std::string> beam_text(const json& answers, const PickedAt& at) {
  const auto part_at = [&](const PickedAt& there, const char* part) {
    return number_at(stage_at(answers, there.stage), {"analyses", there.analysis, "beam", part});
  };
  std::vector<std::string> lines = {
      "permanent beam", fmt::format("Moment now: {}", with_unit(part_at(at, "moment"), "kNm")),
      fmt::format("Shear now: {}", with_unit(part_at(at, "shear"), "kN")),
      fmt::format("Sag now: {}", with_unit(part_at(at, "sag"), "mm"))};
  append(lines, through_the_stages(answers, at, "kNm", [&](const PickedAt& there) {
           return part_at(there, "moment");
         }));
  append(lines, check_lines(answers, members_at(answers, "beam")));
  return lines;
}

bool beam_is_in(const json& answers, const PickedAt& at) {
  return at_path(stage_at(answers, at.stage), {"analyses", at.analysis, "beam"}) != nullptr;
}

std::vector<std::string> wall_warnings(const json& answers, const PickedAt& at) {
  std::vector<std::string> lines;
  const json* analysis = at_path(stage_at(answers, at.stage), {"analyses", at.analysis});
  if (analysis == nullptr) return {"Not worked out for this stage."};
  if (analysis->contains("no_equilibrium")) lines.emplace_back("The wall does not stand here.");
  double weight = 0.0;
  for (const json& patch : list_at(*analysis, {"loose"})) {
    weight += number_at(patch, {"weight"}).value_or(0.0);
  }
  if (weight > 0.0) lines.push_back(fmt::format("Loose masonry: {:.2f} kN", weight));
  return lines;
}

}  // namespace deadshore::viz
