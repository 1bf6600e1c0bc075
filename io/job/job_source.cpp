#include "io/job/job_source.h"

#include "io/error.h"
#include "io/job/toml_text.h"

#include <fmt/format.h>

namespace deadshore::io {

int line_of_node(const toml::node& node) {
  return static_cast<int>(node.source().begin.line);
}

int JobSource::line_of(std::string path) const {
  while (true) {
    const auto found = lines_.find(path);
    if (found != lines_.end()) return found->second;
    const std::size_t last_step = path.find_last_of(".[");
    if (last_step == std::string::npos) return 1;
    path.resize(last_step);
  }
}

std::string JobSource::path_in_file(const std::string& key) const {
  for (std::size_t end = key.size(); end != std::string::npos && end > 0;
       end = key.find_last_of(".[", end - 1)) {
    const auto found = places_.find(key.substr(0, end));
    if (found != places_.end()) return found->second + key.substr(end);
  }
  return key;
}

void JobSource::refuse(const std::string& path, const std::string& found,
                       const std::string& due) const {
  throw InputError(file_, line_of(path), path, found, due);
}

void JobSource::refuse_first(const std::vector<solver::Fault>& faults) const {
  if (faults.empty()) return;
  const solver::Fault& first = faults.front();
  refuse(path_in_file(first.key), first.found, "due: " + first.due);
}

void JobSource::require_printable(const std::string& path, std::string_view text,
                                  std::size_t longest) const {
  if (text.size() > longest) {
    refuse(path, fmt::format("a text of {} bytes", text.size()),
           fmt::format("at most {} are due", longest));
  }
  if (const std::string sign = first_unprintable(text); !sign.empty()) {
    refuse(path, fmt::format("a text with {}, which does not print", sign),
           "one line of characters that print is due");
  }
}

}  // namespace deadshore::io
