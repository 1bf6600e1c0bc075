#include "io/results/work_words.h"

#include "io/note/wording.h"

#include <fmt/format.h>

#include <cstddef>
#include <string_view>
#include <variant>
#include <vector>

namespace deadshore::io {
namespace {

using solver::Act;
using solver::Operation;

/// What a builder does, with a place left for what he does it to.
std::string_view work_words(Act act) {
  switch (act) {
    case Act::fit:
      return "put in {}, packed tight";
    case Act::preload:
      return "jack up {}";
    case Act::release:
      return "ease and take out {}";
    case Act::remove:
      return "take out {}";
    case Act::place:
      return "set {}";
    case Act::pack:
      return "pack over {}";
    case Act::tighten:
      return "tighten {}";
    case Act::slacken:
      return "ease off {}";
    case Act::load_on:
      return "load comes on: {}";
    case Act::load_off:
      return "load taken off: {}";
  }
  return "{}";
}

/// A thing as it is called on site; needles, shores, lintels and loads have names of their own.
std::string thing_words(const solver::Job& job, const solver::Target& target) {
  const auto* part = std::get_if<solver::WorkPart>(&target);
  if (part == nullptr) return name_of(job, target);
  switch (*part) {
    case solver::WorkPart::cut:
      return "the masonry of the cut";
    case solver::WorkPart::pockets:
      return "the masonry of the pockets for the beam";
    default:
      return std::string("the ") + to_string(*part);
  }
}

}  // namespace

std::string done_in_words(const solver::Job& job, std::span<const Operation> operations) {
  std::string words;
  for (std::size_t first = 0; first < operations.size();) {
    std::vector<std::string> things;
    std::size_t next = first;
    for (; next < operations.size() && operations[next].act == operations[first].act; ++next) {
      things.push_back(thing_words(job, operations[next].target));
    }
    if (!words.empty()) words += "; ";
    words += fmt::format(fmt::runtime(work_words(operations[first].act)), listed(things));
    first = next;
  }
  return words.empty() ? "nothing yet" : words;
}

}  // namespace deadshore::io
