// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/base/find_word.h"
#include "core/review/check.h"

namespace skeinproof {

// Small tools of the checks: what a finding shows, and looking for words in a text.

// The statement's characters are a place of the finding, and it rests on the statement.
void show(Finding& finding, const PrintedView& printed, const Statement& statement);
// It rests on the statement without showing it.
void rest_on(Finding& finding, const PrintedView& printed, const Statement& statement);

// From the first character of the one to the last of the other, whichever comes first in the text.
TextSpan span_of(const Statement& one, const Statement& other);
// The printed words in curly quotation marks, odd spaces and line breaks made plain.
std::string printed_words(const PrintedView& printed, const TextSpan& span);
std::string printed_words(const PrintedView& printed, const Statement& statement);

// A figure for the working: at most that many decimals, no idle zeros.
std::string figure(double value, int most_decimals = 1);

// The sentence around an offset: up to the full stop, semicolon or line break on either side, at most 300
// bytes each way; a line that goes on in a small letter is no break.
TextSpan sentence_around(std::string_view text, std::size_t offset);

}  // namespace skeinproof
