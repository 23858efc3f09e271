// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/manuscript/reader.h"

namespace skeinproof {

// Runs of capitalised words: the one that ends before `last`, the one that begins at `first`.
std::size_t name_before(const Reader& reader, const Clause& clause, std::size_t last);
std::size_t name_end(const Reader& reader, const Clause& clause, std::size_t first);
int known_yarn(const Reader& reader, std::string_view name);

void say_yarn(Reader& reader, std::size_t first, std::size_t last);
void take_fibre(Reader& reader, const Clause& clause, std::size_t i);
void take_put_up(Reader& reader, const Clause& clause, std::size_t first, std::size_t last);
void take_description(Reader& reader, std::size_t first, std::size_t last, std::size_t word);

}  // namespace skeinproof
