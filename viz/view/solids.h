#pragma once

#include "viz/view/shown_result.h"

#include <nlohmann/json_fwd.hpp>
#include <vtkPolyData.h>
#include <vtkSmartPointer.h>
#include <vtkUnstructuredGrid.h>

#include <array>
#include <cstddef>
#include <string>
#include <vector>
/// The plane wall drawn with its thickness, so that one can walk round it.
/// Where the reactions are drawn.
namespace deadshore::viz {

/// A face towards either side for every element, in the grid's order by turns (front 2 i, back
/// 2 i + 1), then a face through the wall for every free side of an element. Point arrays of the
/// grid go with both faces, cell arrays with all. "element" numbers the grid's element of each
/// face. Points are moved by the magnified displacement, where there is one.
[[nodiscard]] vtkSmartPointer<vtkPolyData> wall_solid(vtkUnstructuredGrid* grid, double thickness,
                                                      double magnification);

/// The free sides of elements as lines a little off both faces, and lines through the wall at its
/// corners.
[[nodiscard]] vtkSmartPointer<vtkPolyData> wall_outline(vtkUnstructuredGrid* grid, double thickness,
                                                        double magnification);

/// A cross over either face of each element that the field "loose" marks, a little off the wall.
[[nodiscard]] vtkSmartPointer<vtkPolyData> loose_crosses(vtkUnstructuredGrid* grid,
                                                         double thickness, double magnification);

/// The name in results.json of a needle that a support's label stands for; empty where the support
/// is no needle. A needle that is called like another support has "needle " before its name there.
[[nodiscard]] std::string needle_called(const nlohmann::json& answers, const std::string& label);

/// Whether the needle of this name is in at a stage, by what results.json says is done: fitted by
/// then and not released. Where the work is not followed, it is in.
[[nodiscard]] bool needle_is_in(const nlohmann::json& answers, std::size_t stage,
                                const std::string& needle);

/// The permanent beam drawn where it lies between its bearings, of depth and length as in
/// supports.vtp and most of the wall's thickness, with its sag magnified. Its ends go down with the
/// wall under them. Null where it is not in.
[[nodiscard]] vtkSmartPointer<vtkPolyData> beam_solid(const ShownResult& result,
                                                      const ShownWall& wall, double magnification);

/// A support with the force that it gives the wall at one stage under one analysis.
struct SupportArrow {
  std::string name;
  std::array<double, 3> at{};     ///< where it presses, mm, on the face of the wall
  std::array<double, 2> force{};  ///< x to the right, y up, kN
  bool is_needle = false;
};

/// The supports of that stage, from left to right: a needle only while it is in, the rest only
/// where it gives a force.
[[nodiscard]] std::vector<SupportArrow> support_arrows(const ShownResult& result, std::size_t stage,
                                                       std::size_t analysis);

/// The largest reaction through all stages and analyses, kN; the scale of the arrows.
[[nodiscard]] double largest_reaction(const ShownResult& result);

}  // namespace deadshore::viz
