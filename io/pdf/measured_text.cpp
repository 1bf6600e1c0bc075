#include "io/pdf/measured_text.h"

#include <algorithm>
#include <cmath>

namespace deadshore::io {
namespace {

double points(int pango_units) {
  return static_cast<double>(pango_units) / PANGO_SCALE;
}

PangoRectangle logical_box(PangoLayoutLine* line) {
  PangoRectangle box;
  pango_layout_line_get_extents(line, nullptr, &box);
  return box;
}

/// Bytes of a text that are set apart.
struct Range {
  std::size_t from = 0;
  std::size_t to = 0;
};

/// Appends valid UTF-8 without control characters; white space is closed up unless every space is
/// kept.
void append(std::string& to, std::string_view words, bool every_space) {
  for (const char c : viz::valid_utf8(words)) {
    const bool space = c == ' ' || c == '\n' || c == '\t' || c == '\r';
    if (space && !every_space) {
      if (!to.empty() && !to.ends_with(' ')) to += ' ';
    } else if (static_cast<unsigned char>(c) < 0x20 && !space) {
      to += "\uFFFD";
    } else {
      to += c;
    }
  }
}

/// The text as it is set, with the bytes of each run.
std::pair<std::string, std::vector<Range>> joined(const Text& text, bool every_space) {
  std::string words;
  std::vector<Range> ranges;
  for (const Run& run : text.runs) {
    const std::size_t from = words.size();
    if (run.mark == Mark::hold) words += "\u2610\u00a0";
    append(words, run.text, every_space);
    ranges.push_back({from, words.size()});
  }
  if (!every_space && words.ends_with(' ')) words.pop_back();
  for (Range& range : ranges) range.to = std::min(range.to, words.size());
  return {std::move(words), std::move(ranges)};
}

guint16 part(double share) {
  return static_cast<guint16>(std::lround(share * 65535.0));
}

/// Hands a range's attribute to the list, which takes it over.
void add(PangoAttrList* list, PangoAttribute* attribute, const Range& range) {
  attribute->start_index = static_cast<guint>(range.from);
  attribute->end_index = static_cast<guint>(range.to);
  pango_attr_list_insert(list, attribute);
}

/// Short words with a stroke in them, such as units: "kN/m" must not be broken.
std::vector<Range> slashed_words(const std::string& text) {
  constexpr std::size_t longest = 14;
  std::vector<Range> words;
  for (std::size_t at = text.find('/'); at != std::string::npos;) {
    const std::size_t before = text.find_last_of(" \n", at);
    const std::size_t from = before == std::string::npos ? 0 : before + 1;
    const std::size_t to = std::min(text.find_first_of(" \n", at), text.size());
    if (to - from <= longest) words.push_back({from, to});
    at = text.find('/', to);
  }
  return words;
}

void add_colour(PangoAttrList* list, viz::Colour colour, const Range& range) {
  add(list, pango_attr_foreground_new(part(colour.red), part(colour.green), part(colour.blue)),
      range);
}

void add_mark(PangoAttrList* list, Mark mark, const Range& range, double size, viz::Colour strong) {
  const auto raised = [&](double share) {
    add(list, pango_attr_rise_new(static_cast<int>(share * size * PANGO_SCALE)), range);
    add(list, pango_attr_scale_new(0.72), range);
  };
  switch (mark) {
    case Mark::plain:
    case Mark::hold:
      break;
    case Mark::strong:
      add(list, pango_attr_weight_new(PANGO_WEIGHT_BOLD), range);
      add_colour(list, strong, range);
      break;
    case Mark::emphasis:
      add(list, pango_attr_style_new(PANGO_STYLE_ITALIC), range);
      break;
    case Mark::code:
      add(list, pango_attr_family_new("DejaVu Sans Mono"), range);
      break;
    case Mark::sub:
      raised(-0.15);
      break;
    case Mark::sup:
      raised(0.33);
      break;
    case Mark::link:
      add_colour(list, viz::support, range);
      break;
  }
}

}  // namespace

std::string one_line(const Text& text) {
  return joined(text, false).first;
}

MeasuredText::MeasuredText(PangoContext* context, const Text& text, const TypeFace& face,
                           viz::Colour strong)
    : face_(face), layout_(pango_layout_new(context)) {
  const viz::Owned<PangoFontDescription> font(pango_font_description_new());
  pango_font_description_set_family_static(font.get(),
                                           face.fixed ? "DejaVu Sans Mono" : "DejaVu Sans");
  pango_font_description_set_size(font.get(), static_cast<int>(face.size * PANGO_SCALE));
  if (face.bold) pango_font_description_set_weight(font.get(), PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description(layout_.get(), font.get());
  set_text(text, strong);
  for (int line = 0; line < lines(); ++line) {
    natural_width_ = std::max(natural_width_, line_width(line));
  }
}

void MeasuredText::set_text(const Text& text, viz::Colour strong) {
  const auto [words, ranges] = joined(text, face_.fixed);
  const Range all{0, words.size()};
  pango_layout_set_text(layout_.get(), words.data(), static_cast<int>(words.size()));
  const viz::Owned<PangoAttrList> attributes(pango_attr_list_new());
  // A broken name must not gain a hyphen that it does not have.
  add(attributes.get(), pango_attr_insert_hyphens_new(FALSE), all);
  // A reader's search for "finished" must find it: no letters drawn as one.
  add(attributes.get(), pango_attr_font_features_new("liga=0, clig=0"), all);
  for (const Range& unit : slashed_words(words)) {
    add(attributes.get(), pango_attr_allow_breaks_new(FALSE), unit);
  }
  for (std::size_t i = 0; i < ranges.size(); ++i) {
    const Run& run = text.runs[i];
    add_mark(attributes.get(), run.mark, ranges[i], face_.size, strong);
    if (run.mark == Mark::link) {
      links_.push_back(
          {static_cast<int>(ranges[i].from), static_cast<int>(ranges[i].to), run.target});
    }
  }
  pango_layout_set_attributes(layout_.get(), attributes.get());
}

double MeasuredText::least_width() {
  pango_layout_set_width(layout_.get(), 0);
  pango_layout_set_wrap(layout_.get(), PANGO_WRAP_WORD);
  double widest = 0.0;
  for (int line = 0; line < lines(); ++line) widest = std::max(widest, line_width(line));
  pango_layout_set_width(layout_.get(), -1);
  return widest;
}

void MeasuredText::wrap(double width) {
  // One unit more: a line as wide as its own measure must not be broken by rounding.
  pango_layout_set_width(layout_.get(), static_cast<int>(std::max(width, 1.0) * PANGO_SCALE) + 1);
  pango_layout_set_wrap(layout_.get(), PANGO_WRAP_WORD_CHAR);
}

void MeasuredText::cut(double width) {
  pango_layout_set_width(layout_.get(), static_cast<int>(std::max(width, 1.0) * PANGO_SCALE) + 1);
  pango_layout_set_single_paragraph_mode(layout_.get(), TRUE);
  pango_layout_set_ellipsize(layout_.get(), PANGO_ELLIPSIZE_END);
}

int MeasuredText::lines() const {
  return pango_layout_get_line_count(layout_.get());
}

double MeasuredText::line_height(int line) const {
  const PangoRectangle box = logical_box(pango_layout_get_line_readonly(layout_.get(), line));
  return std::max(face_.leading * face_.size, points(box.height));
}

double MeasuredText::line_width(int line) const {
  return points(logical_box(pango_layout_get_line_readonly(layout_.get(), line)).width);
}

double MeasuredText::height() const {
  double sum = 0.0;
  for (int line = 0; line < lines(); ++line) sum += line_height(line);
  return sum;
}

double MeasuredText::baseline(int line) const {
  const PangoRectangle box = logical_box(pango_layout_get_line_readonly(layout_.get(), line));
  return 0.5 * (line_height(line) - points(box.height)) - points(box.y);
}

void MeasuredText::draw_line(const Ink& ink, int line, double left, double top) const {
  PangoLayoutLine* set = pango_layout_get_line_readonly(layout_.get(), line);
  cairo_set_source_rgb(ink.context, face_.colour.red, face_.colour.green, face_.colour.blue);
  cairo_move_to(ink.context, left, top + baseline(line));
  pango_cairo_show_layout_line(ink.context, set);
  for (const Link& link : links_) {
    int* ranges = nullptr;
    int count = 0;
    pango_layout_line_get_x_ranges(set, link.from, link.to, &ranges, &count);
    const bool on_line = link.to > set->start_index && link.from < set->start_index + set->length;
    for (int i = 0; on_line && i < count; ++i) {
      const int from = ranges[2 * i];
      const int to = ranges[2 * i + 1];
      ink.link(link.target, left + points(from), top, points(to - from), line_height(line));
    }
    g_free(ranges);
  }
}

void MeasuredText::draw(const Ink& ink, double left, double top, double width,
                        double across) const {
  for (int line = 0; line < lines(); ++line) {
    draw_line(ink, line, left + across * std::max(0.0, width - line_width(line)), top);
    top += line_height(line);
  }
}

}  // namespace deadshore::io
