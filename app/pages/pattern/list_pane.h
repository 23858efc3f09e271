// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

#include "app/pages/pattern/size_lists.h"
#include "app/widgets/part_form.h"

class QPushButton;
class QStackedWidget;

namespace skeinproof {

class PaneHeader;
class QuietLabel;
class SizeGrid;

// Measurements, notions and the printed total in one grid, a column a size; under it what the chosen row is.
class ListPane : public QWidget {
  Q_OBJECT

 public:
  explicit ListPane(OpenPattern& open, QWidget* parent = nullptr);

  SizeGrid* grid() const { return grid_; }
  const std::vector<ListRow>& rows() const { return rows_.what; }

  void add_measurement();
  void add_notion();
  void erase_row();
  void move_row(int step);
  void paste(const QString& text);
  bool show_measurement(MeasurementId id);
  QString message() const;

 signals:
  void says(const QString& message);

 private:
  QWidget* measurement_form();
  QWidget* notion_form();
  const ListRow* current() const;
  bool choose(const ListRow& row);
  void refresh();
  void show_form();

  OpenPattern& open_;
  ListRows rows_;
  PartForm<Measurement> measurement_;
  PartForm<Notion> notion_;
  PaneHeader* head_;
  SizeGrid* grid_;
  QStackedWidget* form_;
  QuietLabel* sentence_;
  QuietLabel* message_;
  TextField* measurement_name_ = nullptr;
  TextField* notion_name_ = nullptr;
  QPushButton* erase_ = nullptr;
  QPushButton* up_ = nullptr;
  QPushButton* down_ = nullptr;
  ListRow shown_row_;
};

}  // namespace skeinproof
