// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <memory>
#include <optional>

#include "app/document/latest_job.h"
#include "app/pages/queries/review_desk.h"
#include "core/sheets/sheet.h"

class QPlainTextEdit;
class QSplitter;
class QTabWidget;
class QTreeWidget;

namespace skeinproof {

class ChoiceField;
class DraftsView;
class FindingDetail;
class FindingTree;
class PaneHeader;

// The findings with the detail of the chosen one, what was not checked, and the sheets that come of it.
class FindingsPane : public QWidget {
  Q_OBJECT

 public:
  explicit FindingsPane(OpenPattern& open, QWidget* parent = nullptr);

  void show_review(std::shared_ptr<const Reviewed> reviewed);
  void show_checking();
  // Beside the list, or in a tab of its own where there is no room for both.
  void set_detail_in_tab(bool in_tab);
  bool detail_in_tab() const { return detail_in_tab_; }
  void show_list();
  void show_detail();  // puts the focus into the chosen finding

  // Of the tab that is shown; the query sheet where that has none.
  std::optional<Sheet> sheet() const;
  bool shows_query_sheet() const;  // that is what sheet() gives
  bool shows_sign_off() const;
  void refresh_sheets();
  bool is_counting() const { return counting_.is_busy(); }

  FindingTree* tree() const { return tree_; }
  FindingDetail* detail() const { return detail_; }
  DraftsView* drafts() const { return drafts_; }
  QTabWidget* tabs() const { return tabs_; }
  PaneHeader* head() const { return head_; }

 signals:
  void wants_copy();
  void wants_save();

 private:
  QWidget* make_list();
  QWidget* make_filters();
  void refresh_filters();
  void filter();
  void show_not_checked();
  void count_closed();

  struct Closed {
    std::shared_ptr<const Reviewed> reviewed;
    std::size_t count = 0;
  };
  OpenPattern& open_;
  std::shared_ptr<const Reviewed> reviewed_;
  PaneHeader* head_;
  QTabWidget* tabs_;
  QWidget* list_ = nullptr;
  QSplitter* split_ = nullptr;
  FindingTree* tree_;
  FindingDetail* detail_;
  QTreeWidget* not_checked_;
  QPlainTextEdit* sheet_view_;
  QPlainTextEdit* sign_off_view_;
  DraftsView* drafts_;
  ChoiceField* shown_ = nullptr;
  ChoiceField* role_ = nullptr;
  ChoiceField* size_ = nullptr;
  bool detail_in_tab_ = false;
  QList<int> split_sizes_;
  Closed closed_;
  std::shared_ptr<const Reviewed> counted_;  // asked for
  LatestJob<Closed> counting_;
};

}  // namespace skeinproof
