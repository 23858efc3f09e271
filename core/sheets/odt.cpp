// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/odt.h"

#include <zip.h>

#include <array>
#include <memory>

#include "core/sheets/odt_parts.h"

namespace skeinproof {
namespace {

// A zip archive in memory.
class Package {
 public:
  Package() {
    zip_error_init(&error_);
    source_ = zip_source_buffer_create(nullptr, 0, 0, &error_);
    if (source_ == nullptr) return;
    zip_source_keep(source_);
    archive_ = zip_open_from_source(source_, ZIP_TRUNCATE, &error_);
    if (archive_ == nullptr) zip_source_free(source_);
  }
  ~Package() {
    if (archive_ != nullptr) zip_discard(archive_);
    if (source_ != nullptr) zip_source_free(source_);
    zip_error_fini(&error_);
  }
  Package(const Package&) = delete;
  Package& operator=(const Package&) = delete;

  // `bytes` must live until the archive is finished.
  void add(const char* name, std::string_view bytes, zip_int32_t method) {
    zip_source_t* content =
        archive_ == nullptr ? nullptr : zip_source_buffer(archive_, bytes.data(), bytes.size(), 0);
    const zip_int64_t entry =
        content == nullptr ? -1 : zip_file_add(archive_, name, content, ZIP_FL_ENC_UTF_8);
    if (entry < 0 && content != nullptr) zip_source_free(content);
    const auto index = static_cast<zip_uint64_t>(entry);
    // The same day for every file: the archive is to depend on the sheet alone.
    constexpr zip_uint16_t first_day = (1 << 5) | 1;
    good_ = good_ && entry >= 0 && zip_set_file_compression(archive_, index, method, 0) == 0 &&
            zip_file_set_dostime(archive_, index, 0, first_day, 0) == 0;
  }

  Expected<std::string> finish() {
    if (!good_ || zip_close(archive_) != 0) return failed();
    archive_ = nullptr;
    zip_stat_t stat;
    zip_stat_init(&stat);
    if (zip_source_stat(source_, &stat) != 0 || (stat.valid & ZIP_STAT_SIZE) == 0) return failed();
    std::string bytes(stat.size, '\0');
    if (zip_source_open(source_) != 0) return failed();
    const zip_int64_t read = zip_source_read(source_, bytes.data(), bytes.size());
    zip_source_close(source_);
    if (read != static_cast<zip_int64_t>(bytes.size())) return failed();
    return bytes;
  }

 private:
  static tl::unexpected<Error> failed() {
    return failure(ErrorKind::system, "a document that could not be packed", "room for it in memory");
  }

  zip_error_t error_;
  zip_source_t* source_ = nullptr;
  zip_t* archive_ = nullptr;
  bool good_ = true;
};

}  // namespace

Expected<std::string> odt(const Sheet& sheet, std::int64_t created) {
  const std::string content = odt_content(sheet), meta = odt_meta(sheet, created);
  Package package;
  // What it is stands first and unpacked, where it is looked for.
  package.add("mimetype", "application/vnd.oasis.opendocument.text", ZIP_CM_STORE);
  package.add("content.xml", content, ZIP_CM_DEFLATE);
  package.add("styles.xml", odt_styles(), ZIP_CM_DEFLATE);
  package.add("meta.xml", meta, ZIP_CM_DEFLATE);
  package.add("META-INF/manifest.xml", odt_manifest(), ZIP_CM_DEFLATE);
  return package.finish();
}

}  // namespace skeinproof
