#include "io/reactions_csv.h"

#include <fmt/format.h>

#include <array>
#include <string_view>

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

void add_row(std::string& csv, const std::array<std::string, 6>& fields) {
  for (std::size_t index = 0; index < fields.size(); ++index) {
    if (index > 0) csv += ',';
    csv += field(fields[index]);
  }
  csv += "\r\n";
}

std::string number(double value) {
  return fmt::format("{:.4f}", value);
}

void add_hand(std::string& csv, const solver::JobResult& result) {
  for (std::size_t index = 0; index < result.hand.needles.size(); ++index) {
    const solver::SpreadSum& sum = result.hand.needles[index];
    add_row(csv, {"", "hand", sum.support, number(result.job.needles.at(index).x),
                  number(sum.total / 1e3), ""});
  }
  for (const solver::SpreadSum* sum :
       {&result.hand.left_pier, &result.hand.right_pier, &result.hand.unassigned}) {
    add_row(csv, {"", "hand", sum->support, "", number(sum->total / 1e3), ""});
  }
}

void add_analysis(std::string& csv, const std::string& stage, const solver::PanelResult& analysis) {
  const std::string model = solver::to_string(analysis.model);
  if (!analysis.stands()) {
    add_row(csv, {stage, model, "no equilibrium", "", "", ""});
    return;
  }
  for (const solver::NeedleReaction& needle : analysis.needles) {
    add_row(csv, {stage, model, needle.name, number(needle.x), number(needle.force / 1e3),
                  number(needle.settlement)});
  }
  add_row(csv, {stage, model, "left pier", "", number(analysis.base_left / 1e3), number(0.0)});
  add_row(csv, {stage, model, "right pier", "", number(analysis.base_right / 1e3), number(0.0)});
}

}  // namespace

std::string reactions_csv(const solver::JobResult& result) {
  std::string csv;
  add_row(csv, {"stage", "model", "support", "x [mm]", "force [kN]", "settlement [mm]"});
  add_hand(csv, result);
  for (const solver::StageResult& stage : result.stages) {
    for (const solver::PanelResult& analysis : stage.analyses) {
      add_analysis(csv, stage.name, analysis);
    }
  }
  return csv;
}

}  // namespace deadshore::io
