#include "viz/view/lettering.h"

#include <filesystem>
#include <string>
#include <system_error>

namespace deadshore::viz {
namespace {

/// Debian's fonts-dejavu-core, which the figures need too.
constexpr const char* plain_file = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf";
constexpr const char* bold_file = "/usr/share/fonts/truetype/dejavu/DejaVuSans-Bold.ttf";

}  // namespace

void set_letters(vtkTextProperty* style, double size, Colour colour, Weight weight) {
  const char* file = weight == Weight::bold ? bold_file : plain_file;
  std::error_code failure;
  if (std::filesystem::exists(file, failure)) {
    style->SetFontFamily(VTK_FONT_FILE);
    style->SetFontFile(file);
  } else {
    style->SetFontFamilyToArial();
    style->SetBold(weight == Weight::bold ? 1 : 0);
  }
  style->SetFontSize(static_cast<int>(size));
  style->SetColor(colour.red, colour.green, colour.blue);
}

}  // namespace deadshore::viz
