// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/bound_fields.h"

#include <QAbstractItemView>
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
  view()->installEventFilter(this);
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

int ChoiceField::take_with_tab(const QEvent& event) {
  if (event.type() != QEvent::KeyPress) return 0;
  const int key = static_cast<const QKeyEvent&>(event).key();
  if (key != Qt::Key_Tab && key != Qt::Key_Backtab) return 0;
  const int row = view()->currentIndex().row();
  hidePopup();
  if (row >= 0) setCurrentIndex(row);
  return key == Qt::Key_Tab ? 1 : -1;
}

bool ChoiceField::eventFilter(QObject* watched, QEvent* event) {
  const int before = currentIndex();
  const int step = take_with_tab(*event);
  if (step == 0) return QComboBox::eventFilter(watched, event);
  if (currentIndex() != before) emit activated(currentIndex());
  focusNextPrevChild(step > 0);
  return true;
}

void ChoiceField::wheelEvent(QWheelEvent* event) {
  if (hasFocus())
    QComboBox::wheelEvent(event);
  else
    event->ignore();
}

}  // namespace skeinproof
