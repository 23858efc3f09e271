// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>

#include "core/review/compare_drafts.h"
#include "core/review/record.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// The query sheet to the designer: what is ticked, gravest first, each with its place, the printed words, the
// working, the proposal, and boxes to tick with room to write. `date` as it shall be printed.
Sheet query_sheet(const Pattern& pattern, const Review& review, const Record& record,
                  std::string_view date = {});

// "MC, sizes 5 and 6", "line 18" where it is of no role or size.
std::string place_of_query(const Review& review, const Finding& finding);

// What was checked, closed, kept and not checked. `closed` as `findings_closed` counts.
Sheet sign_off_note(const Pattern& pattern, const Review& review, const Record& record, std::size_t closed,
                    std::string_view date = {});

// What changed from one draft to another, what depends on it and did not move, and which findings closed,
// opened and stayed.
Sheet drafts_sheet(const Pattern& pattern, const DraftComparison& comparison, std::string_view date = {});

// The submitted block and the one the house would print, word by word.
Sheet block_comparison_sheet(const Pattern& pattern, const Assessment& assessment,
                             std::string_view date = {});

}  // namespace skeinproof
