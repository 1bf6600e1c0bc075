#include "viz/view/overlay.h"

#include "viz/view/answers.h"
#include "viz/view/folded.h"
#include "viz/view/scene_parts.h"

#include <fmt/format.h>
#include <vtkActor2D.h>
#include <vtkCellArray.h>
#include <vtkPoints.h>
#include <vtkPolyData.h>
#include <vtkPolyDataMapper2D.h>
#include <vtkProperty2D.h>
#include <vtkTextActor.h>
#include <vtkTextProperty.h>

#include <algorithm>
#include <array>

namespace deadshore::viz {
namespace {

constexpr double margin = 14.0;
constexpr double body = 12.0;  // pixels, size of the letters
constexpr double line = 18.0;  // from line to line
constexpr std::size_t left_characters = 34;
constexpr std::size_t right_characters = 50;
constexpr const char* caution = "An aid to judgement; see the note (note.html) and its cautions.";

std::string joined(const std::vector<std::string>& lines) {
  return fmt::format("{}", fmt::join(lines, "\n"));
}

/// What was done to come to a stage, in a few lines.
std::vector<std::string> work_of(const nlohmann::json& answers, std::size_t stage) {
  std::vector<std::string> done;
  for (const nlohmann::json& operation : list_at(answers.at("stages").at(stage), {"operations"})) {
    if (operation.is_string()) done.push_back(operation.get<std::string>());
  }
  if (done.empty()) return {};
  std::vector<std::string> lines =
      folded({"Done for it: " + fmt::format("{}", fmt::join(done, ", "))}, left_characters);
  constexpr std::size_t most = 4;
  if (lines.size() > most) {
    lines.resize(most);
    lines.back() += " ...";
  }
  return lines;
}

}  // namespace

Overlay::Overlay(const ShownResult& result, const ViewChoices& choices,
                 const std::vector<ShownField>& fields)
    : result_(result), choices_(choices), fields_(fields) {
  renderer_->SetLayer(2);
  renderer_->InteractiveOff();
}

void Overlay::write(PagePoint at, const std::string& text, double size, Colour colour,
                    Weight weight) {
  if (text.empty()) return;
  const vtkNew<vtkTextActor> letters;
  letters->SetInput(text.c_str());
  vtkTextProperty* style = letters->GetTextProperty();
  set_letters(style, size, colour, weight);
  style->SetVerticalJustificationToTop();
  style->SetLineSpacing(1.15);
  letters->SetPosition(at.x, window_.height - at.y);
  renderer_->AddActor2D(letters);
}

void Overlay::fill(const Rect& box, Colour colour, double opacity) {
  const vtkNew<vtkPoints> corners;
  const double bottom = window_.height - box.bottom;
  const double top = window_.height - box.top;
  corners->InsertNextPoint(box.left, bottom, 0.0);
  corners->InsertNextPoint(box.right, bottom, 0.0);
  corners->InsertNextPoint(box.right, top, 0.0);
  corners->InsertNextPoint(box.left, top, 0.0);
  const vtkNew<vtkCellArray> faces;
  const std::array<vtkIdType, 4> ids = {0, 1, 2, 3};
  faces->InsertNextCell(4, ids.data());
  const vtkNew<vtkPolyData> shape;
  shape->SetPoints(corners);
  shape->SetPolys(faces);
  const vtkNew<vtkPolyDataMapper2D> mapper;
  mapper->SetInputData(shape);
  const vtkNew<vtkActor2D> actor;
  actor->SetMapper(mapper);
  actor->GetProperty()->SetColor(colour.red, colour.green, colour.blue);
  actor->GetProperty()->SetOpacity(opacity);
  renderer_->AddActor2D(actor);
}

void Overlay::choice(PagePoint at, const std::string& text, bool chosen, const ViewState& becomes) {
  const Rect box{at.x - 6.0, at.y - 3.0, left_column - 10.0, at.y + line - 3.0};
  if (chosen) fill(box, support);
  write(at, text, body, chosen ? white : ink);
  clickable_.push_back({box, becomes});
}

/// The job's title, the stage and what was done for it. Gives the height at which it ends.
double Overlay::show_heading(const ViewState& state) {
  double y = margin;
  const std::vector<std::string> title =
      folded({text_at(result_.answers, {"title"})}, left_characters - 4);
  write({margin, y}, joined(title), body, quiet_ink);
  y += line * static_cast<double>(title.size()) + 8.0;
  write({margin, y},
        fmt::format("Stage {} of {} (left, right)", state.stage + 1, choices_.stages.size()), body,
        quiet_ink);
  y += line;
  const std::vector<std::string> name = folded({choices_.stages.at(state.stage)}, 22);
  write({margin, y}, joined(name), 19.0, ink, Weight::bold);
  y += 27.0 * static_cast<double>(name.size()) + 2.0;
  const std::vector<std::string> work = work_of(result_.answers, state.stage);
  write({margin, y}, joined(work), body - 1.0, quiet_ink);
  y += line * static_cast<double>(work.size());
  const std::string& model = choices_.analyses.at(state.analysis);
  for (const std::string& warning : wall_warnings(result_.answers, {state.stage, model})) {
    write({margin, y}, warning, body, alarm, Weight::bold);
    y += line;
  }
  return y;
}

void Overlay::show_left(const ViewState& state) {
  fill({0.0, 0.0, left_column, window_.height}, Colour{0.965, 0.968, 0.972});
  double y = show_heading(state) + 12.0;
  write({margin, y}, "Masonry (a)", body, quiet_ink);
  y += line + 2.0;
  for (std::size_t i = 0; i < choices_.analyses.size(); ++i) {
    ViewState becomes = state;
    becomes.analysis = i;
    choice({margin + 6.0, y}, choices_.analyses[i], state.analysis == i, becomes);
    y += line + 2.0;
  }
  y += 10.0;
  write({margin, y}, "Coloured by (up, down)", body, quiet_ink);
  y += line + 2.0;
  for (std::size_t i = 0; i <= choices_.fields.size(); ++i) {
    ViewState becomes = state;
    const bool none = i == choices_.fields.size();
    becomes.field = none ? std::nullopt : std::optional(i);
    const std::string key = none ? "n" : i < 9 ? std::to_string(i + 1) : " ";
    const std::string name = none ? "nothing" : choices_.fields[i];
    choice({margin + 6.0, y}, fmt::format("{}  {}", key, name), state.field == becomes.field,
           becomes);
    y += line + 2.0;
  }
  y += 10.0;
  const std::string moved =
      state.magnification > 0.0
          ? fmt::format("Movements drawn {:g} times (+, -)", state.magnification)
          : "Movements not drawn (+, -)";
  write({margin, y}, moved, body, ink);
  write({margin, window_.height - 30.0}, "h  keys and help", body, quiet_ink);
}

void Overlay::show_legend(const ViewState& state) {
  const double left = window_.width - right_column;
  fill({left, 0.0, window_.width, window_.height}, Colour{0.965, 0.968, 0.972});
  double y = margin;
  if (!state.field) {
    write({left + margin, y}, "Plain masonry, not coloured", body, ink, Weight::bold);
    legend_foot_ = y + line + 8.0;
    return;
  }
  const ShownField& field = fields_.at(*state.field);
  const FieldScale scale = scale_of(field);
  write({left + margin, y}, title_of(field), body + 1.0, ink, Weight::bold);
  y += line;
  write({left + margin, y}, "the same scale in every stage and analysis", body - 1.0, quiet_ink);
  y += line + 8.0;
  constexpr double tall = 17.0;
  for (int band = scale.bands - 1; band >= 0; --band) {
    const Rect swatch{left + margin, y, left + margin + 46.0, y + tall};
    fill(swatch, tone_of(scale, band));
    const bool top = band == scale.bands - 1;
    if (!top) {
      write({swatch.right + 10.0, y - 8.0}, limit_text(scale.from + scale.step * (band + 1), scale),
            body, ink);
    }
    y += tall;
  }
  write({left + margin + 110.0, margin + 2.0 * line + 8.0},
        fmt::format("end bands take all beyond\nred crosses: loose masonry\n{}",
                    state.magnification > 0.0 ? "grey lines: as built" : ""),
        body - 1.0, quiet_ink);
  legend_foot_ = std::max(y, margin + 5.5 * line) + 10.0;
}

void Overlay::show_picked(const ViewState& state, const Picked& picked) {
  const double left = window_.width - right_column;
  std::vector<std::string> lines =
      folded(picked_text(picked, result_, state.stage, state.analysis), right_characters);
  if (lines.empty()) {
    write({left + margin, legend_foot_},
          "Click the wall, a support, a prop or the beam\nto read it.", body, quiet_ink);
    return;
  }
  write({left + margin, legend_foot_}, lines.front(), body + 2.0, support, Weight::bold);
  lines.erase(lines.begin());
  const double room = window_.height - foot_height - legend_foot_ - 1.5 * line;
  const auto fitting = static_cast<std::size_t>(std::max(room / 14.0, 1.0));
  if (lines.size() > fitting) {
    lines.resize(fitting);
    lines.back() = "... more in note.html";
  }
  write({left + margin, legend_foot_ + 1.5 * line}, joined(lines), body - 1.0, ink);
}

void Overlay::show_stages(const ViewState& state) {
  const double left = left_column + 40.0;
  const double right = window_.width - right_column - 40.0;
  const double y = window_.height - foot_height + 22.0;
  const std::size_t count = choices_.stages.size();
  const double step = count < 2 ? 0.0 : (right - left) / static_cast<double>(count - 1);
  fill({left_column, window_.height - foot_height, window_.width - right_column, window_.height},
       white);
  if (count > 1) fill({left, y - 1.0, right, y + 1.0}, Colour{0.6, 0.62, 0.65});
  for (std::size_t i = 0; i < count; ++i) {
    const double x = left + step * static_cast<double>(i);
    const double half = i == state.stage ? 8.0 : 5.0;
    fill({x - half, y - half, x + half, y + half},
         i == state.stage ? support : Colour{0.6, 0.62, 0.65});
    ViewState becomes = state;
    becomes.stage = i;
    const double reach = count < 2 ? 10.0 : 0.5 * step;
    clickable_.push_back({{x - reach, y - 16.0, x + reach, y + 16.0}, becomes});
  }
  constexpr double letter = 7.0;  // pixels, about
  const std::string& name = choices_.stages[state.stage];
  const double middle = left + step * static_cast<double>(state.stage);
  const double half = 0.5 * letter * static_cast<double>(name.size());
  write({std::clamp(middle - half, left - 24.0, std::max(right + 24.0 - 2.0 * half, left - 24.0)),
         y + 12.0},
        name, body, ink, Weight::bold);
  write({left - 24.0, y + 36.0}, caution, body, alarm, Weight::bold);
}

void Overlay::show_help() {
  const std::vector<std::string> keys = key_help();
  const double tall = 22.0 * static_cast<double>(keys.size()) + 60.0;
  const double left = left_column + 60.0;
  const double top = 60.0;
  fill({left, top, left + 520.0, top + tall}, white, 0.96);
  write({left + 20.0, top + 14.0}, "Keys", 16.0, ink, Weight::bold);
  double y = top + 46.0;
  for (const std::string& text : keys) {
    const std::size_t gap = text.find("  ");
    const std::size_t meaning = text.find_first_not_of(' ', gap);
    write({left + 20.0, y}, text.substr(0, gap), body + 1.0, support, Weight::bold);
    if (meaning != std::string::npos)
      write({left + 170.0, y}, text.substr(meaning), body + 1.0, ink);
    y += 22.0;
  }
}

void Overlay::show(Size window, const ViewState& state, const Picked& picked,
                   const std::string& message) {
  window_ = window;
  renderer_->RemoveAllViewProps();
  clickable_.clear();
  show_left(state);
  show_legend(state);
  show_picked(state, picked);
  show_stages(state);
  if (!message.empty()) {
    const double y = window_.height - foot_height - 30.0;
    fill({left_column + 16.0, y, window_.width - right_column - 16.0, y + 24.0}, white, 0.92);
    write({left_column + 24.0, y + 5.0}, message, body, ink);
  }
  if (state.help) show_help();
}

std::optional<ViewState> Overlay::clicked(PagePoint at) const {
  const auto found = std::ranges::find_if(clickable_, [&](const Choice& choice) {
    return choice.box.left <= at.x && at.x <= choice.box.right && choice.box.top <= at.y &&
           at.y <= choice.box.bottom;
  });
  return found == clickable_.end() ? std::nullopt : std::optional(found->becomes);
}

}  // namespace deadshore::viz
