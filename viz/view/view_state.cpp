#include "viz/view/view_state.h"

#include <fmt/format.h>
#include <vtkDataArray.h>
#include <vtkPointData.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

namespace deadshore::viz {

namespace {

constexpr double most_magnified = 1e5;

/// 1, 2 or 5 times a power of ten, the largest that is not above `value`, which is at least 1.
double stepped_down(double value) {
  const double decade = std::pow(10.0, std::floor(std::log10(value) + 1e-9));
  const double share = value / decade * (1.0 + 1e-9);
  if (share >= 5.0) return 5.0 * decade;
  return share >= 2.0 ? 2.0 * decade : decade;
}

bool is_letter(std::string_view key, char letter) {
  return key.size() == 1 && std::tolower(static_cast<unsigned char>(key.front())) == letter;
}

std::optional<ViewState> stepped_stage(ViewState state, const ViewChoices& choices,
                                       std::string_view key) {
  const std::size_t last = choices.stages.size() - 1;
  if (key == "Right" || key == "Next") {
    state.stage = std::min(state.stage + 1, last);
  } else if (key == "Left" || key == "Prior") {
    state.stage -= state.stage == 0 ? 0 : 1;
  } else if (key == "Home") {
    state.stage = 0;
  } else if (key == "End") {
    state.stage = last;
  } else {
    return std::nullopt;
  }
  return state;
}

/// The fields in a ring, with none of them after the last.
std::optional<ViewState> other_field(ViewState state, const ViewChoices& choices,
                                     std::string_view key) {
  const std::size_t count = choices.fields.size();
  const std::size_t at = state.field.value_or(count);
  std::size_t next = at;
  if (key == "Down") {
    next = (at + 1) % (count + 1);
  } else if (key == "Up") {
    next = (at + count) % (count + 1);
  } else if (is_letter(key, 'n')) {
    next = count;
  } else if (key.size() == 1 && std::isdigit(static_cast<unsigned char>(key.front())) != 0) {
    next = key.front() == '0' ? count : static_cast<std::size_t>(key.front() - '1');
    if (next > count) return std::nullopt;
  } else {
    return std::nullopt;
  }
  state.field = next == count ? std::nullopt : std::optional(next);
  return state;
}

std::optional<ViewState> otherwise_drawn(ViewState state, const ViewChoices& choices,
                                         std::string_view key) {
  if (is_letter(key, 'a') || key == "Tab") {
    state.analysis = (state.analysis + 1) % choices.analyses.size();
  } else if (key == "plus" || key == "equal" || key == "KP_Add") {
    state.magnification = magnified_more(state.magnification);
  } else if (key == "minus" || key == "underscore" || key == "KP_Subtract") {
    state.magnification = magnified_less(state.magnification);
  } else if (is_letter(key, 'w')) {
    state.mesh_lines = !state.mesh_lines;
  } else if (is_letter(key, 'v')) {
    state.reactions = !state.reactions;
  } else if (is_letter(key, 'h') || key == "question" || key == "F1") {
    state.help = !state.help;
  } else {
    return std::nullopt;
  }
  return state;
}

std::string lowered(std::string_view text) {
  std::string small(text);
  std::ranges::transform(small, small.begin(), [](unsigned char c) { return std::tolower(c); });
  return small;
}

double largest_movement(vtkDataArray* movements) {
  double largest = 0.0;
  for (vtkIdType i = 0; movements != nullptr && i < movements->GetNumberOfTuples(); ++i) {
    largest =
        std::max(largest, std::hypot(movements->GetComponent(i, 0), movements->GetComponent(i, 1)));
  }
  return largest;
}

}  // namespace

ViewState first_view(const ViewChoices& choices) {
  ViewState state;
  state.analysis = choices.analyses.empty() ? 0 : choices.analyses.size() - 1;
  if (choices.fields.empty()) state.field.reset();
  state.magnification = choices.magnification;
  return state;
}

std::optional<AfterKey> after_key(const ViewState& state, const ViewChoices& choices,
                                  std::string_view key) {
  if (is_letter(key, 'q')) return AfterKey{state, WindowTask::quit};
  if (key == "Escape" && !state.help) return AfterKey{state, WindowTask::quit};
  if (is_letter(key, 'p')) return AfterKey{state, WindowTask::save_picture};
  if (is_letter(key, 'f')) return AfterKey{state, WindowTask::front_view};
  if (is_letter(key, 'r')) {
    ViewState again = state;
    again.magnification = choices.magnification;
    return AfterKey{again, WindowTask::reset_view};
  }
  if (key == "Escape") {
    ViewState without = state;
    without.help = false;
    return AfterKey{without};
  }
  for (const auto& change : {stepped_stage, other_field, otherwise_drawn}) {
    if (const std::optional<ViewState> next = change(state, choices, key)) return AfterKey{*next};
  }
  return std::nullopt;
}

double magnified_more(double magnification) {
  if (magnification < 1.0) return 1.0;
  return std::min(stepped_down(2.5 * stepped_down(magnification)), most_magnified);
}

double magnified_less(double magnification) {
  if (magnification <= 1.0) return 0.0;
  const double step = stepped_down(magnification);
  if (step < magnification * (1.0 - 1e-9)) return step;
  return step < 2.0 ? 0.0 : stepped_down(0.5 * step);
}

double fitting_magnification(double largest, double size) {
  if (!(largest > 0.0) || !(size > 0.0)) return 1.0;
  return std::clamp(stepped_down(std::max(1.0, size / 30.0 / largest)), 1.0, most_magnified);
}

std::optional<std::size_t> find_name(const std::vector<std::string>& names, std::string_view name) {
  const std::string wanted = lowered(name);
  std::optional<std::size_t> found;
  std::size_t count = 0;
  for (std::size_t i = 0; i < names.size(); ++i) {
    const std::string known = lowered(names[i]);
    if (known == wanted) return i;
    if (!known.starts_with(wanted)) continue;
    found = i;
    ++count;
  }
  return count == 1 ? found : std::nullopt;
}

std::vector<std::string> key_help() {
  return {"Left, Right      the stage before, the next",
          "Home, End        the first stage, the last",
          "a                the other analysis",
          "Up, Down, 1-9    what colours the wall",
          "n                nothing colours it",
          "+, -             movements magnified more, less",
          "w                lines of the mesh",
          "v                arrows and figures of reactions",
          "drag             turns; with Shift moves; wheel nears",
          "click            reads the wall or a support there",
          "f                straight on, from inside",
          "r                view and movements as at first",
          "p                saves a picture beside the folder",
          "h, ?             this help",
          "q                leaves"};
}

std::string in_words(const ViewState& state, const ViewChoices& choices) {
  const std::string field = state.field ? choices.fields.at(*state.field) : "no field";
  return fmt::format("stage {} of {} ({}), {}, {}, movements {:g} x", state.stage + 1,
                     choices.stages.size(), choices.stages.at(state.stage),
                     choices.analyses.at(state.analysis), field, state.magnification);
}

ViewChoices choices_of(const ShownResult& result, const std::vector<ShownField>& fields) {
  double largest = 0.0;
  double size = 0.0;
  for (const ShownWall& wall : result.walls) {
    std::array<double, 6> bounds{};
    wall.grid->GetBounds(bounds.data());
    size = std::max({size, bounds[1] - bounds[0], bounds[3] - bounds[2]});
    largest = std::max(largest,
                       largest_movement(wall.grid->GetPointData()->GetArray("displacement [mm]")));
  }
  ViewChoices choices{result.stages, result.analyses, {}, fitting_magnification(largest, size)};
  for (const ShownField& field : fields) choices.fields.push_back(title_of(field));
  return choices;
}

}  // namespace deadshore::viz
