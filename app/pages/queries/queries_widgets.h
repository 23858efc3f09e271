// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>
#include <string_view>

class QPlainTextEdit;
class QTreeWidget;

namespace skeinproof {

// Words of the core as the window shows them.
inline QString from_core(std::string_view words) {
  return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

enum class Pitch { proportional, fixed };
// A text to read and copy.
QPlainTextEdit* reading_text(const QString& name, Pitch pitch);
// A table whose rows have no parts.
QTreeWidget* flat_table(const QString& name, const QStringList& heads, int stretched);

}  // namespace skeinproof
