#include "io/member_choice.h"

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

}  // namespace deadshore::io
