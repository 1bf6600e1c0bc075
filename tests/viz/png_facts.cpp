#include "png_facts.h"

#include <cairo.h>

#include <algorithm>
#include <cstring>
#include <stdexcept>

namespace deadshore::viz {
namespace {

struct Bytes {
  const std::string* text;
  std::size_t at = 0;
};

cairo_status_t read(void* source, unsigned char* data, unsigned int length) {
  auto& bytes = *static_cast<Bytes*>(source);
  if (bytes.at + length > bytes.text->size()) return CAIRO_STATUS_READ_ERROR;
  std::memcpy(data, bytes.text->data() + bytes.at, length);
  bytes.at += length;
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

PngFacts facts_of(const std::string& png) {
  Bytes bytes{&png};
  cairo_surface_t* surface = cairo_image_surface_create_from_png_stream(read, &bytes);
  if (cairo_surface_status(surface) != CAIRO_STATUS_SUCCESS) {
    cairo_surface_destroy(surface);
    throw std::runtime_error("not a PNG picture");
  }
  PngFacts facts;
  facts.width = cairo_image_surface_get_width(surface);
  facts.height = cairo_image_surface_get_height(surface);
  facts.dark = {1e9, 1e9, -1e9, -1e9};
  const unsigned char* pixels = cairo_image_surface_get_data(surface);
  const int stride = cairo_image_surface_get_stride(surface);
  long dark = 0;
  long inked = 0;
  for (int y = 0; y < facts.height; ++y)
    for (int x = 0; x < facts.width; ++x) {
      const unsigned char* pixel = pixels + y * stride + 4 * x;
      const int sum = pixel[0] + pixel[1] + pixel[2];
      inked += sum < 3 * 255 ? 1 : 0;
      if (sum >= 3 * 128) continue;
      ++dark;
      facts.dark = {std::min<double>(facts.dark.left, x), std::min<double>(facts.dark.top, y),
                    std::max<double>(facts.dark.right, x + 1),
                    std::max<double>(facts.dark.bottom, y + 1)};
    }
  const double all = static_cast<double>(facts.width) * facts.height;
  facts.dark_share = dark / all;
  facts.inked_share = inked / all;
  cairo_surface_destroy(surface);
  return facts;
}

}  // namespace deadshore::viz
