#pragma once

#include <nlohmann/json_fwd.hpp>
#include <vtkPolyData.h>
#include <vtkSmartPointer.h>
#include <vtkUnstructuredGrid.h>

#include <cstddef>
#include <string>

/// The plane wall drawn with its thickness, so that one can walk round it.
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

}  // namespace deadshore::viz
