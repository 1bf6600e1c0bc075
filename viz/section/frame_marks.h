#pragma once

#include "viz/page/canvas.h"
#include "viz/page/labels.h"
#include "viz/section/frame_view.h"

/// The parts of a needle frame's figure.
namespace deadshore::viz {

/// The wall cut through over the soffit, its leaves apart, up to a break; the pier beyond the cut,
/// faint, down to the base.
void draw_wall_section(Canvas& canvas, const FramePage& page, const ShownFrame& shown);

/// The wall's load over its thickness.
void draw_wall_load(Canvas& canvas, const FramePage& page, const ShownFrame& shown,
                    LabelRoom& room);

/// Packing, and the needle from the side.
void draw_needle_side(Canvas& canvas, const FramePage& page, const ShownFrame& shown,
                      LabelRoom& room);

/// What the needle is made of, under it or over it.
void name_needle(Canvas& canvas, const FramePage& page, const ShownFrame& shown, LabelRoom& room);

/// Ground and suspended floors at their levels, to the wall's faces.
void draw_grounds(Canvas& canvas, const FramePage& page, const ShownFrame& shown);

/// Props with their soles, and what those that hold down are wedged against.
void draw_props(Canvas& canvas, const FramePage& page, const ShownFrame& shown);

/// Arrows, marks and loads of the props.
void draw_prop_loads(Canvas& canvas, const FramePage& page, const ShownFrame& shown,
                     LabelRoom& room);

/// Each prop's kind, setting and range beside it.
void name_props(Canvas& canvas, const FramePage& page, const ShownFrame& shown, LabelRoom& room);

/// Heights on either side, distances below.
void draw_frame_dimensions(Canvas& canvas, const FramePage& page, const ShownFrame& shown);

/// Bending moment, shear force and deflection of the needle under the section, to its horizontal
/// scale.
void draw_frame_diagrams(Canvas& canvas, const FramePage& page, const ShownFrame& shown);

/// Masonry that is cut through.
[[nodiscard]] Hatch section_hatch();

/// The outline of the pier behind the cut.
[[nodiscard]] Pen beyond_pen();

[[nodiscard]] Pen wall_load_pen();
[[nodiscard]] Pen prop_load_pen();

}  // namespace deadshore::viz
