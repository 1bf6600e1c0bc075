#include "tests/fuzz/entries.h"

#include "io/commands/summary.h"
#include "io/document/html.h"
#include "io/error.h"
#include "io/job/job_reader.h"
#include "io/job/units.h"
#include "io/note/note.h"
#include "io/results/reactions_csv.h"
#include "io/results/results_json.h"
#include "io/sheet/sheet.h"
#include "io/tables/member_tables.h"
#include "io/tables/weight_tables.h"
#include "mesh/error.h"
#include "solver/fem/job_mesh.h"
#include "solver/job/error.h"
#include "solver/job/stage_state.h"
#include "solver/job/usual_stages.h"
#include "solver/members/error.h"
#include "solver/study/analyse.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <string>

namespace deadshore::fuzz {

namespace {

constexpr std::size_t most_lines = 30;

const io::Units& units() {
  static const io::Units loaded;
  return loaded;
}

/// A refusal is one line that names the file.
void require_one_line(std::string_view message) {
  if (!message.starts_with("fuzz.toml:")) throw std::logic_error("names no file");
  const auto is_control = [](unsigned char c) { return std::iscntrl(c) != 0; };
  if (std::any_of(message.begin(), message.end(), is_control)) throw std::logic_error("many lines");
}

std::optional<solver::Job> sound_job(std::string_view bytes) {
  try {
    return io::parse_job(bytes, "fuzz.toml", units());
  } catch (const io::InputError& refusal) {
    require_one_line(refusal.what());
  }
  return std::nullopt;
}

bool is_small(const solver::Job& job, double most_elements) {
  const double size = job.analysis.mesh_size;
  const std::size_t lines = job.needles.size() + job.wall.openings.size() + job.wall.top.size() +
                            job.line_loads.size() + job.point_loads.size();
  return job.wall.length * job.wall.height() < most_elements * size * size && lines <= most_lines;
}

/// Every element has an area above 0, and together they have no more than the wall could have.
void require_sound(const solver::Job& job, const mesh::QuadMesh& mesh) {
  double sum = 0.0;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const double area = mesh::area_of(mesh, quad);
    if (!(area > 0.0)) throw std::logic_error("an element without area");
    sum += area;
  }
  const double box = job.wall.length * job.wall.height();
  if (!std::isfinite(sum) || sum > box * (1.0 + 1e-6)) throw std::logic_error("more than the wall");
}

}  // namespace

bool read_job(std::string_view bytes) {
  const std::optional<solver::Job> job = sound_job(bytes);
  if (!job) return false;
  if (job->stages.empty()) static_cast<void>(solver::stages_of(*job));
  return true;
}

bool mesh_job(std::string_view bytes) {
  const std::optional<solver::Job> job = sound_job(bytes);
  constexpr double some_thousand = 4000.0;
  if (!job || !is_small(*job, some_thousand)) return false;
  const double size = job->analysis.mesh_size;
  try {
    require_sound(*job, solver::mesh_of(*job, size).quads);
    const mesh::WallMesh whole = solver::whole_mesh_of(*job, size);
    require_sound(*job, whole.quads);
    for (const solver::StageState& state : solver::states_of(*job, solver::stages_of(*job))) {
      require_sound(*job, solver::part_at(whole.quads, state).quads);
    }
  } catch (const mesh::GeometryError&) {
    return false;
  }
  return true;
}

bool analyse_job(std::string_view bytes) {
  const std::optional<solver::Job> job = sound_job(bytes);
  constexpr double few_elements = 400.0;
  constexpr std::size_t few_stages = 20;
  if (!job || !is_small(*job, few_elements)) return false;
  if (solver::stages_of(*job).size() > few_stages) return false;
  try {
    const solver::JobResult result = solver::analyse(*job);
    const io::JobFile file{"fuzz.toml", std::string(bytes)};
    static_cast<void>(io::results_json(result, file));
    static_cast<void>(io::reactions_csv(result));
    static_cast<void>(io::document_html(io::design_note(result, {}, file)));
    static_cast<void>(io::sheet_html(result));
    static_cast<void>(io::summary_of(result));
  } catch (const mesh::GeometryError&) {
    return false;
  } catch (const solver::SolveError&) {
    return false;
  } catch (const solver::MemberError&) {
    return false;
  }
  return true;
}

bool read_tables(std::string_view bytes) {
  io::MemberTables members;
  io::WeightTables weights;
  try {
    io::add_member_tables(bytes, "fuzz.toml", members);
    io::add_weight_tables(bytes, "fuzz.toml", weights);
  } catch (const io::InputError& refusal) {
    require_one_line(refusal.what());
    return false;
  }
  return true;
}

}  // namespace deadshore::fuzz
