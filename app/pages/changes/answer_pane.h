// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <vector>

#include "app/pages/changes/bench_view.h"
#include "core/need/changes.h"

class QLabel;

namespace skeinproof {

class ChoiceField;
class FigureList;
class QuietLabel;

// A question asked of one colour as the bench leaves it: the question in a line, the answer, a word on it,
// and a list of what could be done. Enter puts the chosen row on the bench. Asked only while somebody looks.
class AnswerPane : public QWidget {
  Q_OBJECT

 public:
  // What the fields and buttons of the pane are called.
  struct Words {
    QString question;     // before the colour
    QString colour_name;  // for screen readers
    QString list_name;
    QString put_tip;
  };
  // A further field of the question with the words before it.
  struct Field {
    QString words;
    QWidget* field;
  };

  void show_bench(const BenchView& view);
  void choose_role(RoleId role);
  RoleId role() const;
  QString headline() const;
  QString note() const;
  ChoiceField* roles() const { return roles_; }
  FigureList* answers() const { return answers_; }
  void put_chosen_on_bench();
  virtual bool is_busy() const = 0;

 signals:
  void wants_changes(const std::vector<skeinproof::Change>& changes, const QString& words);
  void worked_out();

 protected:
  AnswerPane(const Words& words, const std::vector<Field>& more, QWidget* parent);

  // What is shown is no longer the answer; it is asked again at once where it is seen.
  void ask_again();
  virtual void ask() = 0;
  virtual void leave_role() {}  // another colour was chosen
  virtual void put_on_bench(std::size_t row) = 0;
  void show_words(const QString& headline, const QString& note);
  bool is_stale() const { return stale_; }
  const BenchView& view() const { return view_; }
  void showEvent(QShowEvent* event) override;

 private:
  void ask_if_seen();

  BenchView view_;
  bool stale_ = true;
  ChoiceField* roles_;
  QLabel* headline_;
  QuietLabel* note_;
  FigureList* answers_;
};

}  // namespace skeinproof
