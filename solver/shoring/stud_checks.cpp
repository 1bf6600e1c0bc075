#include "solver/shoring/stud_checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <utility>
#include <variant>

namespace deadshore::solver {

namespace {

constexpr double most_spread = 30.0;  // mm, 6.1.5(1)
constexpr double on_continuous_softwood = 1.25;

/// Clear lengths of plate beside a stud: to its neighbours, or to the plate's ends.
struct Beside {
  double left = 0.0;
  double right = 0.0;
  bool first = false;
  bool last = false;

  /// To the nearer neighbour.
  [[nodiscard]] double clear() const {
    constexpr double none = std::numeric_limits<double>::infinity();
    return std::min(first ? none : left, last ? none : right);
  }
};

double width_along(const StudRow& studs, const Upright& upright) {
  return upright.count * studs.stud.section.b;
}

Beside beside(const ShoreFrame& frame, const StudRow& studs, std::span<const Upright> uprights,
              std::size_t i) {
  const double half = 0.5 * width_along(studs, uprights[i]);
  const double x = uprights[i].x;
  Beside found;
  found.first = i == 0;
  found.last = i + 1 == uprights.size();
  found.left = found.first
                   ? x - half - frame.x.from
                   : x - half - uprights[i - 1].x - 0.5 * width_along(studs, uprights[i - 1]);
  found.right = found.last
                    ? frame.x.to - x - half
                    : uprights[i + 1].x - 0.5 * width_along(studs, uprights[i + 1]) - x - half;
  return found;
}

/// Mean of the spread on both sides.
double spread_of(const Beside& beside, double length) {
  const auto one = [&](double clear, bool to_end) {
    return std::clamp(to_end ? clear : 0.5 * clear, 0.0, std::min(most_spread, length));
  };
  return 0.5 * (one(beside.left, beside.first) + one(beside.right, beside.last));
}

/// EN 338 calls softwoods C and hardwoods D.
bool is_softwood(const TimberClass& strength_class) {
  return strength_class.name.starts_with('C');
}

}  // namespace

std::vector<Check> check_stud(const ShoreFrame& frame, std::span<const Upright> uprights,
                              std::size_t which, double factored_load, const CheckRules& rules) {
  const auto& studs = std::get<StudRow>(frame.uprights);
  const TimberMember& stud = studs.stud;
  const Upright& upright = uprights[which];
  const double length = upright_length(frame);
  const double along = studs.nogging ? 0.5 * length : length;
  Check compression =
      check_timber_compression(stud, factored_load / upright.count, length, along, rules.basis);
  if (upright.count > 1)
    compression.working = fmt::format("each of {}: {}", upright.count, compression.working);
  std::vector<Check> checks = {std::move(compression)};

  const Beside clear = beside(frame, studs, uprights, which);
  GrainBearing bearing;
  bearing.length = width_along(studs, upright);
  bearing.spread_each = spread_of(clear, bearing.length);
  const auto add = [&](const TimberMember& plate, double k_c90, const char* name) {
    bearing.width = std::min(stud.section.h, plate.section.b);
    bearing.k_c90 = k_c90;
    Check check = check_bearing_across_grain(plate, bearing, factored_load, rules.basis);
    check.check = name;
    checks.push_back(std::move(check));
  };
  const TimberMember& sole = frame.footing.sole.timber;
  const bool apart = clear.clear() >= 2.0 * sole.section.h;
  add(sole, apart && is_softwood(sole.strength_class) ? on_continuous_softwood : 1.0,
      "bearing on the sole");
  if (const auto* head = std::get_if<TimberMember>(&frame.head))
    add(*head, 1.0, "bearing on the head plate");
  return checks;
}

}  // namespace deadshore::solver
