// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QToolBar>
#include <vector>

#include "app/bench/go_to_index.h"

class QAction;
class QComboBox;
class QLineEdit;
class QStringListModel;

namespace skeinproof {

class OpenPattern;

// The row under the menus: undo with the name of its step, redo, the chosen size, the house style in force,
// and one field to go to a part or to find words in the page.
class ToolRow : public QToolBar {
  Q_OBJECT

 public:
  ToolRow(OpenPattern& open, QAction* undo, QAction* redo, QWidget* parent);

  void set_page_names(const QStringList& names);
  void start_go_to();
  void start_find(const QString& page);
  QLineEdit* field() const { return field_; }

 signals:
  void go_to(const skeinproof::GoToTarget& target);
  void find(const QString& words);
  void left();  // Esc in the field

 protected:
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void set_go_to();
  void follow();
  void fit();
  void take_field();
  void take_size(int index);
  void take_house_style(int index);

  OpenPattern& open_;
  QComboBox* size_;
  QComboBox* house_style_;
  QLineEdit* field_;
  QStringListModel* words_;
  QStringList page_names_;
  std::vector<GoToTarget> targets_;
  bool finds_ = false;
};

}  // namespace skeinproof
