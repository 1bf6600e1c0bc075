#include "solver/spread/ledger.h"

#include <cstddef>
#include <utility>

namespace deadshore::solver {

Ledger::Ledger(const Job& job, const Supports& supports, std::vector<JambLandings> jambs)
    : supports_(supports), support_count_(supports.count()), jambs_(std::move(jambs)) {
  things_.push_back({WallMasonry{}, "masonry", job.masonry.unit_weight * job.thickness, true});
  for (std::size_t i = 0; i < job.lintels.size(); ++i) {
    const Lintel& lintel = job.lintels[i];
    things_.push_back(
        {LintelId{i}, lintel.shape.name, lintel.unit_weight * lintel.thickness, true});
  }
  first_line_load_ = static_cast<int>(things_.size());
  for (std::size_t i = 0; i < job.line_loads.size(); ++i)
    things_.push_back({LineLoadId{i}, job.line_loads[i].name});
  first_point_load_ = static_cast<int>(things_.size());
  for (std::size_t i = 0; i < job.point_loads.size(); ++i)
    things_.push_back({PointLoadId{i}, job.point_loads[i].name});
  entries_.resize(things_.size() * support_count_);
}

void Ledger::add(int thing, int support, double amount) {
  things_.at(thing).whole += amount;
  entry(thing, support).direct += amount;
}

void Ledger::add_wedge(int thing, double x, double amount) {
  things_.at(thing).whole += amount;
  for (const Landing& landing : supports_.beside(x))
    entry(thing, landing.support).wedge += amount * landing.part;
}

void Ledger::add_over(int thing, const mesh::Opening& opening, int number, double x,
                      double amount) {
  things_.at(thing).whole += amount;
  const double to_right = (x - opening.left) / opening.width;
  const auto& [left, right] = jambs_.at(number);
  for (const Landing& landing : left)
    entry(thing, landing.support).over_opening += amount * (1.0 - to_right) * landing.part;
  for (const Landing& landing : right)
    entry(thing, landing.support).over_opening += amount * to_right * landing.part;
}

SpreadSum Ledger::sum_of(int number, std::optional<SupportId> support) const {
  SpreadSum sum;
  sum.support = support;
  for (std::size_t i = 0; i < things_.size(); ++i) {
    const Thing& thing = things_[i];
    const Entry& booked = entries_[i * support_count_ + number];
    const auto add_item = [&](double amount, bool over_opening, bool wedge) {
      if (amount <= 0.0) return;
      sum.items.push_back({thing.what, thing.name, thing.has_area ? amount : 0.0,
                           amount / thing.whole, amount * thing.load_per_amount, over_opening,
                           wedge});
      sum.total += sum.items.back().load;
    };
    add_item(booked.direct, false, false);
    add_item(booked.over_opening, true, false);
    add_item(booked.wedge, false, true);
  }
  return sum;
}

}  // namespace deadshore::solver
