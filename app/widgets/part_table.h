// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPointer>
#include <QTableView>
#include <functional>
#include <string>
#include <vector>

#include "app/widgets/part_column.h"

namespace skeinproof {

class FieldMessage;
class OpenPattern;
class PartTableModel;

// A table of parts of the document, edited in place. Below its last row stands an empty one where the list
// can grow
// ("add a yarn"): what is typed there makes the part. What cannot be read stays in its cell, underlined, with
// the reason under the cell. Alt+Up and Alt+Down move the chosen part; copying gives tab-separated text, and
// a table pasted from a spreadsheet fills from the chosen cell on as one step of undo.
class PartTable : public QTableView {
  Q_OBJECT

 public:
  PartTable(OpenPattern& open, PartList list, std::vector<PartColumn> columns, QWidget* parent = nullptr);

  // The key of the chosen part; 0 where none is chosen (or the empty row is).
  std::uint32_t current_key() const;
  int current_row() const;
  // Chooses a part; false where it is not in the list.
  bool set_current_key(std::uint32_t key);
  // Shows other rows than before (the list of another yarn): forgets texts that could not be read.
  void refresh(bool other_rows = false);

  void add();        // a new part, its first cell being typed in
  void duplicate();  // the chosen part
  void erase();      // the chosen part
  void move(int step);
  // As high as its rows are, at least `least` of them.
  void set_height_follows_rows(int least);

  PartTableModel* part_model() const { return model_; }
  QString copied() const;  // the selection, tab-separated
  void paste(const QString& text);

 signals:
  void current_part_changed(std::uint32_t key);
  void says(const QString& message);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void changeEvent(QEvent* event) override;
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
  void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;
  void mousePressEvent(QMouseEvent* event) override;
  void scrollContentsBy(int dx, int dy) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void dress();
  void fit_columns();
  void clear_cells();
  void show_reason();

  OpenPattern& open_;
  PartTableModel* model_;
  std::uint32_t told_key_ = 0;
  int least_rows_ = 0;
  bool editor_went_ = false;  // with the rows that its own text replaced
  QWidget* chosen_cell_;      // stands where the chosen cell is, for the reason to stand under
  QPointer<FieldMessage> reason_;
};

}  // namespace skeinproof
