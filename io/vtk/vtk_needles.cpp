#include "io/vtk/vtk_arrays.h"
#include "io/vtk/vtk_fields.h"
#include "io/vtk/vtk_parts.h"

#include <fmt/format.h>
#include <vtkCellArray.h>
#include <vtkCellData.h>
#include <vtkPointData.h>
#include <vtkPoints.h>

#include <algorithm>
#include <limits>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

constexpr double not_worked_out = std::numeric_limits<double>::quiet_NaN();

/// Where a needle lies: x of its middle, and the heights of its top, axis and underside, mm.
struct Place {
  double x = 0.0;
  double top = 0.0;
  double axis = 0.0;
  double underside = 0.0;
};

struct FramedNeedle {
  std::string label;  ///< as supports.vtp has it
  const solver::NeedleDesign* design = nullptr;
  const solver::NeedleFrame* frame = nullptr;
  Place place;
};

std::vector<FramedNeedle> framed_needles(const solver::JobResult& result) {
  std::vector<FramedNeedle> framed;
  for (const solver::NeedleDesign& design : result.needle_designs) {
    const solver::Needle& needle = result.job.needles.at(index_of(design.needle));
    if (!needle.frame) continue;
    const solver::NeedleFrame& frame = result.job.needle_frames.at(*needle.frame);
    const double top = result.job.wall.cut.soffit - frame.packing.thickness;
    const double depth = solver::depth_of(frame.member);
    framed.push_back({label_of(result.job, support_of(design.needle)),
                      &design,
                      &frame,
                      {needle.x, top, top - 0.5 * depth, top - depth}});
  }
  return framed;
}

/// Lines with what goes with their points and cells.
class Lines {
 public:
  Lines() { points_->SetDataTypeToDouble(); }

  void add_needle(const FramedNeedle& needle) {
    lines_->InsertNextCell(static_cast<int>(needle.design->answer.stations.size()));
    for (const solver::NeedleStation& at : needle.design->answer.stations) {
      lines_->InsertCellPoint(points_->InsertNextPoint(needle.place.x, needle.place.axis, at.z));
      add_point_values(at.moment / 1e6, at.shear / 1e3, at.deflection);
    }
    const solver::NeedleDemand& demand = needle.design->demand;
    add_cell_values(needle.label, demand, needle.design->answer.wall_load);
  }

  void add_prop(const FramedNeedle& needle, const solver::PropLoad& load, bool is_down) {
    const Place& place = needle.place;
    const double near_end = is_down ? place.top : place.underside;
    const double far_end = is_down ? near_end + load.extension : near_end - load.extension;
    lines_->InsertNextCell(2);
    for (const double y : {near_end, far_end}) {
      lines_->InsertCellPoint(points_->InsertNextPoint(place.x, y, load.place));
      add_point_values(not_worked_out, not_worked_out, not_worked_out);
    }
    const solver::NeedleDemand& demand = needle.design->demand;
    add_cell_values(fmt::format("{} {} prop", needle.label, load.mark), demand, load.load);
  }

  [[nodiscard]] vtkSmartPointer<vtkPolyData> taken() const {
    auto shapes = vtkSmartPointer<vtkPolyData>::New();
    shapes->SetPoints(points_);
    shapes->SetLines(lines_);
    for (const auto& values : {moments_, shears_, deflections_}) {
      shapes->GetPointData()->AddArray(values);
    }
    for (const auto& names : {parts_, methods_, stages_}) shapes->GetCellData()->AddArray(names);
    shapes->GetCellData()->AddArray(loads_);
    return shapes;
  }

 private:
  void add_point_values(double moment, double shear, double deflection) {
    moments_->InsertNextValue(moment);
    shears_->InsertNextValue(shear);
    deflections_->InsertNextValue(deflection);
  }
  void add_cell_values(const std::string& part, const solver::NeedleDemand& demand, double load) {
    parts_->InsertNextValue(part);
    methods_->InsertNextValue(demand.method);
    stages_->InsertNextValue(demand.stage);
    loads_->InsertNextValue(load / 1e3);
  }

  vtkNew<vtkPoints> points_;
  vtkNew<vtkCellArray> lines_;
  vtkSmartPointer<vtkDoubleArray> moments_ = double_array(vtk_fields::moment.name, {}, 0);
  vtkSmartPointer<vtkDoubleArray> shears_ = double_array(vtk_fields::shear.name, {}, 0);
  vtkSmartPointer<vtkDoubleArray> deflections_ = double_array(vtk_fields::deflection.name, {}, 0);
  vtkSmartPointer<vtkDoubleArray> loads_ = double_array(vtk_fields::load.name, {}, 0);
  vtkSmartPointer<vtkStringArray> parts_ = string_array(vtk_fields::part.name);
  vtkSmartPointer<vtkStringArray> methods_ = string_array(vtk_fields::load_method.name);
  vtkSmartPointer<vtkStringArray> stages_ = string_array(vtk_fields::load_stage.name);
};

}  // namespace

vtkSmartPointer<vtkPolyData> needle_lines(const solver::JobResult& result) {
  Lines lines;
  for (const FramedNeedle& needle : framed_needles(result)) {
    lines.add_needle(needle);
    const std::vector<solver::PropLoad>& loads = needle.design->answer.props;
    for (std::size_t i = 0; i < loads.size(); ++i) {
      const bool is_down = needle.frame->props.at(i).action == solver::PropAction::down;
      lines.add_prop(needle, loads[i], is_down);
    }
  }
  return lines.taken();
}

}  // namespace deadshore::io
