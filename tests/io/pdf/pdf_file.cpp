#include "tests/io/pdf/pdf_file.h"

#include "tests/io/note_page.h"

#include <cctype>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace deadshore::io::test {
namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

/// Without the two lines above a table that poppler prints.
std::vector<std::string> rows_of_list(const std::string& text) {
  std::vector<std::string> lines = lines_of(text);
  lines.erase(lines.begin(), lines.begin() + std::min<std::ptrdiff_t>(2, std::ssize(lines)));
  return lines;
}

double number(vtkXMLDataElement* element, const char* name) {
  return std::stod(element->GetAttribute(name));
}

std::string text_of(vtkXMLDataElement* element) {
  const char* characters = element->GetCharacterData();
  return characters == nullptr ? "" : characters;
}

}  // namespace

PdfFile::PdfFile(const std::string& bytes) {
  std::ofstream(folder_.path() / "note.pdf", std::ios::binary) << bytes;
}

std::string PdfFile::output_of(const std::string& tool, const std::string& options,
                               const std::string& target) const {
  const std::string command = "cd '" + folder_.path().string() + "' && " + tool + " " + options +
                              " note.pdf " + target + " >out.txt 2>err.txt";
  if (std::system(command.c_str()) != 0) {  // NOLINT(cert-env33-c): a fixed command
    throw std::runtime_error(tool + " cannot read the document (package poppler-utils)");
  }
  std::ostringstream text;
  text << std::ifstream(folder_.path() / "out.txt").rdbuf();
  return text.str();
}

std::vector<std::string> PdfFile::page_texts() const {
  std::vector<std::string> pages;
  std::istringstream text(output_of("pdftotext", "-raw", "-"));
  for (std::string page; std::getline(text, page, '\f');) pages.push_back(page);
  return pages;
}

std::vector<PdfPage> PdfFile::pages() const {
  std::vector<PdfPage> pages;
  for_each_element(parsed(output_of("pdftotext", "-bbox", "-")), [&](vtkXMLDataElement* element) {
    const std::string name = element->GetName();
    if (name == "page") pages.push_back({number(element, "width"), number(element, "height"), {}});
    if (name != "word") return;
    pages.back().words.push_back({number(element, "xMin"), number(element, "yMin"),
                                  number(element, "xMax"), number(element, "yMax"),
                                  text_of(element)});
  });
  return pages;
}

std::size_t PdfFile::images() const {
  return rows_of_list(output_of("pdfimages", "-list", "")).size();
}

std::vector<std::string> PdfFile::fonts() const {
  return rows_of_list(output_of("pdffonts", ""));
}

std::vector<std::pair<std::string, int>> PdfFile::links() const {
  std::vector<std::pair<std::string, int>> found;
  for_each_element(
      parsed(output_of("pdftohtml", "-xml -i -stdout")), [&](vtkXMLDataElement* element) {
        if (element->GetName() != std::string("a")) return;
        const std::string target = element->GetAttribute("href");
        found.emplace_back(text_of(element), std::stoi(target.substr(target.find('#') + 1)));
      });
  return found;
}

std::vector<std::pair<std::string, int>> PdfFile::bookmarks() const {
  std::vector<std::pair<std::string, int>> found;
  for_each_element(parsed(output_of("pdftohtml", "-xml -i -stdout")),
                   [&](vtkXMLDataElement* element) {
                     if (element->GetName() != std::string("item")) return;
                     found.emplace_back(text_of(element), number(element, "page"));
                   });
  return found;
}

std::string squeezed(std::string_view text) {
  std::string kept;
  for (const char c : text) {
    if (std::isspace(static_cast<unsigned char>(c)) == 0) kept += c;
  }
  return kept;
}

std::size_t page_with(const std::vector<std::string>& pages, std::string_view text) {
  for (std::size_t page = 0; page < pages.size(); ++page) {
    if (squeezed(pages[page]).find(squeezed(text)) != std::string::npos) return page + 1;
  }
  return 0;
}

}  // namespace deadshore::io::test
