// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "app/document/latest_job.h"
#include "app/pages/changes/bench_outcome.h"
#include "app/pages/finder.h"
#include "app/pages/page.h"

class QLabel;
class QPushButton;
class QSplitter;
class QTabWidget;

namespace skeinproof {

class AdoptStrip;
class ChangeForm;
class EffectTable;
class PaneHeader;
class PartTable;
class RunOutPane;
class SaveSkeinPane;

// What a knitter or a designer does differently, tried before anything of the pattern moves: the changes of
// the chosen size, what they do to every colour, how to save a skein, where the yarn runs out.
class ChangesPage : public Page {
  Q_OBJECT

 public:
  ChangesPage(OpenPattern& open, QWidget* parent);
  ~ChangesPage() override { take_down(); }

  QString attention() const override;
  void enter() override;
  bool go_to(std::uint32_t part) override;
  bool find_next(const QString& words) override;
  std::optional<Sheet> sheet() const override;

  // Puts a new change on the bench behind the chosen one and leads to its first field.
  void add(ChangeKind kind);
  // Asks whether the changes that can be made shall be taken in.
  void ask_to_adopt(AdoptIn in);

  // Something is being worked out; the figures are of an older state of the document until it ends.
  bool is_busy() const;
  const std::optional<BenchOutcome>& outcome() const { return outcome_; }

  PartTable* list() const { return list_; }
  ChangeForm* form() const { return form_; }
  EffectTable* effect() const { return effect_; }
  QString notes() const;
  AdoptStrip* strip() const { return strip_; }
  QTabWidget* tabs() const { return tabs_; }
  void show_tab(QWidget* inside);  // the one that holds it, where one does
  SaveSkeinPane* save_skein() const { return save_; }
  RunOutPane* run_out() const { return run_out_; }

 signals:
  void worked_out();

 protected:
  void showEvent(QShowEvent* event) override;
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* make_list_pane();
  QWidget* make_form_pane();
  QWidget* make_effect_pane();
  QWidget* make_tabs();
  void show_kind_menu();
  void refresh();
  void work_out();
  void take(BenchOutcome outcome);
  void show_outcome();
  void show_problem();
  void fit_table();
  void arrange();
  void put_on_bench(const std::vector<Change>& changes, const QString& words);
  const ChangeOutcome* outcome_of(ChangeId id) const;

  PartTable* list_ = nullptr;
  ChangeForm* form_ = nullptr;
  EffectTable* effect_ = nullptr;
  QLabel* notes_ = nullptr;
  AdoptStrip* strip_ = nullptr;
  QWidget* effect_pane_ = nullptr;
  QSplitter* right_ = nullptr;
  QTabWidget* tabs_ = nullptr;
  bool is_small_ = false;
  SaveSkeinPane* save_ = nullptr;
  RunOutPane* run_out_ = nullptr;
  PaneHeader* list_head_ = nullptr;
  PaneHeader* form_head_ = nullptr;
  PaneHeader* effect_head_ = nullptr;
  QPushButton* add_button_ = nullptr;
  QPushButton* take_here_ = nullptr;
  QPushButton* take_everywhere_ = nullptr;
  QString attention_;
  Finder finder_;
  std::optional<BenchOutcome> outcome_;
  std::pair<quint64, std::size_t> worked_out_for_{0, 0};  // state of the document, chosen size
  std::optional<AdoptIn> adopt_when_ready_;
  LatestJob<BenchOutcome> job_;
};

}  // namespace skeinproof
