#pragma once

#include "solver/members/ground.h"
#include "solver/members/prop.h"
#include "solver/members/steel_section.h"
#include "solver/members/timber.h"

#include <filesystem>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace deadshore::io {

/// A member that no table knows; `what()` is one line that names the nearest known one.
class UnknownMember : public std::runtime_error {
 public:
  /// `kind` in words, such as "steel section".
  UnknownMember(const std::string& kind, std::string name, std::string nearest);

  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] const std::string& nearest() const { return nearest_; }

 private:
  std::string name_;
  std::string nearest_;
};

/// A steel section and where its dimensions come from.
struct SteelRow {
  solver::SteelSection section;
  std::string source;
};

/// A strength class of timber and where its values come from.
struct TimberRow {
  solver::TimberClass strength_class;
  std::string source;
};

/// What members may be chosen from, in the order of the files. Names are found whatever their case
/// and spaces. The finders throw UnknownMember.
struct MemberTables {
  std::vector<SteelRow> steel;
  std::vector<TimberRow> timber;
  std::vector<solver::Prop> props;
  std::vector<solver::Ground> grounds;

  [[nodiscard]] const SteelRow& steel_section(std::string_view name) const;
  [[nodiscard]] const TimberRow& timber_class(std::string_view name) const;
  [[nodiscard]] const solver::Prop& prop(std::string_view name) const;
  [[nodiscard]] const solver::Ground& ground(std::string_view name) const;
};

/// The tables of io/data, which are built into the library.
[[nodiscard]] MemberTables built_in_member_tables();

/// Adds the groups of a file in the form of those in io/data; a known name is replaced. Throws
/// InputError, and leaves `tables` as it was, where a row is unsound or where its published values
/// are over 1% from what the dimensions give. Groups of weights and uses are left to
/// add_weight_tables.
void add_member_tables(std::string_view text, const std::string& file_name, MemberTables& tables);

/// The same from a file. Throws FileError where it cannot be read.
void add_member_file(const std::filesystem::path& path, MemberTables& tables);

}  // namespace deadshore::io
