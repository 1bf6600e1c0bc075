#include "solver/needle/needle_advice.h"

#include "solver/checks/prop_checks.h"
#include "solver/job/error.h"
#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace deadshore::solver {

namespace {

constexpr double wasteful = 0.5;  // utilisation below which a lighter section is looked for
constexpr double step = 100.0;    // mm, by which props are moved

/// Worst utilisation of what depends on the needle's section: itself and the masonry above;
/// infinite where one of these checks could not be made, for that is no pass.
double worst_of_needle(const std::vector<Check>& checks, const std::string& needle) {
  double worst = 0.0;
  for (const Check& check : checks) {
    const bool own = check.member == needle && check.check != "frame buckling";
    if (own) worst = std::max(worst, check.utilisation());
  }
  return worst;
}

std::string section_sentence(const NeedleFrame& frame, const NeedleSite& site,
                             const NeedleDemand& demand, const MasonryAbove& masonry,
                             const CheckRules& rules, std::span<const SteelSection> sections) {
  const auto* present = std::get_if<SteelMember>(&frame.member);
  if (present == nullptr || sections.empty()) return {};
  const double used =
      worst_of_needle(check_needle(frame, site, demand, masonry, rules), demand.needle);
  if (used <= 1.0 && used >= wasteful) return {};
  const std::string at_present = std::isinf(used) ? "has a check that is not verified"
                                                  : fmt::format("is used to {:.0f}%", 100.0 * used);
  for (const SteelSection& section : sections) {
    if (used <= 1.0 && properties_of(section).mass >= present->properties.mass) break;
    try {
      NeedleFrame other = frame;
      other.member = steel_member(section, present->grade);
      const double its_use =
          worst_of_needle(check_needle(other, site, demand, masonry, rules), demand.needle);
      if (its_use > 1.0) continue;
      return fmt::format(
          "{} {}; the lightest section of the tables that passes is {} ({:.1f} kg/m), used to "
          "{:.0f}%.",
          present->section.name, at_present, section.name, properties_of(section).mass,
          100.0 * its_use);
    } catch (const MemberError&) {  // too deep for its props, or class 4: not a choice
    } catch (const SolveError&) {
    }
  }
  if (used <= 1.0) return {};
  return fmt::format("{} {}; no section of the tables passes here.", present->section.name,
                     at_present);
}

std::string prop_sentence(const NeedleProp& prop, const PropLoad& load, const CheckRules& rules,
                          std::span<const Prop> props) {
  if (check_prop(prop.prop, load.extension, load.load, rules.prop_basis).passes()) return {};
  const std::optional<PropChoice> weakest =
      weakest_prop_for(load.load, load.extension, props, rules.prop_basis);
  if (!weakest) {
    return fmt::format(
        "No prop of the tables carries the {} prop's {:.1f} kN at {:.2f} m: share the load between "
        "more props or needles.",
        prop.mark, load.load / 1000.0, load.extension / 1000.0);
  }
  return fmt::format("At {:.2f} m the {} prop's {:.1f} kN would be carried by {} ({:.1f} kN safe).",
                     load.extension / 1000.0, prop.mark, load.load / 1000.0, weakest->prop->name,
                     weakest->safe_load / 1000.0);
}

std::string moved_sentence(const NeedleFrame& frame, const NeedleSite& site, double load,
                           const NeedleAnswer& present, std::size_t which, double by) {
  NeedleFrame moved = frame;
  moved.props[which].distance += by;
  if (moved.props[which].distance <= 0.0) return {};
  NeedleAnswer answer;
  try {
    answer = analyse_needle(moved, site, {load, 1.0});
  } catch (const SolveError&) {  // would not stand there
    return {};
  }
  return fmt::format(
      "{:.0f} mm {} the wall, the {} prop would carry {:.1f} kN instead of {:.1f} kN and the "
      "needle's "
      "largest moment be {:.2f} kNm instead of {:.2f} kNm.",
      std::abs(by), by < 0.0 ? "nearer" : "farther from", frame.props[which].mark,
      answer.props[which].load / 1000.0, present.props[which].load / 1000.0,
      answer.largest_moment / 1e6, present.largest_moment / 1e6);
}

}  // namespace

std::vector<std::string> advise(const NeedleFrame& frame, const NeedleSite& site,
                                const NeedleDemand& demand, const MasonryAbove& masonry,
                                const CheckRules& rules, const NeedleChoices& choices) {
  std::vector<std::string> advice;
  const auto add = [&](std::string sentence) {
    if (!sentence.empty()) advice.push_back(std::move(sentence));
  };
  add(section_sentence(frame, site, demand, masonry, rules, choices.sections));
  const NeedleAnswer present = analyse_needle(frame, site, {demand.load, 1.0});
  for (std::size_t i = 0; i < frame.props.size(); ++i) {
    add(prop_sentence(frame.props[i], present.props[i], rules, choices.props));
    add(moved_sentence(frame, site, demand.load, present, i, -step));
  }
  return advice;
}

}  // namespace deadshore::solver
