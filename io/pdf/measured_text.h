#pragma once

#include "io/pdf/page_index.h"
#include "io/pdf/paper.h"
#include "io/pdf/rich_text.h"
#include "viz/page/cairo_parts.h"

#include <span>

namespace deadshore::io {

struct TypeFace {
  double size = paper::body_size;  ///< points
  viz::Colour colour = paper::ink;
  bool bold = false;
  bool fixed = false;               ///< every letter as wide
  double leading = paper::leading;  ///< line to line, of the size
};

/// A text that knows how wide it is and can be set in lines.
class MeasuredText {
 public:
  /// `strong` is the colour of what is marked as such.
  MeasuredText(PangoContext* context, const RichText& text, const TypeFace& face,
               viz::Colour strong);
  MeasuredText(PangoContext* context, const RichText& text, const TypeFace& face)
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

  void set_text(const RichText& text, viz::Colour strong);

  TypeFace face_;
  viz::Owned<PangoLayout> layout_;
  std::vector<Link> links_;
  double natural_width_ = 0.0;
};

}  // namespace deadshore::io
