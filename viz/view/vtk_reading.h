#pragma once

#include <vtkFieldData.h>
#include <vtkPolyData.h>
#include <vtkSmartPointer.h>
#include <vtkUnstructuredGrid.h>

#include <filesystem>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

/// VTK files read with their faults found. What comes back is whole and can be drawn.
namespace deadshore::viz {

/// A grid of quadrilaterals with finite points and numbers. \throws ViewError
[[nodiscard]] vtkSmartPointer<vtkUnstructuredGrid> read_grid(const std::filesystem::path& file);

/// Lines, points and faces at finite places; numbers may be missing (not a number), as on props.
/// \throws ViewError
[[nodiscard]] vtkSmartPointer<vtkPolyData> read_shapes(const std::filesystem::path& file);

/// The files that a collection (.pvd) lists, in its order; each lies in the collection's folder.
/// \throws ViewError
[[nodiscard]] std::vector<std::filesystem::path> read_collection(const std::filesystem::path& file);

/// The text, or number, of this name that goes with a whole file; none where there is none.
[[nodiscard]] std::optional<std::string> text_of(vtkFieldData* fields, const char* name);
[[nodiscard]] std::optional<double> number_of(vtkFieldData* fields, const char* name);

/// The texts of a cell or point array of this name; empty where there is none.
[[nodiscard]] std::vector<std::string> texts_of(vtkFieldData* fields, const char* name);

/// What keeps a folder of results from being shown: which file, and why. `what()` is one line.
class ViewError : public std::runtime_error {
 public:
  ViewError(std::filesystem::path file, const std::string& reason);

  [[nodiscard]] const std::filesystem::path& file() const { return file_; }

 private:
  std::filesystem::path file_;
};

}  // namespace deadshore::viz
