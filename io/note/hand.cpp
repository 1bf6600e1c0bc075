#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "viz/figures.h"

#include <fmt/format.h>

#include <cstddef>
#include <string>

namespace deadshore::io {
namespace {

/// Null where the item is something else.
const solver::Lintel* lintel_of(const solver::Job& job, const solver::SpreadItem& item) {
  const auto* lintel = std::get_if<solver::LintelId>(&item.thing);
  return lintel == nullptr ? nullptr : &job.lintels.at(index_of(*lintel));
}

/// How the item's load comes about: area by thickness by unit weight, or its part of the load.
std::string worked(const solver::Job& job, const solver::SpreadItem& item) {
  std::string sum;
  if (item.area > 0.0) {
    const solver::Lintel* lintel = lintel_of(job, item);
    sum = fmt::format("{} m\u00b2 \u00d7 {} m \u00d7 {}", square_metres(item.area),
                      significant((lintel ? lintel->thickness : job.thickness) / 1e3, 4),
                      unit_weight(lintel ? lintel->unit_weight : job.masonry.unit_weight));
  } else {
    const double whole = item.share > 0.0 ? item.load / item.share : 0.0;
    sum = fmt::format("{} % of {} kN", percent(item.share), fine_kilonewtons(whole));
  }
  if (item.wedge) return sum + ", from under the 45-degree lines by the lever";
  return item.over_opening ? sum + ", round an opening" : sum;
}

void add_support(Table& content, const solver::Job& job, const solver::SpreadSum& sum) {
  const std::string title = label_of(job, sum.support);
  content.add({title}, RowKind::heading);
  for (const solver::SpreadItem& item : sum.items) {
    content.add({item.name, worked(job, item), fine_kilonewtons(item.load)});
  }
  content.add({"Total on " + title, "", fine_kilonewtons(sum.total)}, RowKind::total);
}

Table sums_table(const std::string& id) {
  return {id, "", {"Item", "Sum", numeric("Load kN")}};
}

/// Each needle's sum beside the figure that shows where its lines come from.
Blocks needle_sums(const solver::JobResult& result, FigureShelf& figures) {
  Blocks sums;
  std::size_t number = 0;
  for (const solver::SpreadSum& sum : result.hand.needles) {
    const std::string& needle = result.job.needles.at(number).name;
    Table content = sums_table(fmt::format("hand-needle-{}", ++number));
    add_support(content, result.job, sum);
    sums += Beside{content + figures.take("spread-" + viz::file_word(needle))};
  }
  return sums + figures.take_all("spread-");
}

Table other_sums(const solver::JobResult& result) {
  const solver::SpreadResult& hand = result.hand;
  Table content = sums_table("hand-sums");
  add_support(content, result.job, hand.left_pier);
  add_support(content, result.job, hand.right_pier);
  content.add({"Everything"}, RowKind::heading);
  content.add({"Sum over all supports", "", fine_kilonewtons(hand.load_total)}, RowKind::total);
  return content;
}

/// Needles that may have to take what is booked on another.
Blocks close_calls(const solver::JobResult& result) {
  Blocks calls;
  for (const solver::SpreadSum& sum : result.hand.needles) {
    if (sum.nearby <= sum.total) continue;
    calls += Callout{
        Severity::warning,
        Paragraph{fmt::format(
            "{} is designed for {} kN, not {} kN: with a needle only {:.0f} mm beside its place a "
            "load comes onto it that stands here with another support.",
            label_of(result.job, sum.support), fine_kilonewtons(sum.nearby),
            fine_kilonewtons(sum.total), solver::setting_out)}};
  }
  return calls;
}

}  // namespace

Chapter hand_chapter(const solver::JobResult& result, FigureShelf& figures) {
  const Blocks opening = Paragraph{
      "What each support carries by the 45-degree rule. Two decimals, so that the sums can be "
      "checked; the last may be out by one from rounding."};
  Blocks body = needle_sums(result, figures);
  body += other_sums(result);
  body += close_calls(result);
  return {"hand", "Hand method", opening, body};
}

}  // namespace deadshore::io
