#include "viz/plan/plan_view.h"

#include "solver/job/beam_places.h"
#include "solver/site/pieces_in_way.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::viz {
namespace {

using mesh::Interval;
using solver::Job;
using solver::NeedleProp;
using solver::PropSide;

Interval around(double middle, double width) {
  return {middle - 0.5 * width, middle + 0.5 * width};
}

PlanBox box_around(double x, double wide, double z, double deep) {
  return {around(x, wide), around(z, deep)};
}

bool overlap(const PlanBox& a, const PlanBox& b) {
  constexpr double touch = 1e-6;
  return a.x.from < b.x.to - touch && b.x.from < a.x.to - touch && a.z.from < b.z.to - touch &&
         b.z.from < a.z.to - touch;
}

void add_prop(const Job& job, const solver::Needle& needle, const NeedleProp& prop,
              PlanParts& parts) {
  const double z = solver::place_of(prop, job.thickness);
  const solver::SolePlate& sole = prop.footing.sole;
  const bool down = prop.action == solver::PropAction::down;
  parts.props.push_back({fmt::format("{} props: {}", prop.mark, prop.prop.name),
                         box_around(needle.x, sole.prop_base, z, sole.prop_base),
                         prop.prop.outer.diameter, down});
  if (down) return;
  const PlanBox box = box_around(needle.x, sole.length, z, sole.timber.section.b);
  for (const PlanBox& other : parts.soles)
    parts.soles_overlap = parts.soles_overlap || overlap(box, other);
  parts.soles.push_back(box);
}

void add_needles(const Job& job, PlanParts& parts) {
  for (const solver::Needle& needle : job.needles) {
    PlanNeedle shown{needle.name, box_around(needle.x, needle.bearing_width, 0.0, job.thickness),
                     needle.frame.has_value()};
    if (needle.frame) {
      const solver::NeedleFrame& frame = job.needle_frames.at(*needle.frame);
      Interval reach;
      for (const NeedleProp& prop : frame.props) {
        const double z = solver::place_of(prop, job.thickness);
        reach = {std::min(reach.from, z), std::max(reach.to, z)};
        add_prop(job, needle, prop, parts);
      }
      shown.box = {around(needle.x, solver::width_of(frame.member)),
                   {reach.from - frame.overhang, reach.to + frame.overhang}};
    }
    parts.needles.push_back(shown);
  }
}

/// Places of the uprights: those that were worked out, else those that were given.
std::vector<double> uprights_of(const solver::JobResult& result, solver::ShoreId id) {
  std::vector<double> places;
  for (const solver::ShoreDesign& design : result.shores)
    if (design.shore == id)
      for (const solver::UprightLoad& upright : design.uprights) places.push_back(upright.x);
  if (!places.empty()) return places;
  const solver::ShoreFrame& frame = *result.job.dead_shores.at(index_of(id)).frame;
  if (const auto* row = std::get_if<solver::PropRow>(&frame.uprights)) return row->places;
  const double spacing = std::get<solver::StudRow>(frame.uprights).spacing;
  for (double x = frame.x.from; spacing > 0.0 && x <= frame.x.to + 1e-6; x += spacing)
    places.push_back(x);
  return places;
}

void add_shores(const solver::JobResult& result, PlanParts& parts) {
  for (std::size_t i = 0; i < result.job.dead_shores.size(); ++i) {
    const solver::DeadShore& shore = result.job.dead_shores[i];
    if (!shore.frame) {
      parts.unknown.push_back(shore.name);
      continue;
    }
    const solver::ShoreFrame& frame = *shore.frame;
    const double z = 0.5 * result.job.thickness + frame.distance;
    parts.shores.push_back({shore.name,
                            {frame.x, around(z, solver::width_of(frame.head))},
                            {frame.x, around(z, frame.footing.sole.timber.section.b)}});
    const auto* row = std::get_if<solver::PropRow>(&frame.uprights);
    const std::vector<double> places = uprights_of(result, solver::ShoreId{i});
    if (places.empty()) parts.unknown.push_back(shore.name + " (where its uprights stand)");
    for (const double x : places)
      if (row != nullptr) {
        parts.uprights.push_back({fmt::format("{}: {}", shore.name, row->prop.name),
                                  box_around(x, row->base, z, row->base),
                                  row->prop.outer.diameter});
      } else {
        const solver::StudRow& studs = std::get<solver::StudRow>(frame.uprights);
        parts.uprights.push_back({shore.name + ": studs",
                                  box_around(x, studs.stud.section.b, z, studs.stud.section.h),
                                  0.0});
      }
  }
}

void widen(Interval& z, const PlanBox& box) {
  z = {std::min(z.from, box.z.from), std::max(z.to, box.z.to)};
}

}  // namespace

PlanParts plan_parts(const solver::JobResult& result) {
  PlanParts parts;
  parts.z = around(0.0, result.job.thickness);
  add_needles(result.job, parts);
  add_shores(result, parts);
  for (const PlanNeedle& needle : parts.needles) widen(parts.z, needle.box);
  for (const PlanBox& sole : parts.soles) widen(parts.z, sole);
  for (const PlanShore& shore : parts.shores) {
    widen(parts.z, shore.head);
    widen(parts.z, shore.sole);
  }
  return parts;
}

PlanWay plan_way(const Job& job) {
  const solver::Lifting& lifting = job.lifting.value();
  const solver::BeamPlaces places = solver::places_of_beam(job);
  const double out = lifting.side == PropSide::inside ? 1.0 : -1.0;
  const solver::PiecesInWay found = solver::pieces_in_way(job, lifting.side);
  PlanWay way;
  way.inwards = -out;
  way.bounded = !found.pieces.empty();
  const int sections = lifting.one_at_a_time ? 1 : job.beam->count;
  double clear = job.beam->flange_width() / job.beam->count * sections + 2.0 * lifting.clearance;
  if (way.bounded) {
    clear = std::max(0.0,
                     std::ranges::min_element(found.pieces, {}, &solver::PieceInWay::clear)->clear);
  }
  const double face = 0.5 * job.thickness * out;
  const double far = face + out * clear;
  way.lane = {{std::min(lifting.room_left, lifting.room_right),
               std::max(lifting.room_left, lifting.room_right)},
              {std::min(face, far), std::max(face, far)}};
  const auto x_of = [&](double at) { return places.beam.x.from + at; };
  for (const solver::Stand& stand : lifting.stands)
    way.stands.push_back(
        {stand.name, box_around(x_of(stand.at), stand.width, 0.0, stand.depth), 0.0});
  for (const solver::Lifter& lifter : lifting.lifters) {
    const double mast = way.lane.z.middle() + out * lifter.load_distance;
    way.lifters.push_back(
        {lifter.name,
         {around(x_of(lifter.at), lifter.width),
          {std::min(mast, way.lane.z.middle()), std::max(mast, way.lane.z.middle())}},
         0.0});
  }
  return way;
}

}  // namespace deadshore::viz
