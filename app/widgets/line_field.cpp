// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/line_field.h"

#include <QKeyEvent>
#include <QPainter>
#include <QStyleOptionFrame>
#include <algorithm>

#include "app/widgets/field_message.h"
#include "app/widgets/ink.h"

namespace skeinproof {

LineField::LineField(Take take, QWidget* parent) : QLineEdit(parent), take_(std::move(take)) {}

void LineField::show_line(const QString& line) {
  const bool typing = text() != shown_;
  shown_ = line;
  if (typing) return;
  if (text() != shown_) setText(shown_);
  set_message({});
}

void LineField::give_back() {
  setText(shown_);
  set_message({});
  emit textEdited(shown_);  // a preview follows
}

bool LineField::commit() {
  if (text() == shown_) {
    set_message({});
    return true;
  }
  const QString typed = text();
  const QString reason = take_(typed);
  set_message(reason);
  if (!reason.isEmpty()) return false;
  // The document may say the same in its own words; those stand now.
  setText(shown_);
  return true;
}

bool LineField::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && text() == shown_) {
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
      event->ignore();
      return false;
    }
  }
  return QLineEdit::event(event);
}

void LineField::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
    if (commit()) selectAll();
  } else if (event->key() == Qt::Key_Escape && text() != shown_) {
    give_back();
    event->accept();
    return;
  }
  QLineEdit::keyPressEvent(event);
}

void LineField::focusOutEvent(QFocusEvent* event) {
  QLineEdit::focusOutEvent(event);
  if (event->reason() != Qt::ActiveWindowFocusReason && event->reason() != Qt::PopupFocusReason) commit();
}

void LineField::paintEvent(QPaintEvent* event) {
  QLineEdit::paintEvent(event);
  if (message_.isEmpty()) return;
  QStyleOptionFrame option;
  initStyleOption(&option);
  const QRect inside = style()->subElementRect(QStyle::SE_LineEditContents, &option, this);
  const int width = std::min(fontMetrics().horizontalAdvance(text()), inside.width());
  QPainter painter(this);
  draw_bad_underline(painter,
                     QRect(inside.left() + scaled(this, 2), inside.top(), width, inside.height() - 1),
                     ink_of(palette()).text);
}

void LineField::set_message(const QString& message) {
  if (message == message_) return;
  message_ = message;
  setAccessibleDescription(message);
  setToolTip(message);
  FieldMessage::show_under(this, label_, message);
  update();
}

}  // namespace skeinproof
