#include "io/pdf/column_widths.h"

#include <algorithm>
#include <cstddef>

namespace deadshore::io {
namespace {

/// The cap on widths under which the least widths add up to `width`.
double cap_for(std::span<const ColumnDemand> demands, double width) {
  std::vector<double> least;
  for (const ColumnDemand& demand : demands) least.push_back(demand.least);
  std::ranges::sort(least);
  double rest = width;
  for (std::size_t i = 0; i < least.size(); ++i) {
    const double even = rest / static_cast<double>(least.size() - i);
    if (least[i] > even) return even;
    rest -= least[i];
  }
  return width;
}

/// Lets the narrowest columns have their lines whole, while that leaves room for the others.
std::vector<ColumnDemand> with_whole_columns(std::span<const ColumnDemand> demands, double width) {
  constexpr double narrow = 0.22;
  constexpr double crowded = 0.75;
  std::vector<ColumnDemand> kept(demands.begin(), demands.end());
  double least = 0.0;
  std::vector<ColumnDemand*> by_width;
  for (ColumnDemand& demand : kept) {
    least += demand.least;
    by_width.push_back(&demand);
  }
  std::ranges::sort(by_width, {}, &ColumnDemand::whole);
  for (ColumnDemand* demand : by_width) {
    const double more = std::max(0.0, demand->whole - demand->least);
    if (demand->whole > narrow * width || least + more > crowded * width) continue;
    demand->least += more;
    least += more;
  }
  return kept;
}

}  // namespace

std::vector<double> column_widths(std::span<const ColumnDemand> asked, double width) {
  const std::vector<ColumnDemand> demands = with_whole_columns(asked, width);
  double least = 0.0;
  double most = 0.0;
  for (const ColumnDemand& demand : demands) {
    least += demand.least;
    most += std::max(demand.least, demand.most);
  }
  std::vector<double> widths;
  if (least > width) {
    const double cap = cap_for(demands, width);
    for (const ColumnDemand& demand : demands) widths.push_back(std::min(demand.least, cap));
    return widths;
  }
  for (const ColumnDemand& demand : demands) {
    const double natural = std::max(demand.least, demand.most);
    if (most <= width) {
      widths.push_back(most > 0.0 ? natural * width / most
                                  : width / static_cast<double>(demands.size()));
    } else {
      widths.push_back(demand.least + (natural - demand.least) * (width - least) / (most - least));
    }
  }
  return widths;
}

}  // namespace deadshore::io
