#include "solver/shoring/shore_advice.h"

#include "solver/shoring/shore_remedies.h"

#include <fmt/format.h>

#include <algorithm>
#include <variant>

namespace deadshore::solver {

namespace {

constexpr double metre = 1000.0;
constexpr double kilonewton = 1000.0;

using Sentences = std::vector<std::string>;

void add_share(const DeadShore& shore, Sentences& advice) {
  if (shore.share >= 1.0) return;
  advice.push_back(fmt::format(
      "The wall is analysed with {:.0f}% of the floor on the shore; the shore is worked "
      "out for all of it, in case all of it comes.",
      100.0 * shore.share));
}

void add_beside(const ShoreFrame& frame, const RowLoads& loads, Sentences& advice) {
  for (const std::string& name : loads.beside)
    advice.push_back(fmt::format(
        "\"{}\" reaches beyond the row, which is from x = {:.2f} m to {:.2f} m: what is "
        "beyond does not come on this shore and needs joists that stay on the wall, or "
        "a longer row.",
        name, frame.x.from / metre, frame.x.to / metre));
}

void add_spacing(const ShoreCase& asked, const SpacingFound& spacing, Sentences& advice) {
  if (!proposes_places(*asked.shore.frame)) return;
  const double given = std::get<PropRow>(asked.shore.frame->uprights).most_apart;
  const std::string as_given =
      given > 0.0 ? fmt::format("; {:.2f} m at most is given", given / metre) : std::string();
  if (!spacing.largest) {
    advice.push_back(fmt::format(
        "At no spacing of the props up to {:.1f} m does everything pass: at {:.1f} m {}, {}, is "
        "used to {:.0f}%{}.",
        widest_spacing / metre, spacing.failing / metre, spacing.fails.member, spacing.fails.check,
        100.0 * spacing.fails.utilisation(), as_given));
    return;
  }
  const std::string limit =
      spacing.failing > 0.0
          ? fmt::format("at {:.1f} m {}, {}, would be used to {:.0f}%", spacing.failing / metre,
                        spacing.fails.member, spacing.fails.check,
                        100.0 * spacing.fails.utilisation())
          : fmt::format("no more than {:.1f} m is proposed (common practice, no source)",
                        widest_spacing / metre);
  advice.push_back(
      fmt::format("The largest spacing of the props, in steps of {:.0f} mm, at which everything "
                  "passes is {:.1f} m; {}{}.",
                  spacing_step, *spacing.largest / metre, limit, as_given));
}

double largest_load(const ShoreAnswer& answer) {
  if (answer.service.uprights.empty()) return 0.0;
  return *std::ranges::max_element(answer.service.uprights);
}

/// What the uprights under loads at points spare the others.
void add_extras(const ShoreCase& asked, double spacing, const ShoreAnswer& answer,
                Sentences& advice) {
  const char* const kind = stands_on_studs(*asked.shore.frame) ? "stud" : "prop";
  bool any = false;
  for (std::size_t i = 0; i < answer.uprights.size() && !answer.service.uprights.empty(); ++i) {
    const Upright& upright = answer.uprights[i];
    if (upright.extra_for.empty()) continue;
    any = true;
    advice.push_back(fmt::format("{} {} under \"{}\" at x = {:.2f} m; {} takes {:.1f} kN.",
                                 upright.count > 1 ? "Double the" : "Put an extra", kind,
                                 upright.extra_for, upright.x / metre, upright.mark,
                                 answer.service.uprights[i] / kilonewton));
  }
  if (!any) return;
  const ShoreAnswer without =
      work_out(asked.shore, plain_row(asked.shore, spacing), asked.loads, asked.rules, {});
  if (without.service.uprights.empty()) return;
  advice.push_back(
      fmt::format("Without them the most loaded {} would carry {:.1f} kN instead of {:.1f} kN.",
                  kind, largest_load(without) / kilonewton, largest_load(answer) / kilonewton));
}

/// Props at given places, and a load at a point that none of them stands under.
void add_missing(const ShoreCase& asked, const ShoreAnswer& answer, Sentences& advice) {
  const ShoreFrame& frame = *asked.shore.frame;
  if (stands_on_studs(frame) || proposes_places(frame) || answer.service.uprights.empty()) return;
  for (const HeadLoad& load : asked.loads.points) {
    const bool under = std::ranges::any_of(answer.uprights, [&](const Upright& upright) {
      return std::abs(upright.x - load.x) <= 0.5 * frame.joist_spacing;
    });
    if (under) continue;
    std::vector<Upright> more = answer.uprights;
    more.push_back({asked.shore.name + " extra", load.x, load.from, 1});
    std::ranges::stable_sort(more, {}, &Upright::x);
    const ShoreAnswer with = work_out(asked.shore, std::move(more), asked.loads, asked.rules, {});
    if (with.service.uprights.empty()) continue;
    advice.push_back(fmt::format(
        "A prop under \"{}\" at x = {:.2f} m would bring the most loaded prop from {:.1f} kN to "
        "{:.1f} kN.",
        load.from, load.x / metre, largest_load(answer) / kilonewton,
        largest_load(with) / kilonewton));
  }
}

void add_floor(const ShoreFrame& frame, Sentences& advice) {
  if (frame.footing.suspended_floor.empty()) return;
  advice.push_back(
      fmt::format("It stands on {}, a suspended floor: take props on below it, one under another, "
                  "down to solid ground.",
                  frame.footing.suspended_floor));
}

}  // namespace

std::vector<std::string> advise_on_shore(const Job& job, const ShoreCase& asked,
                                         const SpacingFound& spacing, const ShoreAnswer& answer) {
  Sentences advice;
  add_share(asked.shore, advice);
  add_beside(*asked.shore.frame, asked.loads, advice);
  add_spacing(asked, spacing, advice);
  add_extras(asked, spacing.used, answer, advice);
  add_missing(asked, answer, advice);
  for (std::string& sentence : remedies(job, asked, spacing.used, answer))
    advice.push_back(std::move(sentence));
  add_floor(*asked.shore.frame, advice);
  return advice;
}

}  // namespace deadshore::solver
