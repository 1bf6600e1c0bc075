#include "viz/page/cairo_parts.h"

#include <cairo-pdf.h>

#include <stdexcept>

namespace deadshore::viz {
namespace {

/// Pango crashes later on if there is no font at all, so ask first.
void require_a_font(PangoFontMap* fonts) {
  PangoFontFamily** families = nullptr;
  int count = 0;
  pango_font_map_list_families(fonts, &families, &count);
  g_free(static_cast<void*>(families));
  if (count == 0)
    throw std::runtime_error(
        "no font is installed, so figures cannot be drawn: install the package fonts-dejavu-core");
}

}  // namespace

Owned<PangoContext> make_text_context() {
  PangoFontMap* fonts = pango_cairo_font_map_get_default();
  require_a_font(fonts);
  Owned<PangoContext> context(pango_font_map_create_context(fonts));
  const Owned<cairo_font_options_t> options(cairo_font_options_create());
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context.get(), options.get());
  pango_cairo_context_set_resolution(context.get(), 72.0);
  pango_context_set_round_glyph_positions(context.get(), FALSE);
  return context;
}

std::string valid_utf8(std::string_view text) {
  const Owned<char> valid(g_utf8_make_valid(text.data(), static_cast<gssize>(text.size())));
  return valid.get();
}

Owned<cairo_surface_t> start_pdf(std::string& bytes, Size size) {
  Owned<cairo_surface_t> surface(
      cairo_pdf_surface_create_for_stream(append_bytes, &bytes, size.width, size.height));
  // Without a date of its own the file would hold the time of the run.
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE,
                                 "2000-01-01T00:00:00Z");
  return surface;
}

cairo_status_t append_bytes(void* target, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(target)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

void require_success(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error(std::string("drawing a figure failed: ") +
                             cairo_status_to_string(status));
}

}  // namespace deadshore::viz
