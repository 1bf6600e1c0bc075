#pragma once

#include <nlohmann/json.hpp>
#include <vtkPolyData.h>
#include <vtkSmartPointer.h>
#include <vtkUnstructuredGrid.h>

#include <filesystem>
#include <string>
#include <vector>

namespace deadshore::viz {

/// The wall in one stage under one analysis, as it lies in the folder.
struct ShownWall {
  vtkSmartPointer<vtkUnstructuredGrid> grid;  ///< null where that was not worked out
  vtkSmartPointer<vtkPolyData> beam;          ///< the permanent beam's line; null until it is in
  std::string no_equilibrium;                 ///< why the wall does not stand; empty where it does
};

/// A folder of results, read from disk. Lengths in mm, forces in kN, as the files have them.
// NOLINTNEXTLINE(bugprone-exception-escape): of moving a nlohmann::json, which does not throw
struct ShownResult {
  std::filesystem::path folder;
  nlohmann::json answers;             ///< results.json
  std::vector<std::string> stages;    ///< in the order of work
  std::vector<std::string> analyses;  ///< "uncracked", "cracked": those there are, in this order
  std::vector<ShownWall> walls;       ///< stage by stage, in each the analyses
  vtkSmartPointer<vtkPolyData> supports;
  vtkSmartPointer<vtkPolyData> needles;  ///< needles and props as lines; null without frames
  double thickness = 0.0;                ///< of the wall, mm; 0 where the files do not say

  [[nodiscard]] const ShownWall& wall(std::size_t stage, std::size_t analysis) const {
    return walls.at(stage * analyses.size() + analysis);
  }
};

/// Reads results.json, wall.pvd and what it lists, supports.vtp, and where they are there
/// needles.vtp and beam.pvd with what it lists.
/// \throws ViewError naming the file that is missing, broken, or does not go with the others
[[nodiscard]] ShownResult read_result(const std::filesystem::path& folder);

}  // namespace deadshore::viz
