#pragma once

#include "viz/view/lettering.h"
#include "viz/view/picked.h"
#include "viz/view/shown_field.h"
#include "viz/view/shown_result.h"
#include "viz/view/view_state.h"

#include <vtkActor.h>
#include <vtkNew.h>
#include <vtkRenderer.h>
#include <vtkSmartPointer.h>

#include <array>
#include <string>
#include <vector>

namespace deadshore::viz {

/// The wall with its needles, props, beam and reactions, as actors of one renderer.
class Scene {
 public:
  /// `result` and `fields` must outlive the scene.
  Scene(const ShownResult& result, const std::vector<ShownField>& fields);

  [[nodiscard]] vtkRenderer* renderer() const { return renderer_; }
  /// What is drawn over it; the same part of the window, one layer up.
  [[nodiscard]] vtkRenderer* layer_over() const { return over_; }

  /// Labels keep off each other as the wall is seen now; to be called before each drawing.
  void place_labels() { labels_.place(renderer_); }

  /// Draws what the state says; `picked` is marked.
  void show(const ViewState& state, const Picked& picked);

  /// The camera a little from the side, or straight in front (from inside the house), so that all
  /// of it is in sight. `aspect` is width over height of the renderer's part of the window.
  void look_from_the_side(double aspect);
  void look_from_the_front(double aspect);

  /// What is drawn at a place of the window (pixels from its lower left corner).
  [[nodiscard]] Picked picked_at(int x, int y, const ViewState& state);

 private:
  /// Something that can be picked, and what it is.
  struct Pickable {
    vtkSmartPointer<vtkActor> actor;
    Picked is;
  };

  void add(vtkActor* actor, const Picked& is);
  void add_wall(const ShownWall& wall, const ViewState& state);
  void add_frames(const ViewState& state);
  void add_reactions(const ViewState& state, const Picked& picked);
  void add_bare_needle(const std::array<double, 3>& at);
  void add_beam(const ShownWall& wall, const ViewState& state);
  void add_mark(const ShownWall& wall, const ViewState& state, const PickedWall& place);
  void look_along(const std::array<double, 3>& from, double aspect);

  const ShownResult& result_;
  const std::vector<ShownField>& fields_;
  vtkNew<vtkRenderer> renderer_;
  vtkNew<vtkRenderer> over_;  ///< arrows and labels, over everything else, by the same camera
  StandingLabels labels_;
  std::vector<Pickable> pickable_;
  std::array<double, 6> bounds_{};
  std::vector<std::array<double, 3>> outermost_;
};

}  // namespace deadshore::viz
