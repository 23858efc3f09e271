// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/statement.h"

#include <algorithm>

namespace skeinproof {

std::string_view words_at(std::string_view text, const TextSpan& span) {
  if (span.begin > span.end || span.end > text.size()) return {};
  return text.substr(span.begin, span.end - span.begin);
}

std::string words_on_language(const Reading& reading) {
  constexpr std::string_view said = "the text is in ";
  const auto part = std::find_if(reading.parts.begin(), reading.parts.end(),
                                 [&](const PartRead& one) { return one.because.starts_with(said); });
  if (part == reading.parts.end()) return {};
  return "The text is in " + part->because.substr(said.size()) +
         " and is not understood: only fibres, put-ups and needles in figures with their units were read.";
}

}  // namespace skeinproof
