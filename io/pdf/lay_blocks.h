#pragma once

#include "io/pdf/flow_builder.h"
#include "io/pdf/note_pdf.h"

#include <span>

namespace deadshore::io {

/// What laying out takes besides the place.
struct LayoutSources {
  std::span<const viz::Figure> figures;
  UnknownMarkup unknown = UnknownMarkup::as_text;
};

void lay_blocks(FlowBuilder& flow, const std::vector<Block>& blocks, const Measure& measure,
                const LayoutSources& sources);

/// Rows with their lines: heads come again on every page, rows stay whole and with what explains
/// them.
void lay_grid(FlowBuilder& flow, const GridBlock& grid, const Measure& measure);

/// A figure with its caption; a wide one on a page that lies.
/// \throws std::invalid_argument for a name without a figure, where that is refused.
void lay_figure(FlowBuilder& flow, const FigureBlock& figure, const Measure& measure,
                const LayoutSources& sources);

/// The chapters with their pages.
void lay_contents(FlowBuilder& flow, const ContentsBlock& contents, const Measure& measure);

/// A listing: long lines go on under a mark.
void lay_code(FlowBuilder& flow, const CodeBlock& code, const Measure& measure);

}  // namespace deadshore::io
