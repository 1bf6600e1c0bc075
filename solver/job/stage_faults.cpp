#include "solver/job/stage_faults.h"

#include "solver/job/cut.h"
#include "solver/job/stage_state.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <set>
#include <utility>

namespace deadshore::solver {

namespace {

/// Why an operation cannot be done, to follow "remove cut" in stage "cut", and what was due.
struct Trouble {
  std::string why;
  std::string due;
};
using Outcome = std::optional<Trouble>;

/// `N1`, `N2` and so on in quotes; a long list is cut short.
std::string listed(const std::vector<std::string>& names) {
  constexpr std::size_t most = 6;
  std::string text;
  for (std::size_t i = 0; i < std::min(names.size(), most); ++i)
    text += (i > 0 ? ", " : "") + quoted(names[i]);
  if (names.size() > most) text += fmt::format(" and {} more", names.size() - most);
  return text;
}

template <class Parts>
std::vector<std::string> names_of(const Parts& parts) {
  std::vector<std::string> names;
  names.reserve(parts.size());
  for (const auto& part : parts) names.push_back(part.name);
  return names;
}

std::vector<std::string> lintels_in_cut(const Job& job) {
  std::vector<std::string> names;
  for (const mesh::LintelShape& lintel : job.wall.lintels)
    if (mesh::find_opening(job.wall, lintel.opening) && takes_out(job.wall, lintel))
      names.push_back(lintel.name);
  return names;
}

/// A name that is none of `names`, which are all of a kind.
Trouble unknown(std::string_view kind, const std::string& name,
                const std::vector<std::string>& names) {
  return {fmt::format("and there is no {} {}", kind, quoted(name)),
          names.empty() ? fmt::format("a {} in the job", kind) : "one of " + listed(names)};
}

std::optional<std::size_t> place_in(const std::vector<std::string>& names,
                                    const std::string& name) {
  const auto found = std::ranges::find(names, name);
  if (found == names.end()) return std::nullopt;
  return static_cast<std::size_t>(found - names.begin());
}

/// The site as the work goes on. Does one operation after the other, or says why it cannot be done
/// and leaves it undone.
class Site {
 public:
  explicit Site(const Job& job)
      : job_(job),
        needle_names_(names_of(job.needles)),
        shore_names_(names_of(job.dead_shores)),
        load_names_(names_of(job.line_loads)),
        lintels_(lintels_in_cut(job)),
        needles_(job.needles.size(), NeedleState::not_yet),
        tight_(job.dead_shores.size(), false) {
    for (std::string& name : names_of(job.point_loads)) load_names_.push_back(std::move(name));
    load_on_.assign(load_names_.size(), true);
  }

  Outcome carry_out(const Operation& operation) {
    const std::string& what = operation.what;
    switch (operation.act) {
      case Act::fit:
      case Act::preload:
      case Act::release:
        return at_needle(operation);
      case Act::remove:
        return remove(what);
      case Act::place:
        return place(what);
      case Act::pack:
        return pack(what);
      case Act::tighten:
      case Act::slacken:
        return at_shore(what, operation.act == Act::tighten);
      case Act::load_on:
      case Act::load_off:
        return at_load(what, operation.act == Act::load_on);
    }
    return {};
  }

 private:
  Outcome at_needle(const Operation& operation) {
    const auto place = place_in(needle_names_, operation.what);
    if (!place) return unknown("needle", operation.what, needle_names_);
    NeedleState& needle = needles_[*place];
    if (operation.act == Act::fit) {
      if (is_in(needle)) return Trouble{"but it is in already", "each needle fitted once"};
      if (needle == NeedleState::released)
        return Trouble{"but it is out again", "each needle fitted once"};
      needle = NeedleState::fitted;
      return {};
    }
    if (needle == NeedleState::not_yet)
      return Trouble{"but it is not in yet", fmt::format("\"fit {}\" before", operation.what)};
    if (needle == NeedleState::released)
      return Trouble{"but it is out already", "nothing done to a needle that is out"};
    if (operation.act == Act::release) {
      needle = NeedleState::released;
      return {};
    }
    if (needle == NeedleState::preloaded)
      return Trouble{"but it is preloaded already", "each needle preloaded once"};
    if (job_.needles[*place].preload <= 0.0)
      return Trouble{"but it has no preload", "`preload` in its [[needle]]"};
    needle = NeedleState::preloaded;
    return {};
  }

  Outcome remove(const std::string& region) {
    const bool pockets = region == pockets_region;
    if (region != cut_region && !pockets && !place_in(lintels_, region)) {
      std::vector<std::string> names = {cut_region};
      if (job_.beam) names.emplace_back(pockets_region);
      names.insert(names.end(), lintels_.begin(), lintels_.end());
      const bool stays = place_in(lintel_names(), region).has_value();
      return Trouble{stays ? "a lintel that the cut leaves in"
                           : fmt::format("and nothing in the cut is called {}", quoted(region)),
                     names.size() > 1 ? "one of " + listed(names) : listed(names)};
    }
    if (pockets && !job_.beam) return no_beam();
    if (!out_.insert(region).second)
      return Trouble{pockets ? "but they are out already" : "but it is out already",
                     "each taken out once"};
    if (region == cut_region) out_.insert(lintels_.begin(), lintels_.end());
    return {};
  }

