// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <memory>

#include "app/pages/queries/review_desk.h"

class QPushButton;
class QTreeWidget;

namespace skeinproof {

class ChoiceField;
class TextField;

// What was read, a statement a row, then what was not understood; that can be told by hand what it is.
class StatementList : public QWidget {
  Q_OBJECT

 public:
  explicit StatementList(OpenPattern& open, QWidget* parent = nullptr);

  void show_review(const std::shared_ptr<const Reviewed>& reviewed);
  QTreeWidget* table() const { return table_; }
  ChoiceField* kinds() const { return kind_; }
  TextField* whose() const { return of_; }

  void tell();       // the chosen words are what is chosen below
  void take_back();  // what was told of the chosen words
  void next_not_understood();

 signals:
  void place_chosen(std::size_t byte);
  void says(const QString& message);

 private:
  void follow_row();
  void offer_names();
  QString chosen_words() const;  // exactly as they stand in the draft

  OpenPattern& open_;
  std::shared_ptr<const Reviewed> reviewed_;
  QTreeWidget* table_;
  ChoiceField* kind_;
  TextField* of_;
  QPushButton* tell_;
  QPushButton* take_back_;
};

}  // namespace skeinproof
