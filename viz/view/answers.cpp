#include "viz/view/answers.h"

#include "viz/view/solids.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>
#include <string_view>
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

namespace {

using nlohmann::json;

constexpr std::size_t most_shown = 5;

/// What the permanent beam is called: the member that has padstones or piers. Empty without one.
std::string name_of_beam(const std::set<std::string>& members) {
  for (const std::string& member : members) {
    for (const char* part : {" left padstone", " left pier", " packing"}) {
      if (member.ends_with(part)) return member.substr(0, member.size() - std::string(part).size());
    }
  }
  return "";
}

bool is_part_of(const std::string& member, const std::string& whole) {
  return member == whole || member.starts_with(whole + " ");
}

bool belongs(const std::string& member, const std::string& support, const std::string& beam) {
  if (support == "beam") return !beam.empty() && is_part_of(member, beam);
  if (support == "left pier" || support == "right pier") return member.ends_with(" " + support);
  for (const std::string side : {"left", "right"}) {
    if (support != "beam " + side + " end") continue;
    return member == fmt::format("{} {} padstone", beam, side) ||
           member == fmt::format("{} {} pier", beam, side);
  }
  const std::string joists = "joists on ";
  if (support.starts_with(joists)) return is_part_of(member, support.substr(joists.size()));
  return is_part_of(member, support);
}

std::string verdict_of(const json& check) {
  const json* unverified = at_path(check, {"not_verified"});
  if (unverified != nullptr && *unverified == true) return "not verified";
  const std::optional<double> utilisation = number_at(check, {"utilisation"});
  if (!utilisation) return "no capacity";
  const json* passes = at_path(check, {"passes"});
  const bool passed = passes != nullptr && *passes == true;
  return fmt::format("{:.2f}{}", *utilisation, passed ? "" : " FAILS");
}

}  // namespace

std::vector<std::string> members_at(const json& answers, const std::string& support) {
  std::set<std::string> all;
  for (const json& check : list_at(answers, {"checks"})) all.insert(text_at(check, {"member"}));
  const std::string beam = name_of_beam(all);
  std::vector<std::string> found;
  std::ranges::copy_if(all, std::back_inserter(found),
                       [&](const std::string& member) { return belongs(member, support, beam); });
  return found;
}

std::vector<std::string> check_lines(const json& answers, const std::vector<std::string>& members) {
  std::vector<std::string> lines;
  std::size_t count = 0;
  for (const json& check : list_at(answers, {"checks"})) {
    const std::string member = text_at(check, {"member"});
    if (std::ranges::find(members, member) == members.end()) continue;
    if (++count > most_shown) continue;
    if (count == 1) lines.emplace_back("Checks, worst first:");
    lines.push_back(
        fmt::format("{}  {}, {}", verdict_of(check), member, text_at(check, {"check"})));
    lines.push_back(
        fmt::format("      {}; {}", text_at(check, {"clause"}), text_at(check, {"stage"})));
  }
  if (count == 0) lines.emplace_back("No check names it.");
  if (count > most_shown) {
    lines.push_back(fmt::format("and {} more: see note.html", count - most_shown));
  }
  return lines;
}

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
