#include "viz/view/check_lines.h"

#include "viz/view/answer_paths.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>

namespace deadshore::viz {
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

}  // namespace deadshore::viz
