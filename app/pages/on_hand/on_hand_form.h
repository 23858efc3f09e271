// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <vector>

#include "app/widgets/part_form.h"

class QGridLayout;
class QLabel;

namespace skeinproof {

class LineField;
class PartTable;
class QuietLabel;

// How one yarn on hand was measured: only the fields of its way, and above them what keeps its length from
// being known.
class OnHandForm : public QWidget {
  Q_OBJECT

 public:
  explicit OnHandForm(OpenPattern& open, QWidget* parent = nullptr);

  void show_yarn(OnHandId id);
  OnHandId yarn() const { return id_; }
  QString problem() const;
  // The words before the fields that are shown now.
  std::vector<QString> shown_fields() const;
  QWidget* field(const char* name) const;

 signals:
  void says(const QString& message);

 private:
  using Ways = std::vector<LengthBy>;  // empty = always
  struct Row {
    const char* name;
    QLabel* label;
    QWidget* field;
    Ways ways;
  };

  void add(const char* name, const QString& words, QWidget* field, Ways ways);
  void add_figures();
  LineField* make_weights();
  LineField* make_band();
  PartTable* make_samples();
  void refresh(bool other = false);

  OpenPattern& open_;
  OnHandId id_;
  PartForm<YarnOnHand> form_;
  QGridLayout* grid_;
  std::vector<Row> rows_;
  QLabel* problem_;
  QuietLabel* hint_;
  PartTable* samples_ = nullptr;
  LineField* band_ = nullptr;
};

}  // namespace skeinproof
