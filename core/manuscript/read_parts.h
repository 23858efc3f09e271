// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <array>

#include "core/manuscript/reader.h"

namespace skeinproof {

// Which headings a text has: on their own, or before a quotation.
struct Headings {
  std::array<bool, 8> whole{}, quoted{};  // by TextPart
  std::array<bool, 8> said{};             // the heading stands there at all
};

// The clauses of a text with what each is about, in order.
std::vector<Clause> read_clauses(const Reader& reader, Headings& headings);
void read_parts(Reader& reader, const Headings& headings, const std::vector<PartTold>& told);

}  // namespace skeinproof
