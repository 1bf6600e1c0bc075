#include "io/results/reactions_csv.h"

#include "solver/panel/support_reactions.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <functional>
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

std::string in_kilonewtons(double newtons) {
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
  const solver::SpreadResult& hand = result.hand;
  std::vector<std::reference_wrapper<const solver::SpreadSum>> sums(hand.needles.begin(),
                                                                    hand.needles.end());
  sums.insert(sums.end(), {hand.left_pier, hand.right_pier});
  for (const solver::SpreadSum& sum : sums) {
    const bool needle = sum.support && sum.support->kind == solver::SupportKind::needle;
    rows.add(label_of(result.job, sum.support),
             needle ? number(place_of(result.job, *sum.support)) : "", in_kilonewtons(sum.total),
             "");
  }
}

/// Where a support has a place of its own along the wall.
std::string place_words(const solver::SupportReaction& reaction) {
  const bool has_place = reaction.support.kind == solver::SupportKind::needle ||
                         reaction.group() == solver::SupportGroup::beam_ends;
  return has_place ? number(reaction.x) : "";
}

/// How far a support goes down, where that is known: bases are fixed.
std::string settlement_words(const solver::PanelResult& analysis,
                             const solver::SupportReaction& reaction) {
  if (reaction.support.kind == solver::SupportKind::needle) {
    return number(analysis.needles.at(reaction.support.index).settlement);
  }
  return reaction.group() == solver::SupportGroup::bases ? number(0.0) : "";
}

void add_analysis(const Rows& rows, const solver::Job& job, const solver::PanelResult& analysis) {
  if (!analysis.stands()) {
    rows.add("no equilibrium", "", "", "");
    return;
  }
  for (const solver::SupportReaction& reaction : reactions_of(job, analysis)) {
    rows.add(label_of(job, reaction.support), place_words(reaction), in_kilonewtons(reaction.force),
             settlement_words(analysis, reaction),
             reaction.mesh_error ? in_kilonewtons(*reaction.mesh_error) : "");
  }
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
