#include "viz/view/lettering.h"

#include "viz/page/labels.h"

#include <vtkTextProperty.h>

#include <filesystem>
#include <string>
#include <system_error>

namespace deadshore::viz {

namespace {

/// Debian's fonts-dejavu-core, which the figures need too.
constexpr const char* plain_file = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf";
constexpr const char* bold_file = "/usr/share/fonts/truetype/dejavu/DejaVuSans-Bold.ttf";

/// Where a place is seen, in pixels from the upper left corner of the scene's part of the window.
PagePoint seen_at(vtkRenderer* scene, const std::array<double, 3>& at) {
  scene->SetWorldPoint(at[0], at[1], at[2], 1.0);
  scene->WorldToDisplay();
  const double* pixel = scene->GetDisplayPoint();
  const int* corner = scene->GetOrigin();
  return {pixel[0] - corner[0], scene->GetSize()[1] - (pixel[1] - corner[1])};
}

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

void StandingLabels::clear() {
  for (const Label& label : labels_) over_->RemoveActor2D(label.letters);
  labels_.clear();
}

void StandingLabels::add(const std::array<double, 3>& at, const std::string& text, Colour colour,
                         Anchor anchor) {
  auto letters = vtkSmartPointer<vtkTextActor>::New();
  letters->SetInput(text.c_str());
  vtkTextProperty* style = letters->GetTextProperty();
  set_letters(style, 12.0, colour);
  style->SetBackgroundColor(1.0, 1.0, 1.0);
  style->SetBackgroundOpacity(0.85);
  style->SetJustificationToCentered();
  style->SetVerticalJustificationToCentered();
  std::array<double, 2> size{};
  letters->GetSize(over_, size.data());
  over_->AddActor2D(letters);
  labels_.push_back({at, anchor, {size[0] + 6.0, size[1] + 4.0}, letters});
}

void StandingLabels::place(vtkRenderer* scene) {
  const double width = scene->GetSize()[0];
  const double height = scene->GetSize()[1];
  LabelRoom room(Rect{0.0, 0.0, width, height});
  for (const Label& label : labels_) {
    const Rect wanted = box_at(seen_at(scene, label.at), label.size, label.anchor);
    const Size step{0.35 * label.size.width, 0.5 * label.size.height};
    const std::optional<Rect> found = room.place(boxes_around(wanted, step, 5));
    label.letters->SetVisibility(found ? 1 : 0);
    if (!found) continue;
    const PagePoint middle = found->middle();
    label.letters->SetPosition(middle.x, height - middle.y);
  }
}

}  // namespace deadshore::viz
