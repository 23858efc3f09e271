// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QLabel>
#include <QWidget>
#include <functional>
#include <vector>

class QHBoxLayout;
class QPushButton;

namespace skeinproof {

// Words in the quiet ink, which follows a change of palette.
class QuietLabel : public QLabel {
  Q_OBJECT

 public:
  explicit QuietLabel(const QString& text = {}, QWidget* parent = nullptr);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void dress();
};

// The bar over a pane or a group of fields: its name, a quiet note beside it, its buttons at the right.
class PaneHeader : public QWidget {
  Q_OBJECT

 public:
  explicit PaneHeader(const QString& title, QWidget* parent = nullptr);

  void set_title(const QString& title);
  // A note longer than its room ends in an ellipsis and is whole in its tip.
  void set_note(const QString& note);
  QString note() const { return whole_note_; }
  QPushButton* add_button(const QString& text, const std::function<void()>& press, const QString& tip = {});

 protected:
  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void dress();
  void fit_note();

  QHBoxLayout* row_;
  QLabel* title_;
  QuietLabel* note_;
  QString whole_note_;
  std::vector<QPushButton*> buttons_;
};

// A pane: its bar over its body.
QWidget* make_pane(PaneHeader* head, QWidget* body);

}  // namespace skeinproof
