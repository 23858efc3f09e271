// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <optional>

#include "app/document/reader_style.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// What the list of pieces says about a part, and its printed table with it.

QString text_of(const std::string& utf8);
QString fabric_words(const Pattern& pattern, FabricId fabric);
// "CC1"; "MC, CC" for stripes or charts of two; "four" beyond.
QString yarn_words(const Pattern& pattern, const Section& section);
QString role_words(const Pattern& pattern, RoleId role);
// Rounds of one copy: of the chart, or summed over the runs; empty where nothing says.
QString rounds_words(const Pattern& pattern, const Section& section, std::size_t size,
                     const ReaderStyle& reader);
// "11,536", "38 × 484", or empty.
QString stitches_words(const Pattern& pattern, const Section& section, std::size_t size,
                       const ReaderStyle& reader);
// "104 sts", "46 cm", "0.6 m", or empty.
QString edge_words(const Edge& edge, std::size_t size, const ReaderStyle& reader);

// Stitches around where a section begins and where it ends, of one copy; absent where nothing says.
struct Widths {
  std::optional<double> in, out;
};
Widths widths_of(const Pattern& pattern, const Section& section, std::size_t size);

// Stitches of the first and of the last round of a chart that has any; 0 where none has.
long stitches_in_first_round(const Chart& chart);
long stitches_in_last_round(const Chart& chart);
// Stitches of one repeat.
long stitches_in_repeat(const Chart& chart);
// The different stitch counts of its rounds in the order they come: "12, 9, 6, 4".
QString widths_of_repeat(const Chart& chart);

}  // namespace skeinproof
