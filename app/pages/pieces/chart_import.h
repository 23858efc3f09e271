// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <map>
#include <optional>

#include "core/fabric/chart_picture.h"
#include "core/pattern/pattern.h"

class QComboBox;
class QDialogButtonBox;
class QGridLayout;
class QLabel;
class QPlainTextEdit;

namespace skeinproof {

class OpenPattern;

// Asks how a text or a picture becomes a chart: which end is round 1, where narrow rounds are filled up,
// which yarn a letter or a colour stands for; and shows what is understood before anything changes.
class ChartImport : public QDialog {
  Q_OBJECT

 public:
  // A text, editable; empty to be pasted into.
  ChartImport(OpenPattern& open, const QString& name, const QString& text, QWidget* parent);
  // A picture that was read.
  ChartImport(OpenPattern& open, const QString& name, ChartPicture picture, QWidget* parent);

  // What would be added, roles given; absent while the text cannot be read.
  const std::optional<Chart>& chart() const { return chart_; }
  QString summary() const;
  QPlainTextEdit* text() const { return text_; }
  QComboBox* order() const { return order_; }
  QComboBox* padding() const { return padding_; }
  void set_role(char symbol, RoleId role);

 private:
  ChartImport(OpenPattern& open, const QString& name, QWidget* parent, bool of_text);
  void add_text_options();
  void read_text();
  void take(Chart chart);
  void show_colours();
  void show_preview();
  RoleId likely_role(char symbol) const;

  OpenPattern& open_;
  QString name_;
  std::optional<ChartPicture> picture_;
  std::optional<Chart> chart_;
  std::map<char, RoleId> roles_;
  QPlainTextEdit* text_ = nullptr;
  QComboBox* order_ = nullptr;
  QComboBox* stitch_one_ = nullptr;
  QComboBox* padding_ = nullptr;
  QGridLayout* options_;
  QWidget* colours_box_;
  QGridLayout* colours_;
  QLabel* preview_;
  QLabel* summary_;
  QDialogButtonBox* buttons_;
};

}  // namespace skeinproof
