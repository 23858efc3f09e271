// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/quantity_field.h"

#include <QKeyEvent>
#include <QPainter>
#include <QStyleOptionFrame>
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/widgets/ink.h"

namespace skeinproof {

QuantityField::QuantityField(QuantityFormat format, OpenPattern& open, QWidget* parent)
    : QLineEdit(parent), format_(std::move(format)), open_(open) {
  setAlignment(Qt::AlignRight);
  connect(&open_, &OpenPattern::reader_changed, this, &QuantityField::show_value_unless_typing);
}

void QuantityField::bind_plain(const QString& undo_name, std::function<FieldValue(const Pattern&)> get,
                               std::function<void(Pattern&, const FieldValue&)> set) {
  get_ = std::move(get);
  connect(&open_, &OpenPattern::replaced, this, &QuantityField::give_back);
  connect(&open_, &OpenPattern::changed, this, [this] { set_value(get_(open_.pattern())); });
  connect(this, &QuantityField::committed, this,
          [this, undo_name, set = std::move(set)](const FieldValue& value) {
            const auto refused = open_.apply(undo_name, [&](Pattern& pattern) { set(pattern, value); });
            if (!refused) return;
            value_ = get_(open_.pattern());
            set_message(sentence_of(*refused));
          });
  set_value(get_(open_.pattern()));
}

void QuantityField::set_value(const FieldValue& value) {
  value_ = value;
  show_value_unless_typing();
}

void QuantityField::show_value_unless_typing() {
  const bool typing = text() != shown_;
  shown_ = value_ ? show_quantity(format_, open_.reader(), *value_) : QString();
  // The unit stands at the right edge of the field, so a figure we wrote ourselves does not repeat it.
  const QString unit = QLatin1Char(' ') + unit_of(format_, open_.reader());
  if (value_ && shown_.toStdString() != value_->typed && shown_.endsWith(unit)) shown_.chop(unit.size());
  if (!typing) show_value();
  update();
}

void QuantityField::show_value() {
  setText(shown_);
  set_message({});
}

bool QuantityField::commit() {
  if (text() == shown_) {
    set_message({});
    return true;
  }
  FieldValue read;
  if (const QString typed = text().trimmed(); !typed.isEmpty()) {
    const auto result = read_quantity(format_, open_.reader(), text());
    if (!result) {
      set_message(sentence_of(result.error()));
      return false;
    }
    read = *result;
  } else if (!required_.isEmpty()) {
    set_message(required_);
    return false;
  }
  set_message({});
  if (read == value_) {
    show_value();
    return true;
  }
  shown_ = text();
  value_ = read;
  emit committed(read);
  if (message_.isEmpty()) set_value(value_);
  return message_.isEmpty();
}

void QuantityField::give_back() {
  show_value();
  selectAll();
}

void QuantityField::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  if (key == Qt::Key_Return || key == Qt::Key_Enter) {
    if (commit()) selectAll();
  } else if (key == Qt::Key_Escape && text() != shown_) {
    give_back();
    event->accept();
    return;
  }
  QLineEdit::keyPressEvent(event);
}

void QuantityField::focusOutEvent(QFocusEvent* event) {
  QLineEdit::focusOutEvent(event);
  // Looking at another window, or at a menu, is no end of typing.
  if (event->reason() != Qt::ActiveWindowFocusReason && event->reason() != Qt::PopupFocusReason) commit();
}

void QuantityField::paintEvent(QPaintEvent* event) {
  const QString unit = unit_of(format_, open_.reader());
  const int unit_width = unit.isEmpty() ? 0 : fontMetrics().horizontalAdvance(unit) + scaled(this, 5);
  if (textMargins().right() != unit_width) setTextMargins(0, 0, unit_width, 0);
  QLineEdit::paintEvent(event);

  QStyleOptionFrame option;
  initStyleOption(&option);
  const QRect inside = style()->subElementRect(QStyle::SE_LineEditContents, &option, this);
  QPainter painter(this);
  const Ink ink = ink_of(palette());
  const QString shown = text();
  const bool says_unit =
      std::any_of(shown.begin(), shown.end(), [](QChar c) { return c.isLetter() || c == u'"'; });
  if (!unit.isEmpty() && !says_unit) {
    painter.setPen(ink.muted);
    painter.drawText(inside.adjusted(0, 0, -scaled(this, 4), 0), Qt::AlignRight | Qt::AlignVCenter, unit);
  }
  if (message_.isEmpty()) return;
  const int width = std::min(fontMetrics().horizontalAdvance(shown), inside.width() - unit_width);
  const int right = inside.right() - unit_width - scaled(this, 2);
  draw_bad_underline(painter, QRect(right - width, inside.top(), width, inside.height() - 1), ink.text);
}

void QuantityField::wheelEvent(QWheelEvent* event) { event->ignore(); }

void QuantityField::set_message(const QString& message) {
  if (message == message_) return;
  message_ = message;
  setAccessibleDescription(message);
  setToolTip(message);
  FieldMessage::show_under(this, message_label_, message);
  update();
  emit message_changed(message);
}

}  // namespace skeinproof
