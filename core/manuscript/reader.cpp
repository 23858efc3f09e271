// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/reader.h"

#include "core/base/text.h"
#include "core/units/fraction_glyphs.h"

namespace skeinproof {
namespace {

TextPart part_of(StatementKind kind) {
  switch (kind) {
    case StatementKind::size_labels:
    case StatementKind::measurement:
    case StatementKind::ease:
    case StatementKind::sample_size:
    case StatementKind::model_measure:
      return TextPart::sizes;
    case StatementKind::gauge_stitches:
    case StatementKind::gauge_rows:
    case StatementKind::gauge_over:
    case StatementKind::gauge_fabric:
    case StatementKind::gauge_state:
    case StatementKind::gauge_worked:
      return TextPart::gauge;
    case StatementKind::needle:
    case StatementKind::needle_type:
    case StatementKind::needle_length:
      return TextPart::needles;
    case StatementKind::legend_shade:
    case StatementKind::legend_symbol:
      return TextPart::legend;
    case StatementKind::role_mention:
    case StatementKind::shade_mention:
    case StatementKind::stitches:
    case StatementKind::piece_heading:
    case StatementKind::phrase:
    case StatementKind::extra:
      return TextPart::text;
    default:
      return TextPart::block;
  }
}

// Whether a thing may have a value for each size.
bool along_sizes(StatementKind kind) {
  switch (kind) {
    case StatementKind::size_labels:
    case StatementKind::measurement:
    case StatementKind::count:
    case StatementKind::length_note:
    case StatementKind::total_count:
    case StatementKind::total_length:
    case StatementKind::notion:
    case StatementKind::stitches:
      return true;
    default:
      return false;
  }
}

}  // namespace

std::string Reader::words(std::size_t first, std::size_t last) const {
  if (first >= last) return {};
  const std::string_view text =
      std::string_view(plain.text)
          .substr(items.tokens[first].begin, items.tokens[last - 1].end - items.tokens[first].begin);
  std::string tidy;
  tidy.reserve(text.size());
  const auto next = [&](std::size_t i) { return i + 1 < text.size() ? text[i + 1] : '\0'; };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const int row = fraction_row(c);
    // A word that a line end breaks: its hyphen is none of its own.
    if (c == '-' && next(i) == '\n') {
      ++i;
      continue;
    }
    if (row >= 0)
      tidy += fraction_glyphs[row].text;
    else if (c == '\n' || c == '\t' || c == ' ')
      tidy += tidy.empty() || tidy.back() == ' ' ? "" : " ";
    else if (c == PlainText::unreadable)
      tidy += "\ufffd";
    else
      tidy += c;
  }
  return tidy;
}

std::string Reader::lower(std::size_t i) const { return lower_ascii(words(i, i + 1)); }

bool Reader::is(std::size_t i, std::string_view word) const {
  if (i >= items.tokens.size()) return false;
  const Token& at = items.tokens[i];
  if (at.end - at.begin != word.size()) return false;
  for (std::size_t k = 0; k < word.size(); ++k) {
    const char c = plain.text[at.begin + k];
    if ((c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c) != word[k]) return false;
  }
  return true;
}

void Reader::use(std::size_t first, std::size_t last) {
  for (std::size_t i = first; i < last && i < used.size(); ++i) used[i] = true;
}

Statement& Reader::say(StatementKind kind, std::size_t first, std::size_t last) {
  use(first, last);
  Statement statement;
  statement.kind = kind;
  statement.part = schematic && kind == StatementKind::measurement ? TextPart::schematic : part_of(kind);
  statement.span = span(first, last);
  statement.mention = mention;
  if (kinds_mention != mention) kinds_said = 0;
  kinds_mention = mention;
  kinds_said |= std::uint64_t{1} << static_cast<unsigned>(kind);
  return out.statements.emplace_back(std::move(statement));
}

Statement& Reader::say_list(StatementKind kind, std::size_t first, std::size_t last, std::size_t i) {
  auto printed = along_sizes(kind) ? values(i) : figures(i);
  Statement& statement = say(kind, first, last);
  statement.values = std::move(printed);
  statement.unit = list(i).unit;
  return statement;
}

}  // namespace skeinproof
