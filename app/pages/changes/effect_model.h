// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <QColor>
#include <optional>
#include <vector>

#include "app/document/reader_style.h"
#include "core/need/changes.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// A figure before the changes and after them; one alone where they are the same.
struct BeforeAfter {
  QString before, after;
  bool moves() const { return !before.isEmpty() && before != after; }
  QString words() const { return moves() ? before + QStringLiteral(" → ") + after : after; }
};

// One colour, or all of them in the last row.
struct EffectRow {
  QString colour, shade;
  QColor chip;
  BeforeAfter knitted, planned, fill, skeins;
  QString knitted_more, planned_more;
  std::optional<double> share;  // of the last skein
  QString state;                // "crosses a step", "not checked"
  QString detail;               // "an 8th skein for 1.9 m", the reason
  bool is_total = false;
  QString step() const {
    return detail.isEmpty() || state.isEmpty() ? state + detail : state + QStringLiteral(": ") + detail;
  }
};
// `pattern` gives the shades; a colour that only the changes make has none.
std::vector<EffectRow> effect_rows(const Pattern& pattern, const WhatIf& what_if, const ReaderStyle& reader);

class EffectModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  enum Column { Colour, Knitted, KnittedMore, Planned, PlannedMore, Fill, Skeins, Step, ColumnCount };
  explicit EffectModel(QObject* parent = nullptr) : QAbstractTableModel(parent) {}
  void show(std::vector<EffectRow> rows, const QString& unit);
  const std::vector<EffectRow>& rows() const { return rows_; }
  QString cell_text(int row, int column) const;
  const BeforeAfter* figures(int row, int column) const;

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  QString spoken(const EffectRow& row) const;

  std::vector<EffectRow> rows_;
  QString unit_;
};

// On paper the words about the steps stand below the figures: "CC1: crosses a step, brimful: a skein fewer".
Table printed_effect(const QString& title, const EffectModel& model);
std::vector<std::string> printed_steps(const EffectModel& model);

}  // namespace skeinproof
