#include "io/tables/member_choice.h"

#include "io/tables/subgrade_moduli.h"
#include "solver/members/error.h"

namespace deadshore::io {

namespace {

solver::SteelGrade read_grade(const JobTable& table) {
  const std::string grade = table.choice("grade");
  if (grade == "S235") return solver::SteelGrade::s235;
  return grade == "S275" ? solver::SteelGrade::s275 : solver::SteelGrade::s355;
}

}  // namespace

solver::SteelMember read_steel(const JobTable& table, std::string_view key,
                               const solver::SteelSection& section) {
  try {
    return solver::steel_member(section, read_grade(table));
  } catch (const solver::MemberError& error) {
    table.refuse(key, fmt::format("{}: {}", error.member(), error.found()), error.due());
  }
}

solver::SteelMember read_steel_of_tables(const JobTable& table, const MemberTables& members) {
  return read_steel(table, "section", known_member(table, "section", [&](const std::string& name) {
                      return members.steel_section(name).section;
                    }));
}

solver::LoadDuration read_duration(const JobTable& table) {
  using solver::LoadDuration;
  const std::string duration = table.choice("duration");
  if (duration == "permanent") return LoadDuration::permanent;
  if (duration == "long term") return LoadDuration::long_term;
  if (duration == "medium term") return LoadDuration::medium_term;
  if (duration == "short term") return LoadDuration::short_term;
  return LoadDuration::instantaneous;
}

solver::ServiceClass read_service_class(const JobTable& table) {
  const std::string service = table.choice("service_class");
  if (service == "1") return solver::ServiceClass::one;
  return service == "2" ? solver::ServiceClass::two : solver::ServiceClass::three;
}

solver::TimberClass read_strength_class(const JobTable& table, std::string_view key,
                                        const MemberTables& members) {
  return known_member(table, key, [&](const std::string& name) {
    return members.timber_class(name).strength_class;
  });
}

void read_ground(const JobTable& table, const MemberTables& members, solver::Footing& footing) {
  const std::string kind = table.one_of("ground, ground_bearing, suspended_floor");
  if (kind == "suspended_floor") {
    footing.suspended_floor = table.text("suspended_floor");
    if (!table.has("subgrade_modulus")) return;
  } else if (kind == "ground_bearing") {
    footing.ground = {.name = "ground",
                      .presumed_bearing = table.quantity("ground_bearing"),
                      .source = "given in the job"};
  } else {
    footing.ground = known_member(table, "ground",
                                  [&](const std::string& name) { return members.ground(name); });
  }
  const std::optional<double> usual = usual_subgrade_modulus(footing.ground.name);
  const bool given = table.has("subgrade_modulus") || !usual;
  footing.subgrade_modulus = given ? table.quantity("subgrade_modulus") : *usual;
}

}  // namespace deadshore::io
