// The published tests, and the page about them: with `--page FILE` writes what they compared, with
// `--check-page FILE` holds the page against it.

#include "io/files/whole_file.h"
#include "tests/published/page.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cstdio>
#include <exception>
#include <string>
#include <string_view>

namespace {

using deadshore::published::disagreements;
using deadshore::published::page_of;
using deadshore::published::rows_of;

int write_or_check(std::string_view option, const std::string& file) {
  const ::testing::UnitTest& tests = *::testing::UnitTest::GetInstance();
  if (tests.test_to_run_count() != tests.total_test_count() || !tests.Passed()) {
    fmt::print(stderr, "the page needs every test to run and to pass\n");
    return 1;
  }
  const std::string page = page_of(rows_of(tests));
  if (option == "--page") {
    deadshore::io::write_file(file, page);
    return 0;
  }
  const auto wrong = disagreements(deadshore::io::read_file(file), page);
  for (const std::string& sentence : wrong) fmt::print(stderr, "{}\n", sentence);
  if (!wrong.empty()) fmt::print(stderr, "{} is out of date: write it anew with --page\n", file);
  return wrong.empty() ? 0 : 1;
}

}  // namespace

int main(int count, char** words) {
  try {
    ::testing::InitGoogleTest(&count, words);
    const std::string_view option = count == 3 ? words[1] : "";
    if (count != 1 && option != "--page" && option != "--check-page") {
      fmt::print(stderr, "usage: {} [--page FILE | --check-page FILE]\n", words[0]);
      return 1;
    }
    const int failed = RUN_ALL_TESTS();
    return failed != 0 || option.empty() ? failed : write_or_check(option, words[2]);
  } catch (const std::exception& error) {
    fmt::print(stderr, "{}\n", error.what());
    return 1;
  }
}
