// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>

#include "app/document/latest_job.h"
#include "app/pages/changes/answer_pane.h"
#include "core/need/run_out.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

class LineField;

// Where the yarn on hand of one colour runs out, in the words of the pattern, and where one could still turn
// to something shorter.
class RunOutPane : public AnswerPane {
  Q_OBJECT

 public:
  explicit RunOutPane(QWidget* parent = nullptr);

  // What is typed as being on hand; returns why it cannot be read, or nothing.
  QString set_on_hand(const QString& typed);
  bool is_busy() const override { return job_.is_busy(); }
  const Expected<RunOut>& shown() const { return shown_; }
  LineField* on_hand() const { return on_hand_; }
  std::optional<Table> printed() const;

 protected:
  void ask() override;
  void leave_role() override;
  void put_on_bench(std::size_t row) override;

 private:
  RunOutPane(LineField* on_hand, QWidget* parent);
  void take(Expected<RunOut> result);
  QString typed() const;  // for the chosen colour

  bool awaited_ = false;  // what the job works out is still what is asked
  std::map<RoleId, QString> typed_;
  Expected<RunOut> shown_;
  LatestJob<Expected<RunOut>> job_;
  LineField* on_hand_;
};

}  // namespace skeinproof
