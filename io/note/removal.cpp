#include "io/note/chapters.h"
#include "io/note/wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using solver::RemovedMasonry;

std::string stretch(const mesh::Interval& interval) {
  return fmt::format("{} to {}", millimetres(interval.from), millimetres(interval.to));
}

std::string cubic_metres(double cubic_mm) {
  return two_decimals(cubic_mm / 1e9);
}

/// Courses one below the other that weigh the same to 1 N, as one row.
struct Band {
  std::size_t first = 0;  ///< number of the topmost course, from 1
  std::size_t last = 0;
  double top = 0.0;
  double under = 0.0;
  double area = 0.0;    ///< of one
  double weight = 0.0;  ///< of one
};

std::vector<Band> bands_of(const RemovedMasonry& removed) {
  constexpr double same = 1.0;  // N
  std::vector<Band> bands;
  for (std::size_t i = 0; i < removed.courses.size(); ++i) {
    const solver::RemovedCourse& course = removed.courses[i];
    const bool joins = !bands.empty() && std::abs(course.weight - bands.back().weight) < same;
    if (!joins)
      bands.push_back({i + 1, i + 1, course.y.to, course.y.from, course.area, course.weight});
    bands.back().last = i + 1;
    bands.back().under = course.y.from;
  }
  return bands;
}

Table courses(const solver::JobResult& result) {
  Table content{"removed-courses",
                fmt::format("Course by course from the top down, each {} mm unless clipped; weight "
                            "of one course. Alike courses share a row",
                            millimetres(result.job.removal.course_height)),
                {"Courses", "Height mm", numeric("Area of one m\u00b2"),
                 numeric("Weight of one kN"), numeric("Together kN")}};
  double total = 0.0;
  for (const solver::RemovedCourse& course : result.removed.courses) total += course.weight;
  for (const Band& band : bands_of(result.removed)) {
    const std::size_t count = band.last - band.first + 1;
    content.add(
        {count == 1 ? std::to_string(band.first) : fmt::format("{} to {}", band.first, band.last),
         stretch({band.under, band.top}), square_metres(band.area), fine_kilonewtons(band.weight),
         fine_kilonewtons(band.weight * static_cast<double>(count))});
  }
  content.add({"Masonry of the cut", "", "", "", fine_kilonewtons(total)}, RowKind::total);
  return content;
}

Table strips(const solver::JobResult& result) {
  Table content{"removed-strips",
                fmt::format("Strip by strip, {} mm along the wall unless clipped, the cut's full "
                            "height: the same masonry",
                            millimetres(result.job.removal.strip_width)),
                {"Strip", "x mm", numeric("Area m\u00b2"), numeric("Weight kN")}};
  double area = 0.0;
  double weight = 0.0;
  for (std::size_t i = 0; i < result.removed.strips.size(); ++i) {
    const solver::RemovedStrip& strip = result.removed.strips[i];
    area += strip.area;
    weight += strip.weight;
    content.add({std::to_string(i + 1), stretch(strip.x), square_metres(strip.area),
                 fine_kilonewtons(strip.weight)});
  }
  content.add({"Masonry of the cut", "", square_metres(area), fine_kilonewtons(weight)},
              RowKind::total);
  return content;
}

std::string lifted_by(const solver::Job& job, const solver::RemovedLintel& lintel) {
  if (lintel.one_person) return "one person";
  return lintel.piece_weight > job.removal.two_person_lift ? "more" : "two people";
}

Blocks lintels(const solver::JobResult& result) {
  if (result.removed.lintels.empty()) return {};
  Table content{"removed-lintels",
                "Lintels that go with the cut, in the least number of pieces that two people lift",
                {"Lintel", numeric("Length mm"), numeric("Weight kN"), numeric("Pieces"),
                 numeric("Each kN"), "Lifted by"}};
  for (const solver::RemovedLintel& lintel : result.removed.lintels) {
    content.add({lintel.name, millimetres(lintel.length), fine_kilonewtons(lintel.weight),
                 std::to_string(lintel.pieces), fine_kilonewtons(lintel.piece_weight),
                 lifted_by(result.job, lintel)});
  }
  return content;
}

/// Masonry beside a lintel thinner than the wall is in no sum.
bool any_thin_lintel(const solver::JobResult& result) {
  return std::ranges::any_of(result.removed.lintels, [&](const solver::RemovedLintel& removed) {
    return result.job.lintels.at(index_of(removed.lintel)).thickness < result.job.thickness;
  });
}

std::vector<std::string> totals(const solver::JobResult& result) {
  const RemovedMasonry& removed = result.removed;
  const solver::RemovalOptions& options = result.job.removal;
  std::vector<std::string> sentences;
  if (removed.pockets_weight > 0.0) {
    sentences.push_back(fmt::format("Pockets for the beam's ends and the padstones: {} kN.",
                                    fine_kilonewtons(removed.pockets_weight)));
  }
  sentences.push_back(
      fmt::format("Everything that comes out: {} kN, {} m\u00b3 in the wall, some {} m\u00b3 loose "
                  "({} times as much, common practice, no source).",
                  fine_kilonewtons(removed.weight), cubic_metres(removed.solid_volume),
                  cubic_metres(removed.loose_volume), significant(options.bulking, 3)));
  sentences.push_back(fmt::format(
      "One person lifts {} N and two lift {} N here: common practice is 25 kg and 50 kg, no "
      "source. Local rules and the person decide; how far, how high and how often it is carried "
      "count as much.",
      whole_millimetres(options.one_person_lift), whole_millimetres(options.two_person_lift)));
  sentences.emplace_back(
      "Do not heap it on a floor, against the wall or beside a prop's sole: take it away as it "
      "comes out. Plaster, frames and glass are not in these sums.");
  if (any_thin_lintel(result)) {
    sentences.emplace_back(
        "A lintel is thinner than the wall: the masonry beside it comes out too and is not in "
        "these sums.");
  }
  return sentences;
}

}  // namespace

Chapter removal_chapter(const solver::JobResult& result) {
  if (result.removed.courses.empty()) return {};
  const Blocks opening =
      Paragraph{
          "What the cut takes out, less openings. Work from the top down, a strip at a time, with "
          "every needle tight; each sum is of the same masonry."} +
      courses(result);
  return {"removal", "What comes out", opening,
          strips(result) + lintels(result) + bullets(totals(result))};
}

}  // namespace deadshore::io
