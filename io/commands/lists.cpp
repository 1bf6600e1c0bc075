#include "io/commands/lists.h"

#include "io/commands/member_lists.h"

#include <fmt/format.h>

#include <memory>
#include <string>
#include <vector>

namespace deadshore::io {

namespace {

using ListOfMembers = std::string (*)(const MemberTables& tables, std::string_view pattern);

struct ListOptions {
  std::string pattern;
  std::vector<std::string> tables;
};

ExitCode print_list(ListOfMembers list, const ListOptions& options) {
  MemberTables tables = built_in_member_tables();
  for (const std::string& file : options.tables) add_member_file(file, tables);
  try {
    fmt::print("{}", list(tables, options.pattern));
  } catch (const UnknownMember& error) {
    throw CLI::ValidationError("PATTERN", error.what());
  }
  return ExitCode::done;
}

void add_list(CLI::App& app, ExitCode& code, const char* name, const char* meaning,
              ListOfMembers list) {
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
  add_list(app, code, "sections", "List steel sections with their properties", list_of_sections);
  add_list(app, code, "timber", "List strength classes of timber", list_of_timber);
  add_list(app, code, "props", "List props with their safe loads", list_of_props);
  add_list(app, code, "ground", "List kinds of ground and what they bear", list_of_grounds);
}

}  // namespace deadshore::io
