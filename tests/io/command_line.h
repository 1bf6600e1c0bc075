#pragma once

#include "tests/io/core_keys.h"
#include "tests/io/scratch_folder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <sys/wait.h>

namespace deadshore::io::test {

inline std::string text_of(const std::filesystem::path& path) {
  std::ostringstream text;
  text << std::ifstream(path).rdbuf();
  return text.str();
}

/// Runs the program in a folder of its own that holds core_keys.toml as yard.toml.
class CommandLine : public ::testing::Test {
 protected:
  CommandLine() { write("yard.toml", core_keys()); }

  void write(const char* name, const std::string& text) const {
    std::ofstream(folder_.path() / name) << text;
  }
  /// The exit status; `variables` of the shell as NAME=VALUE.
  int run(const std::string& arguments, const std::string& variables = "") const {
    const std::string command = "cd '" + folder_.path().string() + "' && " + variables +
                                " " DEADSHORE_PROGRAM " " + arguments + " >out.txt 2>err.txt";
    return WEXITSTATUS(std::system(command.c_str()));  // NOLINT(cert-env33-c): a fixed command
  }
  std::filesystem::path path(const char* name) const { return folder_.path() / name; }
  std::string output() const { return text_of(folder_.path() / "out.txt"); }
  std::string errors() const { return text_of(folder_.path() / "err.txt"); }
  bool complained_in_one_line() const {
    const std::string text = errors();
    return text.size() > 1 && std::count(text.begin(), text.end(), '\n') == 1 &&
           text.back() == '\n';
  }

 private:
  ScratchFolder folder_;
};

}  // namespace deadshore::io::test
