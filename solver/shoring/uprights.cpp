#include "solver/shoring/uprights.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <variant>

namespace deadshore::solver {

namespace {

std::vector<Upright> evenly(mesh::Interval x, double most_apart) {
  const int bays = std::max(1, static_cast<int>(std::ceil(x.length() / most_apart - 1e-9)));
  std::vector<Upright> row;
  for (int i = 0; i <= bays; ++i)
    row.push_back({{}, std::lerp(x.from, x.to, static_cast<double>(i) / bays), {}, 1});
  return row;
}

std::vector<Upright> props_of(const PropRow& props, const ShoreFrame& frame, double most_apart) {
  std::vector<Upright> row;
  for (const double x : props.places) row.push_back({{}, x, {}, 1});
  if (!row.empty()) return row;
  const double inset = std::min(farthest_from_end, 0.25 * frame.x.length());
  return evenly({frame.x.from + inset, frame.x.to - inset}, most_apart);
}

std::vector<Upright> studs_of(const StudRow& studs, const ShoreFrame& frame) {
  const double half = 0.5 * studs.stud.section.b;
  std::vector<Upright> row;
  const double last = frame.x.to - half;
  for (double x = frame.x.from + half; x < last - studs.stud.section.b; x += studs.spacing)
    row.push_back({{}, x, {}, 1});
  row.push_back({{}, last, {}, 1});
  return row;
}

Upright& nearest_to(std::vector<Upright>& row, double x) {
  return *std::ranges::min_element(row, {},
                                   [x](const Upright& upright) { return std::abs(upright.x - x); });
}

void add_for(const HeadLoad& load, const ShoreFrame& frame, std::vector<Upright>& row) {
  Upright& nearest = nearest_to(row, load.x);
  const double away = std::abs(nearest.x - load.x);
  if (const auto* studs = std::get_if<StudRow>(&frame.uprights)) {
    if (away < studs->stud.section.b) {
      nearest.count = 2;
      nearest.extra_for = load.from;
      return;
    }
  } else if (away <= std::max(0.5 * frame.joist_spacing, std::get<PropRow>(frame.uprights).base)) {
    return;
  }
  row.push_back({{}, load.x, load.from, 1});
}

void mark(const std::string& shore, const ShoreFrame& frame, std::vector<Upright>& row) {
  std::ranges::stable_sort(row, {}, &Upright::x);
  const char* const kind = stands_on_studs(frame) ? "stud " : "P";
  for (std::size_t i = 0; i < row.size(); ++i)
    row[i].mark = fmt::format("{} {}{}", shore, kind, i + 1);
}

std::vector<Upright> unmarked_row(const ShoreFrame& frame, double most_apart) {
  if (const auto* studs = std::get_if<StudRow>(&frame.uprights)) return studs_of(*studs, frame);
  return props_of(std::get<PropRow>(frame.uprights), frame, most_apart);
}

}  // namespace

std::vector<Upright> uprights_of(const DeadShore& shore, const RowLoads& loads, double most_apart) {
  const ShoreFrame& frame = *shore.frame;
  std::vector<Upright> row = unmarked_row(frame, most_apart);
  if (stands_on_studs(frame) || proposes_places(frame))
    for (const HeadLoad& load : loads.points) add_for(load, frame, row);
  mark(shore.name, frame, row);
  return row;
}

std::vector<Upright> plain_row(const DeadShore& shore, double most_apart) {
  std::vector<Upright> row = unmarked_row(*shore.frame, most_apart);
  mark(shore.name, *shore.frame, row);
  return row;
}

}  // namespace deadshore::solver
