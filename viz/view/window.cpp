#include "viz/view/window.h"

#include "viz/view/vtk_reading.h"

#include <fmt/format.h>
#include <vtkCommand.h>
#include <vtkErrorCode.h>
#include <vtkInteractorStyleTrackballCamera.h>
#include <vtkPNGWriter.h>
#include <vtkWindowToImageFilter.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdio>
#include <variant>

namespace deadshore::viz {
namespace {

namespace fs = std::filesystem;

constexpr Size at_first{1280.0, 800.0};
constexpr double still = 4.0;  // pixels: a press that moves less is a click

std::string as_file_part(std::string name) {
  std::ranges::replace_if(
      name, [](unsigned char c) { return std::isalnum(c) == 0; }, '-');
  return name;
}

}  // namespace

ViewWindow::ViewWindow(const ShownResult& result, const std::vector<ShownField>& fields,
                       const ViewChoices& choices, Surface surface)
    : result_(result),
      choices_(choices),
      scene_(result, fields),
      overlay_(result, choices, fields),
      state_(first_view(choices)) {
  window_->SetOffScreenRendering(surface == Surface::off_screen ? 1 : 0);
  window_->SetSize(static_cast<int>(at_first.width), static_cast<int>(at_first.height));
  window_->SetMultiSamples(8);
  window_->SetNumberOfLayers(3);
  window_->AddRenderer(scene_.renderer());
  window_->AddRenderer(scene_.layer_over());
  window_->AddRenderer(overlay_.renderer());
  fit_parts();
  scene_.look_from_the_side(aspect());
  events_->SetClientData(this);
  events_->SetCallback(&ViewWindow::on_event);
  scene_.renderer()->AddObserver(vtkCommand::StartEvent, events_);
  if (surface == Surface::off_screen) return;

  interactor_->SetRenderWindow(window_);
  const vtkNew<vtkInteractorStyleTrackballCamera> style;
  style->SetDefaultRenderer(scene_.renderer());
  interactor_->SetInteractorStyle(style);
  constexpr float before_the_style = 1.0F;
  for (const unsigned long event :
       {vtkCommand::KeyPressEvent, vtkCommand::CharEvent, vtkCommand::LeftButtonPressEvent,
        vtkCommand::MouseMoveEvent, vtkCommand::ConfigureEvent}) {
    interactor_->AddObserver(event, events_, before_the_style);
  }
  // While the style turns the wall it alone gets events, but for those who only watch.
  releases_->SetClientData(this);
  releases_->SetCallback(&ViewWindow::on_event);
  releases_->SetPassiveObserver(1);
  interactor_->AddObserver(vtkCommand::LeftButtonReleaseEvent, releases_);
}

Size ViewWindow::size() const {
  const int* pixels = const_cast<vtkRenderWindow*>(window_.Get())->GetSize();
  return {static_cast<double>(pixels[0]), static_cast<double>(pixels[1])};
}

double ViewWindow::aspect() const {
  const Size all = size();
  const double width = std::max(all.width - left_column - right_column, 50.0);
  return width / std::max(all.height - foot_height, 50.0);
}

/// The wall between the columns, above the row of stages.
void ViewWindow::fit_parts() {
  const Size all = size();
  const double left = std::min(left_column / all.width, 0.4);
  const double right = std::max(1.0 - right_column / all.width, left + 0.1);
  for (vtkRenderer* part : {scene_.renderer(), scene_.layer_over()}) {
    part->SetViewport(left, std::min(foot_height / all.height, 0.4), right, 1.0);
  }
}

PagePoint ViewWindow::pointer() const {
  const int* at = const_cast<vtkRenderWindowInteractor*>(interactor_.Get())->GetEventPosition();
  return {static_cast<double>(at[0]), size().height - at[1]};
}

void ViewWindow::show(const ViewState& state, const Picked& picked) {
  state_ = state;
  picked_ = picked;
  redraw();
}

void ViewWindow::redraw() {
  const std::vector<std::string> read =
      picked_text(picked_, result_, state_.stage, state_.analysis);
  const std::string name =
      fmt::format("Deadshore, {}: {}{}", result_.folder.filename().string(),
                  in_words(state_, choices_), read.empty() ? "" : "; reads " + read.front());
  window_->SetWindowName(name.c_str());
  scene_.show(state_, picked_);
  overlay_.show(size(), state_, picked_, message_);
  window_->Render();
}

void ViewWindow::run(const ViewState& state, const Picked& picked) {
  interactor_->Initialize();
  show(state, picked);
  interactor_->Start();
}

void ViewWindow::save_picture(const fs::path& file) {
  const vtkNew<vtkWindowToImageFilter> image;
  image->SetInput(window_);
  image->SetInputBufferTypeToRGB();
  image->ReadFrontBufferOff();
  image->Update();
  const vtkNew<vtkPNGWriter> writer;
  writer->SetFileName(file.c_str());
  writer->SetInputConnection(image->GetOutputPort());
  const int before = vtkObject::GetGlobalWarningDisplay();
  vtkObject::GlobalWarningDisplayOff();
  writer->Write();
  vtkObject::SetGlobalWarningDisplay(before);
  if (writer->GetErrorCode() != vtkErrorCode::NoError) {
    throw ViewError(file, "the picture cannot be written there");
  }
}

std::string picture_name(const ShownResult& result, const ViewState& state) {
  return fmt::format("{}-{:02}-{}-{}.png", result.folder.filename().string(), state.stage,
                     as_file_part(result.stages.at(state.stage)),
                     result.analyses.at(state.analysis));
}

/// Beside it, not in it: a folder of results holds what a run wrote and nothing else.
void ViewWindow::save_beside_folder() {
  const fs::path file = result_.folder.parent_path() / picture_name(result_, state_);
  message_.clear();
  redraw();
  try {
    save_picture(file);
    message_ = fmt::format("Picture saved: {}", file.string());
    fmt::print("{}\n", message_);
    std::fflush(stdout);
  } catch (const ViewError& error) {
    message_ = error.what();
  }
  redraw();
}

void ViewWindow::obey(WindowTask task) {
  switch (task) {
    case WindowTask::none:
      break;
    case WindowTask::reset_view:
      picked_ = PickedNothing{};
      scene_.look_from_the_side(aspect());
      break;
    case WindowTask::front_view:
      scene_.look_from_the_front(aspect());
      break;
    case WindowTask::save_picture:
      save_beside_folder();
      return;
    case WindowTask::quit:
      interactor_->TerminateApp();
      return;
  }
  redraw();
}

void ViewWindow::on_key(const std::string& key) {
  const std::optional<AfterKey> after = after_key(state_, choices_, key);
  if (!after) return;
  message_.clear();
  state_ = after->state;
  obey(after->task);
}

void ViewWindow::on_press() {
  pressed_at_ = pointer();
  const Size all = size();
  const bool beside = pressed_at_.x < left_column || pressed_at_.x > all.width - right_column ||
                      pressed_at_.y > all.height - foot_height;
  if (!beside) return;
  events_->SetAbortFlag(1);  // the wall does not turn by what is done beside it
  sliding_ = pressed_at_.y > all.height - foot_height;
  if (const std::optional<ViewState> becomes = overlay_.clicked(pressed_at_)) {
    message_.clear();
    state_ = *becomes;
    redraw();
  }
}

/// Along the row of stages.
void ViewWindow::on_move() {
  if (!sliding_) return;
  events_->SetAbortFlag(1);
  if (pointer().y < size().height - foot_height) return;
  const std::optional<ViewState> becomes = overlay_.clicked({pointer().x, pressed_at_.y});
  if (!becomes || *becomes == state_) return;
  state_ = *becomes;
  redraw();
}

void ViewWindow::on_release() {
  const PagePoint at = pointer();
  const bool moved = std::hypot(at.x - pressed_at_.x, at.y - pressed_at_.y) > still;
  const Size all = size();
  const bool on_the_wall =
      at.x >= left_column && at.x <= all.width - right_column && at.y <= all.height - foot_height;
  if (sliding_) {
    sliding_ = false;
    return;
  }
  if (moved || !on_the_wall) return;
  const int* pixel = interactor_->GetEventPosition();
  picked_ = scene_.picked_at(pixel[0], pixel[1], state_);
  message_.clear();
  redraw();
}

void ViewWindow::on_event(vtkObject* /*source*/, unsigned long event, void* self, void* /*data*/) {
  auto& window = *static_cast<ViewWindow*>(self);
  switch (event) {
    case vtkCommand::KeyPressEvent: {
      const char* key = window.interactor_->GetKeySym();
      if (key != nullptr) window.on_key(key);
      break;
    }
    case vtkCommand::CharEvent:
      window.events_->SetAbortFlag(1);  // the style has its own meanings for letters
      break;
    case vtkCommand::LeftButtonPressEvent:
      window.on_press();
      break;
    case vtkCommand::MouseMoveEvent:
      window.on_move();
      break;
    case vtkCommand::LeftButtonReleaseEvent:
      window.on_release();
      break;
    case vtkCommand::StartEvent:
      window.scene_.place_labels();
      break;
    case vtkCommand::ConfigureEvent:
      window.fit_parts();
      window.overlay_.show(window.size(), window.state_, window.picked_, window.message_);
      break;
    default:
      break;
  }
}

}  // namespace deadshore::viz
