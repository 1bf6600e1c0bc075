#include "viz/view/vtk_reading.h"

#include <fmt/format.h>
#include <vtkCellArray.h>
#include <vtkCellData.h>
#include <vtkCellType.h>
#include <vtkDataArray.h>
#include <vtkErrorCode.h>
#include <vtkIdList.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkStringArray.h>
#include <vtkXMLDataElement.h>
#include <vtkXMLPolyDataReader.h>
#include <vtkXMLUnstructuredGridReader.h>
#include <vtkXMLUtilities.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace deadshore::viz {

namespace {

namespace fs = std::filesystem;

void must_be_there(const fs::path& file) {
  std::error_code failure;
  if (!fs::is_regular_file(file, failure)) throw ViewError(file, "no such file");
}

/// VTK prints its own complaints to stderr; ours say the same in one line.
class QuietReading {
 public:
  QuietReading() { vtkObject::GlobalWarningDisplayOff(); }
  ~QuietReading() { vtkObject::SetGlobalWarningDisplay(before_); }
  QuietReading(const QuietReading&) = delete;
  QuietReading& operator=(const QuietReading&) = delete;

 private:
  int before_ = vtkObject::GetGlobalWarningDisplay();
};

template <class Reader, class Data>
vtkSmartPointer<Data> read(const fs::path& file, const char* kind) {
  must_be_there(file);
  const QuietReading quiet;
  const vtkNew<Reader> reader;
  reader->SetFileName(file.c_str());
  const bool readable = reader->CanReadFile(file.c_str()) != 0;
  if (readable) reader->Update();
  vtkSmartPointer<Data> data = reader->GetOutput();
  if (!readable || reader->GetErrorCode() != vtkErrorCode::NoError || data == nullptr ||
      data->GetNumberOfPoints() == 0 || data->GetNumberOfCells() == 0) {
    throw ViewError(file, fmt::format("is not a whole {}; run the job again", kind));
  }
  return data;
}

bool is_finite(vtkDataArray* array) {
  for (vtkIdType tuple = 0; tuple < array->GetNumberOfTuples(); ++tuple) {
    for (int part = 0; part < array->GetNumberOfComponents(); ++part) {
      if (!std::isfinite(array->GetComponent(tuple, part))) return false;
    }
  }
  return true;
}

/// Every array has an entry for each of `count` points or cells: a broken file may not.
void check_lengths(vtkFieldData* fields, vtkIdType count, const fs::path& file) {
  for (int i = 0; i < fields->GetNumberOfArrays(); ++i) {
    const vtkAbstractArray* array = fields->GetAbstractArray(i);
    if (array->GetNumberOfTuples() != count) {
      throw ViewError(file, fmt::format("\"{}\" has {} entries where {} are due",
                                        const_cast<vtkAbstractArray*>(array)->GetName(),
                                        array->GetNumberOfTuples(), count));
    }
  }
}

void check_finite(vtkFieldData* fields, const fs::path& file) {
  for (int i = 0; i < fields->GetNumberOfArrays(); ++i) {
    vtkDataArray* array = fields->GetArray(i);
    if (array != nullptr && !is_finite(array)) {
      throw ViewError(file, fmt::format("\"{}\" has a value that is no number", array->GetName()));
    }
  }
}

/// Cells may name points that are not there.
void check_cells(vtkPointSet* data, const fs::path& file) {
  const vtkNew<vtkIdList> ids;
  for (vtkIdType cell = 0; cell < data->GetNumberOfCells(); ++cell) {
    data->GetCellPoints(cell, ids);
    for (vtkIdType i = 0; i < ids->GetNumberOfIds(); ++i) {
      if (ids->GetId(i) < 0 || ids->GetId(i) >= data->GetNumberOfPoints()) {
        throw ViewError(file, "has an element whose corners are not there");
      }
    }
  }
}

void check_places(vtkPointSet* data, const fs::path& file) {
  if (!is_finite(data->GetPoints()->GetData())) {
    throw ViewError(file, "has a point whose place is no number");
  }
  check_cells(data, file);
  check_lengths(data->GetPointData(), data->GetNumberOfPoints(), file);
  check_lengths(data->GetCellData(), data->GetNumberOfCells(), file);
}

std::string as_one_line(std::string text) {
  std::ranges::replace_if(
      text, [](unsigned char c) { return c < 0x20 || c == 0x7f; }, ' ');
  return text;
}

}  // namespace

