// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"
#include "core/manuscript/facts_as_read.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// A submission taken into a pattern: the text as the draft at hand, its statements as facts in force.
struct TakenIn {
  FactsAsRead facts;  // `facts.pattern` holds the draft too
  Reading reading;
  std::vector<std::string> notes;  // "read as Windows-1252", "left out: a picture"
};

// `bytes` of a text, Markdown, HTML, .odt or .docx file by its name. Failures as text_of_bytes.
Expected<TakenIn> take_in(const Pattern& pattern, std::string_view bytes, std::string_view file_name);

}  // namespace skeinproof
