// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/document/latest_job.h"
#include "app/document/reader_style.h"
#include "app/pages/finder.h"
#include "app/pages/page.h"
#include "app/widgets/figure_list.h"
#include "core/substitution/could_become.h"
#include "core/substitution/lot_plan.h"
#include "core/substitution/on_hand_verdict.h"

class QPushButton;
class QSplitter;
class QTabWidget;

namespace skeinproof {

class BecomePane;
class ChoiceField;
class OnHandForm;
class PaneHeader;
class PartTable;
class ShelfDialog;
class VerdictTable;

// What is worked out of the yarn on hand, on a thread of its own.
struct OnHandOutcome {
  std::vector<RoleOnHand> verdicts;
  std::vector<LotPlan> lots;
};

// Yarn on hand: what there is and how it was measured, whether it will do colour by colour, what it could
// become, and which lot goes where.
class OnHandPage : public Page {
  Q_OBJECT

 public:
  using PathQuestion =
      std::function<QString(QWidget* parent, const QString& suggestion, const QString& filter)>;

  OnHandPage(OpenPattern& open, QWidget* parent);
  ~OnHandPage() override;
  void set_path_question(PathQuestion question) { ask_path_ = std::move(question); }

  QString attention() const override;
  void enter() override;
  bool go_to(std::uint32_t part) override;
  bool find_next(const QString& words) override;
  std::optional<Sheet> sheet() const override;

  void search_shelf();
  void save_leftovers_record();
  bool is_busy() const { return job_.is_busy() || become_job_.is_busy(); }

  PartTable* table() const { return table_; }
  OnHandForm* form() const { return form_; }
  VerdictTable* verdicts() const { return verdicts_; }
  BecomePane* become() const { return become_; }
  FigureList* lots() const { return lots_; }
  FigureList* working() const { return working_; }
  ChoiceField* size() const { return size_; }
  QTabWidget* tabs() const { return tabs_; }

 signals:
  void worked_out();

 protected:
  void showEvent(QShowEvent* event) override;
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* make_bar();
  QWidget* make_table_pane();
  QWidget* make_form_pane();
  QWidget* make_tabs();
  void refresh();
  void work_out();
  void work_out_become();
  void show_outcome();
  void show_working();
  void show_form_note();
  void arrange();

  PathQuestion ask_path_;
  PartTable* table_ = nullptr;
  OnHandForm* form_ = nullptr;
  VerdictTable* verdicts_ = nullptr;
  QWidget* verdict_pane_ = nullptr;
  QWidget* form_pane_ = nullptr;
  BecomePane* become_ = nullptr;
  FigureList* lots_ = nullptr;
  FigureList* working_ = nullptr;
  ChoiceField* size_ = nullptr;
  QTabWidget* tabs_ = nullptr;
  QSplitter* whole_ = nullptr;
  QSplitter* lower_ = nullptr;
  PaneHeader* form_head_ = nullptr;
  PaneHeader* verdict_head_ = nullptr;
  ShelfDialog* shelf_ = nullptr;
  bool is_small_ = false;
  QString attention_;
  Finder finder_;
  OnHandOutcome outcome_;
  std::optional<Expected<CouldBecome>> became_;
  std::pair<quint64, std::size_t> worked_out_for_{0, 0};
  quint64 become_for_ = 0;
  LatestJob<OnHandOutcome> job_;
  LatestJob<Expected<CouldBecome>> become_job_;
};

// Which lot is worked in which pieces.
std::vector<FigureRow> lot_figures(const std::vector<LotPlan>& plans, const ReaderStyle& reader);

}  // namespace skeinproof
