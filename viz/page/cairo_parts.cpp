#include "viz/page/cairo_parts.h"

#include <cairo-pdf.h>

#include <cstdint>
#include <png.h>
#include <span>
#include <stdexcept>
#include <vector>

namespace deadshore::viz {

namespace {

/// Without a font Pango lists families all the same, and sets boxes of no sensible size: so see
/// whether a line of letters and figures can be set.
void require_a_font(PangoContext* context) {
  const Owned<PangoLayout> layout(pango_layout_new(context));
  pango_layout_set_text(layout.get(), "Wall 0.1 kN", -1);
  if (pango_layout_get_unknown_glyphs_count(layout.get()) > 0)
    throw std::runtime_error(
        "no font is installed, so figures cannot be drawn: install the package fonts-dejavu-core");
}

/// Red, green and blue of every pixel, row by row.
std::vector<png_byte> colours_of(cairo_surface_t* surface) {
  cairo_surface_flush(surface);
  const std::size_t width = static_cast<std::size_t>(cairo_image_surface_get_width(surface));
  const std::size_t height = static_cast<std::size_t>(cairo_image_surface_get_height(surface));
  const std::size_t stride = static_cast<std::size_t>(cairo_image_surface_get_stride(surface)) / 4;
  const std::span<const std::uint32_t> pixels(
      reinterpret_cast<const std::uint32_t*>(cairo_image_surface_get_data(surface)),
      height * stride);
  std::vector<png_byte> colours;
  colours.reserve(3 * width * height);
  for (std::size_t row = 0; row < height; ++row) {
    for (const std::uint32_t pixel : pixels.subspan(row * stride, width)) {
      for (const int shift : {16, 8, 0}) colours.push_back(static_cast<png_byte>(pixel >> shift));
    }
  }
  return colours;
}

}  // namespace

Owned<PangoContext> make_text_context() {
  PangoFontMap* fonts = pango_cairo_font_map_get_default();
  Owned<PangoContext> context(pango_font_map_create_context(fonts));
  require_a_font(context.get());
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

std::string png_bytes(cairo_surface_t* surface) {
  const std::vector<png_byte> colours = colours_of(surface);
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  image.width = static_cast<png_uint_32>(cairo_image_surface_get_width(surface));
  image.height = static_cast<png_uint_32>(cairo_image_surface_get_height(surface));
  image.format = PNG_FORMAT_RGB;
  image.flags = PNG_IMAGE_FLAG_FAST;
  std::string png(PNG_IMAGE_PNG_SIZE_MAX(image), '\0');
  png_alloc_size_t size = png.size();
  if (png_image_write_to_memory(&image, png.data(), &size, 0, colours.data(), 0, nullptr) == 0)
    throw std::runtime_error(std::string("a figure cannot be written as PNG: ") + image.message);
  png.resize(size);
  return png;
}

}  // namespace deadshore::viz
