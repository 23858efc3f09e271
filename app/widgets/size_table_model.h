// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <map>
#include <utility>
#include <vector>

#include "app/widgets/size_row.h"

namespace skeinproof {

class OpenPattern;

// Rows of a page x sizes of the open pattern. Cells hold the value in force, or a text that could not be
// read, kept with its reason until it is put right or given up.
class SizeTableModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  enum Role { bad_text_role = Qt::UserRole, opens_group_role, chosen_role, rule_above_role };
  // One cell of an edit: an empty text clears.
  struct CellText {
    int row;
    int size;
    QString text;
  };

  explicit SizeTableModel(OpenPattern& open, QObject* parent = nullptr);

  void set_rows(std::vector<SizeRow> rows);
  void set_second_line(std::function<QString(const Pattern&, std::size_t)> line);
  const std::vector<SizeRow>& rows() const { return rows_; }
  OpenPattern& open() const { return open_; }
  int size_count() const;

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;

  // Writes all cells as one step of undo. What cannot be read stays in its cell with the reason; the number
  // of such cells is returned. Cells of read-only rows are left out.
  int write(const std::vector<CellText>& cells, const QString& undo_label);
  // The text of a cell as it is shown and copied.
  QString cell_text(int row, int size) const;
  // The row in the pattern's brackets: "28 (30, 33, 35) (38, 40, 43, 45, 48)"; empty where nothing was typed.
  QString list_text(int row) const;
  bool is_editable(int row) const;
  QString undo_name(int row) const;
  void give_up_bad_text(int row, int size);

 private:
  struct BadText {
    QString text;
    QString reason;
  };
  using CellKey = std::pair<QString, std::uint32_t>;  // row's name, size id
  CellKey key_of(int row, int size) const;
  const BadText* bad_text(int row, int size) const;
  FieldValue value_at(int row, int size) const;
  QVariant spoken_text(int row, int size) const;
  void follow();
  void read_lists();

  OpenPattern& open_;
  std::vector<SizeRow> rows_;
  std::vector<PerSize<Entered<double>>> lists_;
  std::map<CellKey, BadText> bad_texts_;
  std::function<QString(const Pattern&, std::size_t)> second_line_;
  int shown_sizes_ = 0;
};

}  // namespace skeinproof
