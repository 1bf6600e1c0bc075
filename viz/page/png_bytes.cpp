#include "viz/page/png_bytes.h"

#include <cstdint>
#include <png.h>
#include <span>
#include <stdexcept>
#include <vector>

namespace deadshore::viz {
namespace {

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
