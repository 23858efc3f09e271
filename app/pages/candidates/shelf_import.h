// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <memory>
#include <vector>

#include "core/file/shelf_csv.h"

class QComboBox;
class QDialogButtonBox;
class QLabel;
class QPlainTextEdit;
class QTableWidget;

namespace skeinproof {

class ShelfIndex;

// Shows what a CSV file would put on the shelf before it does: which column was taken for what, to be
// changed; what could not be read, with its line and column; what is there already.
class ShelfImportDialog : public QDialog {
  Q_OBJECT

 public:
  ShelfImportDialog(ShelfTable table, std::shared_ptr<const ShelfIndex> shelf, QWidget* parent);

  // What is to be stored once the dialog was accepted.
  std::vector<ShelfYarn> entries() const;
  std::string failed_rows() const;
  bool has_failed_rows() const { return !import_.failed.empty(); }
  QString summary() const;
  QString doubts() const;
  QComboBox* field_of(int column) const { return fields_[static_cast<std::size_t>(column)]; }
  QComboBox* duplicates() const { return duplicates_; }

 signals:
  void wants_failed_rows_saved();

 private:
  void add_columns();
  void read();

  ShelfTable table_;
  std::shared_ptr<const ShelfIndex> shelf_;
  ShelfImport import_;
  ShelfIntake intake_;
  QTableWidget* columns_;
  std::vector<QComboBox*> fields_;
  QComboBox* duplicates_;
  QLabel* summary_;
  QPlainTextEdit* doubts_;
  QDialogButtonBox* buttons_;
  QPushButton* save_failed_;
};

}  // namespace skeinproof
