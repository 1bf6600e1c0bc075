#include "figure_facts.h"

#include "png_facts.h"
#include "viz/page/canvas.h"
#include "viz/page/page.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string_view>

namespace deadshore::viz {
namespace {

/// Every element closed in order, every attribute quoted: enough to tell a cut-off document.
bool well_formed(std::string_view xml) {
  std::vector<std::string_view> open;
  for (std::size_t at = xml.find('<'); at != std::string_view::npos; at = xml.find('<', at + 1)) {
    const std::size_t end = xml.find('>', at);
    if (end == std::string_view::npos) return false;
    const std::string_view tag = xml.substr(at + 1, end - at - 1);
    if (std::count(tag.begin(), tag.end(), '"') % 2 != 0) return false;
    if (tag.starts_with('?') || tag.starts_with('!') || tag.ends_with('/')) continue;
    const std::string_view name = tag.substr(0, tag.find_first_of(" \n"));
    if (!name.starts_with('/')) {
      open.push_back(name);
    } else if (open.empty() || open.back() != name.substr(1)) {
      return false;
    } else {
      open.pop_back();
    }
  }
  return open.empty();
}

}  // namespace

std::vector<std::string> names_of(const std::vector<Figure>& figures) {
  std::vector<std::string> names;
  for (const Figure& figure : figures) names.push_back(figure.name);
  return names;
}

void expect_clear_lettering(const Figure& figure) {
  const Size page = figure.drawing.size;
  const Rect whole{0.0, 0.0, page.width, page.height};
  const std::vector<Lettering> lettering = lettering_of(figure.drawing);
  for (std::size_t i = 0; i < lettering.size(); ++i) {
    EXPECT_GE(lettering[i].size, 7.0) << figure.name << ": " << lettering[i].text;
    EXPECT_TRUE(whole.holds(lettering[i].ink)) << figure.name << ": " << lettering[i].text;
    for (std::size_t j = 0; j < i; ++j)
      EXPECT_FALSE(lettering[i].ink.overlaps(lettering[j].ink))
          << figure.name << ": " << lettering[j].text << " and " << lettering[i].text;
  }
}

void expect_sound(const std::vector<Figure>& figures) {
  for (const Figure& figure : figures) {
    EXPECT_TRUE(well_formed(figure.svg)) << figure.name;
    EXPECT_EQ(figure.svg.find("nan"), std::string::npos) << figure.name;
    EXPECT_EQ(figure.svg.find("inf"), std::string::npos) << figure.name;
    EXPECT_FALSE(figure.caption.empty());
    expect_clear_lettering(figure);
    const PngFacts facts = facts_of(figure.png);
    // No coarser than 1600 pixels across a page, so that small lettering can be read.
    EXPECT_GE(facts.width, 0.999 * 1600.0 * figure.drawing.size.width / page_width) << figure.name;
    EXPECT_GT(facts.inked_share, 0.02) << figure.name;
    // Nothing runs off the page: a margin all round stays free of ink.
    EXPECT_GT(facts.dark.left, 3.0) << figure.name;
    EXPECT_GT(facts.dark.top, 3.0) << figure.name;
    EXPECT_LT(facts.dark.right, facts.width - 3.0) << figure.name;
    EXPECT_LT(facts.dark.bottom, facts.height - 3.0) << figure.name;
  }
}

}  // namespace deadshore::viz
