// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/manuscript/reader.h"

namespace skeinproof {

// Names of yarns and shades: runs of capitalised words.

// Where the run that ends before `last` begins, and where the one that begins at `first` ends.
std::size_t name_begin(const Reader& reader, const Clause& clause, std::size_t last);
std::size_t name_end(const Reader& reader, const Clause& clause, std::size_t first);
// The longest name of a yarn read before with which these words begin: where it ends, or `first`.
std::size_t known_yarn_end(const Reader& reader, std::size_t first, std::size_t last);
// A composition or a put-up stands behind a name within a few tokens.
bool yarn_follows(const Reader& reader, const Clause& clause, std::size_t i);
// Where a shade in small letters ends that begins behind its number: "colour 04 off white"; or `first`.
std::size_t small_shade_end(const Reader& reader, const Clause& clause, std::size_t first);

void say_yarn(Reader& reader, std::size_t first, std::size_t last);
void say_shade(Reader& reader, std::size_t first, std::size_t last);
void say_shade_number(Reader& reader, std::size_t first, std::size_t i);
// "08", "#08", ", shade 08", "(08)" behind a shade's name; gives the token behind it, or `i`.
std::size_t take_number_behind(Reader& reader, const Clause& clause, std::size_t i);
// A capital alone: "A".
bool lone_capital(const Reader& reader, std::size_t i);
// "(MC)", "(A)"
bool is_role_in_brackets(const Reader& reader, std::size_t i);
// The yarn that a composition or a put-up from `first` up to `last` speaks of: the one named before it, or
// behind it ("50 g balls of Grebe"), else the one at hand, else one without a name.
void find_yarn(Reader& reader, const Clause& clause, std::size_t first, std::size_t last);

}  // namespace skeinproof
