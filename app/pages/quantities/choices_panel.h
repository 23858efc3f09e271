// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFrame>

class QCheckBox;
class QGridLayout;

namespace skeinproof {

class ChoiceField;
class OpenPattern;
class QuantityField;

// What the planned length is made with: allowance, swatch, rounding, the evidence it stands on, joins. Every
// choice is one step of undo.
class ChoicesPanel : public QFrame {
  Q_OBJECT

 public:
  explicit ChoicesPanel(OpenPattern& open, QWidget* parent = nullptr);
  // "5 %, swatch counted, round up".
  static QString summary(const OpenPattern& open);
  QuantityField* allowance() const { return allowance_; }

 private:
  void refresh();

  OpenPattern& open_;
  QuantityField* allowance_;
  QCheckBox* swatch_;
  ChoiceField* rounding_;
  ChoiceField* basis_;
  QCheckBox* joins_;
};

}  // namespace skeinproof
