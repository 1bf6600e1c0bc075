#include "solver/loads/take_down_sheet.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

namespace deadshore::solver {

namespace {

/// Area on plan whose load the rafters bring from their run alone.
Amount run_on_plan(const Roof& roof) {
  return {
      Measure::area, roof.run * roof.x.length(), roof.share,
      fmt::format("{} x {}{}", in_metres(roof.run), in_metres(roof.x.length()), times(roof.share))};
}

/// The same with the overhang beyond the wall, which the wall takes whole.
Amount rafters_on_plan(const Roof& roof) {
  if (roof.overhang == 0.0) return run_on_plan(roof);
  const double length = roof.x.length();
  const std::string width = roof.run == 0.0
                                ? in_metres(roof.overhang)
                                : fmt::format("({}{} + {})", in_metres(roof.run), times(roof.share),
                                              in_metres(roof.overhang));
  return {Measure::area, (roof.run * roof.share + roof.overhang) * length, 1.0,
          fmt::format("{} x {}", width, in_metres(length))};
}

Amount on_slope(Amount plan, double pitch) {
  if (pitch == 0.0) return plan;
  plan.quantity /= std::cos(pitch * std::numbers::pi / 180.0);
  plan.working += fmt::format(" / cos {:.6g} deg", pitch);
  return plan;
}

void add_roof(const Roof& roof, const Amount& plan, const Amount& ceiling, TakeDownSheet& sheet) {
  sheet.add(roof.on_slope, on_slope(plan, roof.pitch));
  sheet.add(roof.on_plan, ceiling);
  sheet.add_if_any("access to the roof", Action::roof_access, plan, roof.access,
                   roof.access_source);
  sheet.add_if_any("snow", Action::snow, plan, roof.snow, roof.snow_source);
}

}  // namespace

void take_down(const Roof& roof, TakeDownSheet& sheet) {
  if (roof.run > 0.0 || roof.overhang > 0.0) {
    sheet.begin({roof.name, "", {}, true, roof.level, roof.follows_top, roof.x});
    add_roof(roof, rafters_on_plan(roof), run_on_plan(roof), sheet);
  }
  for (const Purlin& purlin : roof.purlins) {
    sheet.begin(
        {purlin.name, "", {}, false, purlin.level, false, centred(purlin.x, purlin.bearing), true});
    const Amount plan{Measure::area, purlin.width * purlin.span, purlin.share,
                      fmt::format("{} x {}{}", in_metres(purlin.width), in_metres(purlin.span),
                                  times(purlin.share))};
    add_roof(roof, plan, plan, sheet);
  }
}

}  // namespace deadshore::solver