  Outcome place(const std::string& part) {
    if (part != padstones_part && part != beam_part)
      return Trouble{"which is nothing to place", R"("padstones" or "beam")"};
    if (!job_.beam) return no_beam();
    bool& there = part == beam_part ? beam_ : padstones_;
    if (there)
      return Trouble{
          part == beam_part ? "but it is in place already" : "but they are in place already",
          "each placed once"};
    if (part == beam_part && !is_out(cut_region)) return not_out(cut_region);
    if (!is_out(pockets_region)) return not_out(pockets_region);
    if (part == beam_part && !padstones_)
      return Trouble{"but it has no padstones yet", R"("place padstones" before)"};
    there = true;
    return {};
  }

  Outcome pack(const std::string& part) {
    if (part != beam_part) return Trouble{"which is nothing to pack", R"("beam")"};
    if (!job_.beam) return no_beam();
    if (!beam_) return Trouble{"but it is not in place yet", R"("place beam" before)"};
    if (packed_) return Trouble{"but it is packed already", "the beam packed once"};
    packed_ = true;
    return {};
  }

  Outcome at_shore(const std::string& name, bool tighten) {
    const auto place = place_in(shore_names_, name);
    if (!place) return unknown("dead shore", name, shore_names_);
    if (tight_[*place] == tighten)
      return tighten ? Trouble{"but it is tight already", "a dead shore that is slack"}
                     : Trouble{"but it is not tight", fmt::format("\"tighten {}\" before", name)};
    for (const std::string& load : loads_of(job_.dead_shores[*place])) {
      const auto carried = place_in(load_names_, load);
      if (carried && !load_on_[*carried])
        return Trouble{fmt::format("but its load {} is off", quoted(load)),
                       fmt::format("\"load on {}\" before", load)};
    }
    tight_[*place] = tighten;
    return {};
  }

  Outcome at_load(const std::string& name, bool on) {
    const auto place = place_in(load_names_, name);
    if (!place) return unknown("load", name, load_names_);
    if (load_on_[*place] == on)
      return on ? Trouble{"but it is on; all loads are, until they are taken off",
                          fmt::format("\"load off {}\" before", name)}
                : Trouble{"but it is off already", "a load that is on"};
    for (std::size_t i = 0; i < tight_.size(); ++i)
      if (tight_[i] && std::ranges::count(loads_of(job_.dead_shores[i]), name) > 0)
        return Trouble{fmt::format("but dead shore {} carries it", quoted(shore_names_[i])),
                       fmt::format("\"slacken {}\" before", shore_names_[i])};
    load_on_[*place] = on;
    return {};
  }

  [[nodiscard]] bool is_out(const std::string& region) const { return out_.contains(region); }
  static Trouble no_beam() { return {"and there is no beam", "a [beam] in the job"}; }
  static Trouble not_out(const char* region) {
    return {fmt::format("but the {} still in",
                        region == std::string_view(cut_region) ? "cut is" : "pockets are"),
            fmt::format("\"remove {}\" before", region)};
  }
  [[nodiscard]] std::vector<std::string> lintel_names() const {
    return names_of(job_.wall.lintels);
  }

  const Job& job_;
  std::vector<std::string> needle_names_;
  std::vector<std::string> shore_names_;
  std::vector<std::string> load_names_;  ///< line loads, then point loads
  std::vector<std::string> lintels_;     ///< in the cut
  std::vector<NeedleState> needles_;
  std::vector<bool> tight_;    ///< of each dead shore
  std::vector<bool> load_on_;  ///< of each load
  std::set<std::string> out_;
  bool padstones_ = false;
  bool beam_ = false;
  bool packed_ = false;
};

/// The fault of an operation.
Fault fault_at(const Job& job, std::size_t stage, std::size_t operation, Trouble trouble) {
  const Stage& in = job.stages[stage];
  return {fmt::format("stage[{}].do[{}]", stage, operation),
          fmt::format("{} in stage {}, {}", quoted(in_words(in.operations[operation])),
                      quoted(in.name), trouble.why),
          std::move(trouble.due)};
}

void check_day(const Job& job, std::size_t i, FaultList& faults) {
  if (i == 0 || job.stages[i].day >= job.stages[i - 1].day) return;
  faults.push_back(
      {key_of("stage", i, "day"),
       fmt::format("day {:.6g} for stage {}, where stage {} before it is on day {:.6g}",
                   job.stages[i].day, quoted(job.stages[i].name), quoted(job.stages[i - 1].name),
                   job.stages[i - 1].day),
       "days that never fall"});
}

void check_stage(const Job& job, std::size_t i, Site& site, FaultList& faults) {
  for (std::size_t k = 0; k < job.stages[i].operations.size(); ++k)
    if (Outcome trouble = site.carry_out(job.stages[i].operations[k]))
      faults.push_back(fault_at(job, i, k, *std::move(trouble)));
}

}  // namespace

void find_stage_faults(const Job& job, FaultList& faults) {
  find_beam_faults(job, faults);
  find_dead_shore_faults(job, faults);
  if (job.stages.empty()) return;
  Site site(job);
  for (std::size_t i = 0; i < job.stages.size(); ++i) {
    check_day(job, i, faults);
    check_stage(job, i, site, faults);
  }
  const bool cuts = std::ranges::any_of(job.stages, [](const Stage& stage) {
    return std::ranges::count(stage.operations, Operation{Act::remove, cut_region}) > 0;
  });
  if (!cuts)
    faults.push_back({"stage", "no stage that takes the cut out", "\"remove cut\" in one of them"});
}

}  // namespace deadshore::solver
