#include "solver/shoring/shore_remedies.h"

#include "solver/checks/prop_checks.h"
#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <variant>

namespace deadshore::solver {

namespace {

constexpr double newtons_per_kilonewton = 1000.0;

/// A change to the shore, and what it is called.
struct Variant {
  ShoreFrame frame;
  std::string words;
};

/// Which checks a remedy is for.
using Concerns = std::function<bool(const Check&)>;

const Check* worst_failure(const std::vector<Check>& checks, const Concerns& concerns) {
  const Check* worst = nullptr;
  for (const Check& check : checks) {
    if (check.not_verified || check.passes() || !concerns(check)) continue;
    if (worst == nullptr || check.utilisation() > worst->utilisation()) worst = &check;
  }
  return worst;
}

bool would_pass(const ShoreCase& asked, const Variant& variant, double spacing,
                const Concerns& concerns) {
  DeadShore changed = asked.shore;
  changed.frame = variant.frame;
  try {
    const ShoreAnswer answer = answer_at({changed, asked.loads, asked.rules}, spacing);
    return !answer.service.uprights.empty() && worst_failure(answer.checks, concerns) == nullptr;
  } catch (const MemberError&) {  // its props do not reach any more: not a choice
    return false;
  }
}

std::string sentence_for(const ShoreCase& asked, const std::vector<Variant>& variants,
                         double spacing, const ShoreAnswer& answer, const Concerns& concerns,
                         const std::string& else_do) {
  const Check* failure = worst_failure(answer.checks, concerns);
  if (failure == nullptr) return {};
  const std::string fails = fmt::format("{}, {}, is used to {:.0f}%", failure->member,
                                        failure->check, 100.0 * failure->utilisation());
  for (const Variant& variant : variants)
    if (would_pass(asked, variant, spacing, concerns))
      return fmt::format("{}; {} would pass.", fails, variant.words);
  return fmt::format("{}; {}.", fails, else_do);
}

/// Sawn sizes no smaller than the present one, the lightest first.
std::vector<Variant> timber_plates(const ShoreFrame& frame, const TimberMember& present) {
  constexpr std::array widths = {75.0, 100.0, 150.0, 200.0};
  constexpr std::array depths = {100.0, 150.0, 200.0, 225.0, 250.0, 300.0};
  std::vector<TimberSection> sections;
  sections.reserve(depths.size() * (widths.size() + 1));
  for (const double depth : depths) sections.push_back({present.section.b, depth});
  for (const double width : widths)
    for (const double depth : depths) sections.push_back({width, depth});
  std::erase_if(sections, [&](const TimberSection& section) {
    return section.b < present.section.b || section.h < present.section.h ||
           section.b > section.h || section.area() <= present.section.area();
  });
  std::ranges::stable_sort(sections, {}, &TimberSection::area);
  std::vector<Variant> variants;
  for (const TimberSection& section : sections) {
    Variant variant{frame, fmt::format("a head plate {:.0f} x {:.0f} mm of {}", section.b,
                                       section.h, present.strength_class.name)};
    std::get<TimberMember>(variant.frame.head).section = section;
    variants.push_back(std::move(variant));
  }
  return variants;
}

std::vector<Variant> head_plates(const Job& job, const ShoreFrame& frame) {
  if (const auto* timber = std::get_if<TimberMember>(&frame.head))
    return timber_plates(frame, *timber);
  std::vector<Variant> variants;
  const auto& steel = std::get<SteelMember>(frame.head);
  for (const SteelSection& section : job.section_choices) {
    if (properties_of(section).mass <= steel.properties.mass) continue;
    Variant variant{frame, fmt::format("{} as head plate", section.name)};
    variant.frame.head = steel_member(section, steel.grade);
    variants.push_back(std::move(variant));
  }
  return variants;
}

std::vector<Variant> soles(const ShoreFrame& frame) {
  constexpr std::array widths = {225.0, 300.0, 450.0, 600.0};
  constexpr std::array thicknesses = {50.0, 75.0, 100.0, 150.0};
  const SolePlate& sole = frame.footing.sole;
  const TimberSection& present = sole.timber.section;
  constexpr double beyond = 200.0;
  Variant longer{frame, fmt::format("a sole {:.0f} mm beyond the row at both ends", beyond)};
  longer.frame.footing.sole.length = std::max(sole.length, frame.x.length() + 2.0 * beyond);
  std::vector<Variant> variants = {std::move(longer)};
  for (const double width : widths) {
    for (const double thickness : thicknesses) {
      if (width < present.b || thickness < present.h) continue;
      Variant variant{frame, fmt::format("a sole {:.0f} x {:.0f} mm", width, thickness)};
      variant.frame.footing.sole.timber.section = {width, thickness};
      variants.push_back(std::move(variant));
    }
  }
  return variants;
}

std::vector<Variant> closer_studs(const ShoreFrame& frame) {
  std::vector<Variant> variants;
  const auto* studs = std::get_if<StudRow>(&frame.uprights);
  if (studs == nullptr) return variants;
  if (!studs->nogging) {
    Variant variant{frame, "the same studs with noggings at mid-height"};
    std::get<StudRow>(variant.frame.uprights).nogging = true;
    variants.push_back(std::move(variant));
  }
  for (const double spacing : {600.0, 500.0, 400.0, 300.0}) {
    if (spacing >= studs->spacing) continue;
    Variant closer{frame, fmt::format("studs at {:.0f} mm", spacing)};
    std::get<StudRow>(closer.frame.uprights).spacing = spacing;
    variants.push_back(closer);
    if (studs->nogging) continue;
    closer.words += " with noggings at mid-height";
    std::get<StudRow>(closer.frame.uprights).nogging = true;
    variants.push_back(std::move(closer));
  }
  return variants;
}

/// The weakest prop that carries the most loaded one's load.
std::string prop_sentence(const Job& job, const ShoreCase& asked, const ShoreAnswer& answer) {
  const Check* failure = worst_failure(
      answer.checks, [](const Check& check) { return check.check == "prop strength"; });
  if (failure == nullptr) return {};
  const double extension = upright_length(*asked.shore.frame);
  const double load = failure->demand * newtons_per_kilonewton;
  const auto choice = weakest_prop_for(load, extension, job.prop_choices, asked.rules.prop_basis);
  const std::string fails =
      fmt::format("{} carries {:.1f} kN where {:.1f} kN is safe at {:.2f} m", failure->member,
                  failure->demand, failure->capacity, extension / 1000.0);
  if (!choice) return fails + "; no prop of the tables carries it: put props closer.";
  return fmt::format("{}; {} ({:.1f} kN safe) would carry it.", fails, choice->prop->name,
                     choice->safe_load / newtons_per_kilonewton);
}

}  // namespace

std::vector<std::string> remedies(const Job& job, const ShoreCase& asked, double spacing,
                                  const ShoreAnswer& answer) {
  const ShoreFrame& frame = *asked.shore.frame;
  const bool studs = stands_on_studs(frame);
  const Concerns on_foot = [](const Check& check) {
    return check.check == "ground pressure" || check.check == "sole bending" ||
           check.check == "prop base on sole";
  };
  const Concerns on_head = [](const Check& check) { return check.member.ends_with(" head plate"); };
  const Concerns on_stud = [&](const Check& check) {
    return studs && !on_foot(check) && !on_head(check);
  };
  std::vector<std::string> sentences = {
      sentence_for(asked, head_plates(job, frame), spacing, answer, on_head,
                   "no head plate tried passes: put uprights closer"),
      prop_sentence(job, asked, answer),
      sentence_for(asked, closer_studs(frame), spacing, answer, on_stud,
                   "neither noggings nor closer studs do: larger studs are due"),
      sentence_for(asked, soles(frame), spacing, answer, on_foot,
                   "no sole tried passes: put uprights closer, or go to better ground")};
  std::erase_if(sentences, [](const std::string& sentence) { return sentence.empty(); });
  return sentences;
}

}  // namespace deadshore::solver
