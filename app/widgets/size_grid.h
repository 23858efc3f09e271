// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <functional>
#include <map>
#include <vector>

#include "app/widgets/size_list_text.h"
#include "app/widgets/size_row.h"

class QLabel;
class QLineEdit;

namespace skeinproof {

class OpenPattern;
class SizeTable;
class SizeTableModel;

// The per-size grid of a page: one column a size, ruled where the pattern's brackets open, one row a list.
// Below it the current row as a list line ("Repeats  28 (30, 33, 35) (38, 40 …)  nine values"). A list typed
// or pasted into a cell fills the row after a preview; a list of the wrong length stays in the line with the
// reason. The grid follows the open pattern; the page only gives its rows.
class SizeGrid : public QWidget {
  Q_OBJECT

 public:
  explicit SizeGrid(OpenPattern& open, QWidget* parent = nullptr);

  void set_rows(std::vector<SizeRow> rows);
  // A second line under the size in the header, e.g. the bust; called for every size.
  void set_second_line(std::function<QString(const Pattern&, std::size_t size_index)> line);
  // The word above the row labels, "Size" by default.
  void set_corner(const QString& words);
  void set_line_editor_visible(bool visible);
  // As many rows high as it has, so that a page can stack grids; off by default.
  void set_height_follows_rows(bool follows);

  int current_row() const;
  std::size_t current_size() const;
  void set_current(int row, std::size_t size_index);

  SizeTable* table() const { return table_; }
  SizeTableModel* model() const { return model_; }
  QLineEdit* line() const { return line_; }
  QString message() const;

  // What Enter in the line editor does: reads a list for the current row; false (text and message stay) where
  // it cannot be read or counts other than the sizes.
  bool take_line();

 signals:
  void current_changed(int row, std::size_t size_index);
  void says(const QString& message);

 protected:
  void changeEvent(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void show_line();
  ListForSizes read_line(int row, const QString& text) const;
  void preview(int row, const QString& text);
  void offer_list(int row, const QString& text, bool was_typed);
  void set_message(const QString& message, bool bad);
  void fit_message();
  void fit();

  OpenPattern& open_;
  SizeTableModel* model_;
  SizeTable* table_;
  QWidget* line_bar_;
  QLabel* line_label_;
  QLineEdit* line_;
  QLabel* line_count_;
  QLabel* message_;
  bool follows_rows_ = false;
  bool message_is_bad_ = false;
  int line_row_ = -1;
  QString line_name_;
  std::map<QString, QString>
      kept_lines_;  // lists that are being typed or could not be taken, by the row's name
};

}  // namespace skeinproof
