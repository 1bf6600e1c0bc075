#include "io/commands/commands.h"
#include "io/commands/name_lists.h"
#include "io/files/whole_file.h"

#include <fmt/format.h>

#include <memory>
#include <string>
#include <vector>

namespace deadshore::io {

namespace {

struct ListOptions {
  std::string pattern;
  std::vector<std::string> tables;  ///< files
};

using List = std::string (*)(const ListOptions& options);

template <std::string (*list)(const MemberTables&, std::string_view)>
std::string list_of_members(const ListOptions& options) {
  MemberTables tables = built_in_member_tables();
  for (const std::string& file : options.tables) add_member_file(file, tables);
  return list(tables, options.pattern);
}

template <std::string (*list)(const WeightTables&, std::string_view)>
std::string list_of_weights(const ListOptions& options) {
  WeightTables tables = built_in_weight_tables();
  for (const std::string& file : options.tables) add_weight_tables(read_file(file), file, tables);
  return list(tables, options.pattern);
}

ExitCode print_list(List list, const ListOptions& options) {
  try {
    fmt::print("{}", list(options));
  } catch (const UnknownMember& error) {
    throw CLI::ValidationError("PATTERN", error.what());
  }
  return ExitCode::done;
}

void add_list(CLI::App& app, ExitCode& code, const char* name, const char* meaning, List list) {
  CLI::App* command = app.add_subcommand(name, meaning);
  const auto options = std::make_shared<ListOptions>();
  command->add_option("PATTERN", options->pattern, "Part of a name, with * and ? (default: all)");
  command->add_option("--tables", options->tables, "Add a file of your own (may be repeated)")
      ->type_name("FILE")
      ->allow_extra_args(false);
  command->callback([list, options, &code] { code = print_list(list, *options); });
}

}  // namespace

void add_list_commands(CLI::App& app, ExitCode& code) {
  add_list(app, code, "sections", "List steel sections with their properties",
           list_of_members<list_of_sections>);
  add_list(app, code, "timber", "List strength classes of timber", list_of_members<list_of_timber>);
  add_list(app, code, "props", "List props with their safe loads", list_of_members<list_of_props>);
  add_list(app, code, "ground", "List kinds of ground and what they bear",
           list_of_members<list_of_grounds>);
  add_list(app, code, "materials", "List what a house is made of and what it weighs",
           list_of_weights<list_of_materials>);
  add_list(app, code, "uses", "List uses of floors and roofs and their loads",
           list_of_weights<list_of_uses>);
}

}  // namespace deadshore::io
