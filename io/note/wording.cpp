#include "io/note/wording.h"

#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <cctype>
#include <cmath>
#include <string_view>
#include <variant>

namespace deadshore::io {
namespace {

const std::string no_value = "\u2013";

/// `value` with `decimals`, a true zero instead of "-0.0", and a dash for what is not finite.
std::string fixed(double value, int decimals) {
  if (!std::isfinite(value)) return no_value;
  const std::string printed = fmt::format("{:.{}f}", value, decimals);
  const bool is_zero = printed.find_first_of("123456789") == std::string::npos;
  return is_zero && printed.front() == '-' ? printed.substr(1) : printed;
}

std::string tube_words(const solver::Tube& tube) {
  return fmt::format("{} \u00d7 {}", millimetres(tube.diameter), significant(tube.wall, 3));
}

}  // namespace

std::string kilonewtons(double newtons) {
  return fixed(newtons / 1e3, 1);
}

std::string kilonewtons(double newtons, double error) {
  if (!std::isfinite(newtons) || !std::isfinite(error)) return kilonewtons(newtons);
  const double tenths = std::ceil(error / 100.0 - 1e-9);
  return kilonewtons(newtons) + "\u00a0\u00b1\u00a0" + fixed(tenths / 10.0, 1);
}

std::string fine_kilonewtons(double newtons) {
  return fixed(newtons / 1e3, 2);
}

std::string loose_kilonewtons(double newtons) {
  return fixed(newtons / 1e3, newtons < 1e3 ? 2 : 1);
}

std::string millimetres(double value) {
  const bool whole = std::abs(value - std::round(value)) < 0.05;
  return fixed(value, whole ? 0 : 1);
}

std::string whole_millimetres(double value) {
  return fixed(value, 0);
}

std::string fine_millimetres(double value) {
  return fixed(value, 2);
}

std::string square_metres(double square_mm) {
  return fixed(square_mm / 1e6, 3);
}

std::string two_decimals(double value) {
  return fixed(value, 2);
}

std::string percent(double part) {
  return fixed(100.0 * part, 1);
}

std::string significant(double value, int digits) {
  return std::isfinite(value) ? fmt::format("{:.{}g}", value, digits) : no_value;
}

std::string scientific(double value) {
  return std::isfinite(value) ? fmt::format("{:.1e}", value) : no_value;
}

std::string three_figures(double value) {
  const double size = std::abs(value);
  return fixed(value, size >= 100.0 ? 0 : size >= 10.0 ? 1 : size >= 0.1 || size == 0.0 ? 2 : 4);
}

std::string with_raised_powers(std::string words) {
  for (std::size_t at = 1; at < words.size(); ++at) {
    const bool ends =
        at + 1 == words.size() || std::isalnum(static_cast<unsigned char>(words[at + 1])) == 0;
    if (words[at - 1] != 'm' || !ends || (words[at] != '2' && words[at] != '3')) continue;
    const bool is_unit =
        at >= 2 && std::string_view("/ mc").find(words[at - 2]) != std::string_view::npos;
    if (is_unit) words.replace(at, 1, words[at] == '2' ? "\u00b2" : "\u00b3");
  }
  return words;
}

std::string factor_words(double factor) {
  return factor > 100.0 ? "over 100" : two_decimals(factor);
}

std::string lower_factor_words(double factor) {
  return factor_words(std::floor(100.0 * factor) / 100.0);
}

std::string upper_factor_words(double factor) {
  return factor_words(std::ceil(100.0 * factor) / 100.0);
}

std::string unit_weight(double newtons_per_cubic_mm) {
  return significant(newtons_per_cubic_mm * 1e6, 4) + " kN/m\u00b3";
}

std::string masonry_phrase(solver::MasonryModel model) {
  return fmt::format("{} masonry", solver::to_string(model));
}

std::string place_of(const solver::LineLoad& load) {
  const std::string range =
      fmt::format("x = {} to {} mm ({} m)", millimetres(load.x.from), millimetres(load.x.to),
                  significant(load.x.length() / 1e3, 4));
  return load.follows_top ? "on the top, " + range
                          : fmt::format("at {} mm, {}", millimetres(load.level), range);
}

std::string place_of(const solver::PointLoad& load) {
  return fmt::format("at {} mm, x = {} mm, over {} mm", millimetres(load.level),
                     millimetres(load.x), millimetres(load.bearing));
}

std::string in_stage(const solver::JobResult& result, const solver::StageResult& stage) {
  return is_staged(result) ? fmt::format(" in stage \u201c{}\u201d", stage.name) : "";
}

std::string as_sentence(std::string words) {
  if (!words.empty() && words.back() != '.') words += '.';
  return words;
}

std::string listed(std::span<const std::string> names) {
  std::string sentence;
  for (std::size_t index = 0; index < names.size(); ++index) {
    if (index > 0) sentence += index + 1 == names.size() ? " and " : ", ";
    sentence += names[index];
  }
  return sentence;
}

std::string made_of(const solver::NeedleMember& member) {
  if (const auto* steel = std::get_if<solver::SteelMember>(&member)) {
    return fmt::format("{} in {}, class {} in bending", steel->section.name,
                       solver::to_string(steel->grade), steel->class_in_bending);
  }
  const auto& timber = std::get<solver::TimberMember>(member);
  return fmt::format("timber {} \u00d7 {} mm, {}", millimetres(timber.section.b),
                     millimetres(timber.section.h), timber.strength_class.name);
}

std::string made_of(const solver::Prop& prop) {
  return fmt::format("{}, {} to {} mm long, tubes {} and {} mm", prop.name,
                     millimetres(prop.shortest), millimetres(prop.longest), tube_words(prop.outer),
                     tube_words(prop.inner));
}

std::string level_words(double level) {
  if (std::abs(level) < 0.05) return "level with the base";
  return fmt::format("{} mm {} the base", millimetres(std::abs(level)),
                     level > 0.0 ? "above" : "below");
}

std::string ground_words(const solver::Footing& footing) {
  if (!footing.suspended_floor.empty())
    return "the suspended floor \u201c" + footing.suspended_floor + "\u201d";
  std::string ground = footing.ground.name;
  if (footing.ground.presumed_bearing) {
    ground += fmt::format(", presumed {} kN/m\u00b2",
                          three_figures(*footing.ground.presumed_bearing * 1e3));
  }
  return ground;
}

}  // namespace deadshore::io
