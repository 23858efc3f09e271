// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>

#include "core/pattern/pattern.h"

class QLineEdit;
class QSpinBox;

namespace skeinproof {

class OpenPattern;
class PartTable;

// The small questions about a chart. They go away by themselves when closed.

class NameDialog : public QDialog {
  Q_OBJECT

 public:
  NameDialog(const QString& what, const QString& name, QWidget* parent);
  QString name() const;

 private:
  QLineEdit* name_;
};

class NewChartDialog : public QDialog {
  Q_OBJECT

 public:
  NewChartDialog(const QString& name, QWidget* parent);
  QString name() const;
  int width_in_stitches() const;
  int rounds() const;

 private:
  QLineEdit* name_;
  QSpinBox* width_;
  QSpinBox* rounds_;
};

// Letters of a chart and the yarn each stands for, edited in place.
class ChartColoursDialog : public QDialog {
  Q_OBJECT

 public:
  ChartColoursDialog(OpenPattern& open, ChartId chart, QWidget* parent);
  PartTable* table() const { return table_; }

 private:
  PartTable* table_;
};

}  // namespace skeinproof
