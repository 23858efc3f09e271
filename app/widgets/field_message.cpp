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

// The nearest widget around the field that has room for the message under it or over it.
QWidget* FieldMessage::room_for(int height) const {
  QWidget* around = field_->parentWidget();
  while (!around->isWindow() && around->parentWidget() != nullptr) {
    const int top = field_->mapTo(around, QPoint()).y();
    if (top + field_->height() + height <= around->height() || top >= height) break;
    around = around->parentWidget();
  }
  return around;
}

void FieldMessage::place() {
  const auto widest_in = [this](const QWidget* around) {
    return std::max(field_->width(), std::min(around->width(), scaled(field_, 380)));
  };
  const int one_line =
      fontMetrics().horizontalAdvance(text()) + 2 * (margin() + frameWidth()) + scaled(field_, 4);
  const auto fit = [&](const QWidget* around) {
    const int width = std::min(widest_in(around), one_line);
    resize(width, heightForWidth(width) > 0 ? heightForWidth(width) : sizeHint().height());
  };
  fit(window());
  QWidget* around = room_for(height());
  if (around != parentWidget()) {
    setParent(around);
    // Where a widget between them moves, the field moves.
    for (QWidget* between = field_->parentWidget(); between != around; between = between->parentWidget())
      between->installEventFilter(this);
    setVisible(field_->isVisible());
  }
  fit(around);
  const QRect at(field_->mapTo(around, QPoint()), field_->size());
  const int x = std::clamp(at.left(), 0, std::max(0, around->width() - width()));
  const bool above = at.bottom() + height() > around->height() && at.top() >= height();
  move(x, above ? at.top() - height() : at.bottom() + 1);
  raise();
}

bool FieldMessage::eventFilter(QObject* watched, QEvent* event) {
  switch (event->type()) {
    case QEvent::Move:
    case QEvent::Resize:
      place();
      break;
    case QEvent::Show:
      place();
      setVisible(field_->isVisible());
      break;
    case QEvent::Hide:
      if (watched == field_) hide();
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
