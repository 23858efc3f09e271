// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>

#include "app/pages/finder.h"
#include "app/pages/page.h"
#include "app/pages/queries/review_desk.h"

class QSplitter;
class QTabWidget;
class QTreeWidget;
class QVBoxLayout;

namespace skeinproof {

class DraftIntake;
class FindingDetail;
class FindingsPane;
class FindingTree;
class ManuscriptPane;
class ManuscriptView;
struct FactsAsRead;

// The editor's desk: the submitted text with what was read and doubted in it, every finding with its working,
// and what was decided about each. Text and findings stand beside each other; in a narrow window the chosen
// finding, then the two of them, become tabs.
class QueriesPage : public Page {
  Q_OBJECT

 public:
  QueriesPage(OpenPattern& open, QWidget* parent);
  ~QueriesPage() override { take_down(); }

  QString attention() const override;
  void enter() override;
  bool find_next(const QString& words) override;
  std::optional<Sheet> sheet() const override;
  void sheet_went_out() override;
  bool take_file(const QString& path) override;

  void paste_draft();
  void open_draft();
  // What was read becomes facts in force, after a look at what that changes.
  void take_over();
  void save_sheet_as();
  void copy_sheet();

  ReviewDesk* desk() const { return desk_; }
  DraftIntake* intake() const { return intake_; }
  ManuscriptPane* manuscript_pane() const { return manuscript_; }
  FindingsPane* findings_pane() const { return findings_; }
  FindingTree* tree() const;
  FindingDetail* detail() const;
  ManuscriptView* manuscript() const;
  QTreeWidget* statements() const;

  // Instead of the platform's dialogs.
  using AskPath =
      std::function<QString(QWidget* parent, bool saving, const QString& suggestion, const QString& filter)>;
  using AskTakeOver = std::function<bool(QWidget* parent, const QString& changes)>;
  void set_questions(AskPath ask_path, AskTakeOver ask_take_over);

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void make_keys();
  void fit();
  void fold();
  void refresh();
  void show_chosen();
  void show_findings();  // where they are not in view
  void go_on_with_findings();
  void set_ticked(std::size_t cause, bool on);
  void take_facts(const FactsAsRead& facts, quint64 state);

  ReviewDesk* desk_ = nullptr;
  DraftIntake* intake_ = nullptr;
  ManuscriptPane* manuscript_ = nullptr;
  FindingsPane* findings_ = nullptr;
  QVBoxLayout* layout_ = nullptr;
  QSplitter* beside_ = nullptr;
  QTabWidget* in_tabs_ = nullptr;
  QList<int> beside_sizes_;
  AskPath ask_path_;
  AskTakeOver ask_take_over_;
  QString attention_;
  Finder finder_;
};

}  // namespace skeinproof
