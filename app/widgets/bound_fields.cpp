// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/bound_fields.h"

#include <QCompleter>
#include <QKeyEvent>
#include <QStringListModel>
#include <QWheelEvent>

namespace skeinproof {

TextField::TextField(QWidget* parent) : QLineEdit(parent) {}

void TextField::show_words(const QString& words) {
  if (text() != words) setText(words);
}

void TextField::set_suggestions(const QStringList& words) {
  auto* completer = new QCompleter(words, this);
  completer->setCaseSensitivity(Qt::CaseInsensitive);
  completer->setFilterMode(Qt::MatchContains);
  // The completer sets the text itself; tell of it as if it had been typed.
  connect(completer, qOverload<const QString&>(&QCompleter::activated), this, &QLineEdit::textEdited);
  setCompleter(completer);
}

bool TextField::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride) {
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
      event->ignore();
      return false;
    }
  }
  return QLineEdit::event(event);
}

ChoiceField::ChoiceField(QWidget* parent) : QComboBox(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setSizeAdjustPolicy(QComboBox::AdjustToContents);
  connect(this, &QComboBox::activated, this, [this](int row) {
    if (row >= 0) emit chosen(itemData(row).toUInt());
  });
}

void ChoiceField::set_choices(const std::vector<Choice>& choices) {
  if (choices == choices_) return;
  choices_ = choices;
  const QVariant kept = currentData();
  clear();
  for (const Choice& choice : choices_) addItem(choice.text, choice.value);
  setCurrentIndex(kept.isValid() ? findData(kept) : -1);
}

void ChoiceField::show_choice(std::uint32_t value) {
  const int row = findData(value);
  if (row != currentIndex()) setCurrentIndex(row);
}

void ChoiceField::wheelEvent(QWheelEvent* event) {
  if (hasFocus())
    QComboBox::wheelEvent(event);
  else
    event->ignore();
}

}  // namespace skeinproof
