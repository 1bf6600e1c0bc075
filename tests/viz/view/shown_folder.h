#pragma once

#include "io/results/results_json.h"
#include "io/vtk/vtk_writer.h"
#include "tests/io/made_up_result.h"
#include "tests/io/scratch_folder.h"
#include "tests/viz/made_up_frame.h"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace deadshore::viz::test {

/// A folder "wall-out" as a run leaves it, as far as the view reads it: the made-up staged wall
/// with its needles on frames. Checks of a needle, a prop and a padstone, the last of them fails.
class ShownFolder {
 public:
  ShownFolder() : ShownFolder(staged_on_frames()) {}
  explicit ShownFolder(const solver::JobResult& result) {
    std::filesystem::create_directory(path());
    io::write_vtk(result, path());
    std::ofstream(path() / "results.json") << io::results_json(result, {});
  }

  [[nodiscard]] std::filesystem::path path() const { return scratch_.path() / "wall-out"; }

  [[nodiscard]] std::string bytes_of(const char* name) const {
    std::ifstream file(path() / name, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }
  void put(const char* name, const std::string& bytes) const {
    std::ofstream(path() / name, std::ios::binary) << bytes;
  }

  static solver::JobResult staged_on_frames() {
    solver::JobResult result = io::test::made_up_staged_result();
    put_on_frame(result, made_up_frame("F1"));
    const auto check = [](const char* member, const char* what, double demand) {
      solver::Check made_up;
      made_up.member = member;
      made_up.check = what;
      made_up.clause = "made-up clause";
      made_up.stage = "cut";
      made_up.demand = demand;
      made_up.capacity = 10.0;
      made_up.unit = "kN";
      return made_up;
    };
    result.checks = {check("twin beam left padstone", "crushing", 12.5),
                     check("N1", "bending", 8.0), check("N1 outer prop", "prop strength", 6.0),
                     check("N2", "bending", 4.0)};
    return result;
  }

 private:
  io::test::ScratchFolder scratch_;
};

}  // namespace deadshore::viz::test
