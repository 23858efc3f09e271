// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/sheets/unzip.h"

#include <zlib.h>

#include <fstream>
#include <sstream>

namespace skeinproof::testing {
namespace {

std::size_t number(const std::string& bytes, std::size_t at, int width) {
  std::size_t value = 0;
  for (int i = width - 1; i >= 0; --i)
    value = value << 8 | static_cast<unsigned char>(bytes.at(at + static_cast<std::size_t>(i)));
  return value;
}

std::string inflated(const std::string& packed, std::size_t size) {
  std::string text(size, '\0');
  z_stream stream = {};
  inflateInit2(&stream, -MAX_WBITS);
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(packed.data()));
  stream.avail_in = static_cast<uInt>(packed.size());
  stream.next_out = reinterpret_cast<Bytef*>(text.data());
  stream.avail_out = static_cast<uInt>(size);
  inflate(&stream, Z_FINISH);
  inflateEnd(&stream);
  text.resize(stream.total_out);
  return text;
}

}  // namespace

std::map<std::string, std::string> unzipped(const std::string& path) {
  std::ostringstream read;
  read << std::ifstream(path, std::ios::binary).rdbuf();
  const std::string bytes = read.str();
  std::map<std::string, std::string> entries;
  const auto end = bytes.rfind("PK\5\6");
  if (end == std::string::npos) return entries;
  std::size_t at = number(bytes, end + 16, 4);
  for (std::size_t n = number(bytes, end + 10, 2); n > 0; --n) {
    const std::size_t packed = number(bytes, at + 20, 4), size = number(bytes, at + 24, 4);
    const std::size_t name = number(bytes, at + 28, 2), more = number(bytes, at + 30, 2),
                      note = number(bytes, at + 32, 2);
    const std::size_t local = number(bytes, at + 42, 4);
    const std::size_t data = local + 30 + number(bytes, local + 26, 2) + number(bytes, local + 28, 2);
    const std::string content = bytes.substr(data, packed);
    entries[bytes.substr(at + 46, name)] = number(bytes, at + 10, 2) == 8 ? inflated(content, size) : content;
    at += 46 + name + more + note;
  }
  return entries;
}

}  // namespace skeinproof::testing
