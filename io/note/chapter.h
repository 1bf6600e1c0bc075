#pragma once

#include "io/note/html.h"

#include <span>
#include <string>
#include <string_view>

namespace deadshore::io {

/// A chapter of the note before it is numbered. One without an id is none: there is nothing to say.
struct Chapter {
  std::string id;
  std::string heading;
  Html opening;  ///< kept on one page with the heading
  Html rest;

  [[nodiscard]] bool is_there() const { return !id.empty(); }
};

[[nodiscard]] Chapter section(std::string_view id, std::string_view heading, Html opening,
                              Html rest = {});

/// The chapter with more at its end; none stays none.
[[nodiscard]] Chapter followed_by(Chapter chapter, const Html& more);

/// Links to every chapter, in their order, and then the chapters numbered from 1; what stands
/// before the numbered ones (the summary) has no number.
[[nodiscard]] Html contents_of(const Chapter& before, std::span<const Chapter> numbered);
[[nodiscard]] Html body_of(const Chapter& chapter);
[[nodiscard]] Html body_of(std::span<const Chapter> numbered);

/// A link to the chapter with this id.
[[nodiscard]] Html link_to(std::string_view id, std::string_view words);

}  // namespace deadshore::io
