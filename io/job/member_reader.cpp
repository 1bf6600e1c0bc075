#include "io/job/member_reader.h"

#include "io/tables/usual_values.h"
#include "solver/members/error.h"

#include <utility>

namespace deadshore::io {

solver::SteelMember read_steel(const JobTable& table, std::string_view key,
                               const solver::SteelSection& section) {
  try {
    return solver::steel_member(section, table.choice<solver::SteelGrade>("grade"));
  } catch (const solver::MemberError& error) {
    table.refuse(key, fmt::format("{}: {}", error.member(), error.found()), error.due());
  }
}

solver::SteelMember read_steel_of_tables(const JobTable& table, const MemberTables& members) {
  return read_steel(table, "section", known_member(table, "section", [&](const std::string& name) {
                      return members.steel_section(name).section;
                    }));
}

solver::TimberMember read_timber(const JobTable& table, std::string_view key,
                                 const MemberTables& members) {
  return {.section = {},
          .strength_class = read_strength_class(table, key, members),
          .duration = table.choice<solver::LoadDuration>("duration"),
          .service = table.choice<solver::ServiceClass>("service_class")};
}

solver::TimberClass read_strength_class(const JobTable& table, std::string_view key,
                                        const MemberTables& members) {
  return known_member(table, key, [&](const std::string& name) {
    return members.timber_class(name).strength_class;
  });
}

solver::Prop read_prop(const JobTable& table, const MemberTables& members) {
  return known_member(table, "prop", [&](const std::string& name) { return members.prop(name); });
}

solver::Ground read_kind_of_ground(const JobTable& table, std::string_view kind,
                                   const MemberTables& members, solver::Ground given) {
  if (kind == "ground") {
    return known_member(table, "ground",
                        [&](const std::string& name) { return members.ground(name); });
  }
  given.name = "ground";
  given.source = "given in the job";
  return given;
}

void read_ground(const JobTable& table, const MemberTables& members, solver::Footing& footing) {
  const std::string_view kind = table.one_of({"ground", "ground_bearing", "suspended_floor"});
  if (kind == "suspended_floor") return;
  footing.ground = read_kind_of_ground(table, kind, members, std::move(footing.ground));
  if (table.has("subgrade_modulus")) return;
  const std::optional<double> usual = usual_subgrade_modulus(footing.ground.name);
  if (!usual) table.require("subgrade_modulus");
  footing.subgrade_modulus = *usual;
}

}  // namespace deadshore::io
