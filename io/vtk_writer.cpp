#include "io/vtk_writer.h"

#include "io/error.h"
#include "io/vtk_supports.h"
#include "io/vtk_wall.h"

#include <fmt/format.h>
#include <vtkErrorCode.h>
#include <vtkNew.h>
#include <vtkObject.h>
#include <vtkXMLPolyDataWriter.h>
#include <vtkXMLUnstructuredGridWriter.h>

#include <algorithm>
#include <cctype>
#include <fstream>
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
};

/// All analyses, model by model and stage by stage, so that stepping through them shows one model's
/// whole sequence before the next model's.
std::vector<Frame> frames_of(const solver::JobResult& result) {
  std::vector<Frame> frames;
  for (const solver::StageResult& stage : result.stages) {
    for (const solver::PanelResult& analysis : stage.analyses)
      frames.push_back({&stage, &analysis});
  }
  std::ranges::stable_sort(frames, {}, [](const Frame& frame) { return frame.analysis->model; });
  return frames;
}

void write_collection(const std::vector<std::string>& files, const fs::path& path) {
  std::ofstream out(path, std::ios::binary);
  out << "<?xml version=\"1.0\"?>\n<VTKFile type=\"Collection\" version=\"0.1\">\n  <Collection>\n";
  for (std::size_t step = 0; step < files.size(); ++step) {
    out << fmt::format("    <DataSet timestep=\"{}\" part=\"0\" file=\"{}\"/>\n", step,
                       files[step]);
  }
  out << "  </Collection>\n</VTKFile>\n";
  out.close();
  if (!out) throw FileError(path, "cannot be written");
}

}  // namespace

void write_vtk(const solver::JobResult& result, const fs::path& folder) {
  std::vector<std::string> files;
  for (const auto& [stage, analysis] : frames_of(result)) {
    const std::string file =
        fmt::format("wall-{}-{}.vtu", file_part(stage->name), solver::to_string(analysis->model));
    vtkNew<vtkXMLUnstructuredGridWriter> writer;
    write(*writer, wall_grid(result, *stage, *analysis), folder / file);
    files.push_back(file);
  }
  write_collection(files, folder / "wall.pvd");

  vtkNew<vtkXMLPolyDataWriter> writer;
  write(*writer, support_points(result), folder / "supports.vtp");
}

}  // namespace deadshore::io
