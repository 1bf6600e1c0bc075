#pragma once

#include "io/pdf/note_pdf.h"
#include "io/pdf/rich_text.h"

#include <pugixml.hpp>
#include <string_view>

namespace deadshore::io {

/// Whether an element carries this class.
[[nodiscard]] bool has_class(const pugi::xml_node& element, std::string_view css_class);

/// Whether an element stands in a line of text: <strong>, <a>, <br/>, ...
[[nodiscard]] bool is_inline(const pugi::xml_node& element);

/// Whether an element, or a piece of text, is not for paper.
[[nodiscard]] bool is_left_out(const pugi::xml_node& node);

/// Answers to markup that the PDF has no form for.
class MarkupRules {
 public:
  explicit MarkupRules(UnknownMarkup unknown) : unknown_(unknown) {}

  /// \throws std::invalid_argument where unknown markup is refused.
  void unknown(const std::string& what) const;

  /// Every class of the element must be known.
  void check_classes(const pugi::xml_node& element) const;

 private:
  UnknownMarkup unknown_;
};

/// Appends text with its white space closed up, as a browser does.
void append_text(RichText& to, std::string_view characters);

/// Appends a node of a line of text: characters or an inline element with all it holds. Block
/// elements in it start a line of their own.
void append_inline(RichText& to, const pugi::xml_node& node, const MarkupRules& rules);

/// Takes the number of a chapter, <span class="number">, out of what it stands in front of.
[[nodiscard]] std::string taken_number(pugi::xml_node& element);

/// All text of an element, trimmed.
[[nodiscard]] RichText inline_text(const pugi::xml_node& element, const MarkupRules& rules);

/// Takes blanks and line ends off both ends.
void trim(RichText& text);

}  // namespace deadshore::io
