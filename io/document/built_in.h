#pragma once

#include <string_view>

/// Styles and scripts of pages: the files of their names, built in. A style holds no `<` and no
/// `&`, so that a page is XML too.
namespace deadshore::io {

/// document.css: A4 in print, one column on screen, figures that scroll sideways on a phone rather
/// than shrink past reading; light or dark as the reader has it, figures on white paper.
[[nodiscard]] std::string_view document_css();

/// viewer.css: what the viewer of the stages adds. Its buttons lie on figures, which are on white
/// paper in the dark too, and so have colours of their own.
[[nodiscard]] std::string_view viewer_css();
[[nodiscard]] std::string_view viewer_script();  ///< stage_viewer.js

/// sheet.css: A4 upright, small but never below 7.5 pt.
[[nodiscard]] std::string_view sheet_css();

}  // namespace deadshore::io
