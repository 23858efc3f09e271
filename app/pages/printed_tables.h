// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <vector>

#include "core/sheets/sheet.h"

namespace skeinproof {

class PartTableModel;
class SizeTableModel;
struct FigureRow;

// What stands in a page's tables, as a table of a sheet: the words as they are read on the screen.
Table printed_table(const QString& title, const PartTableModel& model);
Table printed_table(const QString& title, const SizeTableModel& model);
Table printed_table(const QString& title, const std::vector<FigureRow>& rows);
// Names beside their values.
Table printed_table(const QString& title, const std::vector<std::pair<QString, QString>>& rows);

}  // namespace skeinproof
