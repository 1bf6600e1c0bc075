#include "io/job/job_file.h"

#include "io/error.h"
#include "io/files/whole_file.h"

#include <glib.h>
#include <memory>

namespace deadshore::io {

JobFile read_job_file(const std::filesystem::path& path) {
  // A file's name may be any bytes; notes and results are UTF-8.
  const std::string name = path.filename().string();
  const std::unique_ptr<char, decltype(&g_free)> shown(
      g_utf8_make_valid(name.data(), static_cast<gssize>(name.size())), &g_free);
  return {one_line(shown.get()), read_file(path)};
}

std::string sha256_of(std::string_view bytes) {
  const std::unique_ptr<GChecksum, decltype(&g_checksum_free)> sum(
      g_checksum_new(G_CHECKSUM_SHA256), &g_checksum_free);
  // GLib has the bytes of any kind of text as guchar.
  g_checksum_update(sum.get(), reinterpret_cast<const guchar*>(bytes.data()),
                    static_cast<gssize>(bytes.size()));
  return g_checksum_get_string(sum.get());
}

}  // namespace deadshore::io
