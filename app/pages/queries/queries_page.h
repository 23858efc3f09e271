// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>

#include "app/pages/finder.h"
#include "app/pages/page.h"
#include "app/pages/queries/review_desk.h"

class QLabel;
class QPlainTextEdit;
class QTabWidget;
class QTreeWidget;

namespace skeinproof {

class ChoiceField;
class FindingDetail;
class FindingTree;
class ManuscriptView;
class PaneHeader;

// The editor's desk: the submitted text with what was read and doubted in it, every finding with its working,
// and what was decided about each.
class QueriesPage : public Page {
  Q_OBJECT

 public:
  QueriesPage(OpenPattern& open, QWidget* parent);
  ~QueriesPage() override { take_down(); }

  QString attention() const override;
  void enter() override;
  bool find_next(const QString& words) override;
  std::optional<Sheet> sheet() const override;

  void paste_draft();
  void open_draft();
  // Another draft; those before it stay as they are.
  void add_draft(const QByteArray& bytes, const QString& file_name);
  // What was read becomes facts in force, after a look at what that changes.
  void take_over();
  void save_sheet_as();

  ReviewDesk* desk() const { return desk_; }
  FindingTree* tree() const { return tree_; }
  FindingDetail* detail() const { return detail_; }
  ManuscriptView* manuscript() const { return manuscript_; }
  QTreeWidget* statements() const { return statements_; }

  // Instead of the platform's dialogs.
  using AskPath =
      std::function<QString(QWidget* parent, bool saving, const QString& suggestion, const QString& filter)>;
  using AskTakeOver = std::function<bool(QWidget* parent, const QString& changes)>;
  void set_questions(AskPath ask_path, AskTakeOver ask_take_over);

 private:
  QWidget* make_manuscript_pane();
  QWidget* make_findings_pane();
  QWidget* make_statements();
  void make_keys();
  void refresh();
  void refresh_filters();
  void filter();
  void show_chosen();
  void show_statements();
  void show_not_checked();
  void show_sheet_tab();
  void set_ticked(std::size_t cause, bool on);
  void tell_nothing();
  std::size_t undecided() const;

  ReviewDesk* desk_ = nullptr;
  PaneHeader* manuscript_head_ = nullptr;
  PaneHeader* findings_head_ = nullptr;
  QTabWidget* left_tabs_ = nullptr;
  QTabWidget* right_tabs_ = nullptr;
  ManuscriptView* manuscript_ = nullptr;
  QPlainTextEdit* submitted_ = nullptr;
  QTreeWidget* statements_ = nullptr;
  FindingTree* tree_ = nullptr;
  FindingDetail* detail_ = nullptr;
  QTreeWidget* not_checked_ = nullptr;
  QPlainTextEdit* sheet_view_ = nullptr;
  QPlainTextEdit* sign_off_view_ = nullptr;
  ChoiceField* shown_ = nullptr;
  ChoiceField* role_ = nullptr;
  ChoiceField* size_ = nullptr;
  AskPath ask_path_;
  AskTakeOver ask_take_over_;
  QString attention_;
  Finder finder_;
};

}  // namespace skeinproof
