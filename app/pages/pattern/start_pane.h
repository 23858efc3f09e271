// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractButton>
#include <QWidget>
#include <vector>

namespace skeinproof {

class OpenPattern;
class PaneHeader;

// One step of the way in: its number, what to do, and what it is good for; "done" where it is.
class StartStep : public QAbstractButton {
  Q_OBJECT

 public:
  StartStep(int number, const QString& words, const QString& why, QWidget* parent = nullptr);
  void set_done(bool done);
  bool is_done() const { return done_; }
  QSize sizeHint() const override;
  bool hasHeightForWidth() const override { return true; }
  int heightForWidth(int width) const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  int number_;
  QString why_;
  bool done_ = false;
};

// Where to begin with a pattern that cannot be reckoned yet: a few steps, two finished patterns, a project,
// or one question.
class StartPane : public QWidget {
  Q_OBJECT

 public:
  explicit StartPane(OpenPattern& open, QWidget* parent = nullptr);

  // Whether there is anything left to begin with.
  static bool is_wanted(const OpenPattern& open);
  const std::vector<StartStep*>& steps() const { return steps_; }

 signals:
  void wants_sizes();
  void wants_place(const QString& page, std::uint32_t part);
  void wants_command(const QString& id);
  void wants_metres();

 private:
  void refresh();

  OpenPattern& open_;
  std::vector<StartStep*> steps_;
};

}  // namespace skeinproof
