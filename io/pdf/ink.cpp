#include "io/pdf/ink.h"

#include "viz/page/canvas.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <string_view>

namespace deadshore::io {
namespace {

/// A name for an id that needs no quoting, whatever the id holds.
std::string name_of(const PageIndex& index, const std::string& id) {
  return fmt::format("d{}", std::distance(index.page_of.begin(), index.page_of.find(id)));
}

/// Whether an address may go into an attribute as it stands.
bool is_plain_address(std::string_view address) {
  return !address.empty() && std::ranges::all_of(address, [](char c) {
    return c > ' ' && c < '\x7f' && c != '\'' && c != '\\' && c != '"' && c != '(' && c != ')';
  });
}

void empty_tag(cairo_t* context, const char* tag, const std::string& attributes) {
  cairo_tag_begin(context, tag, attributes.c_str());
  cairo_tag_end(context, tag);
}

}  // namespace

std::string Ink::link_attributes(const std::string& target) const {
  if (target.starts_with('#')) {
    const std::string id = target.substr(1);
    return index->page_of.contains(id) ? fmt::format("dest='{}'", name_of(*index, id)) : "";
  }
  return is_plain_address(target) ? fmt::format("uri='{}'", target) : "";
}

void Ink::fill(const viz::Rect& box, viz::Colour colour) const {
  viz::Canvas(context).fill(box, colour);
}

void Ink::link(const std::string& target, double left, double top, double width,
               double height) const {
  const std::string attributes = link_attributes(target);
  if (attributes.empty()) return;
  empty_tag(
      context, CAIRO_TAG_LINK,
      fmt::format("{} rect=[{:.2f} {:.2f} {:.2f} {:.2f}]", attributes, left, top, width, height));
}

void Ink::destination(const std::string& id, double left, double top) const {
  empty_tag(context, CAIRO_TAG_DEST,
            fmt::format("name='{}' x={:.2f} y={:.2f}", name_of(*index, id), left, top));
}

}  // namespace deadshore::io
