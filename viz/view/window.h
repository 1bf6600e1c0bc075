#pragma once

#include "viz/view/overlay.h"
#include "viz/view/scene.h"

#include <vtkCallbackCommand.h>
#include <vtkNew.h>
#include <vtkRenderWindow.h>
#include <vtkRenderWindowInteractor.h>

#include <filesystem>
#include <string>
#include <vector>

namespace deadshore::viz {

enum class Surface { on_screen, off_screen };

/// One window on one folder of results. Needs a display (see display.h), off the screen too.
class ViewWindow {
 public:
  /// All must outlive the window.
  ViewWindow(const ShownResult& result, const std::vector<ShownField>& fields,
             const ViewChoices& choices, Surface surface);

  /// Draws once.
  void show(const ViewState& state, const Picked& picked);

  /// Shows the window until it is left. Its title says what it shows, once it minds keys.
  void run(const ViewState& state, const Picked& picked);

  /// Saves what is shown as PNG. \throws ViewError
  void save_picture(const std::filesystem::path& file);

 private:
  static void on_event(vtkObject* source, unsigned long event, void* self, void* data);
  void obey(WindowTask task);
  void on_key(const std::string& key);
  void on_press();
  void on_move();
  void on_release();
  void redraw();
  void fit_parts();
  void save_beside_folder();
  [[nodiscard]] double aspect() const;
  [[nodiscard]] Size size() const;
  [[nodiscard]] PagePoint pointer() const;

  const ShownResult& result_;
  const ViewChoices& choices_;
  Scene scene_;
  Overlay overlay_;
  vtkNew<vtkRenderWindow> window_;
  ViewState state_;
  Picked picked_;
  std::string message_;
  PagePoint pressed_at_;
  bool sliding_ = false;
  vtkNew<vtkRenderWindowInteractor> interactor_;
  vtkNew<vtkCallbackCommand> events_;
  vtkNew<vtkCallbackCommand> releases_;
};

/// "kitchen_wall-out-04-cut-cracked.png" for a picture of that folder.
[[nodiscard]] std::string picture_name(const ShownResult& result, const ViewState& state);

}  // namespace deadshore::viz
