#pragma once

#include "io/document/block.h"
#include "io/pdf/ink.h"
#include "io/pdf/paper.h"
#include "viz/page/cairo_parts.h"

#include <string>
#include <vector>

namespace deadshore::io {

struct TypeFace {
  double size = paper::body_size;  ///< points
  viz::Colour colour = paper::ink;
  bool bold = false;
  bool fixed = false;               ///< every letter as wide, and every space kept
  double leading = paper::leading;  ///< line to line, of the size
};

/// Text without its marks, in valid UTF-8, with white space closed up as a browser does.
[[nodiscard]] std::string one_line(const Text& text);

/// A text that knows how wide it is and can be set in lines.
class MeasuredText {
 public:
  /// `strong` is the colour of what is marked as such.
  MeasuredText(PangoContext* context, const Text& text, const TypeFace& face, viz::Colour strong);
  MeasuredText(PangoContext* context, const Text& text, const TypeFace& face)
      : MeasuredText(context, text, face, face.colour) {}

  [[nodiscard]] double natural_width() const { return natural_width_; }  ///< in one line
  [[nodiscard]] double least_width();                                    ///< of the widest word

  /// Sets it in lines no wider than this; a word that is wider is broken.
  void wrap(double width);
  /// Sets it in one line no wider than this; what is past it becomes an ellipsis.
  void cut(double width);

  [[nodiscard]] int lines() const;
  [[nodiscard]] double line_height(int line) const;
  [[nodiscard]] double line_width(int line) const;
  [[nodiscard]] double height() const;
  [[nodiscard]] double baseline(int line) const;  ///< under the top of the line

  void draw_line(const Ink& ink, int line, double left, double top) const;
  /// All lines, each moved to the right by `across` of what the width leaves over.
  void draw(const Ink& ink, double left, double top, double width = 0.0, double across = 0.0) const;

 private:
  struct Link {
    int from = 0;
    int to = 0;
    std::string target;
  };

  void set_text(const Text& text, viz::Colour strong);

  TypeFace face_;
  viz::Owned<PangoLayout> layout_;
  std::vector<Link> links_;
  double natural_width_ = 0.0;
};

}  // namespace deadshore::io
