#include "solver/job/faults.h"

#include "solver/checks/check.h"
#include "solver/job/fault_list.h"
#include "solver/job/field.h"
#include "solver/job/stage_faults.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

constexpr double most_elements = 4e6;  // as the mesher's most_cells

template <class Parts, class NameOf>
void check_names(const Parts& parts, std::string_view table, NameOf name_of, TakenNames& taken,
                 FaultList& faults) {
  for (std::size_t i = 0; i < parts.size(); ++i)
    check_name(name_of(parts[i]), key_of(table, i, "name"), taken, faults);
}

std::string without_outer_spaces(const std::string& name) {
  constexpr const char* spaces = " \t\r\n\v\f";
  const std::size_t first = name.find_first_not_of(spaces);
  if (first == std::string::npos) return {};
  return name.substr(first, name.find_last_not_of(spaces) - first + 1);
}

double area_under(const std::vector<mesh::Point>& top) {
  double area = 0.0;
  for (std::size_t i = 1; i < top.size(); ++i)
    area += 0.5 * (top[i].y + top[i - 1].y) * (top[i].x - top[i - 1].x);
  return area;
}

}  // namespace

std::string entry_path(std::string_view table, std::size_t index) {
  return fmt::format("{}[{}]", table, index);
}

std::string key_of(std::string_view table, std::size_t index, std::string_view key) {
  return fmt::format("{}[{}].{}", table, index, key);
}

std::string in_words(double length) {
  return std::abs(length) < 1000.0 ? fmt::format("{:.6g} mm", length)
                                   : fmt::format("{:.6g} m", length / 1000.0);
}

std::string in_words(mesh::Interval interval) {
  return in_words(interval.from) + " to " + in_words(interval.to);
}

std::string quoted(std::string_view name) {
  return fmt::format("\"{}\"", name);
}

void check_name(const std::string& name, const std::string& key, TakenNames& taken,
                FaultList& faults) {
  const std::string bare = without_outer_spaces(name);
  if (bare.empty()) {
    faults.push_back({key, "no name", "a name to call it by in the answer"});
    return;
  }
  const auto [earlier, is_new] = taken.emplace(bare, key);
  if (!is_new)
    faults.push_back({key, fmt::format("\"{}\", also the name at {}", name, earlier->second),
                      "a name of its own"});
}

double overlap(mesh::Interval a, mesh::Interval b) {
  return std::min(a.to, b.to) - std::max(a.from, b.from);
}

void find_name_faults(const Job& job, FaultList& faults) {
  const auto own_name = [](const auto& part) { return part.name; };
  TakenNames openings;
  check_names(job.wall.openings, "opening", own_name, openings, faults);
  // These words are what "remove" is done to, beside a lintel by its name.
  TakenNames lintels = {{to_string(WorkPart::cut), "cut"}, {to_string(WorkPart::pockets), "beam"}};
  check_names(
      job.lintels, "lintel", [](const Lintel& lintel) { return lintel.shape.name; }, lintels,
      faults);
  TakenNames loads;
  check_names(job.line_loads, "line_load", own_name, loads, faults);
  check_names(job.point_loads, "point_load", own_name, loads, faults);
  TakenNames needles;
  check_names(job.needles, "needle", own_name, needles, faults);
  TakenNames beams;
  if (job.beam) check_name(job.beam->name, "beam.name", beams, faults);
  TakenNames shores;
  check_names(job.dead_shores, "dead_shore", own_name, shores, faults);
  TakenNames stages = {{hand_stage, "the checks by hand"}};
  check_names(job.stages, "stage", own_name, stages, faults);
}

void find_removal_faults(const Job& job, FaultList& faults) {
  const double one = job.removal.one_person_lift;
  const double two = job.removal.two_person_lift;
  if (two < one)
    faults.push_back({"removal.two_person_lift",
                      fmt::format("{}, where one person lifts {}", in_words(two, fields::newtons),
                                  in_words(one, fields::newtons)),
                      "what one person lifts or more"});
}

void find_analysis_faults(const Job& job, FaultList& faults) {
  const double size = job.analysis.mesh_size;
  const double elements = area_under(job.wall.top) / (size * size);
  if (elements > most_elements) {
    const double fitting = std::ceil(size * std::sqrt(elements / most_elements));
    faults.push_back({"analysis.mesh",
                      fmt::format("{}, which makes some {:.3g} million elements", in_words(size),
                                  elements / 1e6),
                      fmt::format("{} or more", in_words(fitting))});
  }

  const std::vector<MasonryModel>& models = job.analysis.masonry;
  if (models.empty())
    faults.push_back({"analysis.masonry", "nothing to analyse", "uncracked, cracked or both"});
  for (std::size_t i = 1; i < models.size(); ++i)
    if (std::count(models.begin(), models.begin() + i, models[i]) > 0)
      faults.push_back({"analysis.masonry", fmt::format("{} twice", to_string(models[i])),
                        "each analysis once"});
}

std::vector<Fault> find_complete_job_faults(const Job& job) {
  FaultList faults;
  find_number_faults(job, faults);
  if (!faults.empty()) return faults;
  find_outline_faults(job, faults);
  if (!faults.empty()) return faults;
  find_name_faults(job, faults);
  find_opening_faults(job, faults);
  find_lintel_faults(job, faults);
  find_cut_faults(job, faults);
  find_load_faults(job, faults);
  find_needle_faults(job, faults);
  find_frame_faults(job, faults);
  find_shore_faults(job, faults);
  find_stage_faults(job, faults);
  find_lift_faults(job, faults);
  find_removal_faults(job, faults);
  find_analysis_faults(job, faults);
  return faults;
}

}  // namespace deadshore::solver
