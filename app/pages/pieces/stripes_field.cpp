// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/stripes_field.h"

#include <QKeyEvent>

#include "app/document/open_pattern.h"
#include "app/pages/pieces/stripes_text.h"
#include "app/widgets/field_message.h"
#include "app/widgets/quantity_text.h"

namespace skeinproof {

StripesField::StripesField(OpenPattern& open, QWidget* parent) : QLineEdit(parent), open_(open) {
  setPlaceholderText(tr("MC 6, CC 4"));
  setAccessibleName(tr("Stripe sequence"));
  connect(this, &QLineEdit::textEdited, this, [this] { set_message({}); });
}

void StripesField::show_stripes(const std::vector<Stripe>& stripes) {
  stripes_ = stripes;
  if (!message_.isEmpty() || (hasFocus() && isModified())) return;
  give_back();
}

void StripesField::give_back() {
  set_message({});
  setText(QString::fromStdString(stripes_text(stripes_, open_.pattern())));
}

bool StripesField::commit() {
  const auto read = read_stripes(text().toStdString(), open_.pattern());
  if (!read) {
    set_message(sentence_of(read.error()));
    return false;
  }
  set_message({});
  setModified(false);
  if (*read != stripes_) emit committed(*read);
  return true;
}

void StripesField::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && (isModified() || !message_.isEmpty())) return give_back();
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
    commit();
    return;
  }
  QLineEdit::keyPressEvent(event);
}

void StripesField::focusOutEvent(QFocusEvent* event) {
  QLineEdit::focusOutEvent(event);
  if (isModified()) commit();
}

void StripesField::set_message(const QString& message) {
  if (message == message_) return;
  message_ = message;
  setAccessibleDescription(message_);
  FieldMessage::show_under(this, label_, message_);
}

}  // namespace skeinproof
