// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

#include "app/widgets/part_form.h"

class QGridLayout;

namespace skeinproof {

class PartTable;
class QuietLabel;

// What was weighed and how: size, pieces, moisture, scale, and who did it when.
class WeighingForm : public QWidget {
  Q_OBJECT

 public:
  explicit WeighingForm(OpenPattern& open, QWidget* parent = nullptr);

  void show_weighing(WeighingId id);
  WeighingId weighing() const { return id_; }
  PartTable* pieces() const { return pieces_; }
  ChoiceField* moisture() const { return moisture_; }
  QuantityField* humidity() const { return humidity_; }

 signals:
  void says(const QString& message);

 private:
  void lay_out();
  void make_piece_table();
  void refresh(bool other = false);

  OpenPattern& open_;
  WeighingId id_;
  PartForm<Weighing> form_;
  PartTable* pieces_ = nullptr;
  ChoiceField* moisture_ = nullptr;
  QuantityField* humidity_ = nullptr;
  QuietLabel* moisture_words_ = nullptr;
};

const Weighing* find_weighing(const Pattern& pattern, WeighingId id);

// Copies of a piece on the scale, and setting them: all of every piece is the whole item.
int copies_weighed(const Weighing& weighing, const Piece& piece);
void set_copies_weighed(const Pattern& pattern, Weighing& weighing, PieceId piece, int copies);

}  // namespace skeinproof
