#pragma once

#include "viz/page/palette.h"
#include "viz/view/shown_result.h"

#include <string>
#include <vector>

/// What the wall can be coloured by.
namespace deadshore::viz {

/// One number at each point or cell of the grids.
struct ShownField {
  std::string array;      ///< name of the array in the files, unit between brackets
  int component = 0;      ///< of the array
  bool at_cells = false;  ///< else at points
  std::string name;       ///< "displacement y"
  std::string unit;       ///< "mm"; empty for a pure number
  double lowest = 0.0;    ///< over all stages and analyses, without the outermost hundredth part
  double highest = 0.0;
};

/// The fields of a folder, the principal compression first: all arrays of one number, and the parts
/// of those that have a unit and lie in the wall's plane. Directions, marks and whole tensors of
/// elements (which the points have smoothed) are left out.
[[nodiscard]] std::vector<ShownField> fields_of(const ShownResult& result);

/// Even bands over a field's range, the same for every stage. The lowest band also takes what is
/// below it, the highest what is above.
struct FieldScale {
  double from = 0.0;  ///< lower limit of the lowest band
  double step = 1.0;  ///< 1, 2, 2.5 or 5 times a power of ten
  int bands = 1;
  bool dark_at_lowest = false;  ///< the band farthest from zero is the darkest

  [[nodiscard]] double to() const { return from + step * bands; }
};
[[nodiscard]] FieldScale scale_of(const ShownField& field);

/// The tone of a band, 0 the lowest. Lightness goes one way only, so the order holds in grey.
[[nodiscard]] Colour tone_of(const FieldScale& scale, int band);

/// A limit between bands with as many decimals as the step needs.
[[nodiscard]] std::string limit_text(double value, const FieldScale& scale);

/// "displacement y [mm]"
[[nodiscard]] std::string title_of(const ShownField& field);

}  // namespace deadshore::viz
