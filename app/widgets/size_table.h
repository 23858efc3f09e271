// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QTableView>

class QLabel;
class QMimeData;

namespace skeinproof {

class SizeTableModel;

// The cells of a size grid: keyboard, clipboard and drawing. What concerns a whole list goes to the grid by
// signals.
class SizeTable : public QTableView {
  Q_OBJECT

 public:
  explicit SizeTable(SizeTableModel& model, QWidget* parent = nullptr);

  void set_corner(const QString& words);
  // Columns and rows as the font in force and the width at hand want them.
  void fit();
  int full_height() const;

  void copy();
  void paste(const QMimeData* from);
  void clear_selected();
  SizeTableModel& size_model() const { return model_; }
  // The delegate calls these.
  void tell_typing(int row, const QString& text) { emit cell_typed(row, text); }
  bool take_cell(const QModelIndex& index, const QString& text, bool was_typed = true);

 signals:
  void list_offered(int row, const QString& text,
                    bool was_typed);              // a list instead of one value, typed or pasted
  void cell_typed(int row, const QString& text);  // while an editor is open; empty when it closed
  void said(const QString& message, bool bad);
  void current_moved();

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
  void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void updateGeometries() override;

 private:
  bool is_whole_rows() const;
  void paste_table(const QString& text);

  SizeTableModel& model_;
  QLabel* corner_;
  bool fitting_ = false;
};

}  // namespace skeinproof
