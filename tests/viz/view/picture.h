#pragma once

#include <vtkImageData.h>
#include <vtkNew.h>
#include <vtkPNGReader.h>
#include <vtkSmartPointer.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <functional>

namespace deadshore::viz::test {

using Pixel = std::array<int, 3>;

/// A picture from a PNG file, looked at from its upper left corner.
class Picture {
 public:
  explicit Picture(const std::filesystem::path& file) {
    const vtkNew<vtkPNGReader> reader;
    reader->SetFileName(file.c_str());
    reader->Update();
    image_ = reader->GetOutput();
  }
  [[nodiscard]] int width() const { return image_->GetDimensions()[0]; }
  [[nodiscard]] int height() const { return image_->GetDimensions()[1]; }
  [[nodiscard]] Pixel at(int x, int y) const {
    Pixel pixel{};
    for (int part = 0; part < 3; ++part) {
      pixel.at(part) =
          static_cast<int>(image_->GetScalarComponentAsDouble(x, height() - 1 - y, 0, part));
    }
    return pixel;
  }
  /// The part of a box's pixels of which this is true.
  [[nodiscard]] double share(int left, int top, int right, int bottom,
                             const std::function<bool(const Pixel&)>& is) const {
    int count = 0;
    for (int y = top; y < bottom; ++y) {
      for (int x = left; x < right; ++x) count += is(at(x, y)) ? 1 : 0;
    }
    return static_cast<double>(count) / ((right - left) * (bottom - top));
  }

 private:
  vtkSmartPointer<vtkImageData> image_;
};

/// Terracotta to cream, as masonry is coloured: red leads, blue is last. The backdrop is bluish.
inline bool is_masonry(const Pixel& pixel) {
  return pixel[0] > pixel[2] + 8 && pixel[0] >= pixel[1];
}

inline bool is_dark(const Pixel& pixel) {
  return pixel[0] + pixel[1] + pixel[2] < 240;
}

}  // namespace deadshore::viz::test
