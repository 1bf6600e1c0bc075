#include "solver/job/supports.h"

#include "solver/job/job.h"

#include <string_view>

namespace deadshore::solver {

namespace {

constexpr const char* no_support = "no needle";
constexpr std::string_view needle_mark = "needle ";

/// Whether the words are those of a support that is no needle.
bool are_taken(const Job& job, std::string_view words) {
  using namespace supports;
  for (const SupportId other : {left_pier, right_pier, base_under_cut, beam_left_end,
                                beam_right_end, left_end, right_end}) {
    if (words == label_of(job, other)) return true;
  }
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i) {
    if (words == label_of(job, support_of(ShoreId{i}))) return true;
  }
  // Words for what is drawn among the supports, and for what no support carries.
  return words == "beam" || words == "padstone" || words == no_support;
}

/// Marked needles could meet a needle that is called so: such a one is marked once more.
std::string needle_label(const Job& job, const std::string& name) {
  std::string_view words = name;
  while (words.starts_with(needle_mark)) words.remove_prefix(needle_mark.size());
  return are_taken(job, words) ? std::string(needle_mark) + name : name;
}

}  // namespace

std::string label_of(const Job& job, SupportId support) {
  switch (support.kind) {
    case SupportKind::needle:
      return needle_label(job, job.needles.at(support.index).name);
    case SupportKind::left_pier:
      return "left pier";
    case SupportKind::right_pier:
      return "right pier";
    case SupportKind::base_under_cut:
      return "base under the cut";
    case SupportKind::joists:
      return "joists on " + job.dead_shores.at(support.index).name;
    case SupportKind::beam_left_end:
      return "beam left end";
    case SupportKind::beam_right_end:
      return "beam right end";
    case SupportKind::left_end:
      return "left end";
    case SupportKind::right_end:
      return "right end";
  }
  return "";
}

std::string label_of(const Job& job, std::optional<SupportId> support) {
  return support ? label_of(job, *support) : no_support;
}

}  // namespace deadshore::solver