vtkSmartPointer<vtkUnstructuredGrid> read_grid(const fs::path& file) {
  auto grid = read<vtkXMLUnstructuredGridReader, vtkUnstructuredGrid>(file, "VTK grid");
  check_places(grid, file);
  check_finite(grid->GetPointData(), file);
  check_finite(grid->GetCellData(), file);
  for (vtkIdType cell = 0; cell < grid->GetNumberOfCells(); ++cell) {
    const int type = grid->GetCellType(cell);
    const vtkIdType corners = grid->GetCells()->GetCellSize(cell);
    if (!(type == VTK_QUAD && corners == 4) && !(type == VTK_QUADRATIC_QUAD && corners == 8)) {
      throw ViewError(file, "has elements other than quadrilaterals");
    }
  }
  vtkDataArray* movement = grid->GetPointData()->GetArray("displacement [mm]");
  if (movement != nullptr && movement->GetNumberOfComponents() != 3) {
    throw ViewError(file, "has movements that are no vectors");
  }
  return grid;
}

vtkSmartPointer<vtkPolyData> read_shapes(const fs::path& file) {
  auto shapes = read<vtkXMLPolyDataReader, vtkPolyData>(file, "VTK file of lines and points");
  check_places(shapes, file);
  return shapes;
}

std::vector<fs::path> read_collection(const fs::path& file) {
  must_be_there(file);
  const QuietReading quiet;
  const auto root =
      vtkSmartPointer<vtkXMLDataElement>::Take(vtkXMLUtilities::ReadElementFromFile(file.c_str()));
  vtkXMLDataElement* collection =
      root == nullptr ? nullptr : root->FindNestedElementWithName("Collection");
  if (collection == nullptr) throw ViewError(file, "is not a whole collection; run the job again");
  std::vector<fs::path> listed;
  for (int index = 0; index < collection->GetNumberOfNestedElements(); ++index) {
    const char* name = collection->GetNestedElement(index)->GetAttribute("file");
    if (name == nullptr || fs::path(name).filename() != fs::path(name)) {
      throw ViewError(file, "lists something other than files of its own folder");
    }
    listed.push_back(file.parent_path() / name);
  }
  if (listed.empty()) throw ViewError(file, "lists no file");
  return listed;
}

std::vector<std::string> texts_of(vtkFieldData* fields, const char* name) {
  auto* array = vtkStringArray::SafeDownCast(fields->GetAbstractArray(name));
  std::vector<std::string> texts;
  if (array == nullptr) return texts;
  for (vtkIdType i = 0; i < array->GetNumberOfValues(); ++i) texts.push_back(array->GetValue(i));
  return texts;
}

std::optional<std::string> text_of(vtkFieldData* fields, const char* name) {
  const std::vector<std::string> texts = texts_of(fields, name);
  return texts.empty() ? std::nullopt : std::optional(texts.front());
}

std::optional<double> number_of(vtkFieldData* fields, const char* name) {
  vtkDataArray* array = fields->GetArray(name);
  if (array == nullptr || array->GetNumberOfTuples() == 0) return std::nullopt;
  return array->GetComponent(0, 0);
}

ViewError::ViewError(std::filesystem::path file, const std::string& reason)
    : std::runtime_error(as_one_line(file.string() + ": " + reason)), file_(std::move(file)) {}

}  // namespace deadshore::viz
