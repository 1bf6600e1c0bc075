#include "tests/io/note_page.h"

#include "io/document/html.h"

#include <vtkXMLUtilities.h>

#include <algorithm>

namespace deadshore::io::test {
namespace {

std::string attribute_of(vtkXMLDataElement* element, const char* name) {
  const char* value = element->GetAttribute(name);
  return value == nullptr ? std::string() : std::string(value);
}

std::string text_of(vtkXMLDataElement* element) {
  const char* characters = element->GetCharacterData();
  return characters == nullptr ? std::string() : std::string(characters);
}

}  // namespace

std::string note_html(const solver::JobResult& result, std::span<const viz::Figure> figures,
                      const JobFile& file) {
  return document_html(design_note(result, figures, file));
}

Page parsed(const std::string& note) {
  return Page::Take(vtkXMLUtilities::ReadElementFromString(note.c_str()));
}

void for_each_element(vtkXMLDataElement* element,
                      const std::function<void(vtkXMLDataElement*)>& visit) {
  visit(element);
  for (int index = 0; index < element->GetNumberOfNestedElements(); ++index) {
    for_each_element(element->GetNestedElement(index), visit);
  }
}

std::vector<PageRow> rows_in_order(vtkXMLDataElement* page, const std::string& table_id) {
  std::vector<PageRow> rows;
  for_each_element(page, [&](vtkXMLDataElement* table) {
    if (attribute_of(table, "id") != table_id) return;
    for_each_element(table, [&](vtkXMLDataElement* row) {
      if (std::string(row->GetName()) != "tr") return;
      PageRow& found = rows.emplace_back();
      found.css_class = attribute_of(row, "class");
      for (int index = 0; index < row->GetNumberOfNestedElements(); ++index) {
        found.cells.push_back(text_of(row->GetNestedElement(index)));
      }
    });
  });
  return rows;
}

std::string section_of(const std::string& note, const std::string& id) {
  const std::size_t start = note.find("<section id=\"" + id + "\"");
  if (start == std::string::npos) return "";
  return note.substr(start, note.find("</section>", start) - start);
}

}  // namespace deadshore::io::test
