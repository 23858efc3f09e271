// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <memory>

#include "app/document/latest_job.h"
#include "app/pages/finder.h"
#include "app/pages/page.h"
#include "core/base/id.h"
#include "core/substitution/candidate_facts.h"

class QCheckBox;
class QPushButton;
class QTabWidget;

namespace skeinproof {

class BandForm;
class BuyPane;
class CandidateCharts;
class CandidatePane;
class CandidateTable;
class ShelfDialog;
class WishesPane;

// What is worked out of the candidates, on a thread of its own.
struct CandidatesOutcome {
  std::vector<CandidateFacts> facts;
  Sheet sheet;
};

// Other yarns for the chosen size beside the pattern's own: facts, consequences, what is asked of them, what
// to buy. Nothing is ranked.
class CandidatesPage : public Page {
  Q_OBJECT

 public:
  // Asks for a path to save to; empty where the person gave up.
  using PathQuestion =
      std::function<QString(QWidget* parent, const QString& suggestion, const QString& filter)>;

  CandidatesPage(OpenPattern& open, QWidget* parent);
  ~CandidatesPage() override;
  void set_path_question(PathQuestion question) { ask_path_ = std::move(question); }

  QString attention() const override;
  void enter() override;
  bool go_to(std::uint32_t part) override;
  bool find_next(const QString& words) override;
  std::optional<Sheet> sheet() const override;
  std::vector<PaperBlock> paper_blocks(double width) const override;

  void add_candidate();  // opens the form of a ball band
  void search_shelf();
  void save_comparison();
  bool is_busy() const;
  const std::vector<CandidateFacts>& facts() const { return facts_; }

  CandidateTable* table() const { return table_; }
  BandForm* band() const { return band_; }
  CandidatePane* candidates() const { return candidates_; }
  WishesPane* wishes() const { return wishes_; }
  BuyPane* buy() const { return buy_; }
  CandidateCharts* charts() const { return charts_; }
  QTabWidget* tabs() const { return tabs_; }
  QCheckBox* only_what_differs() const { return differs_; }

 signals:
  void worked_out();

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  QWidget* make_side_by_side();
  void show_column_menu();
  void refresh();
  void work_out();
  void work_out_sizes();
  void show_table();
  void show_candidate(CandidateId id);
  QString size_label() const;

  PathQuestion ask_path_;
  QTabWidget* tabs_ = nullptr;
  BandForm* band_ = nullptr;
  CandidateTable* table_ = nullptr;
  CandidatePane* candidates_ = nullptr;
  WishesPane* wishes_ = nullptr;
  BuyPane* buy_ = nullptr;
  CandidateCharts* charts_ = nullptr;
  ShelfDialog* shelf_ = nullptr;
  QPushButton* columns_ = nullptr;
  QCheckBox* differs_ = nullptr;
  bool all_consequences_ = false;
  std::vector<CandidateFacts> facts_;
  CandidateId show_when_ready_;  // a candidate that was just added
  QString attention_;
  Finder finder_;
  std::pair<quint64, std::size_t> worked_out_for_{0, 0};  // state of the document, chosen size
  quint64 sizes_worked_out_for_ = 0;
  std::optional<Sheet> comparison_;
  LatestJob<CandidatesOutcome> job_;
  LatestJob<std::vector<std::vector<CandidateFacts>>> sizes_job_;
};

}  // namespace skeinproof
