// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QLabel>
#include <QPointer>

class QPainter;

namespace skeinproof {

// The reason why a text could not be read, standing under its field (over it where there is no room), over
// whatever is there, and going where the field goes. It takes neither focus nor clicks.
class FieldMessage : public QLabel {
  Q_OBJECT

 public:
  // Makes, changes or (with an empty sentence) takes away the message of a field.
  static void show_under(QWidget* field, QPointer<FieldMessage>& label, const QString& sentence);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  explicit FieldMessage(QWidget* field);
  QWidget* room_for(int height) const;
  void place();
  QWidget* field_;
};

// The wavy line under a text that could not be read.
void draw_bad_underline(QPainter& painter, const QRect& text, const QColor& ink);

}  // namespace skeinproof
