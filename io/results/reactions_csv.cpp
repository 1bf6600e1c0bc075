#include "io/results/reactions_csv.h"

#include "solver/job/beam_places.h"
#include "solver/study/mesh_error.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <cmath>
#include <optional>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

namespace deadshore::io {
namespace {

/// Quoted where RFC 4180, section 2, rules 5 to 7 ask for it.
std::string field(std::string_view plain) {
  if (plain.find_first_of(",\"\r\n") == std::string_view::npos) return std::string(plain);
  std::string quoted = "\"";
  for (const char c : plain) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + '"';
}

void add_row(std::string& csv, std::span<const std::string> fields) {
  for (std::size_t index = 0; index < fields.size(); ++index) {
    if (index > 0) csv += ',';
    csv += field(fields[index]);
  }
  csv += "\r\n";
}

std::string number(double value) {
  return fmt::format("{:.4f}", value);
}

std::string kilonewtons(double newtons) {
  return number(newtons / 1e3);
}

/// The rows of one stage and model.
class Rows {
 public:
  /// `day` is empty where the work is not followed stage by stage: there is then no such column.
  Rows(std::string& csv, std::string stage, std::string model, std::optional<std::string> day)
      : csv_(csv), stage_(std::move(stage)), model_(std::move(model)), day_(std::move(day)) {}

  void add(const std::string& support, const std::string& x, const std::string& force,
           const std::string& settlement, const std::string& mesh_error = "") const {
    std::vector<std::string> fields = {stage_, model_, support, x, force, settlement};
    if (day_) fields.push_back(*day_);
    fields.push_back(mesh_error);
    add_row(csv_, fields);
  }

 private:
  std::string& csv_;
  std::string stage_;
  std::string model_;
  std::optional<std::string> day_;
};

void add_hand(const Rows& rows, const solver::JobResult& result) {
  for (std::size_t index = 0; index < result.hand.needles.size(); ++index) {
    const solver::SpreadSum& sum = result.hand.needles[index];
    rows.add(sum.support, number(result.job.needles.at(index).x), kilonewtons(sum.total), "");
  }
  for (const solver::SpreadSum* sum :
       {&result.hand.left_pier, &result.hand.right_pier, &result.hand.unassigned}) {
    rows.add(sum->support, "", kilonewtons(sum->total), "");
  }
}

/// Empty where it is not known.
std::string error_of(const solver::PanelResult& analysis, const std::string& support) {
  const double error = solver::mesh_error_of(analysis, support);
  return std::isfinite(error) ? kilonewtons(error) : "";
}

/// Supports without a place of their own along the wall.
void add_pier(const Rows& rows, const solver::PanelResult& analysis, const std::string& support,
              double force, const std::string& settlement) {
  rows.add(support, "", kilonewtons(force), settlement, error_of(analysis, support));
}

void add_permanent_works(const Rows& rows, const solver::Job& job,
                         const solver::PanelResult& analysis) {
  if (analysis.base_cut != 0.0) {
    add_pier(rows, analysis, "base under the cut", analysis.base_cut, number(0.0));
  }
  for (const solver::JoistReaction& joist : analysis.joists) {
    add_pier(rows, analysis, "joists on " + joist.shore, joist.force, "");
  }
  if (analysis.beam && job.beam) {
    const mesh::Interval ends = solver::places_of_beam(job).supports;
    rows.add("beam left end", number(ends.from), kilonewtons(analysis.beam->reaction_left), "",
             error_of(analysis, "beam left end"));
    rows.add("beam right end", number(ends.to), kilonewtons(analysis.beam->reaction_right), "",
             error_of(analysis, "beam right end"));
  }
}

void add_analysis(const Rows& rows, const solver::Job& job, const solver::PanelResult& analysis) {
  if (!analysis.stands()) {
    rows.add("no equilibrium", "", "", "");
    return;
  }
  for (const solver::NeedleReaction& needle : analysis.needles) {
    rows.add(needle.name, number(needle.x), kilonewtons(needle.force), number(needle.settlement),
             error_of(analysis, needle.name));
  }
  add_pier(rows, analysis, "left pier", analysis.base_left, number(0.0));
  add_pier(rows, analysis, "right pier", analysis.base_right, number(0.0));
  add_permanent_works(rows, job, analysis);
}

}  // namespace

std::string reactions_csv(const solver::JobResult& result) {
  const bool staged = is_staged(result);
  std::string csv;
  std::vector<std::string> head = {"stage",  "model",      "support",
                                   "x [mm]", "force [kN]", "settlement [mm]"};
  if (staged) head.emplace_back("day");
  head.emplace_back("mesh error [kN]");
  add_row(csv, head);
  const auto day = [staged](const std::string& of) {
    return staged ? std::optional(of) : std::nullopt;
  };
  add_hand({csv, "", "hand", day("")}, result);
  for (const solver::StageResult& stage : result.stages) {
    for (const solver::PanelResult& analysis : stage.analyses) {
      add_analysis({csv, stage.name, solver::to_string(analysis.model), day(number(stage.day))},
                   result.job, analysis);
    }
  }
  return csv;
}

}  // namespace deadshore::io
