// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

#include "app/widgets/part_form.h"

class QGridLayout;
class QLabel;

namespace skeinproof {

class LineField;
class PartTable;
class QuietLabel;

// The fields of one yarn: what its band and its maker say. What is plainly wrong stands under the field.
class YarnForm : public QWidget {
  Q_OBJECT

 public:
  explicit YarnForm(OpenPattern& open, QWidget* parent = nullptr);

  void show_yarn(YarnId id);
  YarnId yarn() const { return id_; }
  void focus_name();

  // For tests and for going to a field.
  LineField* composition_line() const { return composition_; }
  QString composition_problem() const;
  QString put_up_problem() const;

 signals:
  void says(const QString& message);

 private:
  const Yarn* find(const Pattern& pattern) const { return pattern.yarn(id_); }
  void lay_out_name_and_fibres(QGridLayout& grid);
  void lay_out_put_up(QGridLayout& grid);
  void lay_out_description(QGridLayout& grid);
  void lay_out_band(QGridLayout& grid);
  void add_field(QGridLayout& grid, int row, int column, const QString& label, QWidget* field, int span = 1);
  void make_fibre_table();
  void refresh(bool other_yarn = false);
  void show_problems(const Yarn& yarn);

  OpenPattern& open_;
  YarnId id_;
  PartForm<Yarn> form_;
  TextField* name_ = nullptr;
  LineField* composition_ = nullptr;
  PartTable* fibres_ = nullptr;
  QLabel* composition_problem_ = nullptr;
  QLabel* put_up_problem_ = nullptr;
  QuietLabel* other_length_ = nullptr;
  QuietLabel* other_weight_ = nullptr;
};

}  // namespace skeinproof
