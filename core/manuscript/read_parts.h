// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <array>

#include "core/manuscript/reader.h"

namespace skeinproof {

inline constexpr std::size_t text_parts = EnumWords<TextPart>::rows.size();

// Which parts have a heading of their own, and which are quoted behind one.
struct Headings {
  std::array<bool, text_parts> whole{}, quoted{};  // by TextPart
};

// Title, item and wearer from the first line, or from "Title: ...".
void read_title(Reader& reader);
// The clauses of a text with what each is about, in order; headings of pieces are said.
std::vector<Clause> read_clauses(Reader& reader, Headings& headings);
// Clauses from `first` on that each begin with the name of another size: "Small: 2 skeins MC, 1 skein CC".
// What they say becomes lists with one value a size. Gives the clause behind them, or `first` where there are
// none.
std::size_t read_size_lines(Reader& reader, const std::vector<Clause>& clauses, std::size_t first);
// A row of a table with the sizes in its first column, beside another one: what its figures are stands above
// them, so that none can be read.
bool is_row_of_size(const Reader& reader, const std::vector<Clause>& clauses, std::size_t i);
// Of a text in another language only what figures with their units say is kept, and the language is noted.
void keep_what_any_language_says(Reader& reader);
// Lays the user's words over what is not understood yet: a statement of a kind, or nothing.
void read_tellings(Reader& reader, std::string_view text, const std::vector<Telling>& tellings);
void read_parts(Reader& reader, const Headings& headings, const std::vector<PartTold>& told);

}  // namespace skeinproof
