#pragma once

#include <vtkDoubleArray.h>
#include <vtkFieldData.h>
#include <vtkNew.h>
#include <vtkSmartPointer.h>
#include <vtkStringArray.h>

#include <initializer_list>
#include <string>

/// Named VTK arrays, as the VTK files need them.
namespace deadshore::io {

/// An array of `tuples` with one named component for each entry of `components` (one unnamed
/// component where it is empty).
[[nodiscard]] inline vtkSmartPointer<vtkDoubleArray> double_array(
    const std::string& name, std::initializer_list<const char*> components, vtkIdType tuples) {
  auto array = vtkSmartPointer<vtkDoubleArray>::New();
  array->SetName(name.c_str());
  array->SetNumberOfComponents(components.size() == 0 ? 1 : static_cast<int>(components.size()));
  int component = 0;
  for (const char* label : components) array->SetComponentName(component++, label);
  array->SetNumberOfTuples(tuples);
  array->Fill(0.0);
  return array;
}

/// An array of texts, empty as yet.
[[nodiscard]] inline vtkSmartPointer<vtkStringArray> string_array(const char* name) {
  auto array = vtkSmartPointer<vtkStringArray>::New();
  array->SetName(name);
  return array;
}

/// Adds one string to the data set's field data.
inline void add_label(vtkFieldData* fields, const char* name, const std::string& value) {
  const auto label = string_array(name);
  label->InsertNextValue(value);
  fields->AddArray(label);
}

}  // namespace deadshore::io
