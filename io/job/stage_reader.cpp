#include "io/job/field_reader.h"
#include "io/job/job_wording.h"
#include "io/job/table_readers.h"
#include "solver/job/permanent_works_fields.h"
#include "solver/job/stage_faults.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <variant>
#include <vector>

namespace deadshore::io {

namespace {

using solver::Act;
using solver::Operation;
using solver::Target;
using solver::WorkPart;

// Of two that are as near to a misspelt verb the first is named.
constexpr std::array acts = {Act::fit,  Act::preload, Act::release, Act::remove,   Act::place,
                             Act::pack, Act::tighten, Act::slacken, Act::load_off, Act::load_on};

constexpr std::string_view every_one = "all";

/// One entry of `do`, and where it is written.
struct Entry {
  const JobSource& source;
  std::string path;
  std::string_view text;
  std::string_view stage;

  [[noreturn]] void refuse(std::string_view why, const std::string& due) const {
    source.refuse(path, fmt::format("{} in stage {}, {}", in_quotes(text), in_quotes(stage), why),
                  due);
  }
};

/// The verb that the text begins with, or the start of it: all verbs but "load on" and "load off"
/// are one word.
std::string_view first_words(std::string_view text) {
  const std::size_t space = text.find(' ');
  if (text.substr(0, space) != "load" || space == std::string_view::npos) {
    return text.substr(0, space);
  }
  return text.substr(0, text.find(' ', space + 1));
}

/// An entry taken apart: what is done, and the name of what it is done to.
struct Order {
  Act act = Act::fit;
  std::string_view name;  ///< without spaces round it
};

Order read_order(const Entry& entry) {
  const std::string_view text = trimmed(entry.text);
  std::vector<std::string_view> verbs;
  for (const Act act : acts) {
    const std::string_view verb = to_string(act);
    verbs.push_back(verb);
    if (!text.starts_with(verb)) continue;
    const std::string_view rest = text.substr(verb.size());
    if (rest.empty()) entry.refuse("which names nothing", fmt::format("\"{} NAME\" is due", verb));
    if (is_blank(rest.front())) return {act, trimmed(rest)};
  }
  entry.refuse(
      "which begins with no verb that is known",
      fmt::format("the nearest known one is \"{}\"", nearest_name(first_words(text), verbs)));
}

/// Something that an act may be done to, by its name.
struct NamedTarget {
  std::string name;
  Target target;
};

template <class Id, class Parts>
void add_parts(const Parts& parts, std::vector<NamedTarget>& targets) {
  for (std::size_t i = 0; i < parts.size(); ++i) targets.push_back({parts[i].name, Id{i}});
}

/// Everything of the kind that an act may be done to.
std::vector<NamedTarget> targets_of(Act act, const solver::Job& job) {
  const auto part = [](WorkPart which) { return NamedTarget{to_string(which), which}; };
  std::vector<NamedTarget> targets;
  switch (act) {
    case Act::fit:
    case Act::preload:
    case Act::release:
      add_parts<solver::NeedleId>(job.needles, targets);
      break;
    case Act::remove:
      targets = {part(WorkPart::cut), part(WorkPart::pockets)};
      for (std::size_t i = 0; i < job.lintels.size(); ++i) {
        targets.push_back({job.lintels[i].shape.name, solver::LintelId{i}});
      }
      break;
    case Act::place:
      targets = {part(WorkPart::padstones), part(WorkPart::beam)};
      break;
    case Act::pack:
      targets = {part(WorkPart::beam)};
      break;
    case Act::tighten:
    case Act::slacken:
      add_parts<solver::ShoreId>(job.dead_shores, targets);
      break;
    case Act::load_on:
    case Act::load_off:
      add_parts<solver::LineLoadId>(job.line_loads, targets);
      add_parts<solver::PointLoadId>(job.point_loads, targets);
      break;
  }
  return targets;
}

/// The kind of thing that an act is done to, where there may be many of a kind.
std::string_view kind_of(Act act) {
  switch (act) {
    case Act::fit:
    case Act::preload:
    case Act::release:
      return "needle";
    case Act::tighten:
    case Act::slacken:
      return "dead shore";
    default:
      return "load";
  }
}

[[noreturn]] void refuse_name(const Entry& entry, const Order& order, const solver::Job& job,
                              const std::vector<NamedTarget>& targets) {
  if (order.act == Act::remove) {
    entry.refuse(fmt::format("and nothing in the cut is called {}", in_quotes(order.name)),
                 "due: " + solver::one_of(solver::removable_names(job)));
  }
  if (order.act == Act::place || order.act == Act::pack) {
    entry.refuse(fmt::format("which is nothing to {}", to_string(order.act)),
                 order.act == Act::place ? R"(due: "padstones" or "beam")" : R"(due: "beam")");
  }
  std::vector<std::string> names;
  for (const NamedTarget& target : targets) names.push_back(target.name);
  const std::string_view kind = kind_of(order.act);
  entry.refuse(
      fmt::format("and there is no {} {}", kind, in_quotes(order.name)),
      names.empty() ? fmt::format("due: a {} in the job", kind) : "due: " + solver::one_of(names));
}

/// Whether an act was done to something in a stage so far.
bool is_done(const Operation& operation, const std::vector<solver::Stage>& stages) {
  return std::ranges::any_of(stages,
                             [&](const solver::Stage& stage) { return does(stage, operation); });
}

/// Whether "all" may stand for everything that the act is done to.
bool takes_all(Act act) {
  return act == Act::fit || act == Act::preload || act == Act::release || act == Act::tighten ||
         act == Act::slacken;
}

bool has_no_preload(const solver::Job& job, const Target& target) {
  const auto* needle = std::get_if<solver::NeedleId>(&target);
  return needle != nullptr && job.needles[index_of(*needle)].preload <= 0.0;
}

/// What an entry stands for: itself, or with "all" one operation for each thing that this was not
/// done to before. `job.stages` has the stage so far.
std::vector<Operation> operations_of(const Entry& entry, const solver::Job& job) {
  const Order order = read_order(entry);
  const std::vector<NamedTarget> targets = targets_of(order.act, job);
  const auto named = std::ranges::find_if(
      targets, [&](const NamedTarget& target) { return trimmed(target.name) == order.name; });
  if (named != targets.end()) return {{order.act, named->target}};
  if (order.name != every_one || !takes_all(order.act)) refuse_name(entry, order, job, targets);
  std::vector<Operation> all;
  for (const NamedTarget& target : targets) {
    if (order.act == Act::preload && has_no_preload(job, target.target)) continue;
    const Operation one{order.act, target.target};
    if (!is_done(one, job.stages)) all.push_back(one);
  }
  if (all.empty()) {
    entry.refuse("and there is nothing to do it to",
                 fmt::format("\"{} NAME\" is due", to_string(order.act)));
  }
  return all;
}

}  // namespace

void read_stages(const std::vector<NamedTable>& tables, solver::Job& job, JobSource& source) {
  for (const NamedTable& entry : tables) {
    const JobTable& table = entry.table;
    const double day_before = job.stages.empty() ? 0.0 : job.stages.back().day;
    job.stages.push_back(read(table, solver::fields::stage, {"", day_before, {}}));
    if (!table.has("do")) continue;
    solver::Stage& stage = job.stages.back();
    const std::string list = table.path_of("do");
    const std::vector<std::string> texts = table.texts("do");
    for (std::size_t i = 0; i < texts.size(); ++i) {
      const Entry written{source, fmt::format("{}[{}]", list, i), texts[i], stage.name};
      for (const Operation& operation : operations_of(written, job)) {
        source.place(fmt::format("{}[{}]", list, stage.operations.size()), written.path);
        stage.operations.push_back(operation);
      }
    }
  }
}

}  // namespace deadshore::io
