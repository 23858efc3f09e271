// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>
#include <cstdint>

#include "app/document/reader_style.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// How a section meets its neighbours in the piece: stitches it takes up and leaves, as far as the sheet says,
// and what it still lacks.
struct Joins {
  QString verdict;    // "all nine agree", "sizes 3, 4 differ"; empty where nothing meets
  QStringList lines;  // at the chosen size
};
Joins joins_of(const Pattern& pattern, std::uint32_t part, std::size_t size, const ReaderStyle& reader);

// The one thing a section or an edge lacks before it can take yarn, as a sentence; empty where nothing is
// missing.
QString what_is_missing(const Pattern& pattern, std::uint32_t part);

}  // namespace skeinproof
