// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <map>
#include <utility>
#include <vector>

#include "app/widgets/part_column.h"

namespace skeinproof {

// Parts of the open pattern x columns, with an empty row at the end where the list can grow. A text that
// could not be read is kept in its cell with the reason until it is put right or given up.
class PartTableModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  enum Role { bad_text_role = Qt::UserRole, chip_role, quiet_role, strong_role, empty_row_role };
  struct CellText {
    int row;
    int column;
    QString text;
  };

  PartTableModel(OpenPattern& open, PartList list, std::vector<PartColumn> columns,
                 QObject* parent = nullptr);

  const PartList& list() const { return list_; }
  const PartColumn& column(int column) const { return columns_[static_cast<std::size_t>(column)]; }
  int part_count() const { return static_cast<int>(keys_.size()); }
  bool is_empty_row(int row) const { return row >= part_count(); }
  std::uint32_t key_at(int row) const;
  int row_of(std::uint32_t key) const;  // -1 where there is none
  QString name_at(int row) const;

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;
  // A text for a typed cell, a number for a chosen one, Qt::CheckStateRole for a ticked one.
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;

  // Writes the cells as one step of undo, making parts where they reach below the last one; what cannot be
  // read stays in its cell with the reason. Returns how many could not.
  int write(const std::vector<CellText>& cells, const QString& undo_label);
  QString cell_text(int row, int column) const;
  std::vector<Choice> choices_at(int row, int column) const;
  QString bad_reason(int row, int column) const;
  void give_up_bad_text(int row, int column);

  // Takes over the rows of the document; true where they are other rows than before, all at once.
  bool follow(bool other_rows = false);

 private:
  // False between a change of the document and following it, for rows that went.
  bool is_there(int row) const;
  struct BadText {
    QString text;
    QString reason;
  };
  using CellKey = std::pair<std::uint32_t, int>;
  const BadText* bad_text(int row, int column) const;
  Expected<RowEdit> read_cell(int row, int column, const QString& text) const;
  bool apply_edit(int row, int column, const QString& said, const RowEdit& edit);
  QString label_of(int row, int column, const QString& said) const;
  QString spoken_text(int row, int column) const;
  std::vector<std::uint32_t> keys_now() const;

  OpenPattern& open_;
  PartList list_;
  std::vector<PartColumn> columns_;
  std::vector<std::uint32_t> keys_;
  std::map<CellKey, BadText> bad_texts_;
};

}  // namespace skeinproof
