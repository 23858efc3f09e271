// SPDX-License-Identifier: GPL-3.0-or-later
#include <iconv.h>
#include <uchardet/uchardet.h>

#include <algorithm>
#include <memory>
#include <optional>
#include <type_traits>

#include "core/base/text.h"
#include "core/manuscript/file_texts.h"

namespace skeinproof {
namespace {

constexpr std::string_view replacement = "\xef\xbf\xbd";

struct Converted {
  std::string text;
  std::size_t unreadable = 0;
};

// Bytes that have no meaning in the encoding become U+FFFD; absent where the encoding is not known here.
std::optional<Converted> converted(std::string_view bytes, const std::string& encoding) {
  iconv_t state = iconv_open("UTF-8", encoding.c_str());
  if (state == reinterpret_cast<iconv_t>(-1)) return std::nullopt;
  Converted out;
  char* from = const_cast<char*>(bytes.data());  // the interface writes through neither pointer to the input
  std::size_t left = bytes.size();
  char buffer[1 << 14];
  while (left > 0) {
    char* to = buffer;
    std::size_t room = sizeof buffer;
    const std::size_t result = iconv(state, &from, &left, &to, &room);
    out.text.append(buffer, sizeof buffer - room);
    const bool stuck = result == static_cast<std::size_t>(-1) && room > 16;
    if (!stuck || left == 0) continue;
    out.text += replacement;
    ++out.unreadable;
    ++from;
    --left;
  }
  iconv_close(state);
  return out;
}

struct ByteOrderMark {
  std::string_view bytes;
  std::string_view encoding;
};
constexpr ByteOrderMark byte_order_marks[] = {{"\xef\xbb\xbf", "UTF-8"},
                                              {std::string_view("\xff\xfe\0\0", 4), "UTF-32LE"},
                                              {std::string_view("\0\0\xfe\xff", 4), "UTF-32BE"},
                                              {"\xff\xfe", "UTF-16LE"},
                                              {"\xfe\xff", "UTF-16BE"}};

// Text of mostly Western letters in two bytes each has a zero in every other byte.
std::string_view two_byte_encoding(std::string_view bytes) {
  const std::string_view head = bytes.substr(0, 4096);
  std::size_t zeros[2] = {0, 0};
  for (std::size_t i = 0; i < head.size(); ++i) zeros[i % 2] += head[i] == '\0';
  const std::size_t many = head.size() / 2 * 3 / 5;
  if (head.size() < 4 || bytes.size() % 2 != 0) return {};
  if (zeros[1] > many && zeros[0] == 0) return "UTF-16LE";
  if (zeros[0] > many && zeros[1] == 0) return "UTF-16BE";
  return {};
}

// Fractions, quotes, dashes, degrees and odd spaces are what a submission in Windows' Western encoding has
// beyond ASCII; guessing by letters has nothing to go by there.
bool only_western_signs(std::string_view bytes) {
  constexpr std::string_view signs =
      "\x80\x85\x91\x92\x93\x94\x95\x96\x97\x99\xa0\xa3\xa9\xab\xad\xae\xb0\xb1\xb2\xb3\xb4\xb7\xba\xbb\xbc"
      "\xbd"
      "\xbe\xd7";
  return std::all_of(bytes.begin(), bytes.end(), [&](char c) {
    return static_cast<unsigned char>(c) < 0x80 || signs.find(c) != std::string_view::npos;
  });
}

std::string guessed_encoding(std::string_view bytes) {
  if (const auto two = two_byte_encoding(bytes); !two.empty()) return std::string(two);
  if (only_western_signs(bytes)) return "WINDOWS-1252";
  constexpr std::size_t enough = std::size_t{1} << 20;
  const std::unique_ptr<std::remove_pointer_t<uchardet_t>, decltype(&uchardet_delete)> detector(
      uchardet_new(), &uchardet_delete);
  uchardet_handle_data(detector.get(), bytes.data(), std::min(bytes.size(), enough));
  uchardet_data_end(detector.get());
  std::string name = uchardet_get_charset(detector.get());
  // Windows' encoding holds every sign of this one and the dashes and quotes besides.
  if (name.empty() || name == "ASCII" || name == "UTF-8" || name == "ISO-8859-1") return "WINDOWS-1252";
  return name;
}

// The encoding meant by a name that a page gives itself: Windows' Western one wherever it is said to be
// Latin-1 or ASCII, as all browsers read it.
std::string encoding_named(std::string_view declared) {
  std::string name = folded_name(declared);
  if (name == "utf-8" || name == "utf8") return {};
  if (name == "iso-8859-1" || name == "latin1" || name == "us-ascii" || name == "ascii")
    return "WINDOWS-1252";
  constexpr std::size_t longest = 40;
  if (name.size() > longest) return {};
  for (char& c : name) {
    const bool letter = c >= 'a' && c <= 'z';
    if (!letter && !(c >= '0' && c <= '9') && c != '-' && c != '_') return {};
    if (letter) c = static_cast<char>(c - 'a' + 'A');
  }
  return name;
}

void end_lines_alike(std::string& text) {
  std::size_t to = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const bool pair = text[at] == '\r' && at + 1 < text.size() && text[at + 1] == '\n';
    if (!pair) text[to++] = text[at] == '\r' ? '\n' : text[at];
  }
  text.resize(to);
}

Expected<FileText> as_text(FileText file) {
  if (file.text.find('\0') != std::string::npos)
    return failure(ErrorKind::wrong_format, "bytes that are no text",
                   "a text, a web page or an .odt or .docx document");
  end_lines_alike(file.text);
  return file;
}

Expected<FileText> read_as(std::string_view bytes, const std::string& encoding) {
  const auto read = converted(bytes, encoding);
  if (!read)
    return failure(ErrorKind::wrong_format, "text in the encoding " + quoted(encoding), "text in UTF-8");
  FileText file;
  file.text = read->text;
  file.encoding = encoding;
  file.notes.push_back("The bytes are no UTF-8; they were read as " + encoding + ".");
  if (read->unreadable > 0)
    file.notes.push_back(std::to_string(read->unreadable) +
                         (read->unreadable == 1 ? " byte has" : " bytes have") + " no meaning in " +
                         encoding + " and stand as \ufffd.");
  return as_text(std::move(file));
}

}  // namespace

Expected<FileText> decoded(std::string_view bytes, std::string_view declared) {
  for (const ByteOrderMark& mark : byte_order_marks) {
    if (!bytes.starts_with(mark.bytes)) continue;
    bytes.remove_prefix(mark.bytes.size());
    if (mark.encoding != "UTF-8") return read_as(bytes, std::string(mark.encoding));
    break;
  }
  if (two_byte_encoding(bytes).empty() && is_utf8(bytes)) return as_text({std::string(bytes), {}, {}});
  if (const std::string named = encoding_named(declared); !named.empty())
    if (auto read = read_as(bytes, named)) return read;
  auto read = read_as(bytes, guessed_encoding(bytes));
  return read ? std::move(read) : read_as(bytes, "ISO-8859-1");
}

}  // namespace skeinproof
