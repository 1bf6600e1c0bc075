#include "io/job/member_reader.h"
#include "io/job/table_readers.h"
#include "solver/job/lifting_fields.h"
#include "solver/job/permanent_works_fields.h"
#include "solver/job/shore_frame_fields.h"

#include <fmt/format.h>

#include <cmath>
#include <initializer_list>

namespace deadshore::io {

namespace {

namespace fields = solver::fields;

/// Refuses keys that have no sense beside `with`.
void refuse_beside(const JobTable& table, std::string_view with,
                   std::initializer_list<std::string_view> strays) {
  for (const std::string_view key : strays) {
    if (!table.has(key)) continue;
    table.refuse(key, fmt::format("{} beside {}", table.written(key), in_quotes(with)),
                 "leave one of them out");
  }
}

/// Timber without its section, which is among the frame's own keys.
solver::NeedleMember read_head(const JobTable& table, const MemberTables& members) {
  if (table.one_of({"timber", "section"}) == "section") {
    refuse_beside(table, "section", {"width", "depth"});
    return read_steel_of_tables(table, members);
  }
  refuse_beside(table, "timber", {"grade"});
  return read_timber(table, "timber", members);
}

solver::PropRow read_prop_row(const JobTable& table, const MemberTables& members) {
  refuse_beside(table, "prop", {"stud_width", "stud_depth", "stud_spacing", "noggings"});
  solver::PropRow props;
  props.prop = read_prop(table, members);
  if (!table.has("places")) return props;
  refuse_beside(table, "places", {"most_apart"});
  props.places = table.quantities("places");
  if (props.places.empty()) {
    table.refuse("places", "an empty list", "two places or more are due, or leave it out");
  }
  return props;
}

solver::StudRow read_stud_row(const JobTable& table, const MemberTables& members) {
  refuse_beside(table, "stud", {"places", "most_apart", "prop_base"});
  solver::StudRow studs;
  studs.stud = read_timber(table, "stud", members);
  return studs;
}

/// That of the frame or of the shore; both must agree.
double read_joist_spacing(const JobTable& shore, const JobTable& frame) {
  if (!frame.has("joist_spacing")) {
    if (!shore.has("joist_spacing")) frame.require("joist_spacing");
    return shore.quantity("joist_spacing");
  }
  const double spacing = frame.quantity("joist_spacing");
  constexpr double same = 1e-6;  // mm
  if (shore.has("joist_spacing") && std::abs(spacing - shore.quantity("joist_spacing")) > same) {
    frame.refuse("joist_spacing",
                 fmt::format("{}, where the shore has {}", frame.written("joist_spacing"),
                             shore.written("joist_spacing")),
                 "the same joists are due");
  }
  return spacing;
}

solver::ShoreFrame read_shore_frame(const JobTable& shore, const JobTable& table,
                                    const MemberTables& members) {
  solver::ShoreFrame frame;
  frame.head = read_head(table, members);
  if (table.one_of({"prop", "stud"}) == "prop") {
    frame.uprights = read_prop_row(table, members);
  } else {
    frame.uprights = read_stud_row(table, members);
  }
  frame.footing.sole.timber = read_timber(table, "sole_timber", members);
  frame = read(table, fields::shore_frame, std::move(frame));
  frame.joist_spacing = read_joist_spacing(shore, table);
  if (!table.has("sole_length")) frame.footing.sole.length = frame.x.length();
  read_ground(table, members, frame.footing);
  return frame;
}

solver::Lifter read_lifter(const JobTable& table) {
  solver::Lifter lifter;
  if (table.has("own_weight") || table.has("weight_behind") || table.has("load_beyond")) {
    lifter.tipping.emplace();
  }
  lifter = read(table, fields::lifter, std::move(lifter));
  lifter.capacity =
      read_capacity(table.table("capacity").value(), fields::lifter_capacity, "distance");
  return lifter;
}

solver::Stand read_stand(const JobTable& table, const MemberTables& members) {
  solver::Stand stand;
  stand.leg = {.section = {},
               .strength_class = read_strength_class(table, "leg_timber", members),
               .duration = solver::LoadDuration::permanent,
               .service = table.choice<solver::ServiceClass>("service_class")};
  stand = read(table, fields::stand, std::move(stand));
  const JobTable fixing = table.table("fixing").value();
  static_cast<void>(fixing.one_of({"capacity", "diameter"}));
  stand.fixing = read(fixing, fields::fixing);
  return stand;
}

}  // namespace

solver::PermanentBeam read_beam(const JobTable& table, const MemberTables& members) {
  solver::PermanentBeam beam = read(table, fields::beam);
  beam.member = read_steel_of_tables(table, members);
  beam.padstone = read_single(table, fields::padstone);
  beam.packing = read_single(table, fields::packing);
  return beam;
}

solver::DeadShore read_dead_shore(const JobTable& table, const std::vector<solver::LineLoad>& loads,
                                  const MemberTables& members) {
  solver::DeadShore shore;
  shore.carries = solver::LineLoadId(place_of_named(table, "carries", loads, "line loads"));
  if (table.has("joist_gap") || table.has("joist_stiffness") || table.has("joist_spacing")) {
    shore.joist_ends.emplace();
  }
  shore = read(table, fields::dead_shore, std::move(shore));
  if (const std::optional<JobTable> frame = table.table("frame")) {
    shore.frame = read_shore_frame(table, *frame, members);
  }
  return shore;
}

solver::Lifting read_lifting(const JobTable& table, const MemberTables& members) {
  solver::Lifting lifting = read(table, fields::lift);
  for (const NamedTable& entry : tables_of(table, fields::lifter)) {
    lifting.lifters.push_back(read_lifter(entry.table));
  }
  for (const NamedTable& entry : tables_of(table, fields::stand)) {
    lifting.stands.push_back(read_stand(entry.table, members));
  }
  return lifting;
}

}  // namespace deadshore::io
