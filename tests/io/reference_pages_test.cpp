// The page of the manual and the completion are written by hand: they must know every command and
// option of the program.
#include "tests/io/command_line.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::IsSupersetOf;
using ::testing::UnorderedElementsAreArray;

class ReferencePages : public test::CommandLine {
 protected:
  std::string help_of(const std::string& command) const {
    EXPECT_EQ(run(command + " --help"), 0) << errors();
    return output();
  }
  std::vector<std::string> commands() const {
    const std::string help = help_of("");
    std::istringstream lines(help.substr(help.find("Subcommands:")));
    std::vector<std::string> names;
    std::string line;
    std::getline(lines, line);
    while (std::getline(lines, line)) {
      if (line.starts_with("  ") && line.size() > 2 && line[2] != ' ') {
        names.push_back(line.substr(2, line.find(' ', 2) - 2));
      }
    }
    return names;
  }
  /// Of a command; of the program where it is empty.
  std::set<std::string> options_of(const std::string& command) const {
    std::set<std::string> options;
    std::istringstream lines(help_of(command));
    static const std::regex option("^-{1,2}[A-Za-z][-A-Za-z]*");
    for (std::string line; std::getline(lines, line);) {
      if (!line.starts_with("  -")) continue;
      std::istringstream names(line.substr(0, line.find(' ', 2)));
      for (std::string name; std::getline(names, name, ',');) {
        name.erase(0, name.find_first_not_of(' '));
        std::smatch found;
        if (std::regex_search(name, found, option)) options.insert(found.str());
      }
    }
    return options;
  }
};

std::string source(const std::string& path) {
  return test::text_of(DEADSHORE_SOURCE_DIR "/" + path);
}

/// The page as it is read, without marks.
std::string manual() {
  std::string page = source("io/man/deadshore.1");
  page = std::regex_replace(page, std::regex(R"(\\-)"), "-");
  return std::regex_replace(page, std::regex(R"(\\f[A-Z])"), "");
}

class Completion : public ReferencePages {
 protected:
  /// What bash offers for a command line whose last word is begun, or empty ("").
  std::set<std::string> offers(const std::vector<std::string>& words) const {
    std::string script = "source '" DEADSHORE_SOURCE_DIR "/io/completion/deadshore.bash'\n";
    script += "COMP_WORDS=('" DEADSHORE_PROGRAM "'";
    for (const std::string& word : words) script += " '" + word + "'";
    script += ")\nCOMP_CWORD=" + std::to_string(words.size()) +
              "\n_deadshore\nprintf '%s\\n' \"${COMPREPLY[@]}\"\n";
    write("complete.sh", script);
    const std::string command = "cd '" + path("").string() + "' && bash complete.sh >offers.txt";
    EXPECT_EQ(std::system(command.c_str()), 0);  // NOLINT(cert-env33-c): a fixed command
    std::set<std::string> found;
    std::istringstream lines(test::text_of(path("offers.txt")));
    for (std::string line; std::getline(lines, line);) {
      if (!line.empty()) found.insert(line);
    }
    return found;
  }
};

TEST_F(ReferencePages, TheProgramHasItsCommands) {
  EXPECT_THAT(commands(), IsSupersetOf({"new", "run", "check", "stages", "keys", "schema",
                                        "sections", "timber", "props", "ground"}));
  EXPECT_THAT(options_of("run"),
              UnorderedElementsAreArray({"-h", "--help", "-o", "--out", "--timings", "--strict"}));
}

TEST_F(ReferencePages, TheManualHasEveryCommandAndOption) {
  const std::string page = manual();
  const auto has = [&](const std::string& text, const std::string& command) {
    EXPECT_TRUE(std::regex_search(page, std::regex("(^|[\\s\"])" + text + "(?![-a-z])")))
        << "io/man/deadshore.1 says nothing of " << text << " of '" << command << "'";
  };
  for (const std::string& option : options_of("")) has(option, "");
  for (const std::string& command : commands()) {
    EXPECT_TRUE(std::regex_search(page, std::regex("\\.TP\\n\\.BI? " + command + "(?![-a-z])")))
        << "io/man/deadshore.1 says nothing of the command " << command;
    for (const std::string& option : options_of(command)) has(option, command);
  }
}

TEST_F(ReferencePages, HelpFitsEightyColumns) {
  std::vector<std::string> all = commands();
  all.emplace_back("");
  for (const std::string& command : all) {
    std::istringstream lines(help_of(command));
    for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80U) << line;
  }
}

TEST_F(ReferencePages, TheManualHasEveryExitStatus) {
  const std::string page = manual();
  const std::string statuses = page.substr(page.find(".SH EXIT STATUS"));
  for (const char* status : {"0", "1", "2", "3"}) {
    EXPECT_THAT(statuses, HasSubstr(std::string(".TP\n.B ") + status + "\n"));
  }
}

TEST_F(Completion, OffersEveryCommandAndOption) {
  const std::vector<std::string> known = commands();
  EXPECT_THAT(offers({""}), UnorderedElementsAreArray(known));
  EXPECT_THAT(offers({"-"}), UnorderedElementsAreArray(options_of("")));
  for (const std::string& command : known) {
    EXPECT_THAT(offers({command, "-"}), UnorderedElementsAreArray(options_of(command))) << command;
  }
}

TEST_F(Completion, OffersJobFilesAndFoldersAndNoOtherFile) {
  write("note.html", "");
  std::filesystem::create_directory(path("jobs"));
  EXPECT_THAT(offers({"run", ""}), UnorderedElementsAreArray({"yard.toml", "jobs"}));
  EXPECT_THAT(offers({"check", "y"}), UnorderedElementsAreArray({"yard.toml"}));
  EXPECT_THAT(offers({"props", "--tables", "y"}), UnorderedElementsAreArray({"yard.toml"}));
  EXPECT_THAT(offers({"run", "yard.toml", "-o", ""}), UnorderedElementsAreArray({"jobs"}));
}

TEST_F(Completion, OffersTheTablesOfAJob) {
  const std::set<std::string> tables = offers({"keys", ""});
  EXPECT_THAT(tables, Contains("needle_frame.prop"));
  EXPECT_THAT(tables, Contains("top"));
  for (const std::string& table : tables) EXPECT_EQ(run("keys " + table), 0) << table;
  EXPECT_THAT(offers({"keys", "lin"}), UnorderedElementsAreArray({"line_load", "lintel"}));
}

}  // namespace
}  // namespace deadshore::io
