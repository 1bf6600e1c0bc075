#include "io/note/member_wording.h"

#include "io/note/wording.h"

#include <fmt/format.h>

#include <cmath>
#include <variant>

namespace deadshore::io {

namespace {

std::string tube_words(const solver::Tube& tube) {
  return fmt::format("{} \u00d7 {}", millimetres(tube.diameter), significant(tube.wall, 3));
}

}  // namespace

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
