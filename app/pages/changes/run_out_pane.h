// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <map>

#include "app/document/latest_job.h"
#include "app/pages/changes/bench_view.h"
#include "core/need/changes.h"
#include "core/need/run_out.h"
#include "core/sheets/sheet.h"

class QLabel;

namespace skeinproof {

class ChoiceField;
class FigureList;
class LineField;
class QuietLabel;

// Where the yarn on hand of one colour runs out, in the words of the pattern, and where one could still turn
// to something shorter. Enter puts such a turn on the bench.
class RunOutPane : public QWidget {
  Q_OBJECT

 public:
  explicit RunOutPane(QWidget* parent = nullptr);

  void show_bench(const BenchView& view);
  void choose_role(RoleId role);
  RoleId role() const;
  // What is typed as being on hand; returns why it cannot be read, or nothing.
  QString set_on_hand(const QString& typed);
  bool is_busy() const { return job_.is_busy(); }
  const Expected<RunOut>& shown() const { return shown_; }
  QString headline() const;
  QString note() const;
  ChoiceField* roles() const { return roles_; }
  LineField* on_hand() const { return on_hand_; }
  FigureList* turns() const { return turns_; }
  std::optional<Table> printed() const;

 signals:
  void wants_changes(const std::vector<skeinproof::Change>& changes, const QString& words);
  void worked_out();

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void work_out();
  void take(Expected<RunOut> result);
  void put_chosen_on_bench();
  QString typed() const;  // for the chosen colour

  BenchView view_;
  bool stale_ = true;
  bool awaited_ = false;  // what the job works out is still what is asked
  std::map<RoleId, QString> typed_;
  Expected<RunOut> shown_;
  LatestJob<Expected<RunOut>> job_;
  ChoiceField* roles_;
  LineField* on_hand_;
  QLabel* headline_;
  QuietLabel* note_;
  FigureList* turns_;
};

}  // namespace skeinproof
