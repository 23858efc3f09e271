// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/statement.h"

namespace skeinproof {

std::string_view words_at(std::string_view text, const TextSpan& span) {
  if (span.begin > span.end || span.end > text.size()) return {};
  return text.substr(span.begin, span.end - span.begin);
}

}  // namespace skeinproof
