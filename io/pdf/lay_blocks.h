#pragma once

#include "io/document/block.h"
#include "io/pdf/flow.h"

#include <functional>

namespace deadshore::io {

void lay_blocks(FlowBuilder& flow, const Blocks& blocks, const Measure& measure);

/// With its bookmark; never at the foot of a page. `number` 0 is none.
void lay_heading(FlowBuilder& flow, const Heading& heading, int number, const Measure& measure);

/// What `lay_inside` lays in letters of size `em`, in a frame with `space` above and below.
void lay_in_frame(FlowBuilder& flow, const Frame& frame, double em, double space,
                  const std::function<void()>& lay_inside);

/// Rows with their lines: the head comes again on every page, rows stay whole and with what
/// explains them.
void lay(FlowBuilder& flow, const Table& table, const Measure& measure);

/// With lines all round, and room for the pen.
void lay(FlowBuilder& flow, const Form& form, const Measure& measure);

}  // namespace deadshore::io
