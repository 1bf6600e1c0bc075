#include "solver/loads/take_down_sheet.h"

#include <fmt/format.h>

#include <utility>

namespace deadshore::solver {

namespace {

double& sum_of(ActionSums& sums, Action action) {
  switch (action) {
    case Action::dead:
      return sums.dead;
    case Action::floor_imposed:
      return sums.floor_imposed;
    case Action::roof_access:
      return sums.roof_access;
    case Action::snow:
      return sums.snow;
  }
  return sums.dead;
}

std::string name_of(const Layer& layer) {
  return layer.thickness > 0.0 ? fmt::format("{}, {:.6g} mm", layer.material, layer.thickness)
                               : layer.material;
}

}  // namespace

void TakeDownSheet::begin(TakenDown load) {
  taken_.loads.push_back(std::move(load));
}

void TakeDownSheet::add(const std::string& item, Action action, const Amount& amount,
                        double unit_load, const std::string& source) {
  if (amount.quantity == 0.0) return;
  const double total = amount.quantity * unit_load * amount.share;
  TakenDown& load = taken_.loads.back();
  sum_of(load.sums, action) += total;
  taken_.lines.push_back({load.element, item, action, amount.measure, amount.quantity, unit_load,
                          amount.share, total, amount.working, source});
}

void TakeDownSheet::add(const BuildUp& build_up, const Amount& amount) {
  for (const Layer& layer : build_up)
    add(name_of(layer), Action::dead, amount, layer.weight, layer.source);
}

void TakeDownSheet::add_if_any(const std::string& item, Action action, const Amount& amount,
                               double unit_load, const std::string& source) {
  if (unit_load > 0.0) add(item, action, amount, unit_load, source);
}

std::string in_metres(double length) {
  return fmt::format("{:.6g} m", length / 1e3);
}

std::string times(double share) {
  if (share == 1.0) return "";
  return share == 0.5 ? " x 1/2" : fmt::format(" x {:.6g}", share);
}

mesh::Interval centred(double middle, double length) {
  return {middle - 0.5 * length, middle + 0.5 * length};
}

Amount face_of_wall(double length, double height, double openings) {
  std::string working = fmt::format("{} x {}", in_metres(length), in_metres(height));
  if (openings > 0.0) working += fmt::format(" - {:.6g} m2", openings / 1e6);
  return {Measure::area, length * height - openings, 1.0, std::move(working)};
}

}  // namespace deadshore::solver
