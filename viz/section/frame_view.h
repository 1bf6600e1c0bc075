#pragma once

#include "solver/result/results.h"
#include "viz/wall/wall_view.h"

#include <string>
#include <vector>

/// A needle frame as the wall's cross-section shows it. `z` runs through the wall from its middle,
/// inside positive; heights are above the wall's base. mm.
namespace deadshore::viz {

/// What one figure shows: a frame at the needle that loads it most.
struct ShownFrame {
  solver::NeedleFrame frame;
  solver::NeedleDesign design;
  double wall_thickness = 0.0;
  double soffit = 0.0;
  int needles = 1;  ///< how many of the job stand on such a frame

  [[nodiscard]] double needle_top() const { return soffit - frame.packing.thickness; }
  [[nodiscard]] double needle_bottom() const {
    return needle_top() - solver::depth_of(frame.member);
  }
  /// From the needle's outer to its inner end.
  [[nodiscard]] mesh::Interval reach() const;
  [[nodiscard]] double place(const solver::NeedleProp& prop) const {
    return solver::place_of(prop, wall_thickness);
  }
  /// Half the width that a prop takes: its base or its sole.
  [[nodiscard]] double half_foot(const solver::NeedleProp& prop) const;
  /// Props that stand on this side, from the outside inwards.
  [[nodiscard]] std::vector<solver::NeedleProp> standing(solver::PropSide side) const;
  /// Load of the prop with this place in the frame, N; NaN where there is no answer for it.
  [[nodiscard]] double prop_load(std::size_t index) const;
};

/// \pre the design's needle is one of the job's and has a frame
[[nodiscard]] ShownFrame shown_frame(const solver::JobResult& result,
                                     const solver::NeedleDesign& design);

/// Where the parts of the figure stand on its page, points.
struct FramePage {
  Size size;
  WallView view;               ///< `across` takes z
  double wall_top = 0.0;       ///< of the stretch of wall shown, mm above the base
  double deepest = 0.0;        ///< lowest ground, mm above the base
  double left_chain = 0.0;     ///< of heights, outside
  double right_chain = 0.0;    ///< the same, inside
  double level_chain = 0.0;    ///< of distances, under the props' loads
  double diagrams = 0.0;       ///< top of the first
  double legend = 0.0;         ///< its top
  std::vector<int> foot_rows;  ///< of each prop: 0, or 1 where its load would run into another's
};

/// Height that a diagram takes with the figures above and below its curve.
inline constexpr double diagram_pitch = 53.0;

/// Height of a row of marks and loads under the props.
inline constexpr double foot_row = 20.0;

/// The largest view of the frame on a page of the usual width and a little over the usual height.
[[nodiscard]] FramePage fit_frame(const ShownFrame& shown, double legend_height);

/// What stands under a prop: its mark and its load.
[[nodiscard]] std::string foot_value(const ShownFrame& shown, std::size_t prop);

inline const TextStyle foot_mark_style{.size = 7.5, .bold = true, .colour = support};
inline const TextStyle foot_value_style{.size = 7.5, .colour = support};

}  // namespace deadshore::viz
