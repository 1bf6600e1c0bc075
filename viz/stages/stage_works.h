#pragma once

#include "solver/result/result_stages.h"

#include <string>
#include <vector>

/// What is there at a stage, as figures show it.
namespace deadshore::viz {

struct ShownStage {
  std::string words;         ///< for a heading: "stage 4: cut"; empty without an order of work
  solver::StageState works;  ///< what is there after it
};

/// One for each stage of the result.
[[nodiscard]] std::vector<ShownStage> shown_stages(const solver::JobResult& result);

/// A mark, 0 or 1, for each quadrilateral that is there in an analysis; empty: all of them are.
[[nodiscard]] std::vector<char> quads_there(const mesh::QuadMesh& mesh,
                                            const solver::PanelFields& fields);

/// A mark for each quadrilateral whose stress and movement mean something: there and not loose.
[[nodiscard]] std::vector<char> sound_masonry(const mesh::QuadMesh& mesh,
                                              const solver::PanelFields& fields);

/// Those that are there in the wall as cut, in the mesh of the whole wall.
[[nodiscard]] std::vector<char> quads_as_cut(const solver::JobResult& result);

/// Marks the nodes of the quadrilaterals that are there.
[[nodiscard]] std::vector<char> nodes_there(const mesh::QuadMesh& mesh,
                                            const std::vector<char>& quads);

}  // namespace deadshore::viz
