// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>
#include <vector>

#include "app/widgets/quantity_text.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// More than one value, as in "5 (5, 6, 7) (8, 7, 9, 9, 10)".
bool is_size_list(const QString& text);

// A list read for the sizes of a pattern: one text a size (empty = absent), or the reason why not.
struct ListForSizes {
  std::vector<QString> values;
  QString reason;                   // empty where every value was read and their number is right
  std::vector<std::size_t> unread;  // values that are no such quantity
};
ListForSizes read_list_for_sizes(const QString& text, const QuantityFormat& format, const ReaderStyle& reader,
                                 const Pattern& pattern);
// "1: 28, 2: 30, 3: 33 …": what was understood, size by size.
QString understood(const ListForSizes& list, const Pattern& pattern);

// Clipboard text as a rectangle: cells by tabs, rows by line ends, short rows filled up with empty cells.
// Rows that are size lists without tabs are spread; a single column of as many cells as there are sizes
// becomes a row; a first column of words beside one value a size is left out.
using PastedTable = std::vector<std::vector<QString>>;
PastedTable read_pasted_table(const QString& text, int sizes);

}  // namespace skeinproof
