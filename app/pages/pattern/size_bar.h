// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

#include "app/widgets/part_form.h"

class QPushButton;

namespace skeinproof {

class LineField;
class QuietLabel;

// The sizes of the pattern: all of them as one line with its brackets, and one at a time with what can be
// done to it. Every list of the document follows.
class SizeBar : public QWidget {
  Q_OBJECT

 public:
  explicit SizeBar(OpenPattern& open, QWidget* parent = nullptr);

  // What can be done to the chosen size.
  void insert_before();
  void insert_after();
  void erase();
  void move(int step);

  LineField* line() const { return line_; }
  LineField* name() const { return name_; }
  QString preview() const;

 signals:
  void says(const QString& message);

 private:
  void lay_out();
  QString take_line(const QString& text);
  QString take_name(const QString& text);
  void insert(std::size_t before);
  std::size_t at() const { return open_.chosen_size_index(); }
  void show_preview(const QString& text);
  void refresh();

  OpenPattern& open_;
  PartForm<Pattern> form_;
  LineField* line_;
  QuietLabel* preview_;
  ChoiceField* which_;
  LineField* name_;
  QPushButton* erase_ = nullptr;
  QPushButton* left_ = nullptr;
  QPushButton* right_ = nullptr;
};

}  // namespace skeinproof
