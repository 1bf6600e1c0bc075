#include "io/job/shore_frame_reader.h"

#include "io/tables/member_choice.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <string_view>

namespace deadshore::io {

namespace {

/// Refuses keys that have no sense beside `with`.
void refuse_beside(const JobTable& table, std::string_view with,
                   std::initializer_list<std::string_view> strays) {
  for (const std::string_view key : strays) {
    if (!table.has(key)) continue;
    table.refuse(key, fmt::format("{} beside {}", table.written(key), in_quotes(std::string(with))),
                 "leave one of them out");
  }
}

solver::TimberMember read_timber(const JobTable& table, std::string_view strength_class,
                                 std::string_view width, std::string_view depth,
                                 const MemberTables& members) {
  return {.section = {.b = table.quantity(width), .h = table.quantity(depth)},
          .strength_class = read_strength_class(table, strength_class, members),
          .duration = read_duration(table),
          .service = read_service_class(table)};
}

solver::NeedleMember read_head(const JobTable& table, const MemberTables& members) {
  if (table.one_of("timber, section") == "section") {
    refuse_beside(table, "section", {"width", "depth"});
    return read_steel_of_tables(table, members);
  }
  refuse_beside(table, "timber", {"grade"});
  return read_timber(table, "timber", "width", "depth", members);
}

solver::PropRow read_props(const JobTable& table, const MemberTables& members) {
  refuse_beside(table, "prop", {"stud_width", "stud_depth", "stud_spacing", "noggings"});
  solver::PropRow props;
  props.prop =
      known_member(table, "prop", [&](const std::string& name) { return members.prop(name); });
  props.base = table.quantity("prop_base");
  if (table.has("places")) {
    refuse_beside(table, "places", {"most_apart"});
    props.places = table.quantities("places");
    if (props.places.empty()) {
      table.refuse("places", "an empty list", "two places or more are due, or leave it out");
    }
  }
  if (table.has("most_apart")) props.most_apart = table.quantity("most_apart");
  return props;
}

solver::StudRow read_studs(const JobTable& table, const MemberTables& members) {
  refuse_beside(table, "stud", {"places", "most_apart", "prop_base"});
  return {.stud = read_timber(table, "stud", "stud_width", "stud_depth", members),
          .spacing = table.quantity("stud_spacing"),
          .nogging = table.choice("noggings") == "yes"};
}

/// That of the frame or of the shore; both must agree.
double read_joist_spacing(const ShoreTables& tables) {
  const JobTable& frame = *tables.frame;
  const bool shared = tables.shore.has("joist_spacing");
  if (!frame.has("joist_spacing")) {
    return shared ? tables.shore.quantity("joist_spacing") : frame.quantity("joist_spacing");
  }
  const double spacing = frame.quantity("joist_spacing");
  constexpr double same = 1e-6;  // mm
  if (shared && std::abs(spacing - tables.shore.quantity("joist_spacing")) > same) {
    frame.refuse("joist_spacing",
                 fmt::format("{}, where the shore has {}", frame.written("joist_spacing"),
                             tables.shore.written("joist_spacing")),
                 "the same joists are due");
  }
  return spacing;
}

}  // namespace

std::vector<ShoreTables> find_shore_tables(const JobTable& top) {
  std::vector<ShoreTables> shores;
  for (const NamedTable& entry : top.tables("dead_shore")) {
    const std::vector<NamedTable> frames = entry.table.tables("frame");
    shores.push_back({entry.table, std::nullopt});
    if (!frames.empty()) shores.back().frame.emplace(frames.front().table);
  }
  return shores;
}

bool any_frame_in(const std::vector<ShoreTables>& shores) {
  return std::ranges::any_of(shores, [](const auto& tables) { return tables.frame.has_value(); });
}

solver::ShoreFrame read_shore_frame(const ShoreTables& tables, const MemberTables& members) {
  const JobTable& table = *tables.frame;
  solver::ShoreFrame frame;
  frame.distance = table.quantity("distance");
  frame.x = {table.quantity("from"), table.quantity("to")};
  frame.joist_span = table.quantity("joist_span");
  frame.joist_spacing = read_joist_spacing(tables);
  frame.joist_width = table.quantity("joist_width");
  frame.joist_level = table.quantity("joist_level");
  frame.floor_level = table.quantity("floor_level");
  frame.head = read_head(table, members);
  if (table.one_of("prop, stud") == "prop") {
    frame.uprights = read_props(table, members);
  } else {
    frame.uprights = read_studs(table, members);
  }
  frame.footing.sole.timber =
      read_timber(table, "sole_timber", "sole_width", "sole_thickness", members);
  frame.footing.sole.length =
      table.has("sole_length") ? table.quantity("sole_length") : frame.x.length();
  read_ground(table, members, frame.footing);
  return frame;
}

void read_shore_frames(const std::vector<ShoreTables>& tables, const MemberTables& members,
                       std::vector<solver::DeadShore>& shores) {
  for (std::size_t i = 0; i < tables.size(); ++i) {
    if (tables[i].frame) shores[i].frame = read_shore_frame(tables[i], members);
  }
}

}  // namespace deadshore::io
