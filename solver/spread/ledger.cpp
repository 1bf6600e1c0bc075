#include "solver/spread/ledger.h"

#include <cstddef>
#include <utility>

namespace deadshore::solver {

Ledger::Ledger(const Job& job, const Supports& supports, std::vector<JambLandings> jambs)
    : support_count_(supports.count()), jambs_(std::move(jambs)) {
  things_.push_back({"masonry", job.masonry.unit_weight * job.thickness, true});
  for (const Lintel& lintel : job.lintels)
    things_.push_back({lintel.shape.name, lintel.unit_weight * lintel.thickness, true});
  first_line_load_ = static_cast<int>(things_.size());
  for (const LineLoad& load : job.line_loads) things_.push_back({load.name});
  first_point_load_ = static_cast<int>(things_.size());
  for (const PointLoad& load : job.point_loads) things_.push_back({load.name});
  entries_.resize(things_.size() * support_count_);
}

void Ledger::add(int thing, int support, double amount) {
  things_.at(thing).whole += amount;
  entry(thing, support).direct += amount;
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

SpreadSum Ledger::sum_of(int support, const std::string& name) const {
  SpreadSum sum;
  sum.support = name;
  for (std::size_t i = 0; i < things_.size(); ++i) {
    const Thing& thing = things_[i];
    const Entry& booked = entries_[i * support_count_ + support];
    const auto add_item = [&](double amount, bool over_opening) {
      if (amount <= 0.0) return;
      sum.items.push_back({thing.name, thing.has_area ? amount : 0.0, amount / thing.whole,
                           amount * thing.load_per_amount, over_opening});
      sum.total += sum.items.back().load;
    };
    add_item(booked.direct, false);
    add_item(booked.over_opening, true);
  }
  return sum;
}

}  // namespace deadshore::solver
