#pragma once

#include "viz/page/page.h"

#include <cairo.h>
#include <pango/pangocairo.h>

#include <memory>
#include <string>
#include <string_view>

namespace deadshore::viz {

/// Deleter for objects of Cairo, Pango and GLib.
struct Release {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t* context) const { cairo_destroy(context); }
  void operator()(PangoContext* context) const { g_object_unref(context); }
  void operator()(PangoLayout* layout) const { g_object_unref(layout); }
  void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
  void operator()(PangoAttrList* attributes) const { pango_attr_list_unref(attributes); }
  void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
  void operator()(char* text) const { g_free(text); }
};
/// An object of one of these libraries, released at the end of its life.
template <class T>
using Owned = std::unique_ptr<T, Release>;

/// Sets text the same way for every output: 72 dots an inch, no hinting, sizes in points.
/// \throws std::runtime_error if no font is installed.
[[nodiscard]] Owned<PangoContext> make_text_context();

/// Text with every byte that is not UTF-8 replaced by U+FFFD.
[[nodiscard]] std::string valid_utf8(std::string_view text);

/// A PDF document that is written to the end of `bytes`, which outlives it; `size` is that of its
/// first page. Its date is fixed, so that the same drawing gives the same bytes. It is complete
/// after `cairo_surface_finish`.
[[nodiscard]] Owned<cairo_surface_t> start_pdf(std::string& bytes, Size size);

/// Callback for Cairo's stream surfaces: appends to the std::string that `target` points to.
cairo_status_t append_bytes(void* target, const unsigned char* data, unsigned int length);

/// Checks a status of Cairo.
/// \throws std::runtime_error with Cairo's words for a status that is not success.
void require_success(cairo_status_t status);

/// A PNG file of a drawn surface of CAIRO_FORMAT_RGB24, packed for speed: a third of the time of
/// Cairo's own writer, for line drawings in files that are hardly larger.
///
/// \throws std::runtime_error with libpng's words
[[nodiscard]] std::string png_bytes(cairo_surface_t* surface);

}  // namespace deadshore::viz
