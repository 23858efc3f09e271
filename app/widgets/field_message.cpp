// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/field_message.h"

#include <QEvent>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>

#include "app/widgets/ink.h"

namespace skeinproof {

FieldMessage::FieldMessage(QWidget* field) : QLabel(field->parentWidget()), field_(field) {
  setFrameShape(QFrame::StyledPanel);
  setAutoFillBackground(true);
  setBackgroundRole(QPalette::ToolTipBase);
  setForegroundRole(QPalette::ToolTipText);
  setTextFormat(Qt::PlainText);
  setWordWrap(true);
  setFocusPolicy(Qt::NoFocus);
  setAttribute(Qt::WA_TransparentForMouseEvents);
  setMargin(scaled(field, 3));
  field->installEventFilter(this);
  connect(field, &QObject::destroyed, this, &QObject::deleteLater);
}

void FieldMessage::show_under(QWidget* field, QPointer<FieldMessage>& label, const QString& sentence) {
  if (sentence.isEmpty()) {
    if (label) label->deleteLater();
    if (label) label->hide();
    label = nullptr;
    return;
  }
  if (!field->parentWidget()) return;
  if (!label) label = new FieldMessage(field);
  label->setText(sentence);
  label->place();
  label->setVisible(field->isVisible());
}

void FieldMessage::place() {
  const QWidget* around = parentWidget();
  const int widest = std::max(field_->width(), std::min(around->width(), scaled(field_, 380)));
  const int one_line =
      fontMetrics().horizontalAdvance(text()) + 2 * (margin() + frameWidth()) + scaled(field_, 4);
  const int width = std::min(widest, one_line);
  resize(width, heightForWidth(width) > 0 ? heightForWidth(width) : sizeHint().height());
  const QRect at = field_->geometry();
  const int x = std::clamp(at.left(), 0, std::max(0, around->width() - width));
  const bool above = at.bottom() + height() > around->height() && at.top() >= height();
  move(x, above ? at.top() - height() : at.bottom() + 1);
  raise();
}

bool FieldMessage::eventFilter(QObject* watched, QEvent* event) {
  if (watched == field_) switch (event->type()) {
      case QEvent::Move:
      case QEvent::Resize:
        place();
        break;
      case QEvent::Show:
        place();
        show();
        break;
      case QEvent::Hide:
        hide();
        break;
      default:
        break;
    }
  return QLabel::eventFilter(watched, event);
}

void draw_bad_underline(QPainter& painter, const QRect& text, const QColor& ink) {
  if (text.width() <= 0) return;
  QPainterPath wave;
  const double y = text.bottom() - 1;
  wave.moveTo(text.left(), y);
  for (int x = text.left(), step = 0; x < text.right(); x += 3, ++step)
    wave.lineTo(x + 3, y - (step % 2 == 0 ? 2 : 0));
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(ink, 1.5));
  painter.drawPath(wave);
  painter.restore();
}

}  // namespace skeinproof
