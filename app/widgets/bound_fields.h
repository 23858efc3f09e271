// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QStringList>
#include <vector>

namespace skeinproof {

// A field for words. It tells of every stroke, so that the document is never behind what is on the screen;
// undo and redo are the window's, not the field's own.
class TextField : public QLineEdit {
  Q_OBJECT

 public:
  explicit TextField(QWidget* parent = nullptr);

  // Leaves the cursor alone where the words are the same.
  void show_words(const QString& words);
  // Words offered while typing; anything else may be typed too.
  void set_suggestions(const QStringList& words);

 protected:
  bool event(QEvent* event) override;
};

struct Choice {
  QString text;
  std::uint32_t value = 0;
  bool operator==(const Choice&) const = default;
};

// A list to choose one from. The wheel changes nothing unless the list has the focus.
class ChoiceField : public QComboBox {
  Q_OBJECT

 public:
  explicit ChoiceField(QWidget* parent = nullptr);
  void set_choices(const std::vector<Choice>& choices);
  void show_choice(std::uint32_t value);
  // Whether the event is Tab or Shift+Tab in the open list, which takes the marked choice and closes it: 1,
  // -1.
  int take_with_tab(const QEvent& event);

 signals:
  void chosen(std::uint32_t value);  // by a person

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;

 private:
  std::vector<Choice> choices_;
};

}  // namespace skeinproof
