// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <memory>
#include <optional>

#include "app/pages/queries/review_desk.h"

class QLabel;
class QPlainTextEdit;
class QPushButton;
class QTabWidget;

namespace skeinproof {

class DraftIntake;
class ManuscriptView;
class PaneHeader;
class StatementList;
class StatementStrip;

// The submitted text: checked, as it came, as read, as proposed; below it the statement under the cursor
// along the sizes. While a draft is being taken in, a line says so and lets it be given up.
class ManuscriptPane : public QWidget {
  Q_OBJECT

 public:
  ManuscriptPane(OpenPattern& open, DraftIntake& intake, QWidget* parent = nullptr);

  void show_review(std::shared_ptr<const Reviewed> reviewed);
  void choose(std::optional<std::size_t> cause);
  void show_checking();
  void start();  // puts the focus where a draft is pasted

  QTabWidget* tabs() const { return tabs_; }
  ManuscriptView* manuscript() const { return manuscript_; }
  QPlainTextEdit* submitted() const { return submitted_; }
  QPlainTextEdit* proposed() const { return proposed_; }
  StatementList* statements() const { return statements_; }
  StatementStrip* strip() const { return strip_; }
  QString progress_words() const;

 signals:
  void query_clicked(std::size_t cause);
  void wants_paste();
  void wants_open();
  void wants_take_over();

 protected:
  void changeEvent(QEvent* event) override;

 private:
  QWidget* make_progress();
  void use_type();
  void follow_intake();
  void show_tab();
  void show_submitted();
  void show_proposed();
  void mark_proposed();
  void show_place(std::size_t byte);

  OpenPattern& open_;
  DraftIntake& intake_;
  std::shared_ptr<const Reviewed> reviewed_;
  std::optional<std::size_t> chosen_;
  PaneHeader* head_;
  QPushButton* paste_;
  QWidget* progress_;
  QLabel* progress_words_;
  QTabWidget* tabs_;
  ManuscriptView* manuscript_;
  QPlainTextEdit* submitted_;
  QPlainTextEdit* proposed_;
  StatementList* statements_;
  StatementStrip* strip_;
  std::shared_ptr<const Reviewed> shown_proposal_;
};

}  // namespace skeinproof
