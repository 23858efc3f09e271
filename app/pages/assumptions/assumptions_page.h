// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFutureWatcher>
#include <vector>

#include "app/pages/finder.h"
#include "app/pages/page.h"
#include "core/need/assumptions.h"

namespace skeinproof {

class FigureList;
class PaneHeader;
class PartTable;
class SensitivityList;

// Every constant of the methods: its value in force, its default, where it comes from and how far that was
// read; what the needs do when one of them is a tenth smaller or greater, largest first.
class AssumptionsPage : public Page {
  Q_OBJECT

 public:
  AssumptionsPage(OpenPattern& open, QWidget* parent);
  ~AssumptionsPage() override { take_down(); }

  QString attention() const override;
  void enter() override;
  bool find_next(const QString& words) override;
  std::optional<Sheet> sheet() const override;

  PartTable* table() const { return table_; }
  SensitivityList* sensitivity() const { return sensitivity_; }
  FigureList* figures() const { return figures_; }
  // The constants are being moved one by one; the picture is of an older state of the document until it ends.
  bool is_ranking() const { return ranking_.isRunning(); }

 signals:
  void ranked();

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  QWidget* make_table_pane();
  QWidget* make_figure_pane();
  QWidget* make_sensitivity_pane();
  void refresh();
  void rank();
  void show_ranking();
  void show_chosen();
  const Constant* chosen() const;

  PartTable* table_ = nullptr;
  FigureList* figures_ = nullptr;
  SensitivityList* sensitivity_ = nullptr;
  PaneHeader* table_head_ = nullptr;
  PaneHeader* figure_head_ = nullptr;
  PaneHeader* sensitivity_head_ = nullptr;
  QString attention_;
  Finder finder_;
  std::vector<Sensitivity> ranked_;  // of the state `ranking_state_`, once nothing is ranking
  QFutureWatcher<std::vector<Sensitivity>> ranking_;
  quint64 ranking_state_ = 0;  // of the open pattern, when the ranking began
};

}  // namespace skeinproof
