#include "solver/limit/limit_verdict.h"

#include "solver/limit/limit_remedies.h"
#include "solver/limit/stage_safety.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cctype>
#include <cmath>

namespace deadshore::solver {

namespace {

constexpr double few_bricks = 500.0;  // N
constexpr double small_share = 0.01;  // of the masonry above the soffit

/// Where a place is, to someone who stands before the wall.
std::string in_words(const Job& job, const StageState& state, mesh::Point p) {
  const mesh::Cut& cut = job.wall.cut;
  const double near = 300.0;  // an element and a half
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const Needle& needle = job.needles[i];
    const bool over = std::abs(p.x - needle.x) < 0.5 * needle.bearing_width + near &&
                      p.y > cut.soffit && p.y < cut.soffit + 2.0 * near;
    if (is_in(state.needles[i]) && over) return "over " + needle.name;
  }
  if (p.y < cut.soffit && p.x < cut.left) return "in the left pier";
  if (p.y < cut.soffit && p.x > cut.right) return "in the right pier";
  return fmt::format("at x = {:.2f} m, y = {:.2f} m", p.x / 1000.0, p.y / 1000.0);
}

std::string stress_in_words(double stress) {
  return stress < 0.02 ? fmt::format("{:.4f} N/mm2", stress) : fmt::format("{:.2f} N/mm2", stress);
}

std::string capital(std::string text) {
  if (!text.empty()) {
    text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  }
  return text;
}

/// A lower bound is rounded down and an upper one up.
std::string lower_in_words(double factor) {
  return fmt::format("{:.2f}", std::floor(100.0 * factor) / 100.0);
}
std::string upper_in_words(double factor) {
  return fmt::format("{:.2f}", std::ceil(100.0 * factor) / 100.0);
}

std::string on_supports(const StageState& state) {
  const bool is_propped =
      state.packed_on || std::ranges::any_of(state.needles, is_in) ||
      std::ranges::any_of(state.shore_tight, [](char is_tight) { return is_tight != 0; });
  return is_propped ? " What props it is taken as unyielding here and has checks of its own." : "";
}

/// \param what what it is about, to go before "stands"
std::string on_factor(const Job& job, const StageState& state, const LimitFindings& findings,
                      const StageSafety& safety, const std::string& what) {
  const std::string supports = on_supports(state);
  if (safety.upper_factor < 1.0) {
    return fmt::format("{} gives way at no more than {} times its loads, {}.{}", what,
                       upper_in_words(safety.upper_factor), in_words(job, state, findings.crushes),
                       supports);
  }
  if (safety.factor < 1.0) {
    return fmt::format(
        "{} is not shown to stand without tension: stresses in equilibrium were found up to {} "
        "times its loads, and {} times would make it give way {}.{}",
        what, lower_in_words(safety.factor), upper_in_words(safety.upper_factor),
        in_words(job, state, findings.crushes), supports);
  }
  if (safety.factor >= 0.99 * most_factor) {
    return fmt::format(
        "{} stands without tension in its mortar at any multiple of its loads that matters.{}",
        what, supports);
  }
  const std::string wide =
      is_wide(safety) ? ", which is too far apart to say where between the two" : "";
  return fmt::format(
      "{} stands without tension in its mortar up to {} times its loads at least; at no more than "
      "{} times masonry gives way {}{}.{}",
      what, lower_in_words(safety.factor), upper_in_words(safety.upper_factor),
      in_words(job, state, findings.crushes), wide, supports);
}

/// What was taken as gone.
std::string on_let_go(const StageSafety& safety) {
  if (safety.let_go < 1.0) return "";
  return fmt::format(
      " Left out of that, as nothing holds it without tension: {:.2f} kN of masonry, the layer under "
      "flat soffits and heads with it.",
      safety.let_go / 1000.0);
}

std::string on_tension(const Job& job, const StageSafety& safety) {
  const double own = job.masonry.tensile_strength;
  if (safety.tension_needed >= most_factor) {
    return "No tension in the mortar would hold it: masonry crushes under its loads.";
  }
  const std::string needed = stress_in_words(safety.tension_needed);
  if (safety.factor_with_tension < 1.0) {
    return fmt::format(
        "It needs {} of tension in its mortar, which is taken to have {}: do not come to this "
        "stage.",
        needed, stress_in_words(own));
  }
  return fmt::format(
      "It stands only by the tension of its mortar: it needs {} and is taken to have {}, with "
      "which it bears {:.1f} times its loads.",
      needed, stress_in_words(own), safety.factor_with_tension);
}

std::string on_remedies(const Remedies& remedies) {
  if (!remedies.alone.empty()) return capital(remedies.alone + " would hold it.");
  if (!remedies.together.empty()) {
    return fmt::format("Only together these would hold it: {}.", remedies.together);
  }
  return "Nothing that was tried would hold it: an end held, a needle or boards where it drops "
         "most.";
}

std::string on_weight(double weight) {
  return weight < few_bricks ? fmt::format("{:.0f} N", std::ceil(weight))
                             : fmt::format("{:.1f} kN", weight / 1000.0);
}

/// Whether the rest stands and what is loose is next to nothing beside it.
bool is_small(const Job& job, const LimitProblem& problem, const LimitFindings& findings,
              const StageSafety& safety) {
  double above = 0.0;
  for (int node = 0; node < problem.quads.node_count(); ++node) {
    const bool is_above =
        problem.quads.nodes[static_cast<std::size_t>(node)].y >= job.wall.cut.soffit;
    if (is_above) above += problem.masonry_weight(node);
  }
  return findings.has_equilibrium && safety.factor >= 1.0 && safety.loose_weight < few_bricks &&
         safety.loose_weight < small_share * above;
}

std::string on_small_loose(const Job& job, const StageState& state, const LettingGo& letting_go,
                           const StageSafety& safety) {
  std::string needs;
  if (safety.tension_needed < most_factor) {
    needs = fmt::format(" It takes {} of tension to hold; the mortar is taken to have {}.",
                        stress_in_words(safety.tension_needed),
                        stress_in_words(job.masonry.tensile_strength));
  }
  return fmt::format(
      "Only {} of masonry {} would fall without tension.{} Catch it or take it down before anyone "
      "goes under it.",
      on_weight(safety.loose_weight), in_words(job, state, letting_go.lowest), needs);
}

std::string on_no_equilibrium(const LettingGo& letting_go) {
  std::string found = "Without tension in the mortar this wall has no equilibrium";
  if (letting_go.spreads) found += ": it spreads sideways";
  if (letting_go.soffit_drops) {
    found += fmt::format("{} drops most at x = {:.2f} m", letting_go.spreads ? " and" : ": it",
                         letting_go.soffit_x / 1000.0);
  }
  return found + ".";
}

std::string on_loose(const Job& job, const LettingGo& letting_go, const StageSafety& safety) {
  std::string where;
  if (letting_go.soffit_drops) where = fmt::format(" between {}", letting_go.between_names);
  if (!letting_go.heads.empty()) {
    std::vector<std::string> names;
    for (const std::size_t opening : letting_go.heads) {
      names.push_back(job.wall.openings[opening].name);
    }
    where +=
        fmt::format("{} over \"{}\"", where.empty() ? "" : " and", fmt::join(names, "\" and \""));
  }
  return fmt::format("Without tension in the mortar {} of masonry{} would fall.",
                     on_weight(safety.loose_weight), where);
}

}  // namespace

std::string verdict_of(const Job& job, const StageState& state, const LimitProblem& problem,
                       const LimitFindings& findings, StageSafety& safety) {
  const std::string let_go = on_let_go(safety);
  if (findings.letting_go.empty()) {
    return on_factor(job, state, findings, safety, "The wall") + let_go;
  }
  const LettingGo letting_go = read_mechanism(job, state, problem, findings.letting_go);
  if (is_small(job, problem, findings, safety)) {
    return on_factor(job, state, findings, safety, "The wall") + let_go + " " +
           on_small_loose(job, state, letting_go, safety);
  }
  const Remedies remedies = remedies_for(job, problem, letting_go);
  safety.iterations += remedies.iterations;
  const std::string found = findings.has_equilibrium
                                ? on_loose(job, letting_go, safety) + " " +
                                      on_factor(job, state, findings, safety, "The rest") + let_go
                                : on_no_equilibrium(letting_go);
  return found + " " + on_remedies(remedies) + " " + on_tension(job, safety);
}

}  // namespace deadshore::solver
