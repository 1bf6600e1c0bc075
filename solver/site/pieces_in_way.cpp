#include "solver/site/pieces_in_way.h"

#include "solver/job/beam_places.h"

#include <fmt/format.h>

namespace deadshore::solver {

namespace {

mesh::Interval around(double middle, double width) {
  return {middle - 0.5 * width, middle + 0.5 * width};
}

void add_needle_props(const Job& job, PropSide side, PiecesInWay& found) {
  for (const Needle& needle : job.needles) {
    if (!needle.frame) {
      found.unknown.push_back(needle.name);
      continue;
    }
    for (const NeedleProp& prop : job.needle_frames[*needle.frame].props) {
      if (prop.side != side || prop.action != PropAction::up) continue;
      const double base = prop.footing.sole.prop_base;
      found.pieces.push_back({fmt::format("{} {} prop", needle.name, prop.mark),
                              around(needle.x, base), prop.distance - 0.5 * base});
    }
  }
}

void add_row(const std::string& shore, const ShoreFrame& frame, const PropRow& row,
             PiecesInWay& found) {
  if (row.places.empty()) found.unknown.push_back(shore);
  for (std::size_t i = 0; i < row.places.size(); ++i)
    found.pieces.push_back({fmt::format("{} P{}", shore, i + 1), around(row.places[i], row.base),
                            frame.distance - 0.5 * row.base});
}

void add_row(const std::string& shore, const ShoreFrame& frame, const StudRow& row,
             PiecesInWay& found) {
  const double width = row.stud.section.b;
  const double clear = frame.distance - 0.5 * row.stud.section.h;
  for (int i = 0; frame.x.from + i * row.spacing <= frame.x.to; ++i)
    found.pieces.push_back({fmt::format("{} stud {}", shore, i + 1),
                            around(frame.x.from + i * row.spacing, width), clear});
}

void add_shores(const Job& job, PiecesInWay& found) {
  const double top = places_of_beam(job).beam.y.to;
  for (const DeadShore& shore : job.dead_shores) {
    if (!shore.frame) {
      found.unknown.push_back(shore.name);
      continue;
    }
    if (shore.frame->floor_level >= top) continue;
    std::visit([&](const auto& row) { add_row(shore.name, *shore.frame, row, found); },
               shore.frame->uprights);
  }
}

}  // namespace

PiecesInWay pieces_in_way(const Job& job, PropSide side) {
  PiecesInWay found;
  add_needle_props(job, side, found);
  if (side == PropSide::inside) add_shores(job, found);
  return found;
}

}  // namespace deadshore::solver
