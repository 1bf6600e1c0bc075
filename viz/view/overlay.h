#pragma once

#include "viz/page/page.h"
#include "viz/page/palette.h"
#include "viz/view/lettering.h"
#include "viz/view/picked.h"
#include "viz/view/shown_field.h"
#include "viz/view/shown_result.h"
#include "viz/view/view_state.h"

#include <vtkNew.h>
#include <vtkRenderer.h>

#include <optional>
#include <string>
#include <vector>

namespace deadshore::viz {

/// Where the columns beside the wall are, pixels.
inline constexpr double left_column = 260.0;
inline constexpr double right_column = 340.0;
inline constexpr double foot_height = 84.0;

/// What stands round the wall: stage, choices, legend, what was picked, the row of stages, and the
/// caution. Pixels from the window's upper left corner.
class Overlay {
 public:
  /// They must outlive the overlay.
  Overlay(const ShownResult& result, const ViewChoices& choices,
          const std::vector<ShownField>& fields);

  [[nodiscard]] vtkRenderer* renderer() const { return renderer_; }

  /// Draws everything anew. `message` is said above the row of stages; it may be empty.
  void show(Size window, const ViewState& state, const Picked& picked, const std::string& message);

  /// What a click there on a choice or a stage makes of the state; none elsewhere.
  [[nodiscard]] std::optional<ViewState> clicked(PagePoint at) const;

 private:
  struct Choice {
    Rect box;
    ViewState becomes;
  };

  void write(PagePoint at, const std::string& text, double size, Colour colour,
             Weight weight = Weight::plain);
  void fill(const Rect& box, Colour colour, double opacity = 1.0);
  void choice(PagePoint at, const std::string& text, bool chosen, const ViewState& becomes);

  void show_left(const ViewState& state);
  double show_heading(const ViewState& state);
  void show_legend(const ViewState& state);
  void show_picked(const ViewState& state, const Picked& picked);
  void show_stages(const ViewState& state);
  void show_help();

  const ShownResult& result_;
  const ViewChoices& choices_;
  const std::vector<ShownField>& fields_;
  vtkNew<vtkRenderer> renderer_;
  std::vector<Choice> clickable_;
  Size window_;
  double legend_foot_ = 0.0;
};

}  // namespace deadshore::viz
