#include "io/vtk/vtk_writer.h"

#include "io/error.h"
#include "io/files/whole_file.h"
#include "io/vtk/vtk_fields.h"
#include "io/vtk/vtk_parts.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>
#include <vtkErrorCode.h>
#include <vtkNew.h>
#include <vtkObject.h>
#include <vtkXMLPolyDataWriter.h>
#include <vtkXMLUnstructuredGridWriter.h>

#include <algorithm>
#include <cctype>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

namespace fs = std::filesystem;

/// VTK prints its own warnings to stderr; ours say the same in a FileError.
class QuietVtk {
 public:
  QuietVtk() { vtkObject::GlobalWarningDisplayOff(); }
  ~QuietVtk() { vtkObject::SetGlobalWarningDisplay(before_); }
  QuietVtk(const QuietVtk&) = delete;
  QuietVtk& operator=(const QuietVtk&) = delete;

 private:
  int before_ = vtkObject::GetGlobalWarningDisplay();
};

/// `Write()` returns 1 even for an unwritable path; only the error code tells.
void write(vtkXMLWriter& writer, vtkDataObject* data, const fs::path& path) {
  const QuietVtk quiet;
  writer.SetFileName(path.c_str());
  writer.SetInputDataObject(data);
  writer.SetDataModeToAppended();
  writer.EncodeAppendedDataOff();
  writer.SetCompressionLevel(1);  // a third of the time of the usual 5, files a tenth larger
  const int written = writer.Write();
  const auto code = writer.GetErrorCode();
  if (written != 1 || code != vtkErrorCode::NoError) {
    throw FileError(
        path, fmt::format("cannot be written ({})", vtkErrorCode::GetStringFromErrorCode(code)));
  }
}

/// A stage's name as part of a file name: "needles in" becomes "needles-in".
std::string file_part(std::string name) {
  std::ranges::replace_if(
      name, [](unsigned char c) { return std::isalnum(c) == 0; }, '-');
  return name;
}

struct Frame {
  const solver::StageResult* stage = nullptr;
  const solver::PanelResult* analysis = nullptr;
  std::size_t time = 0;
};

/// "02-cut-cracked". Two stages may have names that differ in signs alone: then the number tells
/// their files apart.
std::string file_stem(const Frame& frame, bool staged) {
  const std::string number = staged ? fmt::format("{:02}-", frame.time) : "";
  return fmt::format("{}{}-{}", number, file_part(frame.stage->name),
                     solver::to_string(frame.analysis->model));
}

/// All analyses, model by model and stage by stage. Where the work is followed stage by stage, the
/// time is the stage's number; else it only counts.
std::vector<Frame> frames_of(const solver::JobResult& result) {
  std::vector<Frame> frames;
  std::size_t number = 0;
  for (const solver::StageResult& stage : result.stages) {
    for (const solver::PanelResult& analysis : stage.analyses) {
      frames.push_back({&stage, &analysis, number});
    }
    ++number;
  }
  std::ranges::stable_sort(frames, {}, [](const Frame& frame) { return frame.analysis->model; });
  if (!is_staged(result)) {
    for (std::size_t index = 0; index < frames.size(); ++index) frames[index].time = index;
  }
  return frames;
}

/// One line of the collection. Analyses of one time are parts of it, by model.
std::string data_set(const Frame& frame, const std::string& file, bool staged) {
  const int part = staged ? static_cast<int>(frame.analysis->model) : 0;
  return fmt::format("    <DataSet timestep=\"{}\" part=\"{}\" file=\"{}\"/>\n", frame.time, part,
                     file);
}

std::string collection_of(const std::string& data_sets) {
  return fmt::format(
      "<?xml version=\"1.0\"?>\n<VTKFile type=\"Collection\" version=\"0.1\">\n  <Collection>\n{}"
      "  </Collection>\n</VTKFile>\n",
      data_sets);
}

void write_shapes(vtkPolyData* data, const fs::path& path) {
  vtkNew<vtkXMLPolyDataWriter> writer;
  write(*writer, data, path);
}

void write_walls(const solver::JobResult& result, const fs::path& folder) {
  const bool staged = is_staged(result);
  std::string data_sets;
  for (const Frame& frame : frames_of(result)) {
    const std::string file = fmt::format("wall-{}.vtu", file_stem(frame, staged));
    vtkNew<vtkXMLUnstructuredGridWriter> writer;
    write(*writer, wall_grid(result, *frame.stage, *frame.analysis), folder / file);
    data_sets += data_set(frame, file, staged);
  }
  write_file(folder / "wall.pvd", collection_of(data_sets));
}

/// No file where the beam is never in.
void write_beams(const solver::JobResult& result, const fs::path& folder) {
  if (!is_staged(result)) return;
  std::string data_sets;
  for (const Frame& frame : frames_of(result)) {
    const vtkSmartPointer<vtkPolyData> beam = beam_line(result, *frame.stage, *frame.analysis);
    if (beam->GetNumberOfPoints() == 0) continue;
    const std::string file = fmt::format("beam-{}.vtp", file_stem(frame, true));
    write_shapes(beam, folder / file);
    data_sets += data_set(frame, file, true);
  }
  if (!data_sets.empty()) write_file(folder / "beam.pvd", collection_of(data_sets));
}

}  // namespace

void write_vtk(const solver::JobResult& result, const fs::path& folder) {
  write_walls(result, folder);
  write_beams(result, folder);
  write_shapes(support_points(result), folder / "supports.vtp");
  const vtkSmartPointer<vtkPolyData> needles = needle_lines(result);
  if (needles->GetNumberOfPoints() > 0) write_shapes(needles, folder / "needles.vtp");
  write_file(folder / "README.txt", vtk_readme());
}

}  // namespace deadshore::io
