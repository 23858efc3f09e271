// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <vector>

#include "app/document/latest_job.h"
#include "app/pages/changes/bench_view.h"
#include "core/need/save_skein.h"
#include "core/sheets/sheet.h"

class QLabel;

namespace skeinproof {

class ChoiceField;
class FigureList;
class QuietLabel;

// How one colour could do with a skein less, the cheapest way first. Enter puts a way on the bench.
class SaveSkeinPane : public QWidget {
  Q_OBJECT

 public:
  explicit SaveSkeinPane(QWidget* parent = nullptr);

  void show_bench(const BenchView& view);
  void choose_role(RoleId role);
  RoleId role() const;
  bool is_busy() const { return job_.is_busy(); }
  const Expected<SaveSkein>& shown() const { return shown_; }
  QString headline() const;
  ChoiceField* roles() const { return roles_; }
  FigureList* ways() const { return ways_; }
  void put_chosen_on_bench();
  std::optional<Table> printed() const;

 signals:
  void wants_changes(const std::vector<skeinproof::Change>& changes, const QString& words);
  void worked_out();

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void work_out();
  void take(Expected<SaveSkein> result);

  BenchView view_;
  bool stale_ = true;
  Expected<SaveSkein> shown_;
  LatestJob<Expected<SaveSkein>> job_;
  ChoiceField* roles_;
  QLabel* headline_;
  QuietLabel* note_;
  FigureList* ways_;
};

}  // namespace skeinproof
