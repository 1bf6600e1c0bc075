#include "io/pdf/note_pdf.h"

#include "io/pdf/lay_blocks.h"
#include "io/pdf/note_reader.h"
#include "io/pdf/paginate.h"
#include "io/pdf/paint_pages.h"

namespace deadshore::io {

std::string note_pdf(std::string_view note_xhtml, std::span<const viz::Figure> figures,
                     UnknownMarkup unknown) {
  const NoteDocument document = read_note(note_xhtml, unknown);
  const viz::Owned<PangoContext> fonts = viz::make_text_context();
  FlowBuilder builder(fonts.get());
  lay_blocks(builder, document.blocks, Measure{}, {figures, unknown});
  const Flow flow = builder.take();
  return paint_pages(flow, paginate(flow), {document.title, document.revision}, fonts.get());
}

}  // namespace deadshore::io
