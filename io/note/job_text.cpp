#include "io/note/sections.h"

namespace deadshore::io {

Chapter job_text_section(const JobFile& file) {
  const Html opening = paragraph(
      "What this note was worked out from, byte for byte as it was read. A change of any of it "
      "changes its SHA-256: compare it with what sha256sum prints of the file before using one "
      "with the other.");
  Table content{"job-file", "", {{"Job file"}, {file.name}}, {}};
  content.add({"SHA-256", sha256_of(file.text)});
  return section("job-text", "The job file as run", opening + table(content),
                 element("pre", text(file.text), "job"));
}

}  // namespace deadshore::io
