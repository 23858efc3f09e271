// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/manuscript/reader.h"

namespace skeinproof {

// A role: its label [label_first, label_last) within the words [first, last). Takes the shade and its number
// that stand before it or behind it.
void take_role(Reader& reader, const Clause& clause, std::size_t first, std::size_t last,
               std::size_t label_first, std::size_t label_last);
// How many skeins, grams or metres, of the role at hand or of all.
void take_count(Reader& reader, const Clause& clause, std::size_t first, std::size_t last);
// Figures without a unit: a shade number, or a count that goes without saying.
bool take_figures(Reader& reader, const Clause& clause, std::size_t i);
// Words that begin with a capital: a yarn or a shade.
bool take_name(Reader& reader, const Clause& clause, std::size_t i);

}  // namespace skeinproof
