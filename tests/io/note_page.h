#pragma once

#include "io/note/note.h"

#include <vtkSmartPointer.h>
#include <vtkXMLDataElement.h>

#include <functional>
#include <span>
#include <string>
#include <vector>

namespace deadshore::io::test {

/// The note as a page.
[[nodiscard]] std::string note_html(const solver::JobResult& result,
                                    std::span<const viz::Figure> figures, const JobFile& file);

using Page = vtkSmartPointer<vtkXMLDataElement>;

/// Null where the page is not well-formed XML.
[[nodiscard]] Page parsed(const std::string& note);

void for_each_element(vtkXMLDataElement* element,
                      const std::function<void(vtkXMLDataElement*)>& visit);

/// A row of a table: the class it is given and its cells' text.
struct PageRow {
  std::string css_class;
  std::vector<std::string> cells;
};

/// The rows of the table with this id, its head among them.
[[nodiscard]] std::vector<PageRow> rows_in_order(vtkXMLDataElement* page,
                                                 const std::string& table_id);

/// The note from the section with this id up to the next one.
[[nodiscard]] std::string section_of(const std::string& note, const std::string& id);

}  // namespace deadshore::io::test
