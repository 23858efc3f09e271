// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QLineEdit>
#include <QPointer>
#include <vector>

#include "core/pattern/pattern.h"

namespace skeinproof {

class FieldMessage;
class OpenPattern;

// A stripe sequence as text: "MC 6, CC 4". Read on Enter or when the focus leaves; a text that is none stays,
// with the reason under the field; Esc gives back the sequence in force.
class StripesField : public QLineEdit {
  Q_OBJECT

 public:
  explicit StripesField(OpenPattern& open, QWidget* parent = nullptr);

  void show_stripes(const std::vector<Stripe>& stripes);
  void give_back();
  bool commit();
  const QString& message() const { return message_; }

 signals:
  void committed(const std::vector<skeinproof::Stripe>& stripes);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  void set_message(const QString& message);

  OpenPattern& open_;
  std::vector<Stripe> stripes_;
  QString message_;
  QPointer<FieldMessage> label_;
};

}  // namespace skeinproof
