// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

#include "app/widgets/bound_fields.h"
#include "app/widgets/quantity_field.h"
#include "core/yarn/weigh.h"

class QGridLayout;
class QLabel;

namespace skeinproof {

class FigureList;
class LineField;
class QuietLabel;

// One question beside the pattern: how many metres are these grams? Nothing of it goes into the document.
class MetresPane : public QWidget {
  Q_OBJECT

 public:
  explicit MetresPane(OpenPattern& open, QWidget* parent = nullptr);

  void focus_reading();
  // The answer with its working, as it is copied; empty while something is missing.
  QString as_text() const;
  QString answer() const;
  QString range() const;

  QuantityField* reading() const { return reading_; }
  QuantityField* length() const { return length_; }
  QuantityField* weight() const { return weight_; }
  QuantityField* new_skein() const { return new_skein_; }
  QuantityField* humidity() const { return humidity_; }
  LineField* fibres() const { return fibres_; }

 signals:
  void wants_close();
  void says(const QString& message);

 private:
  void lay_out();
  void lay_out_yarn(QGridLayout& grid);
  QuantityField* add_field(QGridLayout& grid, int row, const QString& words, QuantityFormat format);
  void take_yarn(std::uint32_t id);
  void list_yarns();
  void work_out();

  OpenPattern& open_;
  QuantityField* reading_ = nullptr;
  QuantityField* notions_ = nullptr;
  QuantityField* step_ = nullptr;
  QuantityField* length_ = nullptr;
  QuantityField* weight_ = nullptr;
  QuantityField* new_skein_ = nullptr;
  QuantityField* humidity_ = nullptr;
  ChoiceField* yarn_ = nullptr;
  ChoiceField* spinning_ = nullptr;
  ChoiceField* market_ = nullptr;
  LineField* fibres_ = nullptr;
  std::vector<FibreShare> composition_;
  QLabel* answer_;
  QLabel* range_;
  QuietLabel* assumed_;
  FigureList* working_;
};

}  // namespace skeinproof
