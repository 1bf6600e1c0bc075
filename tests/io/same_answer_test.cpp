#include "tests/io/command_line.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

/// The same job gives the same answer, whoever runs it and on how many processors.
namespace deadshore::io {
namespace {

using nlohmann::json;

/// What rounding leaves over; the rest are answers.
bool is_left_over(const std::string& key) {
  return key == "equilibrium_error" || key == "residual" || key == "residual_load";
}

/// Places where two results say something else: text, shape, or a number by more than 1e-9 of it.
void add_differences(const json& a, const json& b, const std::string& place,
                     std::vector<std::string>& found) {
  if (a.is_number() && b.is_number()) {
    const double x = a.get<double>();
    const double y = b.get<double>();
    if (std::abs(x - y) > 1e-9 * std::max(std::abs(x), std::abs(y))) found.push_back(place);
  } else if (a.is_object() && b.is_object() && a.size() == b.size()) {
    for (auto entry = a.begin(); entry != a.end(); ++entry)
      if (!is_left_over(entry.key()))
        add_differences(entry.value(), b.value(entry.key(), json()), place + "/" + entry.key(),
                        found);
  } else if (a.is_array() && b.is_array() && a.size() == b.size()) {
    for (std::size_t i = 0; i < a.size(); ++i)
      add_differences(a[i], b[i], place + "/" + std::to_string(i), found);
  } else if (a != b) {
    found.push_back(place);
  }
}

class SameAnswer : public test::CommandLine {
 protected:
  void SetUp() override {
    const std::string job = test::text_of(DEADSHORE_SOURCE_DIR "/io/examples/garden_wall.toml");
    write("wall.toml", job);
  }
  std::string results_on(int threads, const char* out) {
    const std::string count = std::to_string(threads);
    setenv("OMP_NUM_THREADS", count.c_str(), 1);       // inherited by the program that is run;
    setenv("OPENBLAS_NUM_THREADS", count.c_str(), 1);  // this process has no other threads
    EXPECT_EQ(run(std::string("run wall.toml -o ") + out), 0) << errors();
    return test::text_of(path(out) / "results.json");
  }
};

TEST_F(SameAnswer, ToTheLastBitOnAsManyThreads) {
  const std::string once = results_on(2, "once");
  EXPECT_GT(once.size(), 1000U);
  EXPECT_TRUE(once == results_on(2, "again"));
}

TEST_F(SameAnswer, ToNineDigitsOnAnyNumberOfThreads) {
  const json one = json::parse(results_on(1, "one"));
  for (const int threads : {2, 3}) {
    std::vector<std::string> differences;
    add_differences(one, json::parse(results_on(threads, "more")), "", differences);
    EXPECT_TRUE(differences.empty()) << threads << " threads: " << differences.front();
  }
}

}  // namespace
}  // namespace deadshore::io
