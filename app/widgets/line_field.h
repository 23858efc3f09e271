// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPointer>
#include <functional>

#include "app/widgets/bound_fields.h"

namespace skeinproof {

class FieldMessage;

// A field for a line that means several things at once: the sizes, the fibres. It is read on Enter or when
// the focus leaves; what could not be read stays, underlined, with the reason under the field, and Esc gives
// back the line in force.
class LineField : public QLineEdit {
  Q_OBJECT

 public:
  // Takes a line into the document; returns the reason why not, or nothing.
  using Take = std::function<QString(const QString& line)>;

  explicit LineField(Take take, QWidget* parent = nullptr);

  // The line in force; leaves a text alone that is being typed or could not be read.
  void show_line(const QString& line);
  void give_back();
  bool commit();
  const QString& message() const { return message_; }

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  void set_message(const QString& message);

  Take take_;
  QString shown_;
  QString message_;
  QPointer<FieldMessage> label_;
};

}  // namespace skeinproof
