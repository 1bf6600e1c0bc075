#include "io/note/sections.h"
#include "io/note/wording.h"

#include <fmt/format.h>

#include <map>
#include <string>
#include <vector>

namespace deadshore::io {

std::vector<std::string> needle_advice(const solver::JobResult& result) {
  std::vector<std::string> sentences;
  std::map<std::string, std::vector<std::string>> needles;
  for (const solver::NeedleDesign& design : result.needle_designs) {
    for (const std::string& sentence : design.advice) {
      if (needles[sentence].empty()) sentences.push_back(sentence);
      needles[sentence].push_back(design.demand.needle);
    }
  }
  std::vector<std::string> lines;
  lines.reserve(sentences.size());
  for (const std::string& sentence : sentences) {
    lines.push_back(fmt::format("{}: {}", listed(needles[sentence]), as_sentence(sentence)));
  }
  return lines;
}

std::vector<std::string> shore_advice(const solver::JobResult& result) {
  std::vector<std::string> lines;
  for (const solver::ShoreDesign& design : result.shores) {
    for (const std::string& sentence : design.advice) {
      lines.push_back(
          fmt::format("Dead shore \u201c{}\u201d: {}", design.name, as_sentence(sentence)));
    }
  }
  return lines;
}

}  // namespace deadshore::io
