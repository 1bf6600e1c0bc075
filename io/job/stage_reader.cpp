#include "io/job/stage_reader.h"

#include "io/job/job_wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>

namespace deadshore::io {

namespace {

using solver::Act;

// Of two that are as near to a misspelt verb the first is named.
constexpr std::array acts = {Act::fit,  Act::preload, Act::release, Act::remove,   Act::place,
                             Act::pack, Act::tighten, Act::slacken, Act::load_off, Act::load_on};

constexpr std::string_view every_one = "all";

bool is_space(char c) {
  return std::isspace(static_cast<unsigned char>(c)) != 0;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_space(text.back())) text.remove_suffix(1);
  return text;
}

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

solver::Operation read_operation(const Entry& entry) {
  const std::string_view text = trimmed(entry.text);
  std::vector<std::string_view> verbs;
  for (const Act act : acts) {
    const std::string_view verb = to_string(act);
    verbs.push_back(verb);
    if (!text.starts_with(verb)) continue;
    const std::string_view rest = text.substr(verb.size());
    if (rest.empty()) entry.refuse("which names nothing", fmt::format("\"{} NAME\" is due", verb));
    if (is_space(rest.front())) return {act, std::string(trimmed(rest))};
  }
  entry.refuse(
      "which begins with no verb that is known",
      fmt::format("the nearest known one is \"{}\"", nearest_name(first_words(text), verbs)));
}

/// Needles or dead shores that an act may be done to.
std::vector<std::string> names_for(Act act, const solver::Job& job) {
  std::vector<std::string> names;
  if (act == Act::fit || act == Act::preload || act == Act::release) {
    for (const solver::Needle& needle : job.needles) {
      if (act != Act::preload || needle.preload > 0.0) names.push_back(needle.name);
    }
  }
  if (act == Act::tighten || act == Act::slacken) {
    for (const solver::DeadShore& shore : job.dead_shores) names.push_back(shore.name);
  }
  return names;
}

bool is_done(const solver::Operation& operation, const std::vector<solver::Stage>& stages) {
  return std::any_of(stages.begin(), stages.end(), [&](const solver::Stage& stage) {
    return std::find(stage.operations.begin(), stage.operations.end(), operation) !=
           stage.operations.end();
  });
}

/// What an entry stands for: itself, or with "all" one operation for each thing that this was not
/// done to before. `job.stages` has the stage so far.
std::vector<solver::Operation> operations_of(const Entry& entry, const solver::Job& job) {
  const solver::Operation operation = read_operation(entry);
  const std::vector<std::string> names = names_for(operation.act, job);
  const bool is_name = std::find(names.begin(), names.end(), every_one) != names.end();
  if (operation.what != every_one || is_name) return {operation};
  std::vector<solver::Operation> all;
  for (const std::string& name : names) {
    const solver::Operation one{operation.act, name};
    if (!is_done(one, job.stages)) all.push_back(one);
  }
  if (all.empty()) {
    entry.refuse("and there is nothing to do it to",
                 fmt::format("\"{} NAME\" is due", to_string(operation.act)));
  }
  return all;
}

}  // namespace

void read_stages(const std::vector<NamedTable>& tables, solver::Job& job, JobSource& source) {
  for (const NamedTable& entry : tables) {
    const JobTable& table = entry.table;
    const double day_before = job.stages.empty() ? 0.0 : job.stages.back().day;
    job.stages.push_back({.name = table.text("name"),
                          .day = table.has("day") ? table.number("day") : day_before,
                          .operations = {}});
    if (!table.has("do")) continue;
    solver::Stage& stage = job.stages.back();
    const std::string list = table.path_of("do");
    const std::vector<std::string> texts = table.texts("do");
    for (std::size_t i = 0; i < texts.size(); ++i) {
      const Entry written{source, fmt::format("{}[{}]", list, i), texts[i], stage.name};
      for (solver::Operation& operation : operations_of(written, job)) {
        source.place(fmt::format("{}[{}]", list, stage.operations.size()), written.path);
        stage.operations.push_back(std::move(operation));
      }
    }
  }
}

}  // namespace deadshore::io
