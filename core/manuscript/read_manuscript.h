// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>
#include <vector>

#include "core/manuscript/statement.h"

namespace skeinproof {

// Reads a submitted text as people write it: yarns, put-ups, roles, lists with one value a size in every
// common bracket style, gauges, needles, measurements, notions, chart keys, cautions. Total: every text is
// read, in time linear in its length, and what is not understood is listed. Nothing is dropped or corrected.
// Offsets are into `text`, whose bytes need not be UTF-8.
Reading read_manuscript(std::string_view text, const std::vector<PartTold>& parts = {},
                        const std::vector<Telling>& tellings = {});
inline Reading read_manuscript(const Draft& draft) {
  return read_manuscript(draft.text, draft.parts, draft.tellings);
}

}  // namespace skeinproof
